using System;
using System.Linq;
using Xunit;

namespace Acquisition.Core.Tests.Documents;

/// <summary>docs/findings.md lists every finding that the library can make, with the severities it can have.</summary>
public sealed class FindingsPageTests
{
    [Fact]
    public void Page_HasEveryCodeWithItsSeverities_AndNoOther()
    {
        string[] documented = Rows().Select(row => $"{row[0].Trim('`')} | {row[1]} | {row[2]}").Order(StringComparer.Ordinal).ToArray();
        string[] made = FindingCodes.All.Select(code => $"{code.Code} | {code.Severities} | {code.Areas}").Order(StringComparer.Ordinal).ToArray();

        Assert.Equal(made, documented);
    }

    [Fact]
    public void EveryCode_HasMeaningAndRemedy() => Assert.All(Rows(), row => Assert.True(row.Length == 5 && row[3].Length > 15 && row[4].Length > 0, string.Join(" | ", row)));

    [Fact]
    public void Codes_AreLowerCaseWordsWithHyphens() =>
        Assert.All(FindingCodes.All, code => Assert.True(code.Code.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-') && code.Code[0] != '-', code.Code));

    [Fact]
    public void OnlyTheOutlooksOwnDoor_AndTheGatheringOfMany_PassACodeOn() => Assert.Equal(["PassedOn.cs: first.Code", "OutlookFindings.cs: code"], FindingCodes.Hidden);

    private static string[][] Rows() =>
        Repository.Read("docs", "findings.md").Split('\n').Where(line => line.StartsWith("| `", StringComparison.Ordinal)).Select(line => line.Trim('|', ' ').Split(" | ").Select(cell => cell.Trim()).ToArray()).ToArray();
}
