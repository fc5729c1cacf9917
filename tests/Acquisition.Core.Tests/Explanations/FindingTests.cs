using System;
using Acquisition.Core.Formulas;
using Acquisition.Core.Planning;
using Xunit;

namespace Acquisition.Core.Tests.Explanations;

public class FindingTests
{
    [Theory]
    [InlineData("")]
    [InlineData("Edge-Slowed")]
    [InlineData("edge slowed")]
    [InlineData("-edge")]
    [InlineData("edge--slowed")]
    [InlineData("edge-")]
    public void Code_IsWordsOfLowerCaseWithHyphens_OrIsRefused(string code)
    {
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => new Finding(code, Severity.Note, "message"));
        Assert.Equal("code", refusal.ParamName);
        Assert.Contains($"'{code}'", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Severity_IsOneOfTheFour_OrIsRefused() =>
        Assert.Equal("severity", Assert.Throws<ArgumentOutOfRangeException>(() => new Finding("edge-slowed", (Severity)99, "message")).ParamName);

    [Fact]
    public void Message_IsNotEmpty_OrIsRefused() => Assert.Equal("message", Assert.Throws<ArgumentException>(() => new Finding("edge-slowed", Severity.Note, " ")).ParamName);

    [Fact]
    public void AVerdictThatNobodyHasSet_IsNoPass()
    {
        Assert.NotEqual(Verdict.Pass, default);
        Assert.NotEqual(WorksheetVerdict.Passed, default);
        Assert.NotEqual(Suitability.Suitable, default);
    }
}
