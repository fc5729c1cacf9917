using System;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Uncertainty;

/// <summary>Products and quotients of uncertain quantities: relative variances add (JCGM 100 5.1.6); levels and their functions against functions of the host, whose slopes are found numerically.</summary>
public sealed class UncertainProductsTests
{
    private const double First = 0.03, Second = 0.04;

    [Fact]
    public void ProductsAndQuotients_AddTheirRelativeVariances()
    {
        Check(Of(2.A(), First) * Of(5.Ohm(), Second), 10);
        Check(Of(5.Ohm(), First) * Of(2.A(), Second), 10);
        Check(Of(2.A(), First) * Of(5.V(), Second), 10);
        Check(Of(5.V(), First) * Of(2.A(), Second), 10);
        Check(Of(2.F(), First) * Of(5.Ohm(), Second), 10);
        Check(Of(5.Ohm(), First) * Of(2.F(), Second), 10);
        Check(Of(10.H(), First) / Of(5.Ohm(), Second), 2);
        Check(Of(2.s(), First) * Of(5.Hz(), Second), 10);
        Check(Of(5.Hz(), First) * Of(2.s(), Second), 10);
        Check(Of(10.V(), First) / Of(5.Ohm(), Second), 2);
        Check(Of(10.V(), First) / Of(5.A(), Second), 2);
        Check(Of(10.V(), First) / Of(5.s(), Second), 2);
        Check(Of(10.V(), First) / Of(SlewRate.FromVoltsPerSecond(5), Second), 2);
        Check(Of(SlewRate.FromVoltsPerSecond(5), First) * Of(2.s(), Second), 10);
        Check(Of(10.W(), First) / Of(5.V(), Second), 2);
        Check(Of(10.W(), First) / Of(5.A(), Second), 2);
        Check(Of(10.MSaPerS(), First) / Of(5.MHz(), Second), 2);
        Check(Of(10.V(), First) / Of(Ratio.FromFraction(5), Second), 2);
        Check(Of(Ratio.FromFraction(5), First) * Of(10.V(), Second), 50);
    }

    [Fact]
    public void LevelsAndGains_AddTheirVariances()
    {
        Uncertain<DecibelRatio> gain = Uncertain.Of(3.dB(), Spread.Standard(0.4.dB()));
        var power = Uncertain.Of(PowerLevel.FromDecibelMilliwatts(-10), Spread.Standard(0.3.dB()));
        var volts = Uncertain.Of(VoltageLevel.FromDecibelVolts(-10), Spread.Standard(0.3.dB()));
        Check(power + gain, -7, 0.5);
        Check(power - gain, -13, 0.5);
        Check(volts + gain, -7, 0.5);
        Check(volts - gain, -13, 0.5);
        Check(Uncertain.Difference(power, power), 0, 0);
        Check(Uncertain.Difference(volts + gain, volts), 3, 0.4);
    }

    // By hand: 1/24 MHz with 1 % is 41.667 ns with 1 %; 1 mV (rms) with 1 % is -60 dBV with 0.0869 dB; -10 dBm with 0.1 dB is 100 µW with 2.3026 %.
    [Fact]
    public void PeriodsAndLevels_CarryTheirUncertaintyAlong()
    {
        Check(Uncertain.Period(Uncertain.Of(24.MHz(), Spread.Standard(240.kHz()))), 1 / 24e6, 0.01 / 24e6);
        Check(Uncertain.Frequency(Uncertain.Of(50.ns(), Spread.Standard(0.5.ns()))), 20e6, 0.2e6);
        Check(Uncertain.ToLevel(Uncertain.Of(1.mVrms(), Spread.Standard(10.uVrms()))), -60, 0.0868588963806504);
        Check(Uncertain.ToPower(Uncertain.Of(PowerLevel.FromDecibelMilliwatts(-10), Spread.Standard(0.1.dB()))), 1e-4, 1e-4 * 0.0230258509299405);
    }

    [Fact]
    public void FunctionsOfTheHost_HaveTheSlopesOfTheirProducts()
    {
        Uncertain<Voltage> u = Of(10.V(), First);
        Uncertain<Resistance> r = Of(5.Ohm(), Second);
        Check(Uncertain.Apply(u, r, (a, b) => a / b), 2);
        Check(Uncertain.Apply(u, r, Uncertain.Exact(2.s()), (a, b, _) => a / b), 2);
        Check(Uncertain.Apply(u, (Voltage a) => a * 2, _ => 2), 20, 20 * First);
        // The same input twice is no second source.
        Check(Uncertain.Apply(u, u, (a, b) => a - b), 0, 0);
        Check(Uncertain.Apply(u, u, u, (a, b, c) => a + b + c), 30, 30 * First);
    }

    private static Uncertain<T> Of<T>(T value, double relative)
        where T : struct, IQuantity
    {
        Quantity quantity = value.ToQuantity();
        return Uncertain.Of(value, Spread.Standard((T)typeof(T).GetMethod("FromQuantity")!.Invoke(null, [new Quantity(quantity.SiValue * relative, quantity.Kind)])!));
    }

    private static void Check(UncertainQuantity result, double value) => Check(result, value, value * 0.05);

    private static void Check(UncertainQuantity result, double value, double standardUncertainty)
    {
        Assert.Equal(value, result.SiEstimate, Math.Abs(value) * 1e-9 + 1e-15);
        Assert.Equal(standardUncertainty, result.SiStandardUncertainty, standardUncertainty * 1e-6 + 1e-15);
    }
}
