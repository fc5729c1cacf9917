using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Literals;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Records;

/// <summary>The fast kernels against the procedure written down plainly, on records made to annoy: noise, ringing, runts, spikes, slow and fast edges, odd stretches.</summary>
public sealed class PlainPulsesTests
{
    [Property(MaxTest = 300)]
    public void EveryTransition_IsToTheLastBit_WhatThePlainProcedureFinds(int seed)
    {
        var random = new Random(seed);
        foreach (Record record in Records(Shape(random), random))
            Compare(record, Settings(random));
    }

    /// <summary>Edges every few samples to every few vectors, slow ones among them, with noise that crosses every level more than once: what is looked at many samples at a time must be what is walked.</summary>
    [Property(MaxTest = 300)]
    public void DenseNoisyEdges_AreToTheLastBit_WhatThePlainProcedureFinds(int seed)
    {
        var random = new Random(seed);
        double[] shape = Shape(random, random.Next(20, 2500), random.Next(2, 80));
        foreach (Record record in Records(shape, random))
            Compare(record, Settings(random));
    }

    /// <summary>A pulse that begins and ends anywhere in a block of samples or at the end of the record, edges shorter and longer than what is looked at at once, samples that rest exactly on a level.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    [InlineData(15)]
    [InlineData(17)]
    [InlineData(34)]
    public void PulsesAtEveryPlace_AreToTheLastBit_WhatThePlainProcedureFinds(int edge)
    {
        var random = new Random(edge);
        double[] rests = [-1, -0.8, -0.8, 0, 0, 0.8, 0.8, 1];
        foreach (int before in Enumerable.Range(1, 40))
        {
            foreach (int tail in new[] { 1, 2, 14, 15, 16, 17, 18, 31, 32, 33 })
            {
                int top = random.Next(1, 40);
                double[] ramp = [.. Enumerable.Range(1, edge).Select(i => random.Next(2) == 0 ? rests[i * 7 / edge] : -1 + 2.0 * i / edge)];
                double[] shape = [.. Enumerable.Repeat(-1.0, before), .. ramp, .. Enumerable.Repeat(1.0, top), .. ramp.Reverse(), .. Enumerable.Repeat(-1.0, tail)];
                foreach (Record record in Records(shape, random))
                    Compare(record, PulseSettings.Default.WithStateLevels(-1.V(), 1.V()).WithLeastSamplesOnEdge(1));
            }
        }
    }

    [Fact]
    public void LongRecordsOfDenseEdges_AgreeBeyondEveryBlock()
    {
        var random = new Random(11);
        double[] shape = Shape(random, 400_000, 12);
        foreach (Record record in Records(shape, random))
            Compare(record, PulseSettings.Default.WithStateLevels(-1.V(), 1.V()));
    }

    /// <summary>A state that is given above the highest code, or below the lowest, is never reached: nothing then comes back from it.</summary>
    [Theory]
    [InlineData(0.0, 0.28)]
    [InlineData(-0.028, 0.255)]
    [InlineData(-0.02, 0.27)]
    public void StatesBeyondTheCodes_AreToTheLastBit_WhatThePlainProcedureFinds(double low, double high)
    {
        var random = new Random(3);
        byte[] codes = [.. Enumerable.Range(0, 3000).Select(i => (byte)(i % 40 < 20 ? random.Next(0, 4) : random.Next(252, 256)))];
        Record record = Record.FromCodes(codes, 1.GSaPerS(), 1.mV(), 0.V());
        Compare(record, PulseSettings.Default.WithStateLevels(Voltage.FromVolts(low), Voltage.FromVolts(high)).WithLeastSamplesOnEdge(1));
    }

    /// <summary>A random two-level signal between -1 and 1, mostly.</summary>
    private static double[] Shape(Random random, int points = 0, int meanState = 0)
    {
        int n = points > 0 ? points : random.Next(3, 5000);
        int state = meanState > 0 ? meanState : random.Next(4, 300);
        double noise = random.Next(3) switch { 0 => 0, 1 => 0.02, _ => 0.15 } * random.NextDouble(), ringing = random.Next(2) * 0.6 * random.NextDouble();
        double slowest = random.Next(2) == 0 ? 5 : 60;
        var x = new double[n];
        double from = -1, to = -1, edge = 1, since = 0, decay = 3 + 20 * random.NextDouble();
        int left = random.Next(1, state);
        for (int i = 0; i < n; i++)
        {
            if (left-- == 0)
            {
                double height = random.Next(12) == 0 ? 0.2 + 1.5 * random.NextDouble() : 2;
                from = to;
                to = from < 0 ? from + height : Math.Max(-1, from - height);
                edge = 0.2 + slowest * random.NextDouble();
                since = 0;
                left = random.Next(1, 2 * state);
            }
            double part = Math.Clamp(since / edge, 0, 1);
            x[i] = from + (to - from) * (part + (part >= 1 ? ringing * Math.Exp(-(since - edge) / decay) * Math.Sin((since - edge) * 0.9) : 0)) + noise * PulseRecords.Gaussian(random);
            since++;
            if (random.Next(900) == 0)
                x[i] = 3 * random.NextDouble() - 1.5;
        }
        return x;
    }

