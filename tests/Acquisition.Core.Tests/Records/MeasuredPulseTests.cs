using System.Collections.Generic;
using System.IO;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Records;

/// <summary>Open measured records (origin and licences in the data folder's own page); the expected values were computed there by NumPy and SciPy, not by this library.</summary>
public sealed class MeasuredPulseTests
{
    private static IReadOnlyList<Record> Read(string file, CsvFormat? format = null)
    {
        using FileStream stream = File.OpenRead(OpenData.Path(file));
        return CsvRecords.Read(stream, format);
    }

    [OpenDataFact("records/opamp-square-7khz.csv")]
    public void SlewLimitedOutput_HasTheLevelsDurationsAndPeriodComputedElsewhere()
    {
        PulseSettings hundredBins = PulseSettings.Default.WithStates(StateLevelMethod.HistogramBinCenter, 100);
        PulseMeasurement output = PulseMeasurement.Of(Read("records/opamp-square-7khz.csv")[1], hundredBins);

        Assert.Equal(-1.438, output.States.Value.Low.SiValue, 0.0006);
        Assert.Equal(1.605, output.States.Value.High.SiValue, 0.0006);
        Assert.InRange(output.RisingDuration.Value.Mean.Microseconds, 15.36, 15.40);
        Assert.Equal(13.96, output.FallingDuration.Value.Mean.Microseconds, 0.02);
        Assert.Equal(142.85, output.Period.Value.Mean.Microseconds, 0.02);
        Assert.Equal(7.000, output.Frequency.Value.Kilohertz, 0.001);
    }

    [OpenDataFact("records/opamp-square-7khz.csv")]
    public void InputEdgeOfOneToTwoSamples_IsNotResolved()
    {
        PulseMeasurement input = PulseMeasurement.Of(Read("records/opamp-square-7khz.csv")[0]);

        Assert.Equal("edge-not-resolved", input.RisingDuration.Reason!.Code);
        Assert.All(input.Transitions.Where(x => x.IsRising), x => Assert.InRange(x.AtMost.Value.Microseconds, 0.1, 0.31));
        Assert.Equal(-1.513, input.States.Value.Low.SiValue, 0.016);
        Assert.Equal(1.540, input.States.Value.High.SiValue, 0.016);
    }

    [OpenDataFact("records/square-1-3-5-10ghz.csv")]
    public void DisplayedSineOfTenGigahertz_HasNoPlateau_AndIsMeasuredBetweenGivenLevels()
    {
        IReadOnlyList<Record> records = Read("records/square-1-3-5-10ghz.csv");

        Assert.Equal("no-plateau", PulseMeasurement.Of(records[6]).States.Reason!.Code);

        double[] volts = records[6].ToSiValues();
        PulseMeasurement given = PulseMeasurement.Of(records[6], PulseSettings.Default.WithStateLevels(Voltage.FromVolts(volts.Min()), Voltage.FromVolts(volts.Max())).WithHysteresis(Ratio.FromPercent(20)));
        Assert.Equal(0.2738, given.States.Value.Amplitude.SiValue, 0.0001);
        // A sine of 100 ps takes 29.5 ps between its extremes; the record's extremes are wider than those of its sine by noise.
        Assert.InRange(given.RisingDuration.Value.Mean.Picoseconds, 29.5, 36);
        Assert.Equal(100, given.Period.Value.Mean.Picoseconds, 1.0);
    }

    [OpenDataFact("records/microcalorimeter-pulses.csv")]
    public void DecayingPulse_HasNoHighState_AndIsMeasuredBetweenBaselineAndPeak()
    {
        CsvFormat format = CsvFormat.Sniffed.WithSampleRate(SampleRate.FromSampleInterval(5.12.us())).WithDefaultKind(QuantityKind.Ratio);
        Record r0 = Read("records/microcalorimeter-pulses.csv", format)[0];

        Assert.Equal("no-plateau", PulseMeasurement.Of(r0).States.Reason!.Code);

        double[] codes = r0.ToSiValues();
        double baseline = codes.Take(500).Average();
        Assert.Equal(13424, codes.Max() - baseline, 1.0);
        PulseMeasurement pulse = PulseMeasurement.Of(r0, PulseSettings.Default.WithStateLevels(Ratio.FromFraction(baseline), Ratio.FromFraction(codes.Max())));
        Assert.Equal(43.0, pulse.RisingDuration.Value.Mean.Microseconds, 0.3);
        Assert.Equal(370.8, pulse.PositivePulseDuration.Value.Mean.Microseconds, 0.5);
    }

    [OpenDataFact("records/microcalorimeter-noise.csv")]
    public void Noise_IsNoPulse()
    {
        CsvFormat format = CsvFormat.Sniffed.WithSampleRate(SampleRate.FromSampleInterval(5.12.us())).WithDefaultKind(QuantityKind.Ratio);

        Assert.All(Read("records/microcalorimeter-noise.csv", format), x => Assert.Contains(PulseMeasurement.Of(x).States.Reason!.Code, new[] { "no-plateau", "states-not-separated" }));
    }

    [OpenDataFact("records/ecg-360hz.csv")]
    public void Statistics_AreThoseComputedElsewhere()
    {
        Record codes = Assert.Single(Read("records/ecg-360hz.csv", CsvFormat.Sniffed.WithSampleRate(360.SaPerS()).WithDefaultKind(QuantityKind.Ratio)));
        Record millivolts = Record.FromCodes(codes.ToSiValues().Select(x => (short)x).ToArray(), codes.SampleRate, 5.uV(), -5.12.mV());
        RecordStatistics statistics = RecordStatistics.Of(millivolts).Value;

        Assert.Equal(-0.17752e-3, statistics.Mean.SiValue, 1e-8);
        Assert.Equal(0.67801e-3, statistics.AcRms.SiValue, 2e-8);
        Assert.Equal(653 * 5e-6 - 5.12e-3, statistics.Minimum.SiValue, 1e-12);
        Assert.Equal(1754 * 5e-6 - 5.12e-3, statistics.Maximum.SiValue, 1e-12);
        Assert.Equal(60, millivolts.Window.Seconds, 1e-9);
    }

    [OpenDataFact("records/tdr-tee-terminations.csv")]
    public void IncidentEdge_HasTheDurationComputedElsewhere()
    {
        CsvFormat format = CsvFormat.Sniffed.WithSampleRate(SampleRate.FromSampleInterval(11.2.ps()));
        Record[] load = Read("records/tdr-tee-terminations.csv", format).Where(x => x.Name.StartsWith("load", System.StringComparison.Ordinal)).ToArray();
        double[] mean = Enumerable.Range(0, load[0].ToSiValues().Length).Select(i => load.Average(x => x.ReadingAt(i))).ToArray();
        Record step = Record.FromVolts(mean, load[0].SampleRate);
        PulseMeasurement edge = PulseMeasurement.Of(step);

        // 80.2 ps there, with levels that are not stated. The edge ends in a slow tail: the low level is that shortly after it or that at the end, and the duration 80 ps or 87 ps.
        Assert.InRange(edge.FallingDuration.Value.Mean.Picoseconds, 80, 87.5);
    }
}
