using System;
using System.IO;
using System.Linq;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Text;

namespace Acquisition.Core.Tests.Conventions;

/// <summary>The library's own sources, compiled in memory for tests that look at them.</summary>
internal static class LibrarySources
{
    public static string[] Files { get; } = Directory
        .GetFiles(Repository.PathOf("src", "Acquisition.Core"), "*.cs", SearchOption.AllDirectories)
        .Where(path => !path.Contains(Path.DirectorySeparatorChar + "obj" + Path.DirectorySeparatorChar, StringComparison.Ordinal))
        .ToArray();

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
