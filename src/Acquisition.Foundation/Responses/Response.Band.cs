using System;
using System.Collections.Generic;
using System.Numerics;
using Acquisition.Core.Responses;

namespace Acquisition.Core;

// The response in frequency, inverted: where does the gain fall to a level, how wide is the band, how much noise passes.
public abstract partial class Response
{
    private Held? _reference, _bandwidth;

    /// <summary>The gain at 0 Hz.</summary>
    internal double DcGain => ComplexGain(0).Real;

    /// <summary>The bandwidth a model was made for, exactly; NaN where it has to be computed.</summary>
    private protected virtual double StatedBandwidth => double.NaN;

    /// <summary>Frequencies, in rising order, so close that between two neighbours the gain does nothing unexpected: where crossings are searched.</summary>
    private protected abstract IReadOnlyList<double> SearchGrid();

    /// <summary>The magnitude that "0 dB" means: at DC where DC passes, else the largest.</summary>
    internal double ReferenceMagnitude
    {
        get
        {
            if (_reference is null)
            {
                double dc = Math.Abs(DcGain);
                _reference = new Held(dc > 0 ? dc : Peak(out _));
            }
            return _reference.Value;
        }
    }

    /// <summary>The gain to which bandwidths and amplitude errors refer: the gain at DC, or the largest gain where the response blocks DC (handbook 1.2).</summary>
    /// <exception cref="InvalidOperationException">The response passes nothing at all.</exception>
    public DecibelRatio ReferenceGain => ReferenceMagnitude > 0
        ? DecibelRatio.FromSi(20 * Math.Log10(ReferenceMagnitude), "gain")
        : throw new InvalidOperationException($"{Name} passes nothing");

    /// <summary>The half-power bandwidth: the first frequency above the reference at which the amplitude has fallen to 1/√2 of it (-3.0103 dB; handbook 1.2, 3.1). For an AC-coupled response it is the upper edge.</summary>
    /// <exception cref="InvalidOperationException">The gain never falls that far.</exception>
    public Frequency Bandwidth
    {
        get
        {
            _bandwidth ??= new Held(double.IsNaN(StatedBandwidth) ? BandwidthAt(DecibelRatio.HalfPower).SiValue : StatedBandwidth);
            return Frequency.FromSi(_bandwidth.Value, "bandwidth");
        }
    }

    /// <summary>The first frequency above the reference at which the gain has fallen by a number of decibels.</summary>
    /// <param name="drop">How far below the reference gain: negative, such as -1 dB.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="drop"/> is not negative.</exception>
    /// <exception cref="InvalidOperationException">The gain never falls that far.</exception>
    public Frequency BandwidthAt(DecibelRatio drop) =>
        TryBandwidth(drop, out Frequency bandwidth) ? bandwidth : throw new InvalidOperationException($"{Name} never falls to {drop}: it has no bandwidth there; {SearchLimit()}");

    /// <summary>As <see cref="BandwidthAt"/>, but false where the gain never falls that far.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="drop"/> is not negative.</exception>
    public bool TryBandwidth(DecibelRatio drop, out Frequency bandwidth)
    {
        if (!(drop.SiValue < 0))
            throw Refuse.OutOfRange(drop.SiValue, DecibelRatio.Kind, nameof(drop), "below 0 dB");
        bool found = TryFall(drop.SiValue, out double hertz);
        bandwidth = Frequency.FromSi(hertz, nameof(bandwidth));
        return found;
    }

