using System;
using Acquisition.Core.Literals;
using Acquisition.Core.Uncertainty;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Uncertainty;

/// <summary>Writing results by JCGM 100 clause 7.</summary>
public sealed class ResultTextTests
{
    /// <summary>JCGM 100 7.2.2 and 7.2.4 (from memory): m_s = 100.021 47 g with u_c = 0.35 mg, k = 2.26, U = 0.79 mg; written 100.021 47(35) g and (100.021 47 ± 0.000 79) g.</summary>
    [Fact]
    public void MassStandard_IsWrittenAsInTheGuide()
    {
        var mass = new Quantity(100.02147, QuantityKind.Length);

        Assert.Equal("100.02147(35) m", ResultText.Concise(mass, 0.00035, 2));
        Assert.Equal("(100.02147 ± 0.00079) m", ResultText.PlusMinus(mass, 0.00079, 2));
    }

    [Theory]
    [InlineData(10.0213, 0.031, "10.021(31) V", "(10.021 ± 0.031) V")]
    [InlineData(10.0213, 0.0996, "10.02(10) V", "(10.02 ± 0.10) V")]
    [InlineData(0.0000123456, 1e-9, "12.3456(10) µV", "(12.3456 ± 0.0010) µV")]
    [InlineData(999.9996, 0.0012, "999.9996(12) V", "(999.9996 ± 0.0012) V")]
    [InlineData(999.9996, 1.2, "1.0000(12) kV", "(1.0000 ± 0.0012) kV")]
    [InlineData(12.34, 1.5, "12.3(1.5) V", "(12.3 ± 1.5) V")]
    [InlineData(123.4, 15.2, "123(15) V", "(123 ± 15) V")]
    [InlineData(0.2, 15.2, "0(15) V", "(0 ± 15) V")]
    [InlineData(-0.00512, 0.00021, "-5.12(21) mV", "(-5.12 ± 0.21) mV")]
    [InlineData(500, 123.4, "500(120) V", "(500 ± 120) V")]
    [InlineData(0, 0.004, "0.0(4.0) mV", "(0.0 ± 4.0) mV")]
    public void Voltage_IsWrittenToTheDigitsOfItsUncertainty(double volts, double u, string concise, string plusMinus)
    {
        Quantity value = Voltage.FromVolts(volts).ToQuantity();

        Assert.Equal(concise, ResultText.Concise(value, u, 2));
        Assert.Equal(plusMinus, ResultText.PlusMinus(value, u, 2));
    }

    [Theory]
    [InlineData(1, "10.02(3) V", "(10.02 ± 0.03) V")]
    [InlineData(3, "10.0200(300) V", "(10.0200 ± 0.0300) V")]
    public void Digits_AreChosen(int digits, string concise, string plusMinus)
    {
        Quantity value = 10.02.V().ToQuantity();

        Assert.Equal(concise, ResultText.Concise(value, 0.03, digits));
        Assert.Equal(plusMinus, ResultText.PlusMinus(value, 0.03, digits));
    }

    [Fact]
    public void Levels_KeepTheirUnitWithoutPrefix() => Assert.Equal("(-0.0123 ± 0.0040) dB", ResultText.PlusMinus((-0.0123).dB().ToQuantity(), 0.004, 2));

    [Fact]
    public void PlainNumber_HasNoUnit() => Assert.Equal("0.500 ± 0.012", ResultText.PlusMinus(Ratio.FromFraction(0.5).ToQuantity(), 0.012, 2));

    [Fact]
    public void SmallPlainNumber_HasAPowerOfTen() => Assert.Equal("(1.200 ± 0.030) ×10^-6", ResultText.PlusMinus(Ratio.FromFraction(1.2e-6).ToQuantity(), 3e-8, 2));

    [Fact]
    public void ExactValue_SaysSo() => Assert.Equal("5 V (exact)", ResultText.PlusMinus(5.V().ToQuantity(), 0, 2));

    [Fact]
    public void Budget_StatesCoverageFactorAndProbability()
    {
        UncertaintyBudget budget = Uncertain.Of(10.02.V(), Spread.Standard(15.mV())).Budget();

        Assert.Equal("(10.020 ± 0.030) V, k = 2, p = 95.45 %", budget.ToString());
        Assert.Equal("10.020(15) V", budget.ToString(UncertaintyNotation.Concise));
        Assert.Equal("(10.02 ± 0.03) V, k = 2, p = 95.45 %", budget.ToString(UncertaintyNotation.PlusMinus, 1));
    }

    [Fact]
    public void NumberOfDigits_OutOfRange_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Uncertain.Of(10.V(), Spread.Standard(15.mV())).Budget().ToString(UncertaintyNotation.Concise, 0));

    /// <summary>Whatever the magnitudes, the written uncertainty is within half of its last digit, and value and uncertainty end at the same place.</summary>
    [Property]
    public bool WrittenUncertainty_IsWithinHalfItsLastDigit(NormalFloat a, NormalFloat b)
    {
        double u = Math.Pow(10, Math.IEEERemainder(a.Get, 6)), y = Math.IEEERemainder(b.Get, 100) * u;
        string text = ResultText.PlusMinus(new Quantity(y, QuantityKind.Voltage), u, 2);
        string[] parts = text.TrimStart('(').Split(')')[0].Split(" ± ");
        string unit = text.Split(") ")[1];
        double scale = unit.Length == 1 ? 1 : unit[0] switch { 'µ' => 1e-6, 'n' => 1e-9, 'm' => 1e-3, 'k' => 1e3, 'M' => 1e6, 'G' => 1e9, 'p' => 1e-12, _ => double.NaN };
        double written = double.Parse(parts[1], System.Globalization.CultureInfo.InvariantCulture) * scale;
        int DecimalsOf(string s) => s.Contains('.', StringComparison.Ordinal) ? s.Length - s.IndexOf('.', StringComparison.Ordinal) - 1 : 0;
        return Math.Abs(written - u) <= 0.0501 * u && DecimalsOf(parts[0]) == DecimalsOf(parts[1]);
    }
}
