using System;
using System.Numerics;
using System.Threading;
using Acquisition.Core.Digitizing;

namespace Acquisition.Core;

/// <summary>
/// How a trace is drawn through uniform samples: held, by straight lines, by cubics or by a windowed sinc (handbook 5.8, 5.9). The same kernel draws the trace
/// and states its worst error.
/// </summary>
/// <remarks>Immutable and thread-safe. A position counts samples from the first one: 0 is the first sample, n - 1 the last.</remarks>
public abstract class Reconstruction
{
    /// <summary>So many points between two looks at who watches a long call.</summary>
    private const int PointsPerLook = 1 << 18;

    private protected Reconstruction(string name) => Name = name;

    /// <summary>What it is, in a few words.</summary>
    public string Name { get; }

    /// <summary>The last sample held until the next.</summary>
    public static Reconstruction Hold { get; } = new HoldKernel();

    /// <summary>Straight lines from sample to sample.</summary>
    public static Reconstruction Linear { get; } = new LinearKernel();

    /// <summary>The cubic through the two samples on either side (Lagrange); at the ends through the nearest four.</summary>
    public static Reconstruction CubicLagrange { get; } = new LagrangeKernel();

    /// <summary>Cubic convolution with a = -1/2 (Keys 1981): smooth in its slope; at the ends with the boundary samples 3x₀ - 3x₁ + x₂.</summary>
    public static Reconstruction CubicConvolution { get; } = new KeysKernel();

    /// <summary>The windowed sinc with 32 taps and a Kaiser window of shape 9: errors of about 1e-5 up to 0.4 of the rate (handbook 5.9).</summary>
    public static Reconstruction Sinc { get; } = WindowedSinc(32, 9);

    /// <summary>A sinc (Whittaker-Shannon) of so many taps under a Kaiser window. Within half the taps of the ends, where samples are missing, the last one is taken to go on: do not trust the trace there.</summary>
    /// <param name="taps">The number of samples used for each point: even, 2 to 512.</param>
    /// <param name="kaiserShape">The shape β of the window: 0 is plain truncation, 5 to 12 trades band for accuracy.</param>
    /// <param name="unityAtDc">Whether the weights are scaled so that a constant stays exactly constant. Without it they are the bare products of sinc and window.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="taps"/> is odd or not 2 to 512, or <paramref name="kaiserShape"/> is not 0 to 50.</exception>
    public static Reconstruction WindowedSinc(int taps, double kaiserShape, bool unityAtDc = true) => new SincKernel(taps, kaiserShape, unityAtDc);

    /// <summary>How many samples a point is computed from.</summary>
    public abstract int Taps { get; }

    /// <summary>How many samples from either end the trace is not to be trusted, because samples beyond the ends would be needed.</summary>
    public virtual int UntrustedAtEnds => 0;

    /// <summary>The value between samples.</summary>
    /// <param name="samples">At least one sample.</param>
    /// <param name="positionInSamples">Where: 0 at the first sample, n - 1 at the last.</param>
    /// <exception cref="ArgumentNullException"><paramref name="samples"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="positionInSamples"/> is not from 0 to n - 1.</exception>
    public double ValueAtSample(double[] samples, double positionInSamples) => Values(samples, new[] { positionInSamples })[0];

    /// <summary>Values between samples at any positions, in any order.</summary>
    /// <param name="samples">At least one sample.</param>
    /// <param name="positionsInSamples">Where: each from 0 (the first sample) to n - 1 (the last).</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="samples"/> is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A position is not from 0 to n - 1.</exception>
    public double[] Values(double[] samples, double[] positionsInSamples)
    {
        RequireSamples(samples);
        _ = positionsInSamples ?? throw new ArgumentNullException(nameof(positionsInSamples));
        double[] padded = Pad(samples.Length, (all, offset) => Array.Copy(samples, 0, all, offset, samples.Length));
        var weights = new double[Taps];
        var values = new double[positionsInSamples.Length];
        for (int i = 0; i < values.Length; i++)
        {
            double position = positionsInSamples[i];
            if (!(position >= 0 && position <= samples.Length - 1))
            {
                throw new ArgumentOutOfRangeException(nameof(positionsInSamples), FormattableString.Invariant(
                    $"positionsInSamples must be from 0 to {samples.Length - 1}, the last sample; entry {i} was {position}; nothing is extrapolated"));
            }
            int index = Math.Min((int)position, Math.Max(0, samples.Length - 2));
            Weigh(position - index, weights);
            double sum = 0;
            for (int k = 0; k < weights.Length; k++)
                sum += weights[k] * padded[index + k];
            values[i] = sum;
        }
        return values;
    }

