using System;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Records;

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
