using System;
using System.IO;

namespace Acquisition.Core.Tests;

/// <summary>Where the checkout lies that these tests were built from.</summary>
internal static class Repository
{
    public static string Root { get; } = FindRoot();

    public static string PathOf(params string[] parts) => Path.Combine(Root, Path.Combine(parts));

    public static string Read(params string[] parts) => File.ReadAllText(PathOf(parts)).Replace("\r\n", "\n", StringComparison.Ordinal);

    private static string FindRoot()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Acquisition.Core.sln"))) return folder.FullName;
        }
        throw new InvalidOperationException("the tests run outside a checkout: no Acquisition.Core.sln above " + AppContext.BaseDirectory);
    }
}
