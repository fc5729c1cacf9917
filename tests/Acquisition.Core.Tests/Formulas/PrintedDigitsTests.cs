using System.Linq;
using Acquisition.Core.Formulas;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Formulas;

/// <summary>What a person reads shows no rounding of binary arithmetic.</summary>
public sealed class PrintedDigitsTests
{
    [Theory]
    [InlineData("0.35 / 350 MHz in ps", "1000 ps")]
    [InlineData("0.35 / 350 MHz", "1 ns")]
    [InlineData("0.1 + 0.2", "0.3")]
    [InlineData("period(24 MHz) in ns", "41.6666666666667 ns")]
    [InlineData("24.000001234 MHz", "24.000001234 MHz")]
    [InlineData("9007199254740991 pts", "9.007199254740991 Ppts")]
    [InlineData("2^53 - 1", "9.007199254740991E+15")]
    public void FormulaResult_HasFifteenDigits_OrAllOfAWholeNumber(string formula, string expected) => Assert.Equal(expected, TextFormulas.Evaluate(formula));

    [Fact]
    public void RoundTripFormat_WritesEveryBit()
    {
        FormulaValue value = Formula.Build("0.35 / 350 MHz").Evaluate();
        Assert.Equal("999.9999999999999 ps", value.ToString("R"));
        Assert.Equal(value.SiValue, Quantity.Parse(value.ToString("R")).SiValue);
    }

    // n divisions of t, and t * n rounded once in decimal.
    [Theory]
    [InlineData("1 us", 10, "10 µs")]
    [InlineData("7 ns", 10, "70 ns")]
    [InlineData("200 ps", 12, "2.4 ns")]
    [InlineData("0.1 s", 3, "300 ms")]
    public void TimeAcrossTheScreen_IsSoManyTimesTheStatedOne(string perDivision, int divisions, string window) =>
        Assert.Equal(window, new Digitizer(1.GSaPerS(), 1.Gpts(), 8.bit()).WithDivisions(8, divisions).TimebasePerDivision(Duration.Parse(perDivision), 1).Window.ToString());

    [Fact]
    public void MonteCarloResult_EndsItsIntervalWhereTheUncertaintyEnds()
    {
        MonteCarloResult result = Formula.Build("0.35 / (100 MHz ± 5 %)").PropagateDistributions(MonteCarloOptions.Default.WithTrials(10_000));

        Assert.All(result.ToString().Split('[', ']')[1].Split(','), end => Assert.InRange(end.Count(char.IsDigit), 3, 5));
    }
}
