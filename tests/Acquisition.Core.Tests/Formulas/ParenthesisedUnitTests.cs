using Xunit;

namespace Acquisition.Core.Tests.Formulas;

/// <summary>After a slash, a parenthesis may hold units that belong to the number, or an operand of the formula that only begins with one.</summary>
public sealed class ParenthesisedUnitTests
{
    [Theory]
    [InlineData("10 V/(s)", "10 V / (1 s)")]
    [InlineData("10 V/(s )", "10 V / (1 s)")]
    [InlineData("10 V/(s * 2)", "10 V / (1 s) / 2")]
    [InlineData("10 V/(s + 1 s)", "10 V / (1 s) / 2")]
    [InlineData("10 V*s/(m * 2)", "10 V * 1 s / 1 m / 2")]
    [InlineData("5 nV/(√Hz )* sqrt(4 Hz)", "10 nV")]
    [InlineData("5 nV/(√Hz * sqrt(4 Hz))", "2.5 nV / (1 Hz)")]
    [InlineData("6 V*s/(m*s) * 1 m", "6 V")]
    public void ADenominator_CountsOnce(string text, string same) =>
        Assert.Equal(Acquisition.Core.Formula.Build(same).Evaluate().ToString(), Acquisition.Core.Formula.Build(text).Evaluate().ToString());
}