    private static IEnumerable<Record> Records(double[] shape, Random random)
    {
        SampleRate rate = random.Next(2) == 0 ? 1.GSaPerS() : SampleRate.FromSamplesPerSecond(3e8 * random.NextDouble() + 1e6);
        double step = 0.014 + 0.1 * random.Next(2) * random.NextDouble();
        short[] codes = [.. shape.Select(x => (short)Math.Clamp(Math.Round(x / step), -128, 127))];
        byte[] unsigned = [.. codes.Select(x => (byte)(x + 128))], signed = [.. codes.Select(x => (byte)(sbyte)x)];
        Voltage one = Voltage.FromVolts(step), offset = Voltage.FromVolts(random.Next(2) * 0.003);
        Record[] whole =
        [
            Record.FromVolts(shape, rate),
            Record.FromVolts([.. shape.Select(x => (float)x)], rate),
            Record.FromCodes(unsigned, rate, one, offset - 128 * one),
            Record.FromCodes(signed, rate, one, offset, signed: true),
            Record.FromCodes(codes, rate, one, offset),
            Record.FromCodes([.. codes.Select(x => (short)(ushort)(x + 40_000))], rate, one, offset - 40_000 * one, signed: false).WithSampleInterval(3.ns()),
        ];
        int first = random.Next(Math.Min(70, shape.Length - 2)), count = random.Next(Math.Max(1, shape.Length - first - 100), shape.Length - first);
        return whole.SelectMany(x => new[] { x, x.Slice(first, count) });
    }

    private static PulseSettings Settings(Random random)
    {
        PulseSettings settings = PulseSettings.Default.WithHysteresis(Ratio.FromFraction(random.Next(2) == 0 ? 0.4 : 0.49 * random.NextDouble()))
            .WithAberrationRegions(random.Next(2) == 0 ? 3 : 0.1 + 30 * random.NextDouble()).WithLeastSamplesOnEdge(random.Next(1, 5));
        if (random.Next(3) == 0)
            settings = settings.WithReferences(Ratio.FromPercent(20), Ratio.FromPercent(30 + 40 * random.NextDouble()), Ratio.FromPercent(80));
        return random.Next(3) == 0 ? settings : settings.WithStateLevels(Voltage.FromVolts(-1 + 0.1 * random.NextDouble()), Voltage.FromVolts(1 - 0.1 * random.NextDouble()));
    }

    private static void Compare(Record record, PulseSettings settings)
    {
        PulseMeasurement fast = PulseMeasurement.Of(record, settings);
        if (!fast.States.HasValue)
            return;
        var plain = new PlainPulses(record, settings, fast.States.Value);

        Assert.Equal(plain.Edges.Count, fast.TransitionCount);
        Assert.Equal(plain.Edges.Count, fast.Transitions.Count);
        Assert.Equal(plain.Runts.Count, fast.RuntCount);
        string rejected = FormattableString.Invariant($"{plain.Rejected} further crossings");
        Assert.Equal(plain.Rejected > 0, fast.Findings.Any(x => x.Code == "crossings-rejected" && x.Message.StartsWith(rejected, StringComparison.Ordinal)));
        int bent = plain.Edges.Count(x => !x.Monotone);
        Assert.Equal(bent > 0, fast.Findings.Any(x => x.Code == "edge-not-monotone" && x.Message.StartsWith(FormattableString.Invariant($"{bent} "), StringComparison.Ordinal)));
        int cut = plain.Edges.Sum(x => x.RegionsCut);
        Assert.Equal(cut > 0, fast.Findings.Any(x => x.Code == "aberration-region-cut" && x.Message.StartsWith(FormattableString.Invariant($"{cut} "), StringComparison.Ordinal)));
        for (int k = 0; k < plain.Edges.Count; k++)
        {
            PlainPulses.Edge edge = plain.Edges[k];
            PulseTransition transition = fast.Transitions[k];
            Assert.Equal(edge.Rising, transition.IsRising);
            Assert.Equal(edge.Monotone, transition.IsMonotone);
            Assert.Equal(edge.SamplesOnEdge, transition.SamplesOnEdge);
            Same(record.TimeSi(edge.Middle), transition.Instant.Seconds);
            Same(edge.Overshoot, transition.Overshoot);
            Same(edge.Undershoot, transition.Undershoot);
            Same(edge.Preshoot, transition.Preshoot);
            if (edge.SamplesOnEdge >= settings.LeastSamplesOnEdge && !double.IsNaN(edge.Distal))
                Same(record.Span(edge.Distal - edge.Proximal), transition.TransitionDuration.Value.Seconds);
            if (!double.IsNaN(edge.Distal))
                Same(record.Span(edge.Widest), transition.AtMost.Value.Seconds);
        }
        for (int k = 0; k < plain.Runts.Count; k++)
        {
            Same(record.TimeSi(plain.Runts[k].Start), fast.Runts[k].Start.Seconds);
            Same(record.TimeSi(plain.Runts[k].End), fast.Runts[k].End.Seconds);
            Same(plain.Runts[k].Extreme, fast.Runts[k].Extreme.SiValue);
            Assert.Equal(plain.Runts[k].Positive, fast.Runts[k].IsPositive);
        }
        CompareStatistics(record, settings, plain.Edges, fast);
    }

