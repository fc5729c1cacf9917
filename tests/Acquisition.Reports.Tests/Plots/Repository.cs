using System;
using System.IO;

namespace Acquisition.Reports.Tests;

/// <summary>The folder of the solution, above the folder of the tests.</summary>
internal static class Repository
{
    internal static string Folder { get; } = Find();

    private static string Find()
    {
        string folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Acquisition.Core.sln"))) folder = Path.GetDirectoryName(folder)!;
        return folder;
    }
}
