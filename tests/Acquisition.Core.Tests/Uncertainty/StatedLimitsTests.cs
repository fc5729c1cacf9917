using System.Linq;
using Acquisition.Core.Formulas;
using Xunit;

namespace Acquisition.Core.Tests.Uncertainty;

/// <summary>Limits that are stated without more are limits: the value lies nowhere beyond them (JCGM 100 4.3.7), and no verdict may act as if it could. The expected probabilities are parts of a rectangle.</summary>
public sealed class StatedLimitsTests
{
    private static WorksheetEntry Check(string check, string given = "given v = 5 V ± 50 mV") => Worksheet.Build(given + "\ncheck " + check).Evaluate().Entries[^1];

    [Theory]
    [InlineData("v <= 5.05 V")]
    [InlineData("v >= 4.95 V and v <= 5.05 V")]
    [InlineData("abs(v / 5 V - 1) <= 1 %")]
    [InlineData("2 * v <= 10.1 V")]
    [InlineData("1 / v >= 0.1979 / 1 V")]
    public void LimitsWhollyWithinTheTolerance_PassForCertain(string check)
    {
        WorksheetEntry entry = Check(check);
        Assert.Equal(WorksheetVerdict.Passed, entry.Verdict);
        Assert.Equal(1, entry.Decision!.ConformanceProbability.Fraction);
    }

    // 4.95 V to 5.05 V: nine tenths of it are below 5.04 V, two tenths above 5.03 V.
    [Theory]
    [InlineData("v <= 5.04 V", 0.9)]
    [InlineData("v >= 5.03 V", 0.2)]
    [InlineData("-v <= -5.03 V", 0.2)]
    [InlineData("v >= 4.97 V and v <= 5.04 V", 0.7)]
    public void LimitsPartlyWithin_ConformByTheirPart(string check, double part)
    {
        WorksheetEntry entry = Check(check);
        Assert.Equal(WorksheetVerdict.Inconclusive, entry.Verdict);
        Assert.Equal(part, entry.Decision!.ConformanceProbability.Fraction, 1e-9);
        Assert.Equal(0.05, entry.Decision.GuardBand.SiValue, 1e-12);
    }

    // Two limits of 50 mV add up to 100 mV at the most; their root sum of squares with k = 2 is 82 mV.
    [Fact]
    public void LimitsThatAddUp_AreCertainWhereTheirSumIsWithin()
    {
        const string Two = "given a = 5 V ± 50 mV\ngiven b = 5 V ± 50 mV";
        Assert.Equal(1, Check("a + b <= 10.1 V", Two).Decision!.ConformanceProbability.Fraction);
        Assert.InRange(Check("a + b <= 10.09 V", Two).Decision!.ConformanceProbability.Fraction, 0.97, 0.9999);
    }

    [Fact]
    public void ExpandedUncertainties_HaveNoLimits() => Assert.InRange(Check("v <= 5.05 V", "given v = 5 V ± 50 mV (k=2)").Decision!.ConformanceProbability.Fraction, 0.977, 0.978);

    [Fact]
    public void WhatIsGiven_IsSaidBackAsItWasStated()
    {
        Assert.Equal("v = 5 V ± 50 mV", Worksheet.Build("given v = 5 V ± 50 mV").Evaluate().Entries[0].ToString());
        Assert.Equal("f = 24 MHz ± 50 ppm", Worksheet.Build("given f = 24 MHz ± 50 ppm").Evaluate().Entries[0].ToString());
    }
}
