using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Xunit;

namespace Acquisition.Core.Tests.Conventions;

/// <summary>Folders are areas, and data flows one way through them: an area uses none further down (docs/design.md).</summary>
public sealed class AreaOrderTests
{
    private static readonly string[] Order =
    [
        "Quantities", "Explanations", "Functions", "Signals", "Responses", "Uncertainty", "Chain", "Digitizing", "Records", "Attribution", "Planning", "Formulas",
    ];

    [Fact]
    public void EveryFolderOfTheLibrary_IsAnArea()
    {
        Assert.Equal(Order.Order(), LibrarySources.Files.Select(LibrarySources.AreaOf).Distinct().Order());
    }

    [Fact]
    public void AnArea_UsesNoneFurtherDown()
    {
        CSharpCompilation compilation = LibrarySources.Compile();
        var violations = new List<string>();

        Parallel.ForEach(compilation.SyntaxTrees, tree =>
        {
            string area = LibrarySources.AreaOf(tree.FilePath);
            SemanticModel model = compilation.GetSemanticModel(tree);
            foreach (SimpleNameSyntax name in tree.GetRoot().DescendantNodes().OfType<SimpleNameSyntax>())
            {
                ISymbol? symbol = model.GetSymbolInfo(name).Symbol;
                INamedTypeSymbol? type = symbol as INamedTypeSymbol ?? symbol?.ContainingType;
                foreach (string used in (type?.DeclaringSyntaxReferences ?? []).Select(x => LibrarySources.AreaOf(x.SyntaxTree.FilePath)).Distinct())
                {
                    if (Array.IndexOf(Order, used) > Array.IndexOf(Order, area) && !IsFunctionDeclaration(tree.FilePath, used))
                    {
                        lock (violations) violations.Add($"{area}/{Path.GetFileName(tree.FilePath)} uses {type!.Name} of {used}");
                    }
                }
            }
        });

        Assert.True(violations.Count == 0, string.Join("\n", violations.Distinct().Order()));
    }

    /// <summary>Each area declares its functions to the language in files of their own, which know the declaration contract whatever their place in the order.</summary>
    private static bool IsFunctionDeclaration(string path, string usedArea) =>
        usedArea == "Functions" && Path.GetFileName(path).EndsWith("Functions.cs", StringComparison.Ordinal);
}
