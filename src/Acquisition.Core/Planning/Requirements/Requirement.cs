using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Planning;

namespace Acquisition.Core;

/// <summary>What has to be seen of a signal, and how faithfully. Nothing is demanded that is not said.</summary>
/// <remarks>Immutable; each <c>With...</c> method gives a changed copy. <see cref="Specify()"/> turns it into what the equipment needs.</remarks>
public sealed class Requirement
{
    /// <summary>A requirement on one signal or several; with several, each demand holds for the one that asks most.</summary>
    /// <exception cref="ArgumentException">There is no signal, or one is null.</exception>
    public Requirement(params Signal[] signals)
    {
        Signals = (signals ?? throw new ArgumentNullException(nameof(signals))).Frozen();
        if (Signals.Count == 0 || Signals.Any(signal => signal is null))
            throw new ArgumentException("signals must name at least one signal, and none may be null", nameof(signals));
    }

    /// <summary>The signals.</summary>
    public IReadOnlyList<Signal> Signals { get; private set; }

    /// <summary>By how much an amplitude may be short, relative; null where it does not matter.</summary>
    public Ratio? AmplitudeTolerance { get; private set; }

    /// <summary>By how much the highest harmonic that matters may be off: as tolerated, or where harmonics are merely to be kept, the loss at half power; null where amplitudes do not matter.</summary>
    internal double? LargestAmplitudeError => AmplitudeTolerance is { } tolerance ? tolerance.SiValue : HighestHarmonic is not null || PowerShare is not null ? 1 - Math.Sqrt(0.5) : null;

    /// <summary>By how much an edge may look slower, relative; null where it does not matter.</summary>
    public Ratio? EdgeTolerance { get; private set; }

    /// <summary>The highest harmonic to be kept, counted of the fundamental, of a pattern of bits from its fastest alternation (half the bit rate); null where it does not matter.</summary>
    public int? HighestHarmonic { get; private set; }

    /// <summary>The share of the AC power to be kept; null where it does not matter.</summary>
    public Ratio? PowerShare { get; private set; }

    /// <summary>The narrowest pulse that must be caught; null where it does not matter.</summary>
    public Duration? NarrowestPulse { get; private set; }

    /// <summary>The longest time one record must span; null where it does not matter.</summary>
    public Duration? Window { get; private set; }

    /// <summary>The smallest voltage that must be told apart; null where it does not matter.</summary>
    public Voltage? SmallestDetail { get; private set; }

    /// <summary>How many channels are needed at once.</summary>
    public int Channels { get; private set; } = 1;

    /// <summary>How far a time between two edges may be off (one standard deviation); null where it does not matter.</summary>
    public Duration? TimingTolerance { get; private set; }

    /// <summary>The resistance of the source; null where loading does not matter.</summary>
    public Resistance? SourceResistance { get; private set; }

    /// <summary>The largest voltage of the signals' reference point against earth, where they float; null where their reference is earth.</summary>
    public Voltage? CommonMode { get; private set; }

    /// <summary>A copy with a tolerated shortfall of the amplitude, above 0 and below 1, such as 3 %.</summary>
    public Requirement WithAmplitudeTolerance(Ratio tolerance) => Copy(copy => copy.AmplitudeTolerance = Open(tolerance, nameof(tolerance)));

    /// <summary>A copy with a tolerated slowing of the edge, above 0, such as 5 %.</summary>
    public Requirement WithEdgeTolerance(Ratio tolerance)
    {
        Refuse.UnlessAboveZero(tolerance.SiValue, Ratio.Kind, nameof(tolerance), "an edge that may not look any slower needs an infinite bandwidth");
        return Copy(copy => copy.EdgeTolerance = tolerance);
    }