    /// <summary>The trace with so many points for each sample interval: (n - 1) × factor + 1 points from the first sample to the last. The samples themselves are among them.</summary>
    /// <param name="samples">At least one sample.</param>
    /// <param name="factor">Points per sample interval: 1 to 1000.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException"><paramref name="samples"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="samples"/> is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="factor"/> is not 1 to 1000.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public double[] Upsample(double[] samples, int factor, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        RequireSamples(samples);
        if (factor < 1 || factor > 1000)
            throw new ArgumentOutOfRangeException(nameof(factor), FormattableString.Invariant($"factor must be 1 to 1000; was {factor}"));
        LongCall? call = LongCall.Of(progress, cancellation);
        double[] values = Upsample(samples.Length, (padded, offset) => Array.Copy(samples, 0, padded, offset, samples.Length), factor, call);
        call?.Completed();
        return values;
    }

    /// <summary>The same of samples that are copied straight to where they are needed.</summary>
    /// <param name="count">How many samples.</param>
    /// <param name="copy">Copies them into an array, from an offset on.</param>
    /// <param name="factor">Points per sample interval.</param>
    /// <param name="call">Who watches.</param>
    internal double[] Upsample(int count, Action<double[], int> copy, int factor, LongCall? call)
    {
        int intervals = count - 1;
        double[] values = Uncleared(checked(intervals * factor + 1));
        var weights = new double[Taps];
        var table = new double[Taps * factor];
        for (int phase = 0; phase < factor; phase++)
        {
            Weigh((double)phase / factor, weights);
            for (int k = 0; k < weights.Length; k++)
                table[k * factor + phase] = weights[k];
        }
        double[] padded = Pad(count, copy);
        // An even number of intervals, as the kernel takes two at once.
        int stretch = Math.Max(1, PointsPerLook / factor / 2) * 2;
        for (int from = 0; from < intervals; from += Math.Min(stretch, intervals - from))
        {
            call?.Reached(from, intervals);
            Polyphase.Run(padded, table, Taps, factor, from, from + Math.Min(stretch, intervals - from), values);
        }
        values[values.Length - 1] = padded[Before + intervals];
        return values;
    }

    /// <summary>
    /// The worst error for a sine of amplitude 1, over all phases and places between samples: the largest |Σ w e^(j2πrn) - e^(j2πru)| (handbook 5.9). It holds
    /// away from the ends of the record.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative or above the Nyquist frequency, or <paramref name="rate"/> is 0 Sa/s.</exception>
    public Ratio WorstError(Frequency frequency, SampleRate rate)
    {
        double r = InterpolationError.Relative(frequency, rate);
        var weights = new double[Taps];
        const int places = 400;
        double worst = 0;
        int worstPlace = 0;
        for (int i = 0; i < places; i++)
            Consider((double)i / places, i);
        // Around the worst place of the grid a parabola finds the rest.
        double low = Math.Max(0, (worstPlace - 1.0) / places), high = Math.Min(1 - 1e-9, (worstPlace + 1.0) / places);
        for (int i = 0; i <= 20; i++)
            Consider(low + (high - low) * i / 20, worstPlace);
        return Ratio.FromSi(worst, nameof(frequency));

        void Consider(double u, int place)
        {
            double error = Error(r, u, weights);
            if (error > worst)
                (worst, worstPlace) = (error, place);
        }
    }

    /// <summary>The weights of the samples floor(position) - <see cref="Before"/> and on, for a place 0 &lt;= u &lt;= 1 after the sample.</summary>
    private protected abstract void Weigh(double u, double[] weights);

    /// <summary>How many samples before the one at or below the position take part.</summary>
    private protected abstract int Before { get; }

    /// <summary>A sample beyond the ends of samples, of which the nearest four suffice: <paramref name="distance"/> is -1 for the one before the first.</summary>
    private protected virtual double Beyond(double[] samples, int distance) => samples[distance < 0 ? 0 : samples.Length - 1];

    private double Error(double r, double u, double[] weights)
    {
        Weigh(u, weights);
        Complex sum = -Complex.FromPolarCoordinates(1, 2 * Math.PI * r * u);
        for (int k = 0; k < weights.Length; k++)
            sum += weights[k] * Complex.FromPolarCoordinates(1, 2 * Math.PI * r * (k - Before));
        return Complex.Abs(sum);
    }

    private double[] Pad(int count, Action<double[], int> copy)
    {
        int after = Math.Max(Taps - Before, 1);
        double[] padded = Uncleared(Before + count + after);
        copy(padded, Before);
        // What lies beyond an end follows from the four samples nearest to it.
        var near = new double[Math.Min(count, 4)];
        Array.Copy(padded, Before, near, 0, near.Length);
        for (int k = 1; k <= Before; k++)
            padded[Before - k] = Beyond(near, -k);
        Array.Copy(padded, Before + count - near.Length, near, 0, near.Length);
        for (int k = 0; k < after; k++)
            padded[Before + count + k] = Beyond(near, near.Length + k);
        return padded;
    }

    /// <summary>An array of which every element is about to be written: clearing a long one takes as long as filling it.</summary>
    private static double[] Uncleared(int length) =>
#if NET8_0_OR_GREATER
        GC.AllocateUninitializedArray<double>(length);
#else
        new double[length];
#endif

    private static void RequireSamples(double[] samples)
    {
        _ = samples ?? throw new ArgumentNullException(nameof(samples));
        if (samples.Length == 0)
            throw new ArgumentException("samples must hold at least one sample", nameof(samples));
    }
}
