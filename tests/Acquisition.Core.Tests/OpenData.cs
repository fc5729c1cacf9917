using System;
using System.IO;
using Xunit;

namespace Acquisition.Core.Tests;

/// <summary>Open measured data by others, kept beside the checkout and not in it: a folder <c>shared/data</c> next to one of the folders above the tests.</summary>
internal static class OpenData
{
    public static string? Folder { get; } = Find();

    /// <summary>The path of a file in the folder; the folder must be there (see <see cref="OpenDataFactAttribute"/>).</summary>
    public static string Path(string file) =>
        System.IO.Path.Combine(Folder ?? throw new InvalidOperationException("the open data folder is absent"), file.Replace('/', System.IO.Path.DirectorySeparatorChar));

    private static string? Find()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            string candidate = System.IO.Path.Combine(folder.FullName, "shared", "data");
            if (Directory.Exists(candidate)) return candidate;
        }
        return null;
    }
}

/// <summary>A check against a file of <see cref="OpenData"/>; skipped, with the reason in the test report, where the file is absent.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class OpenDataFactAttribute : FactAttribute
{
    public OpenDataFactAttribute(string file)
    {
        if (OpenData.Folder is null || !File.Exists(OpenData.Path(file)))
            Skip = $"SKIPPED, NOT PASSED: open data file {file} is not beside this checkout (../shared/data)";
    }
}
