using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>A record over time, with what was measured of its pulses: states, reference levels, instants, pulses, runts.</summary>
public static class RecordPlot
{
    private const int MostTransitions = 12;

    /// <summary>A record. Of a long one each column of the picture shows the lowest and the highest sample, so that no spike is lost.</summary>
    /// <param name="record">The record.</param>
    /// <param name="options">Size, title, times; null for the usual ones and the whole record.</param>
    /// <exception cref="ArgumentNullException"><paramref name="record"/> is null.</exception>
    /// <exception cref="ArgumentException">A sample is not a number.</exception>
    public static Plot Of(Record record, PlotOptions? options = null)
    {
        if (record is null) throw new ArgumentNullException(nameof(record));
        options ??= PlotOptions.Default;
        (long first, long count) = TimeRange.Of(record, options, 0, record.Count.Points);
        Record part = record.Slice(first, count);
        Plot plot = WithRecord(Empty(part, options, options.Title ?? "Record of " + part.Count), part, options);
        return plot.WithDescription($"{part.Count} at {Engineering.Words(part.SampleRate)}, a window of {Engineering.Words(part.Window)}.");
    }

    /// <summary>The pulses of a record: its first dozen transitions, or what lies in the times of the options.</summary>
    /// <param name="measurement">The measurement.</param>
    /// <param name="options">Size, title, times; null for the usual ones.</param>
    /// <exception cref="ArgumentNullException"><paramref name="measurement"/> is null.</exception>
    /// <exception cref="ArgumentException">A sample is not a number.</exception>
    public static Plot Of(PulseMeasurement measurement, PlotOptions? options = null)
    {
        if (measurement is null) throw new ArgumentNullException(nameof(measurement));
        options ??= PlotOptions.Default;
        Record record = measurement.Record;
        IReadOnlyList<PulseTransition> all = measurement.Transitions;
        (long first, long count) = TimeRange.Of(record, options, 0, all.Count > MostTransitions ? SampleAfter(record, all[MostTransitions - 1].Instant + ((all[MostTransitions - 1].Instant - all[0].Instant) / (2 * MostTransitions))) : record.Count.Points);
        Record part = record.Slice(first, count);
        Plot plot = WithRecord(Empty(part, options, options.Title ?? "Pulses of a record of " + record.Count), part, options);
        if (!measurement.States.HasValue) return plot.WithDescription($"{part.Count} at {Engineering.Words(part.SampleRate)}. No states were found: {measurement.States.Reason!.Message}.");

        StateLevels states = measurement.States.Value;
        plot = WithLevels(plot, states, measurement.Settings);
        Duration start = part.TimeAt(0), end = part.TimeAt(part.Count.Points - 1);
        PulseTransition[] seen = all.Where(transition => transition.Instant >= start && transition.Instant <= end).ToArray();
        double middle = states.At(measurement.Settings.Middle).SiValue;
        plot = WithPulses(plot, seen, middle);
        Runt[] runts = measurement.Runts.Where(runt => runt.End >= start && runt.Start <= end).ToArray();
        if (runts.Length > 0)
            plot = plot.With("runts", TraceStyle.Dots, runts.Select(runt => (runt.Start.Seconds + runt.End.Seconds) / 2).ToArray(), runts.Select(runt => runt.Extreme.SiValue).ToArray(), look: 3);
        return plot.WithDescription(Lead(measurement, states, seen.Length, runts.Length));
    }

    private static Plot Empty(Record part, PlotOptions options, string title) => new Plot(title, Axis.Linear("time", "s").Tight(), TimeRange.ValueAxis(part)).With(options);

    private static Plot WithRecord(Plot plot, Record part, PlotOptions options)
    {
        // As many columns as the picture is wide: it cannot show more, and the record is not copied.
        int columns = options.Width;
        if (part.Count.Points <= 4L * columns)
        {
            double[] seconds = Enumerable.Range(0, (int)part.Count.Points).Select(i => part.TimeAt(i).Seconds).ToArray();
            return plot.With("record", TraceStyle.Line, seconds, part.ToSiValues(), look: 0);
        }
        RecordPreview preview = RecordPreview.Of(part, columns);
        var times = new double[2 * columns];
        var values = new double[2 * columns];
        for (int i = 0; i < columns; i++)
        {
            times[2 * i] = part.TimeAt(preview.FirstSample(i)).Seconds;
            times[(2 * i) + 1] = part.TimeAt(preview.FirstSample(i + 1) - 1).Seconds;
            bool isRising = i == 0 || Math.Abs(values[(2 * i) - 1] - preview.LowSiValues[i]) <= Math.Abs(values[(2 * i) - 1] - preview.HighSiValues[i]);
            (values[2 * i], values[(2 * i) + 1]) = isRising ? (preview.LowSiValues[i], preview.HighSiValues[i]) : (preview.HighSiValues[i], preview.LowSiValues[i]);
        }
        return plot.With("record, lowest and highest of each column", TraceStyle.Line, times, values, look: 0);
    }

    private static Plot WithLevels(Plot plot, StateLevels states, PulseSettings settings)
    {
        string At(Quantity level) => plot.Y.Words(level.SiValue);
        plot = plot.WithHorizontalLimit("high " + At(states.High), states.High.SiValue).WithHorizontalLimit("low " + At(states.Low), states.Low.SiValue);
        foreach (Ratio reference in new[] { settings.Proximal, settings.Middle, settings.Distal })
            plot = plot.WithHorizontalLimit(Engineering.Text(reference.Percent, "%", 3) + " " + At(states.At(reference)), states.At(reference).SiValue);
        return plot;
    }

    private static Plot WithPulses(Plot plot, PulseTransition[] seen, double middle)
    {
        var from = new List<double>();
        var to = new List<double>();
        for (int i = 0; i + 1 < seen.Length; i++)
        {
            if (!seen[i].IsRising || seen[i + 1].IsRising) continue;
            from.Add(seen[i].Instant.Seconds);
            to.Add(seen[i + 1].Instant.Seconds);
        }
        if (from.Count > 0) plot = plot.With("positive pulses", TraceStyle.Pieces, from, from.Select(_ => middle).ToArray(), to, look: 1);
        return seen.Length == 0 ? plot : plot.With("crossings of the middle level", TraceStyle.Dots, seen.Select(transition => transition.Instant.Seconds).ToArray(), seen.Select(_ => middle).ToArray(), look: 2);
    }

    private static string Lead(PulseMeasurement measurement, StateLevels states, int seen, int runts)
    {
        string words = FormattableString.Invariant($"{seen} of {measurement.TransitionCount} transitions between {Engineering.Words(states.Low)} and {Engineering.Words(states.High)}.");
        if (measurement.RisingDuration.HasValue) words += $" Rising transitions take {Engineering.Words(measurement.RisingDuration.Value.Mean)}.";
        if (measurement.FallingDuration.HasValue) words += $" Falling ones take {Engineering.Words(measurement.FallingDuration.Value.Mean)}.";
        if (measurement.Period.HasValue) words += $" The period is {Engineering.Words(measurement.Period.Value.Mean)}.";
        return runts == 0 ? words : words + FormattableString.Invariant($" {runts} runts are marked.");
    }

    private static long SampleAfter(Record record, Duration time) =>
        Math.Min(record.Count.Points, Math.Max(1, (long)Math.Ceiling((time.Seconds - record.Start.Seconds) / record.SampleInterval.Seconds)));
}
