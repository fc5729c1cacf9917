using System;
using System.IO;

namespace Acquisition.Core.Tests.Planning;

/// <summary>Finds docs/ from wherever the tests run.</summary>
internal static class DocumentFiles
{
    internal static string Read(params string[] path) => File.ReadAllText(PathOf(path));

    internal static string PathOf(params string[] path)
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            string candidate = Path.Combine([folder.FullName, "docs", .. path]);
            if (File.Exists(Path.Combine(folder.FullName, "Acquisition.Core.sln")))
                return candidate;
        }
        throw new FileNotFoundException("no folder above the tests holds Acquisition.Core.sln");
    }
}
