using System;
using System.Linq;
using System.Threading;
using Acquisition.Core.Records;

namespace Acquisition.Core;

public sealed partial class Record
{
    /// <summary>The trace with so many points for each sample interval: (n - 1) × factor + 1 points, the samples themselves among them.</summary>
    /// <param name="reconstruction">How the trace is drawn.</param>
    /// <param name="factor">Points per sample interval: 1 to 1000.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException"><paramref name="reconstruction"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="factor"/> is not 1 to 1000, or makes more than 2 147 483 591 points.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public ReconstructedTrace Reconstruct(Reconstruction reconstruction, int factor, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        _ = reconstruction ?? throw new ArgumentNullException(nameof(reconstruction));
        if (factor is < 1 or > 1000 || (Samples.Length - 1L) * factor + 1 > GrowingArray<double>.Longest)
            throw new ArgumentOutOfRangeException(nameof(factor), FormattableString.Invariant($"factor must be 1 to 1000 and make at most {GrowingArray<double>.Longest} points of {Samples.Length} samples; was {factor}"));
        LongCall? call = LongCall.Of(progress, cancellation);
        double[] points = reconstruction.Upsample(Length, (padded, offset) => Samples.Copy(0, padded, offset, Length), factor, call);
        call?.Completed();
        var trace = new Record(NumberSamples.Of(points), Kind, _rate * factor, _interval / factor, _keepsInterval, _start, null, null, null, Name, Provenance, Findings);
        return new ReconstructedTrace(this, trace.With(provenance: $"{reconstruction.Name} through {Count} at {SampleRate}" + (Provenance.Length > 0 ? "; " + Provenance : "")), reconstruction, factor);
    }

    /// <summary>The values of the trace at any times, in the SI unit of the record's kind. The samples from the earliest to the latest of them are converted.</summary>
    /// <param name="reconstruction">How the trace is drawn.</param>
    /// <param name="times">When: from the first to the last sample; nothing is extrapolated.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A time is before the first or after the last sample.</exception>
    public double[] ReadingsAt(Reconstruction reconstruction, params Duration[] times)
    {
        _ = reconstruction ?? throw new ArgumentNullException(nameof(reconstruction));
        _ = times ?? throw new ArgumentNullException(nameof(times));
        if (times.Length == 0)
            return [];
        var places = new double[times.Length];
        for (int i = 0; i < places.Length; i++)
        {
            double place = (times[i].SiValue - _start) / _interval, nearest = Math.Round(place);
            // The time of a sample, which is rounded itself, means that sample.
            places[i] = Math.Abs(place - nearest) <= 1e-9 * Math.Max(1, Math.Abs(nearest)) ? nearest : place;
            if (!(places[i] >= 0 && places[i] <= Samples.Length - 1))
                throw Refuse.OutOfRange(times[i].SiValue, Duration.Kind, nameof(times), $"from {TimeAt(0)} to {TimeAt(Samples.Length - 1)}, the first and the last sample", "nothing is extrapolated");
        }
        // The samples around the times that are asked for, and no others.
        int from = Math.Max(0, (int)places.Min() - reconstruction.Taps), to = Math.Min(Length, (int)places.Max() + reconstruction.Taps + 2);
        return reconstruction.Values(Slice(from, to - from).ToSiValues(), Array.ConvertAll(places, place => place - from));
    }
}