    private static void CompareStatistics(Record record, PulseSettings settings, List<PlainPulses.Edge> edges, PulseMeasurement fast)
    {
        double amplitude = fast.States.Value.Amplitude.SiValue, part = settings.Distal.Fraction - settings.Proximal.Fraction;
        foreach (bool rising in new[] { true, false })
        {
            List<PlainPulses.Edge> complete = edges.FindAll(x => x.Rising == rising && !double.IsNaN(x.Distal));
            List<PlainPulses.Edge> resolved = complete.FindAll(x => x.SamplesOnEdge >= settings.LeastSamplesOnEdge);
            if (2 * (complete.Count - resolved.Count) > complete.Count)
                continue;
            double[] seconds = [.. resolved.Select(x => record.Span(x.Distal - x.Proximal))];
            Same(seconds, rising ? fast.RisingDuration : fast.FallingDuration);
            Same([.. seconds.Select(x => (rising ? 1 : -1) * part * amplitude / x)], rising ? fast.RisingSlewRate : fast.FallingSlewRate);
        }
        List<double> up = [.. edges.Where(x => x.Rising).Select(x => x.Middle)], down = [.. edges.Where(x => !x.Rising).Select(x => x.Middle)];
        Same(Gaps(up.Count > 1 ? up : down), fast.Period);
        Same([.. edges.Skip(1).Zip(edges, (now, before) => now.Rising ? double.NaN : record.Span(now.Middle - before.Middle)).Where(double.IsFinite)], fast.PositivePulseDuration);
        Same([.. edges.Skip(1).Zip(edges, (now, before) => now.Rising ? record.Span(now.Middle - before.Middle) : double.NaN).Where(double.IsFinite)], fast.NegativePulseDuration);
        Same([.. Enumerable.Range(2, Math.Max(0, edges.Count - 2)).Where(k => edges[k].Rising).Select(k => (edges[k - 1].Middle - edges[k - 2].Middle) / (edges[k].Middle - edges[k - 2].Middle))], fast.DutyFactor);
        Same([.. edges.Select(x => x.Overshoot).Where(double.IsFinite)], fast.Overshoot);
        Same([.. edges.Select(x => x.Undershoot).Where(double.IsFinite)], fast.Undershoot);
        Same([.. edges.Select(x => x.Preshoot).Where(double.IsFinite)], fast.Preshoot);

        double[] Gaps(List<double> places) => [.. places.Skip(1).Zip(places, (next, place) => record.Span(next - place))];
    }

    private static void Same<T>(double[] values, Measured<Statistics<T>> measured)
        where T : struct, IQuantity
    {
        Assert.Equal(values.Length > 0, measured.HasValue);
        if (values.Length == 0)
            return;
        double mean = 0, squares = 0;
        for (int k = 0; k < values.Length; k++)
        {
            double off = values[k] - mean;
            mean += off / (k + 1);
            squares += off * (values[k] - mean);
        }
        Assert.Equal(values.Length, measured.Value.Count);
        Same(mean, measured.Value.Mean.ToQuantity().SiValue);
        Same(values.Min(), measured.Value.Minimum.ToQuantity().SiValue);
        Same(values.Max(), measured.Value.Maximum.ToQuantity().SiValue);
        if (values.Length > 1)
            Same(Math.Sqrt(squares / (values.Length - 1)), measured.Value.StandardDeviation.Value.ToQuantity().SiValue);
    }

    private static void Same(double expected, Measured<Ratio> measured)
    {
        Assert.Equal(double.IsNaN(expected), !measured.HasValue);
        if (measured.HasValue)
            Same(expected, measured.Value.Fraction);
    }

    private static void Same(double expected, double actual) =>
        Assert.True(expected.Equals(actual), FormattableString.Invariant($"expected {expected:R}, was {actual:R}"));
}
