using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core.Planning;

/// <summary>A sampling instrument as its data sheet describes it. What is not stated is null or empty, and is never guessed: the planner says what it could not judge.</summary>
/// <remarks>Immutable; each <c>With...</c> method gives a changed copy.</remarks>
public sealed class CatalogueInstrument
{
    /// <summary>An instrument with the figures that no choice can be made without.</summary>
    /// <param name="name">The name by which results refer to it.</param>
    /// <param name="bandwidth">The half-power bandwidth of an input without bandwidth limit.</param>
    /// <param name="shape">How the input falls off.</param>
    /// <param name="bits">The bits of the converter.</param>
    /// <param name="channelModes">Rate and memory for each number of channels in use, at least one.</param>
    /// <param name="ranges">The vertical ranges, at least one.</param>
    /// <param name="terminations">The input impedances, at least one.</param>
    /// <exception cref="ArgumentException">A name or list is empty, or a number of channels occurs twice.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Bandwidth or bits are not above 0.</exception>
    public CatalogueInstrument(
        string name,
        Stated<Frequency> bandwidth,
        ResponseShape shape,
        BitDepth bits,
        IEnumerable<ChannelMode> channelModes,
        IEnumerable<InputRange> ranges,
        IEnumerable<InputTermination> terminations)
    {
        Name = RequireName(name);
        Bandwidth = bandwidth ?? throw new ArgumentNullException(nameof(bandwidth));
        Refuse.UnlessAboveZero(bandwidth.Value.SiValue, Frequency.Kind, nameof(bandwidth));
        Shape = shape ?? throw new ArgumentNullException(nameof(shape));
        Refuse.UnlessAboveZero(bits.SiValue, BitDepth.Kind, nameof(bits));
        Bits = bits;
        ChannelModes = Several(channelModes, nameof(channelModes)).OrderBy(mode => mode.ChannelsInUse).Frozen();
        if (ChannelModes.Select(mode => mode.ChannelsInUse).Distinct().Count() < ChannelModes.Count)
            throw new ArgumentException("a number of channels in use occurs twice in channelModes", nameof(channelModes));
        Ranges = Several(ranges, nameof(ranges)).OrderBy(range => range.FullScale).Frozen();
        Terminations = Several(terminations, nameof(terminations)).Frozen();
    }

    /// <summary>The name by which results refer to it.</summary>
    public string Name { get; }

    /// <summary>The half-power bandwidth of an input without bandwidth limit.</summary>
    public Stated<Frequency> Bandwidth { get; }

    /// <summary>How the input falls off.</summary>
    public ResponseShape Shape { get; }

    /// <summary>The bits of the converter.</summary>
    public BitDepth Bits { get; }

    /// <summary>Rate and memory for each number of channels in use, fewest channels first.</summary>
    public IReadOnlyList<ChannelMode> ChannelModes { get; }

    /// <summary>The vertical ranges, smallest first.</summary>
    public IReadOnlyList<InputRange> Ranges { get; }

    /// <summary>The input impedances.</summary>
    public IReadOnlyList<InputTermination> Terminations { get; }

    /// <summary>The bandwidth limits it can switch in, narrowest first.</summary>
    public IReadOnlyList<Frequency> BandwidthLimits { get; private set; } = [];

    /// <summary>Effective bits against frequency, lowest frequency first; empty where they are not stated.</summary>
    public IReadOnlyList<EffectiveBitsPoint> EffectiveBits { get; private set; } = [];

    /// <summary>The ways from converter to memory; plain sampling is always among them.</summary>
    public IReadOnlyList<AcquisitionMode> Modes { get; private set; } = [AcquisitionMode.Sample];

    /// <summary>How it draws between samples; empty where it is not stated.</summary>
    public IReadOnlyList<Reconstruction> Interpolations { get; private set; } = [];

    /// <summary>The divisions of the screen across and up; null where it has none.</summary>
    public ScreenDivisions? Divisions { get; private set; }

    /// <summary>The most segments its memory can be cut into; 1 where it cannot.</summary>
    public int MaximumSegments { get; private set; } = 1;

    /// <summary>The records it takes per second at best; null where it is not stated.</summary>
    public Frequency? RecordRate { get; private set; }

    /// <summary>How far the time base may be off, relative.</summary>
    public Stated<Ratio>? TimebaseAccuracy { get; private set; }

    /// <summary>How far the gain may be off at DC, relative to the reading.</summary>
    public Stated<Ratio>? GainAccuracy { get; private set; }

    /// <summary>The jitter of the sample clock, rms.</summary>
    public Stated<Duration>? Jitter { get; private set; }

    /// <summary>Whether its channels are isolated from earth and from each other.</summary>
    public bool HasIsolatedInputs { get; private set; }

    /// <summary>The measurement category and voltage it is rated for, as printed on it, such as <c>CAT II 300 V</c>; null where there is none.</summary>
    public string? Rating { get; private set; }

    /// <summary>The price in the catalogue's own neutral unit; null where it is not known.</summary>
    public double? PriceInUnits { get; private set; }

    /// <summary>The most channels it can use at once.</summary>
    public int Channels => ChannelModes[ChannelModes.Count - 1].ChannelsInUse;

