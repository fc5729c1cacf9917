using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using Acquisition.Core.Tests.Conventions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Acquisition.Core.Tests.Documents;

/// <summary>Every finding that the sources can make: a text followed by a severity among the arguments of one call.</summary>
internal static class FindingCodes
{
    /// <summary>Code, severities it may have, and the areas that make it.</summary>
    public static IReadOnlyList<(string Code, string Severities, string Areas)> All { get; } =
        (from found in Scan()
         group found by found.Code into code
         orderby code.Key
         select (
             code.Key,
             string.Join(", ", code.SelectMany(found => found.Severities).Distinct().OrderBy(severity => Enum.Parse<Severity>(severity))),
             string.Join(", ", code.Select(found => found.Area).Distinct().Order(StringComparer.Ordinal)))).ToArray();

    /// <summary>Places where a finding is made whose code is no text in that place; they hide codes from the scan.</summary>
    public static IReadOnlyList<string> Hidden { get; } =
        (from source in Sources()
         from creation in source.Root.DescendantNodes().OfType<ObjectCreationExpressionSyntax>()
         where creation.Type.ToString() == "Finding" && creation.ArgumentList is { Arguments.Count: > 1 } && !Texts(creation.ArgumentList!.Arguments[0].Expression).Any()
         select source.File + ": " + creation.ArgumentList!.Arguments[0]).ToArray();

    private static IEnumerable<(string Code, string[] Severities, string Area)> Scan() =>
        from source in Sources()
        from list in source.Root.DescendantNodes().OfType<ArgumentListSyntax>()
        from i in Enumerable.Range(0, Math.Max(0, list.Arguments.Count - 1))
        let severities = SeveritiesIn(list.Arguments[i + 1].Expression)
        where severities.Length > 0
        from code in Texts(list.Arguments[i].Expression)
        select (code, severities, source.Area);

    private static IEnumerable<string> Texts(ExpressionSyntax expression) => expression switch
    {
        LiteralExpressionSyntax literal when literal.IsKind(SyntaxKind.StringLiteralExpression) => [literal.Token.ValueText],
        ConditionalExpressionSyntax choice => Texts(choice.WhenTrue).Concat(Texts(choice.WhenFalse)),
        _ => [],
    };

    private static string[] SeveritiesIn(ExpressionSyntax expression) => expression switch
    {
        MemberAccessExpressionSyntax member when member.Expression.ToString() == nameof(Severity) => [member.Name.ToString()],
        ConditionalExpressionSyntax choice => SeveritiesIn(choice.WhenTrue).Concat(SeveritiesIn(choice.WhenFalse)).ToArray(),
        _ => [],
    };

    private static IEnumerable<(string Area, string File, SyntaxNode Root)> Sources()
    {
        foreach (string path in LibrarySources.Files)
            yield return (LibrarySources.AreaOf(path), Path.GetFileName(path), CSharpSyntaxTree.ParseText(File.ReadAllText(path), new CSharpParseOptions(LanguageVersion.Preview)).GetRoot());
    }
}
