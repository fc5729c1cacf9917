using System;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Explanations;

/// <summary>Texts for people carry few digits, whatever the numbers behind them.</summary>
public sealed class FewDigitsTests
{
    [Fact]
    public void ResultsOfRecords_AreWrittenWithAsManyDigitsAsAReaderCanUse()
    {
        SampleRate rate = SampleRate.FromSamplesPerSecond(1e9 / 3);
        Record sine = Record.FromVolts([.. Enumerable.Range(0, 999).Select(i => Math.Sin(0.3 * i) / 3)], rate);
        var sweep = Sweep.OfDecibels([1e6 / 3, 2e6 / 3, 4e7 / 3], [-1.0 / 3, -2.0 / 3, -20.0 / 3]);
        var spectrum = Core.Spectrum.Of(sine, SpectralWindow.Hann);
        Record runts = Record.FromVolts([.. Enumerable.Range(0, 3000).Select(i => (i / 100 == 7 ? 0.7 : 1) * Math.Clamp(Math.Min(i % 100 - 20, 61 - i % 100) / 7.0, 0, 1) / 3)], rate);
        PulseMeasurement pulses = PulseMeasurement.Of(runts);
        CoherentSampling coherent = CoherentSampling.Near(10.MHz(), rate, 1021.pts());

        Assert.Equal("positive runt from 2.175 µs to 2.268 µs, up to 233.3 mV", Assert.Single(pulses.Runts).ToString());
        object[] results =
        [
            sine, sweep, sweep.Points[1], sweep.Bandwidth(), spectrum, spectrum.LevelsRelativeTo(PeakVoltage.FromVolts(1.0 / 3), DecibelRatio.FromDecibels(-300.0 / 7)), SpectralWindow.Hann,
            pulses, pulses.States, pulses.Transitions[0], pulses.Runts[0], pulses.RisingDuration, pulses.Jitter, pulses.RisingDurationUncertainty, SineFit.FourParameter(sine), SingleToneTest.Of(sine), coherent,
            RecordStatistics.Of(sine),
        ];
        Assert.All(results, x => Assert.True(MostDigits(x.ToString()!) <= (x is CoherentSampling ? 10 : 7), x.GetType().Name + ": " + x));
    }

    [Fact]
    public void Counts_AreWrittenInFull_AndOtherQuantitiesWithFourDigits()
    {
        Assert.Equal("14.0001 Mpts", 14_000_100.pts().InWords());
        Assert.Equal("333.3 MSa/s", SampleRate.FromSamplesPerSecond(1e9 / 3).InWords());
        Assert.Equal("67 MHz", FewDigits.Hertz(2e8 / 3, 2));
    }

    [Theory]
    [InlineData(0.123456, "12.35 %")]
    [InlineData(-0.5, "-50 %")]
    [InlineData(1e-4, "0.01 %")]
    [InlineData(99.99e-6, "99.99 ppm")]
    [InlineData(2.5e-8, "25 ppb")]
    [InlineData(0, "0 %")]
    public void Ratios_AreWrittenInPercentOrInWhatPeopleSayBelow(double fraction, string text) => Assert.Equal(text, Ratio.FromFraction(fraction).InWords());

    [Theory]
    [InlineData(12345, "12350")]
    [InlineData(0.00012345, "0.0001235")]
    [InlineData(1234567, "1235000")]
    public void Numbers_AreRoundedAndNotWrittenInPowersOfTen(double value, string text) => Assert.Equal(text, FewDigits.Number(value + value * 1e-9));

    /// <summary>The longest run of digits, a decimal point within it left out.</summary>
    private static int MostDigits(string text)
    {
        int most = 0, run = 0;
        foreach (char c in text)
        {
            run = char.IsDigit(c) ? run + 1 : c == '.' ? run : 0;
            most = Math.Max(most, run);
        }
        return most;
    }
}