    /// <summary>A copy with bandwidth limits.</summary>
    public CatalogueInstrument WithBandwidthLimits(IEnumerable<Frequency> limits)
    {
        Frequency[] sorted = (limits ?? throw new ArgumentNullException(nameof(limits))).OrderBy(limit => limit).ToArray();
        foreach (Frequency limit in sorted)
            Refuse.UnlessAboveZero(limit.SiValue, Frequency.Kind, nameof(limits));
        return Copy(copy => copy.BandwidthLimits = sorted.Frozen());
    }

    /// <summary>A copy with effective bits against frequency.</summary>
    public CatalogueInstrument WithEffectiveBits(IEnumerable<EffectiveBitsPoint> points)
    {
        EffectiveBitsPoint[] sorted = (points ?? throw new ArgumentNullException(nameof(points))).OrderBy(point => point.Frequency).ToArray();
        return Copy(copy => copy.EffectiveBits = sorted.Frozen());
    }

    /// <summary>A copy with acquisition modes; plain sampling is added where it is missing.</summary>
    public CatalogueInstrument WithModes(IEnumerable<AcquisitionMode> modes)
    {
        AcquisitionMode[] all = new[] { AcquisitionMode.Sample }.Concat(modes ?? throw new ArgumentNullException(nameof(modes))).Distinct().OrderBy(mode => mode).ToArray();
        return Copy(copy => copy.Modes = all.Frozen());
    }

    /// <summary>A copy with ways of interpolation.</summary>
    public CatalogueInstrument WithInterpolations(IEnumerable<Reconstruction> interpolations)
    {
        Reconstruction[] all = (interpolations ?? throw new ArgumentNullException(nameof(interpolations))).Distinct().OrderBy(way => way.Name, StringComparer.Ordinal).ToArray();
        return Copy(copy => copy.Interpolations = all.Frozen());
    }

    /// <summary>A copy with screen divisions.</summary>
    public CatalogueInstrument WithDivisions(ScreenDivisions divisions) => Copy(copy => copy.Divisions = divisions ?? throw new ArgumentNullException(nameof(divisions)));

    /// <summary>A copy with segmented memory.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="maximumSegments"/> is below 1.</exception>
    public CatalogueInstrument WithSegments(int maximumSegments) => maximumSegments >= 1
        ? Copy(copy => copy.MaximumSegments = maximumSegments)
        : throw new ArgumentOutOfRangeException(nameof(maximumSegments), FormattableString.Invariant($"maximumSegments must be at least 1; was {maximumSegments}"));

    /// <summary>A copy with the records it takes per second at best.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="recordRate"/> is not above 0 Hz.</exception>
    public CatalogueInstrument WithRecordRate(Frequency recordRate)
    {
        Refuse.UnlessAboveZero(recordRate.SiValue, Frequency.Kind, nameof(recordRate));
        return Copy(copy => copy.RecordRate = recordRate);
    }

    /// <summary>A copy with a time base accuracy.</summary>
    public CatalogueInstrument WithTimebaseAccuracy(Stated<Ratio> accuracy) => Copy(copy => copy.TimebaseAccuracy = accuracy);

    /// <summary>A copy with a gain accuracy.</summary>
    public CatalogueInstrument WithGainAccuracy(Stated<Ratio> accuracy) => Copy(copy => copy.GainAccuracy = accuracy);

    /// <summary>A copy with a sample clock jitter.</summary>
    public CatalogueInstrument WithJitter(Stated<Duration> jitter) => Copy(copy => copy.Jitter = jitter);

    /// <summary>A copy with a rating, and whether its inputs are isolated.</summary>
    public CatalogueInstrument WithRating(string? rating, bool isolatedInputs) => Copy(copy =>
    {
        copy.Rating = rating;
        copy.HasIsolatedInputs = isolatedInputs;
    });

    /// <summary>A copy with a price.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="priceInUnits"/> is negative.</exception>
    public CatalogueInstrument WithPrice(double priceInUnits) => priceInUnits >= 0 && priceInUnits <= double.MaxValue
        ? Copy(copy => copy.PriceInUnits = priceInUnits)
        : throw new ArgumentOutOfRangeException(nameof(priceInUnits), FormattableString.Invariant($"priceInUnits must be at least 0; was {priceInUnits}"));

    /// <summary>Rate and memory while so many channels are in use; null where it has not so many.</summary>
    public ChannelMode? ModeFor(int channelsInUse) => ChannelModes.FirstOrDefault(mode => mode.ChannelsInUse >= channelsInUse);

    /// <summary>The smallest range that holds every one of some signals behind an attenuation, or the largest there is.</summary>
    internal InputRange RangeFor(IReadOnlyList<Signal> signals, double attenuation)
    {
        foreach (InputRange range in Ranges)
        {
            bool holds = true;
            foreach (Signal signal in signals)
                holds &= range.Holds(signal, attenuation);
            if (holds)
                return range;
        }
        return Ranges[Ranges.Count - 1];
    }

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    internal static string RequireName(string name) =>
        !string.IsNullOrWhiteSpace(name ?? throw new ArgumentNullException(nameof(name))) ? name : throw new ArgumentException("name must not be empty", nameof(name));

    private static T[] Several<T>(IEnumerable<T> items, string argument)
    {
        T[] all = (items ?? throw new ArgumentNullException(argument)).ToArray();
        return all.Length > 0 ? all : throw new ArgumentException($"{argument} must name at least one", argument);
    }

    private CatalogueInstrument Copy(Action<CatalogueInstrument> change)
    {
        var copy = (CatalogueInstrument)MemberwiseClone();
        change(copy);
        return copy;
    }
}