    /// <summary>The band passed within a drop: both edges, every crossing, and findings where the answer needs a word.</summary>
    /// <param name="drop">How far below the reference gain: negative, such as -3.0103 dB (<see cref="DecibelRatio.HalfPower"/>).</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="drop"/> is not negative.</exception>
    /// <exception cref="InvalidOperationException">The response passes nothing at all.</exception>
    public PassBand PassBand(DecibelRatio drop)
    {
        if (!(drop.SiValue < 0))
            throw Refuse.OutOfRange(drop.SiValue, DecibelRatio.Kind, nameof(drop), "below 0 dB");
        double level = ReferenceMagnitude * Math.Pow(10, drop.SiValue / 20);
        List<Crossing> crossings = Cross(level * level);
        double reference = PassesDc ? 0 : PeakFrequency();
        Frequency? lower = null, upper = null;
        foreach (Crossing crossing in crossings)
        {
            if (crossing.Frequency.SiValue <= reference && !crossing.IsFalling)
                lower = crossing.Frequency;
            if (upper is null && crossing.Frequency.SiValue >= reference && crossing.IsFalling)
                upper = crossing.Frequency;
        }
        var findings = new List<Finding>();
        if (upper is null)
            findings.Add(new Finding("never-falls", Severity.Warning, $"{Name} never falls to {drop}; {SearchLimit()}", null, "handbook 3.1"));
        int expected = (lower is null ? 0 : 1) + (upper is null ? 0 : 1);
        if (crossings.Count > expected)
        {
            findings.Add(new Finding(
                "several-crossings",
                Severity.Warning,
                $"the gain crosses {drop} {crossings.Count} times: {string.Join(", ", crossings)}; the upper edge given is the first fall above the reference",
                "read the gain at the frequencies that matter instead of one bandwidth",
                "handbook 3.1"));
        }
        return new PassBand(drop, ReferenceGain, PassesDc, lower, upper, crossings, findings);
    }

    /// <summary>Every frequency at which the gain passes a level below the reference, in rising order; empty where there is none.</summary>
    /// <param name="drop">The level relative to the reference gain; negative below it, positive above (a peaked response).</param>
    public IReadOnlyList<Crossing> Crossings(DecibelRatio drop)
    {
        double level = ReferenceMagnitude * Math.Pow(10, drop.SiValue / 20);
        return Cross(level * level);
    }

    /// <summary>The amplitude error at a frequency, relative to the reference gain: -0.29289 at the half-power bandwidth (handbook 4.6).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative, or outside the data of a measured response.</exception>
    public Ratio AmplitudeError(Frequency frequency) => Ratio.FromSi(Magnitude(Hertz(frequency, nameof(frequency))) / ReferenceMagnitude - 1, nameof(frequency));

    /// <summary>The frequency up to which the amplitude is short by no more than an error: the first at which it has fallen by it (handbook 4.6).</summary>
    /// <param name="error">The tolerated shortfall: above 0 and below 1, such as 2 %.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="error"/> is not above 0 and below 1.</exception>
    /// <exception cref="InvalidOperationException">The amplitude never falls by that much.</exception>
    public Frequency FrequencyForAmplitudeError(Ratio error)
    {
        if (!(error.SiValue > 0 && error.SiValue < 1))
            throw Refuse.OutOfRange(error.SiValue, Ratio.Kind, nameof(error), "above 0 and below 1");
        return TryFall(20 * Math.Log10(1 - error.SiValue), out double hertz)
            ? Frequency.FromSi(hertz, nameof(error))
            : throw new InvalidOperationException($"the amplitude of {Name} never falls by {error}; {SearchLimit()}");
    }

    /// <summary>The frequency at which the gain is largest; 0 Hz for a response that only falls.</summary>
    public Frequency PeakGainFrequency => Frequency.FromSi(PeakFrequency(), "frequency");

    private protected virtual string SearchLimit()
    {
        IReadOnlyList<double> grid = SearchGrid();
        return $"searched up to {Frequency.FromSi(grid[grid.Count - 1], "frequency")}";
    }

    private bool TryFall(double decibels, out double hertz)
    {
        double level = ReferenceMagnitude * Math.Pow(10, decibels / 20), power = level * level;
        double reference = PassesDc ? 0 : PeakFrequency();
        IReadOnlyList<double> grid = SearchGrid();
        double before = reference;
        foreach (double f in grid)
        {
            if (f <= reference)
                continue;
            if (PowerGain(f) < power)
            {
                hertz = Root(power, before, f);
                return true;
            }
            before = f;
        }
        hertz = GainEnds;
        if (GainEnds >= reference && GainEnds <= double.MaxValue)
            return true;
        hertz = 0;
        return false;
    }

    /// <summary>The frequency in hertz at which the gain ends: nothing passes above it; infinite where there is none.</summary>
    private protected virtual double GainEnds => double.PositiveInfinity;

