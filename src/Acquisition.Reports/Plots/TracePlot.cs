using System;
using System.Linq;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>A few samples of a record with two traces through them: straight lines and a windowed sinc. Where they part, the samples are too few.</summary>
public static class TracePlot
{
    private const int Most = 2000, Around = 20, PointsPerInterval = 16;

    /// <summary>Samples and traces around the steepest step between two samples, or over the times of the options.</summary>
    /// <param name="record">The record: at least two samples, all of them numbers where it is drawn.</param>
    /// <param name="options">Size, title, times (at most 2000 samples); null for the usual ones.</param>
    /// <exception cref="ArgumentNullException"><paramref name="record"/> is null.</exception>
    /// <exception cref="ArgumentException">There are fewer than two samples, more than 2000 in the times asked for, or one that is not a number.</exception>
    public static Plot Of(Record record, PlotOptions? options = null)
    {
        if (record is null) throw new ArgumentNullException(nameof(record));
        options ??= PlotOptions.Default;
        long all = record.Count.Points;
        if (all < 2) throw new ArgumentException($"a trace needs two samples; the record has {record.Count}", nameof(record));
        long steepest = options.Start is null && all > (2 * Around) + 1 ? Steepest(record) : Around;
        long start = Math.Min(Math.Max(0, steepest - Around), Math.Max(0, all - (2 * Around)));
        (long first, long count) = TimeRange.Of(record, options, start, Math.Min(2 * Around, all - start));
        if (count is < 2 or > Most) throw new ArgumentException(FormattableString.Invariant($"a trace is drawn through 2 to {Most} samples; {count} lie in the times asked for"), nameof(options));

        // The sinc needs samples on either side of what is shown.
        long margin = Reconstruction.Sinc.UntrustedAtEnds, from = Math.Max(0, first - margin), to = Math.Min(all, first + count + margin);
        Record near = record.Slice(from, to - from);
        int lead = (int)(first - from);
        double[] seconds = Enumerable.Range(0, (int)count).Select(i => record.TimeAt(first + i).Seconds).ToArray(), samples = near.ToSiValues().Skip(lead).Take((int)count).ToArray();
        double[] places = Enumerable.Range(0, (((int)count - 1) * PointsPerInterval) + 1).Select(i => i / (double)PointsPerInterval).ToArray();
        double[] fine = places.Select(place => seconds[0] + (place * record.SampleInterval.Seconds)).ToArray();
        RefuseNaN(samples, first);
        double[] values = near.ToSiValues(), sinc = Reconstruction.Sinc.Values(values, places.Select(place => lead + place).ToArray()), linear = Reconstruction.Linear.Values(values, places.Select(place => lead + place).ToArray());
        double apart = 0;
        for (int i = 0; i < places.Length; i++) apart = Math.Max(apart, Math.Abs(sinc[i] - linear[i]));

        Axis y = TimeRange.ValueAxis(record);
        Plot plot = new Plot(options.Title ?? "Samples and traces through them", Axis.Linear("time", "s").Tight(), y).With(options)
            .With("windowed sinc", TraceStyle.Line, fine, sinc, look: 1)
            .With("straight lines", TraceStyle.Line, seconds, samples, look: 2)
            .With("samples", TraceStyle.Dots, seconds, samples, look: 0);
        string words = FormattableString.Invariant($"{count} samples at {Engineering.Words(record.SampleRate)}, drawn through by straight lines and by a windowed sinc; the two differ by up to {y.Words(apart)}.");
        bool isCut = first - from < margin || to - first - count < margin;
        return plot.WithDescription(isCut ? words + " Near the ends of the record the sinc lacks samples and is not to be trusted." : words);
    }

    /// <summary>The sample before the largest step; the first of several alike.</summary>
    private static long Steepest(Record record)
    {
        const int block = 4096;
        var values = new double[block + 1];
        long all = record.Count.Points, best = 0;
        double largest = -1;
        for (long first = 0; first + 1 < all; first += block)
        {
            int count = (int)Math.Min(block + 1, all - first);
            record.CopySiValues(first, values, 0, count);
            for (int i = 1; i < count; i++)
            {
                double step = Math.Abs(values[i] - values[i - 1]);
                if (!(step > largest)) continue;
                largest = step;
                best = first + i - 1;
            }
        }
        return best;
    }

    private static void RefuseNaN(double[] samples, long first)
    {
        for (int i = 0; i < samples.Length; i++)
        {
            if (!(Math.Abs(samples[i]) <= double.MaxValue)) throw new ArgumentException(FormattableString.Invariant($"a sample must be finite to be drawn; was {samples[i]} at index {first + i}"), nameof(samples));
        }
    }
}
