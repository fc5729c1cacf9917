using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Text;

namespace Acquisition.Core.Tests.Conventions;

/// <summary>The sources of the library's two assemblies, whose folders are its areas, for tests that look at them.</summary>
internal static class LibrarySources
{
    private static readonly string[] Folders = [Repository.PathOf("src", "Acquisition.Foundation"), Repository.PathOf("src", "Acquisition.Core")];

    public static IReadOnlyList<string> Files { get; } =
        (from folder in Folders
         from path in Directory.GetFiles(folder, "*.cs", SearchOption.AllDirectories)
         where Path.GetRelativePath(folder, path).Split(Path.DirectorySeparatorChar)[0] is not ("obj" or "bin")
         select path).ToArray();

    /// <summary>A source's path below the folder of its assembly, written with slashes: it begins with the area.</summary>
    public static string Relative(string path) => Path.GetRelativePath(Folders.First(folder => path.StartsWith(folder + Path.DirectorySeparatorChar, StringComparison.Ordinal)), path).Replace('\\', '/');

    public static string AreaOf(string path) => Relative(path).Split('/')[0];

    /// <summary>Both assemblies in one, as if the order of the areas were the only border.</summary>
    public static CSharpCompilation Compile()
    {
        var options = new CSharpParseOptions(LanguageVersion.Latest, preprocessorSymbols: ["NET8_0_OR_GREATER", "NET", "NET8_0"]);
        var trees = Files.Select(path => CSharpSyntaxTree.ParseText(SourceText.From(File.ReadAllText(path)), options, path));
        var references = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!)
            .Split(Path.PathSeparator)
            .Where(path => !Path.GetFileName(path).StartsWith("Acquisition.", StringComparison.Ordinal))
            .Select(path => MetadataReference.CreateFromFile(path));
        return CSharpCompilation.Create("sources", trees, references, new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, allowUnsafe: true));
    }
}
