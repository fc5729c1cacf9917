using System;
using System.IO;
using System.Linq;
using System.Text.Json;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Records;

/// <summary>Pulses made and measured by programs outside this project: ngspice and NumPy. The scripts are in tests/scripts/records; the versions are in the JSON files.</summary>
public sealed class OutsidePulseTests
{
    private static Stream Open(string name) => File.OpenRead(Path.Combine(AppContext.BaseDirectory, "Records", "Data", name));

    private static JsonElement Expected(string name)
    {
        using Stream stream = Open(name);
        return JsonDocument.Parse(stream).RootElement;
    }

    [Fact]
    public void RingingPulses_AreMeasuredAsNgspiceMeasuresThem()
    {
        using Stream stream = Open("ngspice-ringing.csv");
        Record record = Assert.Single(CsvRecords.Read(stream));
        JsonElement ngspice = Expected("ngspice-ringing.json");
        PulseMeasurement pulses = PulseMeasurement.Of(record, PulseSettings.Default.WithStateLevels(0.V(), 1.V()));

        Assert.Equal(5e9, record.SampleRate.SamplesPerSecond, 1.0);
        // Straight lines over 0.2 ns of an edge of 2.2 ns: some parts in a thousand (handbook 8.4).
        Assert.Equal(ngspice.GetProperty("rise").GetDouble(), pulses.RisingDuration.Value.Mean.Seconds, 10e-12);
        Assert.Equal(ngspice.GetProperty("width").GetDouble(), pulses.PositivePulseDuration.Value.Mean.Seconds, 5e-12);
        Assert.Equal(ngspice.GetProperty("period").GetDouble(), pulses.Period.Value.Mean.Seconds, 5e-12);
        Assert.Equal(ngspice.GetProperty("peak").GetDouble() - 1, pulses.Transitions[0].Overshoot.Value.Fraction, 1e-3);
        Assert.Equal(-ngspice.GetProperty("trough").GetDouble(), pulses.Transitions[1].Overshoot.Value.Fraction, 1e-3);
        Assert.Equal(6, pulses.TransitionCount);

        // Found by itself, the states are the plateaus between the rings.
        StateLevels states = PulseMeasurement.Of(record).States.Value;
        Assert.Equal(0, states.Low.SiValue, 0.005);
        Assert.Equal(1, states.High.SiValue, 0.005);
    }

    [Fact]
    public void JitteredCodes_AreMeasuredAsNumPyMeasuresThem()
    {
        using Stream stream = Open("scipy-pulses.csv");
        Record table = Assert.Single(CsvRecords.Read(stream, CsvFormat.Sniffed.WithSampleRate(1.SaPerS())));
        Record codes = Record.FromCodes(table.ToSiValues().Select(x => (byte)x).ToArray(), 1.SaPerS(), 1.V(), 0.V());
        JsonElement numpy = Expected("scipy-pulses.json");
        PulseMeasurement pulses = PulseMeasurement.Of(codes, PulseSettings.Default.WithStates(StateLevelMethod.HistogramMode, 256));

        Assert.Equal(numpy.GetProperty("low_code").GetInt32(), pulses.States.Value.Low.SiValue, 1e-9);
        Assert.Equal(numpy.GetProperty("high_code").GetInt32(), pulses.States.Value.High.SiValue, 1e-9);
        Assert.Equal(numpy.GetProperty("period_mean").GetDouble(), pulses.Period.Value.Mean.Seconds, 1e-9);
        Assert.Equal(numpy.GetProperty("period_jitter").GetDouble(), pulses.Jitter.Value.PeriodJitter.Seconds, 1e-9);
        Assert.Equal(numpy.GetProperty("cycle_to_cycle_rms").GetDouble(), pulses.Jitter.Value.CycleToCycleRms.Seconds, 1e-9);
        Assert.Equal(numpy.GetProperty("tie_rms").GetDouble(), pulses.Jitter.Value.TimeIntervalErrorRms.Seconds, 1e-9);
        Assert.Equal(numpy.GetProperty("positive_mean").GetDouble(), pulses.PositivePulseDuration.Value.Mean.Seconds, 1e-9);
        Assert.Equal(numpy.GetProperty("positive_deviation").GetDouble(), pulses.PositivePulseDuration.Value.StandardDeviation.Value.Seconds, 1e-9);
        Assert.Equal(numpy.GetProperty("negative_mean").GetDouble(), pulses.NegativePulseDuration.Value.Mean.Seconds, 1e-9);
        Assert.Equal(numpy.GetProperty("duty_mean").GetDouble(), pulses.DutyFactor.Value.Mean.Fraction, 1e-9);
    }
}
