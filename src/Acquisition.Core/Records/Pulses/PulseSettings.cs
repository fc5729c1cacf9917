using System;

namespace Acquisition.Core;

/// <summary>What a pulse measurement refers to: state levels, reference levels, hysteresis, aberration region. The default is what is common: histogram mode, 10 %, 50 %, 90 %.</summary>
/// <remarks>Immutable: each With... method makes a copy.</remarks>
public sealed class PulseSettings
{
    private Quantity? _low, _high;

    private PulseSettings()
    {
    }

    /// <summary>States by histogram mode; references 10 %, 50 % and 90 %; hysteresis 40 % of the amplitude to either side of the middle; regions of three transition durations.</summary>
    public static PulseSettings Default { get; } = new();

    /// <summary>How the states are found.</summary>
    public StateLevelMethod Method { get; private set; } = StateLevelMethod.HistogramMode;

    /// <summary>The bins of the histogram; null for a bin per code, up to 256 (100 for records below 10 000 samples).</summary>
    public int? Bins { get; private set; }

    /// <summary>The reference level nearest to the state that a transition leaves, from that state.</summary>
    public Ratio Proximal { get; private set; } = Ratio.FromPercent(10);

    /// <summary>The reference level of instants, from the low state.</summary>
    public Ratio Middle { get; private set; } = Ratio.FromPercent(50);

    /// <summary>The reference level nearest to the state that a transition reaches, from the state it leaves.</summary>
    public Ratio Distal { get; private set; } = Ratio.FromPercent(90);

    /// <summary>How far the signal must go beyond the middle level before it may cross it again, as a part of the amplitude; at least 3 times the noise is taken.</summary>
    public Ratio Hysteresis { get; private set; } = Ratio.FromPercent(40);

    /// <summary>The length of the regions before and after a transition in which preshoot, overshoot and undershoot are looked for, in transition durations.</summary>
    public double RegionFactor { get; private set; } = 3;

    /// <summary>A transition with fewer samples between its reference levels is not resolved: its duration is absent and bounded.</summary>
    public int LeastSamplesOnEdge { get; private set; } = 3;

    /// <summary>Whether anything was stated of the time base: a record does not know it, and what is not stated is not perfect.</summary>
    public bool StatesTimebase { get; private set; }

    /// <summary>How far the time base may be off, as a part of an interval: 0 unless given, since a record does not know it.</summary>
    public Ratio TimebaseLimit { get; private set; }

    /// <summary>The rms jitter of the sample clock: 0 unless given.</summary>
    public Duration ClockJitter { get; private set; }

    /// <summary>How many transitions are listed; the statistics cover all.</summary>
    public int MostListed { get; private set; } = 100_000;

    /// <summary>Another way to find the states.</summary>
    /// <param name="method">The way; given levels have a method of their own.</param>
    /// <param name="bins">The bins of the histogram, 2 to 65536; null for the default.</param>
    /// <exception cref="ArgumentOutOfRangeException">The bins are not 2 to 65536, or the method is <see cref="StateLevelMethod.Given"/>.</exception>
    public PulseSettings WithStates(StateLevelMethod method, int? bins = null)
    {
        if (method is < StateLevelMethod.HistogramMode or >= StateLevelMethod.Given)
            throw new ArgumentOutOfRangeException(nameof(method), $"method must be one that finds levels; was {method}: use WithStateLevels to give them");
        if (bins is < 2 or > 65536)
            throw new ArgumentOutOfRangeException(nameof(bins), FormattableString.Invariant($"bins must be 2 to 65536; was {bins}"));
        PulseSettings copy = Copy();
        copy.Method = method;
        copy.Bins = bins;
        return copy;
    }

    /// <summary>States known beforehand: best for comparing instruments, and the only way for records without plateaus.</summary>
    /// <exception cref="ArgumentException">The levels are of different kinds.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The high level is not above the low one.</exception>
    public PulseSettings WithStateLevels<T>(T low, T high)
        where T : struct, IQuantity
    {
        Quantity from = low.ToQuantity(), to = high.ToQuantity();
        if (!(to.Require(from.Kind, nameof(high)) > from.SiValue))
            throw Refuse.OutOfRange(to.SiValue, to.Kind, nameof(high), $"above the low level {from}");
        PulseSettings copy = Copy();
        copy.Method = StateLevelMethod.Given;
        copy._low = from;
        copy._high = to;
        return copy;
    }

