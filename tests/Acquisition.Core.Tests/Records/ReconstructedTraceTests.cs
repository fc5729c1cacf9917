using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Handbook;
using Xunit;

namespace Acquisition.Core.Tests.Records;

public sealed class ReconstructedTraceTests
{
    private static Record Sine(double r, int n = 400, double phase = 0) =>
        Record.FromVolts(Enumerable.Range(0, n).Select(i => Math.Sin(2 * Math.PI * r * i + phase)).ToArray(), 1.GSaPerS()).WithStart(-50.ns());

    [Fact]
    public void Trace_HoldsTheSamples_AndNothingBeyondThem()
    {
        Record record = Sine(0.1);
        ReconstructedTrace trace = record.Reconstruct(Reconstruction.Sinc, 10);

        Assert.Equal(3991, trace.Trace.Count.Points);
        Assert.Equal(10e9, trace.Trace.SampleRate.SamplesPerSecond, 1e-3);
        Assert.Equal(record.Start, trace.Trace.Start);
        for (int i = 0; i < 400; i++)
            Assert.Equal(record.ReadingAt(i), trace.Trace.ReadingAt(10 * i), 1e-12);
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => record.ReadingsAt(Reconstruction.Linear, 400.ns()));
        Assert.Contains("extrapolated", refusal.Message, StringComparison.Ordinal);
        Assert.Equal(record.ReadingAt(399), Assert.Single(record.ReadingsAt(Reconstruction.Linear, record.TimeAt(399))));
    }

    [Fact]
    public void EndsOfASincTrace_AreMarkedAsUntrusted()
    {
        Record record = Sine(0.3);
        ReconstructedTrace trace = record.Reconstruct(Reconstruction.Sinc, 10);
        Assert.Equal(160, trace.UntrustedPointsAtEachEnd.Points);
        Assert.Equal(-34, trace.TrustedFrom.Nanoseconds, 1e-9);
        Assert.Equal(349 - 16, trace.TrustedTo.Nanoseconds, 1e-9);
        Assert.Equal("trace-ends-untrusted", Assert.Single(trace.Findings).Code);

        double[] points = trace.Trace.ToSiValues(), error = points.Select((x, i) => Math.Abs(x - Math.Sin(2 * Math.PI * 0.3 * i / 10))).ToArray();
        Assert.True(error[160..^160].Max() < 3e-5);
        Assert.True(error[..160].Max() > 1e-3);
        Assert.Empty(record.Reconstruct(Reconstruction.Linear, 10).Findings);
        Assert.Equal(Severity.Failure, Assert.Single(record.Slice(0, 20).Reconstruct(Reconstruction.Sinc, 2).Findings).Severity);
    }

    /// <summary>The worst error of the mode, found on a real record over phases and places.</summary>
    [Theory]
    [HandbookData("IN-LIN-100", "IN-LIN-200", "IN-LIN-250", "ZOHE-100", "ZOHE-200")]
    public void WorstErrorOnARecord_IsThatOfTheTable(string id)
    {
        CheckValue v = CheckValue.All[id];
        double r = v.Number("f/fs"), worst = 0;
        Reconstruction mode = id.StartsWith("IN", StringComparison.Ordinal) ? Reconstruction.Linear : Reconstruction.Hold;
        for (int phase = 0; phase < 50; phase++)
        {
            double[] points = Sine(r, 41, phase * 2 * Math.PI / 50).Reconstruct(mode, 100).Trace.ToSiValues();
            for (int i = 0; i < points.Length; i++)
                worst = Math.Max(worst, Math.Abs(points[i] - Math.Sin(2 * Math.PI * r * i / 100 + phase * 2 * Math.PI / 50)));
        }
        // A hold errs most just before the next sample: a hundredth of an interval is left out.
        Assert.InRange(worst, v.Expected * (mode == Reconstruction.Hold ? 0.985 : 0.998), v.Expected * (1 + 1e-9));
    }

    [Fact]
    public void Edge_MeasuredOnTheTrace_IsCloserThanOnItsSamples()
    {
        // A Gaussian edge of 2.2 intervals: by straight lines 10 % to 90 % reads long, through the sinc it does not (handbook 8.4).
        Signal edge = Signal.Step(1.Vpp(), Duration.FromNanoseconds(2.2), EdgeShape.Gaussian);
        Record record = new SimulatedCapture(edge, 1.GSaPerS(), 200.pts()).WithStart(-100.3.ns()).Capture();
        PulseSettings settings = PulseSettings.Default.WithLeastSamplesOnEdge(1);

        double[] levels = [record.ToSiValues().Min(), record.ToSiValues().Max()];
        settings = settings.WithStateLevels(Voltage.FromVolts(levels[0]), Voltage.FromVolts(levels[1]));
        double straight = PulseMeasurement.Of(record, settings).RisingDuration.Value.Mean.Nanoseconds;
        double sinc = PulseMeasurement.Of(record.Reconstruct(Reconstruction.Sinc, 20).Trace, settings).RisingDuration.Value.Mean.Nanoseconds;

        Assert.Equal(2.2, sinc, 0.02);
        Assert.True(Math.Abs(straight - 2.2) > 2 * Math.Abs(sinc - 2.2));
    }
}