    private List<Crossing> Cross(double power)
    {
        var crossings = new List<Crossing>();
        IReadOnlyList<double> grid = SearchGrid();
        double before = 0, last = PowerGain(LowestFrequency);
        before = LowestFrequency;
        foreach (double f in grid)
        {
            double value = PowerGain(f);
            if (last >= power != value >= power)
                crossings.Add(new Crossing(Frequency.FromSi(Root(power, before, f), "frequency"), last >= power));
            (before, last) = (f, value);
        }
        // Where the gain ends it falls through every level that it has not left before.
        if (last >= power && GainEnds <= double.MaxValue)
            crossings.Add(new Crossing(Frequency.FromSi(GainEnds, "frequency"), true));
        return crossings;
    }

    /// <summary>The lowest frequency at which the response can be asked.</summary>
    internal virtual double LowestFrequency => 0;

    private double PeakFrequency()
    {
        Peak(out double hertz);
        return hertz;
    }

    private double Peak(out double hertz)
    {
        IReadOnlyList<double> grid = SearchGrid();
        double best = PowerGain(LowestFrequency);
        int at = -1;
        for (int i = 0; i < grid.Count; i++)
        {
            double value = PowerGain(grid[i]);
            if (value > best * (1 + 1e-13))
            {
                best = value;
                at = i;
            }
        }
        hertz = LowestFrequency;
        if (at < 0)
            return Math.Sqrt(best);
        // Golden section between the neighbours: near a maximum the magnitude is flat, so that the place is good to about 1e-8 and the value to 1e-16.
        double low = at == 0 ? LowestFrequency : grid[at - 1], high = at + 1 < grid.Count ? grid[at + 1] : grid[at];
        double golden = 0.5 * (Math.Sqrt(5) - 1), left = high - golden * (high - low), right = low + golden * (high - low);
        double atLeft = PowerGain(left), atRight = PowerGain(right);
        for (int i = 0; i < 45; i++)
        {
            if (atLeft > atRight)
            {
                (high, right, atRight) = (right, left, atLeft);
                left = high - golden * (high - low);
                atLeft = PowerGain(left);
            }
            else
            {
                (low, left, atLeft) = (left, right, atRight);
                right = low + golden * (high - low);
                atRight = PowerGain(right);
            }
        }
        hertz = atLeft > atRight ? left : right;
        double found = Math.Max(atLeft, atRight);
        if (found < best)
            (hertz, found) = (grid[at], best);
        return Math.Sqrt(found);
    }

    /// <summary>The frequency between two others at which the power gain is the level: false position with a halving guard (Illinois), in the logarithm of the gain.</summary>
    private double Root(double power, double low, double high)
    {
        double target = Math.Log(power), atLow = Distance(low, target), atHigh = Distance(high, target);
        // A point of the grid may lie on the crossing to the last bit, and the logarithm disagree about the side.
        if (atLow > 0 == atHigh > 0)
            return Math.Abs(atLow) <= Math.Abs(atHigh) ? low : high;
        for (int i = 0; i < 100 && high - low > 1e-15 * high; i++)
        {
            double middle = i % 8 == 7 || double.IsInfinity(atLow) || double.IsInfinity(atHigh) ? 0.5 * (low + high) : (low * atHigh - high * atLow) / (atHigh - atLow);
            if (!(middle > low && middle < high))
                middle = 0.5 * (low + high);
            double value = Distance(middle, target);
            if (value == 0)
                return middle;
            if (value > 0 == atLow > 0)
            {
                (low, atLow) = (middle, value);
                atHigh *= 0.5;
            }
            else
            {
                (high, atHigh) = (middle, value);
                atLow *= 0.5;
            }
        }
        return 0.5 * (low + high);
    }

    private double Distance(double hertz, double target) => Math.Log(PowerGain(hertz)) - target;

    /// <summary>A number computed once: one reference, so that a thread sees all of it or nothing, on 32-bit hosts too.</summary>
    private sealed class Held
    {
        internal Held(double value) => Value = value;

        internal double Value { get; }
    }
}