    /// <summary>A copy with the number of the highest harmonic to be kept, 1 to 10 000.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is not 1 to 10 000.</exception>
    public Requirement WithHarmonics(int highest) => highest is >= 1 and <= 10_000
        ? Copy(copy => copy.HighestHarmonic = highest)
        : throw new ArgumentOutOfRangeException(nameof(highest), FormattableString.Invariant($"highest must be 1 to 10000; was {highest}"));

    /// <summary>A copy with a share of the AC power to be kept, above 0 and below 1, such as 95 %.</summary>
    public Requirement WithPowerShare(Ratio share) => Copy(copy => copy.PowerShare = Open(share, nameof(share)));

    /// <summary>A copy with the narrowest pulse that must be caught.</summary>
    public Requirement WithNarrowestPulse(Duration width)
    {
        Refuse.UnlessAboveZero(width.SiValue, Duration.Kind, nameof(width));
        return Copy(copy => copy.NarrowestPulse = width);
    }

    /// <summary>A copy with the longest time one record must span.</summary>
    public Requirement WithWindow(Duration window)
    {
        Refuse.UnlessAboveZero(window.SiValue, Duration.Kind, nameof(window));
        return Copy(copy => copy.Window = window);
    }

    /// <summary>A copy with the smallest voltage that must be told apart.</summary>
    public Requirement WithSmallestDetail(Voltage detail)
    {
        Refuse.UnlessAboveZero(detail.SiValue, Voltage.Kind, nameof(detail));
        return Copy(copy => copy.SmallestDetail = detail);
    }

    /// <summary>A copy with the number of channels needed at once.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="atOnce"/> is below 1.</exception>
    public Requirement WithChannels(int atOnce) => atOnce >= 1
        ? Copy(copy => copy.Channels = atOnce)
        : throw new ArgumentOutOfRangeException(nameof(atOnce), FormattableString.Invariant($"atOnce must be at least 1; was {atOnce}"));

    /// <summary>A copy with how far a time between two edges may be off (one standard deviation).</summary>
    public Requirement WithTimingTolerance(Duration tolerance)
    {
        Refuse.UnlessAboveZero(tolerance.SiValue, Duration.Kind, nameof(tolerance));
        return Copy(copy => copy.TimingTolerance = tolerance);
    }

    /// <summary>A copy with the resistance of the source, so that loading is judged.</summary>
    public Requirement WithSourceResistance(Resistance resistance)
    {
        if (resistance.SiValue < 0)
            throw Refuse.OutOfRange(resistance.SiValue, Resistance.Kind, nameof(resistance), "at least 0 Ω");
        return Copy(copy => copy.SourceResistance = resistance);
    }

    /// <summary>A copy whose signals float: each lies between two points neither of which is earth, so that only a differential probe or an isolated input may be connected.</summary>
    /// <param name="commonMode">The largest voltage of the reference point against earth, DC plus peak AC; its sign does not count.</param>
    public Requirement WithCommonMode(Voltage commonMode) => Copy(copy => copy.CommonMode = commonMode);

    /// <summary>What the equipment needs, for a chain that falls off like a Gaussian.</summary>
    public Specification Specify() => Specify(ResponseShape.Gaussian);

    /// <summary>What the equipment needs, for a chain that falls off in a given way.</summary>
    /// <param name="shape">The shape of the whole chain, probe and input together.</param>
    public Specification Specify(ResponseShape shape) => new Specifier(this, shape ?? throw new ArgumentNullException(nameof(shape))).Specify();

    /// <summary>The same demands on one signal alone.</summary>
    internal Requirement On(Signal signal) => Copy(copy => copy.Signals = new[] { signal }.Frozen());

    private static Ratio Open(Ratio value, string argument) =>
        value.SiValue > 0 && value.SiValue < 1 ? value : throw Refuse.OutOfRange(value.SiValue, Ratio.Kind, argument, "above 0 and below 1 (100 %)");

    private Requirement Copy(Action<Requirement> change)
    {
        var copy = (Requirement)MemberwiseClone();
        change(copy);
        return copy;
    }
}
