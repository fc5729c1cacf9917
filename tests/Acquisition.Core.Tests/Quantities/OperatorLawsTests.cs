using System;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Acquisition.Core.Tests.Quantities;

/// <summary>Laws that the operators keep for any values of the bench.</summary>
public class OperatorLawsTests
{
    private static double Positive(int seed) => (Math.Abs((long)seed) % 1_000_000 + 1) * Math.Pow(10, Math.Abs((long)seed) % 13 - 9);

    private static bool Near(double a, double b) => Math.Abs(a - b) <= 8e-16 * Math.Max(Math.Abs(a), Math.Abs(b));

    [Property]
    public bool Sum_Commutes_AndTheDifferenceFromItselfIsZero(int a, int b)
    {
        Voltage x = Voltage.FromVolts(a / 7.0), y = Voltage.FromVolts(b / 7.0);
        return x + y == y + x && x - x == default && x - y == -(y - x) && x + default(Voltage) == x;
    }

    [Property]
    public bool ScalingByANumber_Commutes_AndDividesOut(int a, int b)
    {
        Frequency f = Frequency.FromHertz(Positive(a));
        double k = Positive(b);
        return f * k == k * f && Near((f * k / k).Hertz, f.Hertz) && Near((f * k / f).Fraction, k);
    }

    [Property]
    public bool OhmsLaw_ClosesItsTriangle(int a, int b)
    {
        Voltage v = Voltage.FromVolts(Positive(a));
        Resistance r = Resistance.FromOhms(Positive(b));
        return Near((v / r * r).Volts, v.Volts) && Near((v / (v / r)).Ohms, r.Ohms);
    }

    [Property]
    public bool CyclesInATime_AreTheFrequencyTimesTheTime(int a, int b)
    {
        Frequency f = Frequency.FromHertz(Positive(a));
        Duration t = Duration.FromSeconds(Positive(b));
        return Near((f * t).Fraction, f.Hertz * t.Seconds) && Near((f * f.Period).Fraction, 1);
    }

    [Property]
    public bool PointsOfAWindow_AtARate_TakeNoLongerThanTheWindow(int a, int b)
    {
        SampleRate rate = SampleRate.FromSamplesPerSecond(Positive(a) * 1e3);
        Duration window = Duration.FromSeconds(Positive(b) / 1e3);
        PointCount points = rate * window;
        double exact = rate.SamplesPerSecond * window.Seconds;
        return points.Points <= exact * (1 + 1e-15) && points.Points > exact * (1 - 1e-15) - 1;
    }

    [Property]
    public bool Decibels_TurnProductsIntoSums(int a, int b)
    {
        Ratio x = Ratio.FromFraction(Positive(a)), y = Ratio.FromFraction(Positive(b));
        return Math.Abs((DecibelRatio.FromAmplitudeRatio(x * y) - DecibelRatio.FromAmplitudeRatio(x) - DecibelRatio.FromAmplitudeRatio(y)).Decibels) < 1e-9
            && Math.Abs((DecibelRatio.FromPowerRatio(x * x) - DecibelRatio.FromAmplitudeRatio(x)).Decibels) < 1e-9;
    }

    [Property]
    public bool Levels_ArePointsAndDecibelsTheirDifferences(int a, int b)
    {
        PowerLevel x = PowerLevel.FromDecibelMilliwatts(a / 64.0), y = PowerLevel.FromDecibelMilliwatts(b / 64.0);
        return y + (x - y) == x && x - (x - y) == y && (x - y) == -(y - x);
    }

    [Property]
    public bool OrderAndEquality_AreThoseOfTheNumbers(double a, double b)
    {
        if (!double.IsFinite(a) || !double.IsFinite(b)) return true;
        Voltage x = Voltage.FromVolts(a), y = Voltage.FromVolts(b);
        return (x < y) == (a < b) && (x == y) == (a == b) && Voltage.Min(x, y).Volts == Math.Min(a, b) && Voltage.Max(x, y).Volts == Math.Max(a, b);
    }
}