    /// <summary>Other reference levels: 20 %, 50 %, 80 % are common too, and less sensitive to the states (handbook 8.8).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The levels are not 0 &lt; proximal &lt; middle &lt; distal &lt; 1.</exception>
    public PulseSettings WithReferences(Ratio proximal, Ratio middle, Ratio distal)
    {
        if (!(proximal.SiValue > 0 && proximal.SiValue < middle.SiValue && middle.SiValue < distal.SiValue && distal.SiValue < 1))
            throw new ArgumentOutOfRangeException(nameof(proximal), $"reference levels must be 0 < proximal < middle < distal < 1; were {proximal}, {middle}, {distal}");
        PulseSettings copy = Copy();
        copy.Proximal = proximal;
        copy.Middle = middle;
        copy.Distal = distal;
        return copy;
    }

    /// <summary>Another hysteresis.</summary>
    /// <param name="hysteresis">How far beyond the middle level, as a part of the amplitude: from 0 to below 0.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">The hysteresis is not from 0 to below 0.5.</exception>
    public PulseSettings WithHysteresis(Ratio hysteresis)
    {
        if (!(hysteresis.SiValue >= 0 && hysteresis.SiValue < 0.5))
            throw Refuse.OutOfRange(hysteresis.SiValue, Ratio.Kind, nameof(hysteresis), "from 0 to below 0.5");
        PulseSettings copy = Copy();
        copy.Hysteresis = hysteresis;
        return copy;
    }

    /// <summary>Other aberration regions.</summary>
    /// <param name="factor">Their length in transition durations: above 0, up to 1000.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="factor"/> is not above 0 and up to 1000.</exception>
    public PulseSettings WithAberrationRegions(double factor)
    {
        if (!(factor > 0 && factor <= 1000))
            throw new ArgumentOutOfRangeException(nameof(factor), FormattableString.Invariant($"factor must be above 0 and up to 1000 transition durations; was {factor}"));
        PulseSettings copy = Copy();
        copy.RegionFactor = factor;
        return copy;
    }

    /// <summary>Another limit of resolved transitions.</summary>
    /// <param name="samples">The least number of samples between the reference levels: 1 to 1000.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="samples"/> is not 1 to 1000.</exception>
    public PulseSettings WithLeastSamplesOnEdge(int samples)
    {
        if (samples is < 1 or > 1000)
            throw new ArgumentOutOfRangeException(nameof(samples), FormattableString.Invariant($"samples must be 1 to 1000; was {samples}"));
        PulseSettings copy = Copy();
        copy.LeastSamplesOnEdge = samples;
        return copy;
    }

    /// <summary>What the sampling instrument's data sheet says of its time base: it goes into the uncertainties of times.</summary>
    /// <param name="limit">How far it may be off, as a part of an interval, such as 2.5 ppm: at least 0, below 1.</param>
    /// <param name="clockJitter">The rms jitter of the sample clock, at least 0 s.</param>
    /// <exception cref="ArgumentOutOfRangeException">The limit is not from 0 to below 1, or the jitter is negative.</exception>
    public PulseSettings WithTimebase(Ratio limit, Duration clockJitter = default)
    {
        if (!(limit.SiValue >= 0 && limit.SiValue < 1))
            throw Refuse.OutOfRange(limit.SiValue, Ratio.Kind, nameof(limit), "from 0 to below 1");
        if (!(clockJitter.SiValue >= 0))
            throw Refuse.OutOfRange(clockJitter.SiValue, Duration.Kind, nameof(clockJitter), "at least 0 s");
        PulseSettings copy = Copy();
        copy.StatesTimebase = true;
        copy.TimebaseLimit = limit;
        copy.ClockJitter = clockJitter;
        return copy;
    }

    /// <summary>Another limit of the list of transitions.</summary>
    /// <param name="transitions">How many are listed at most: at least 0.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="transitions"/> is negative.</exception>
    public PulseSettings WithMostListed(int transitions)
    {
        if (transitions < 0)
            throw new ArgumentOutOfRangeException(nameof(transitions), FormattableString.Invariant($"transitions must be at least 0; was {transitions}"));
        PulseSettings copy = Copy();
        copy.MostListed = transitions;
        return copy;
    }

    internal (double Low, double High)? GivenLevels(QuantityKind kind) =>
        _low is { } low && _high is { } high && Method == StateLevelMethod.Given ? (low.Require(kind, "record"), high.Require(kind, "record")) : null;

    private PulseSettings Copy() => (PulseSettings)MemberwiseClone();
}
