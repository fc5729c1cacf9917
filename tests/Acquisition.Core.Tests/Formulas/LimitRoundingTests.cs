using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Formulas;
using Acquisition.Core.Literals;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Formulas;

/// <summary>A value exactly at its limit is at it, however the arithmetic of both was rounded: acceptance limits are closed (JCGM 106 8.2), and what is excluded stays so. The expected verdicts are those of the decimal numbers.</summary>
public sealed class LimitRoundingTests
{
    private static WorksheetEntry Check(string check, string givens = "") => Worksheet.Build(givens + "\ncheck " + check).Evaluate().Entries[^1];

    [Theory]
    [InlineData("a + b <= 0.3 V", "a < b", "a + b < 0.3 V", "given a = 0.1 V\ngiven b = 0.2 V")]
    [InlineData("3 * 0.1 V <= 0.3 V", "true", "3 * 0.1 V < 0.3 V", "")]
    [InlineData("abs(f / 24 MHz - 1) <= 50 ppm", "true", "abs(f / 24 MHz - 1) < 50 ppm", "given f = 24.0012 MHz")]
    [InlineData("f / 24 MHz - 1 >= 50 ppm", "true", "f / 24 MHz - 1 > 50 ppm", "given f = 24.0012 MHz")]
    [InlineData("drift <= 50 ppm", "true", "drift < 50 ppm", "given f = 24.0012 MHz\nlet drift = f / 24 MHz - 1")]
    [InlineData("v - 0.3 V <= 0 V", "true", "v - 0.3 V < 0 V", "given a = 0.1 V\nlet v = a + 0.2 V")]
    [InlineData("max(v, 1 mV) <= 0.3 V and v > 0.2 V", "true", "v < 0.3 V or v > 0.3 V", "given a = 0.1 V\nlet v = a + 0.2 V")]
    [InlineData("ok", "true", "not ok", "given a = 0.1 V\nlet ok = a + 0.2 V <= 0.3 V")]
    [InlineData("(if a + 0.2 V <= 0.3 V then 1 else 2) == 1", "true", "(if a + 0.2 V < 0.3 V then 1 else 2) == 1", "given a = 0.1 V")]
    [InlineData("sqrt(e^2 + 0.4 V * 0.4 V) <= 0.5 V", "true", "sqrt(e^2 + 0.4 V * 0.4 V) < 0.5 V", "given e = 0.3 V")]
    public void AValueExactlyAtItsLimit_IsAtIt(string met, string alsoMet, string notMet, string givens)
    {
        Assert.Equal(WorksheetVerdict.Passed, Check(met, givens).Verdict);
        Assert.Equal(WorksheetVerdict.Passed, Check(alsoMet, givens).Verdict);
        Assert.Equal(WorksheetVerdict.Failed, Check(notMet, givens).Verdict);
    }

    [Theory]
    [InlineData("abs(f / 24 MHz - 1) <= 50 ppm", "given f = 24.0012000001 MHz")]
    [InlineData("a + b <= 0.3 V", "given a = 0.1 V\ngiven b = 0.2000000000001 V")]
    [InlineData("v - 0.3 V <= 0 V", "given v = 0.300000000000001 V")]
    public void AValueJustBeyondItsLimit_IsBeyondIt(string check, string givens) => Assert.Equal(WorksheetVerdict.Failed, Check(check, givens).Verdict);

    [Fact]
    public void TheMarginOfAValueAtItsLimit_IsZero()
    {
        Assert.Equal(0, Check("abs(f / 24 MHz - 1) <= 50 ppm", "given f = 24.0012 MHz").Margin!.Value.SiValue);
        Assert.Equal(0, Check("3 * 0.1 V <= 0.3 V").Margin!.Value.SiValue);
        Assert.Equal("0 V", Check("a + b < 0.3 V", "given a = 0.1 V\ngiven b = 0.2 V").Margin.ToString());
    }

    [Fact]
    public void TextsAndOverrides_AreCheckedAlike()
    {
        Assert.True(TextFormulas.Check("a + b <= 0.3 V", "a = 0.1 V", "b = 0.2 V"));
        Assert.False(TextFormulas.Check("a + b < 0.3 V", "a = 0.1 V", "b = 0.2 V"));
        Assert.True(TextFormulas.Check("abs(d) <= 50 ppm", "d = 24.0012 MHz / 24 MHz - 1"));
        Assert.True(TextFormulas.CheckValue(0.1 + 0.2, "V", "value <= 0.3 V"));
        var reading = new Dictionary<string, FormulaValue> { ["v"] = FormulaValue.Of((0.1 + 0.2).V()) };
        Assert.Equal(WorksheetVerdict.Passed, Worksheet.Build("given v = 0 V\ncheck v <= 0.3 V").Evaluate(reading).Entries[^1].Verdict);
    }

    // 24.00096 MHz is 40 ppm above 24 MHz, and U = 240 Hz is 10 ppm, and both are 50 ppm, a limit that belongs to what is accepted (JCGM 106 8.3.2).
    [Fact]
    public void AcceptanceLimits_AreClosedToo()
    {
        Assert.Equal(WorksheetVerdict.Passed, Check("f / 24 MHz - 1 <= 50 ppm", "given f = 24.00096 MHz ± 240 Hz (k=2)").Verdict);
        Assert.Equal(WorksheetVerdict.Passed, Check("v >= 4.9 V", "given v = 4.95 V ± 50 mV (k=2)").Verdict);
        Assert.Equal(WorksheetVerdict.Passed, Check("abs(v / 5 V - 1) <= 1 %", "given v = 5.02 V ± 30 mV (k=2)").Verdict);
    }

    // Whole hundredths add up in decimal; in binary, most do not. Only which of them are equal is asked.
    [Property(MaxTest = 200)]
    public void SumsOfReadings_MeetTheirDecimalSum(int first, int second)
    {
        int a = System.Math.Abs(first % 10_000), b = System.Math.Abs(second % 10_000);
        string sum = $"{a / 100}.{a % 100:00} V + {b / 100}.{b % 100:00} V", limit = $"{(a + b) / 100}.{(a + b) % 100:00} V";
        Assert.Equal(WorksheetVerdict.Passed, Check($"{sum} <= {limit} and {sum} >= {limit}").Verdict);
        Assert.Equal(WorksheetVerdict.Failed, Check($"{sum} < {limit} or {sum} > {limit}").Verdict);
    }
}
