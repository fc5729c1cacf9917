using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core;

/// <summary>The sampling side of an instrument: how fast, how long and how finely it records.</summary>
/// <remarks>Immutable and thread-safe: each <c>With</c> method returns a changed copy.</remarks>
public sealed class Digitizer
{
    /// <summary>Far above any converter: more is a slip, and its codes would be no numbers.</summary>
    private const double MostBits = 64;

    /// <summary>Rate and memory from so many channels on, in rising order of these; the first from one.</summary>
    private (int From, SampleRate Rate, PointCount Memory)[] _shares;

    /// <summary>A digitizer whose rate and memory are the same however many channels are in use.</summary>
    /// <param name="maximumRate">The highest sample rate.</param>
    /// <param name="memory">The points of a record on one channel.</param>
    /// <param name="resolution">The bits of the converter, at most 64.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not above zero, or there are more than 64 bits.</exception>
    public Digitizer(SampleRate maximumRate, PointCount memory, BitDepth resolution)
    {
        Sampling.RequireRate(maximumRate, nameof(maximumRate));
        Sampling.RequirePoints(memory, nameof(memory));
        Refuse.UnlessAboveZero(resolution.SiValue, BitDepth.Kind, nameof(resolution));
        if (resolution.SiValue > MostBits)
            throw Refuse.OutOfRange(resolution.SiValue, BitDepth.Kind, nameof(resolution), "above 0 bit and at most 64 bit");
        Resolution = resolution;
        _shares = new[] { (1, maximumRate, memory) };
        Name = "digitizer";
        Steps = RateSteps.Continuous;
        VerticalDivisions = 8;
        HorizontalDivisions = 10;
        FullScaleRanges = Array.Empty<PeakToPeakVoltage>();
    }

    /// <summary>What it is called.</summary>
    public string Name { get; private set; }

    /// <summary>The bits of the converter.</summary>
    public BitDepth Resolution { get; }

    /// <summary>The rates offered below the highest one.</summary>
    public RateSteps Steps { get; private set; }

    /// <summary>Divisions from bottom to top of the screen.</summary>
    public int VerticalDivisions { get; private set; }

    /// <summary>Divisions from left to right of the screen.</summary>
    public int HorizontalDivisions { get; private set; }

    /// <summary>The full-scale ranges of the converter, in rising order; empty where any range can be set.</summary>
    public IReadOnlyList<PeakToPeakVoltage> FullScaleRanges { get; private set; }

    /// <summary>The same with a name.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    public Digitizer WithName(string name) => Copy(copy => copy.Name = name ?? throw new ArgumentNullException(nameof(name)));

    /// <summary>The same with its own rate and memory when that many channels, or more, are in use: converters and memory that are shared between channels.</summary>
    /// <param name="channelsInUse">From how many channels on: 2 to 64.</param>
    /// <param name="maximumRate">The highest rate then.</param>
    /// <param name="memory">The points of a record on one channel then.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public Digitizer WithChannelsInUse(int channelsInUse, SampleRate maximumRate, PointCount memory)
    {
        Sampling.RequireRate(maximumRate, nameof(maximumRate));
        Sampling.RequirePoints(memory, nameof(memory));
        if (channelsInUse < 2 || channelsInUse > MostChannels)
            throw new ArgumentOutOfRangeException(nameof(channelsInUse), FormattableString.Invariant($"channelsInUse must be 2 to {MostChannels}; was {channelsInUse}"));
        return Copy(copy => copy._shares = _shares.Where(share => share.From != channelsInUse).Append((From: channelsInUse, Rate: maximumRate, Memory: memory)).OrderBy(share => share.From).ToArray());
    }

    /// <summary>The same offering these rates below the highest one.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="steps"/> is null.</exception>
    public Digitizer WithRateSteps(RateSteps steps) => Copy(copy => copy.Steps = steps ?? throw new ArgumentNullException(nameof(steps)));

    /// <summary>The same with these divisions on its screen: 8 by 10 unless said otherwise.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A number of divisions is not 1 to 100.</exception>
    public Digitizer WithDivisions(int vertical, int horizontal) => Copy(copy =>
    {
        copy.VerticalDivisions = Divisions(vertical, nameof(vertical));
        copy.HorizontalDivisions = Divisions(horizontal, nameof(horizontal));
    });

    /// <summary>The same with these full-scale ranges.</summary>
    /// <param name="ranges">The converter's ranges from lowest to highest code, which may be more than the screen shows.</param>
    /// <exception cref="ArgumentNullException"><paramref name="ranges"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A range is 0 V.</exception>
    public Digitizer WithFullScaleRanges(params PeakToPeakVoltage[] ranges)
    {
        var sorted = (PeakToPeakVoltage[])(ranges ?? throw new ArgumentNullException(nameof(ranges))).Clone();
        foreach (PeakToPeakVoltage range in sorted)
            Refuse.UnlessAboveZero(range.SiValue, PeakToPeakVoltage.Kind, nameof(ranges));
        Array.Sort(sorted);
        return Copy(copy => copy.FullScaleRanges = sorted.Frozen());
    }

    /// <summary>The highest rate with so many channels in use.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="channelsInUse"/> is below 1.</exception>
    public SampleRate MaximumRate(int channelsInUse) => Share(channelsInUse).Rate;

    /// <summary>The points of a record on one channel with so many channels in use.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="channelsInUse"/> is below 1.</exception>
    public PointCount Memory(int channelsInUse) => Share(channelsInUse).Memory;

    /// <summary>The rate and record length for a window with one channel in use.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="window"/> is not above 0 s, or so long that no rate offered fits the memory.</exception>
    public Timebase TimebaseFor(Duration window) => TimebaseFor(window, 1);

    /// <summary>The rate and record length for a window: the highest rate offered at which the window fits the memory (handbook 5.4).</summary>
    /// <param name="window">The whole window.</param>
    /// <param name="channelsInUse">How many channels are in use, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="window"/> is not above 0 s, or so long that no rate offered fits the memory, or <paramref name="channelsInUse"/> is below 1.</exception>
    public Timebase TimebaseFor(Duration window, int channelsInUse)
    {
        SampleRate highest = MaximumRate(channelsInUse);
        PointCount memory = Memory(channelsInUse);
        SampleRate allowed = Sampling.MemoryLimitedRate(highest, memory, window);
        SampleRate rate = Steps.AtOrBelow(allowed, highest)
            ?? throw Refuse.OutOfRange(window.SiValue, Duration.Kind, nameof(window), $"short enough for {memory} at one of the rates of {Name}", "it lies below all rates offered: shorten the window");
        return new Timebase(window, rate, highest, memory);
    }

    /// <summary>The rate and record length for a time per division: the window is as many divisions as the screen has.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="perDivision"/> is not above 0 s, or so long that no rate offered fits the memory, or <paramref name="channelsInUse"/> is below 1.</exception>
    public Timebase TimebasePerDivision(Duration perDivision, int channelsInUse) =>
        TimebaseFor(Across(Duration.FromSi(Sampling.RequireTime(perDivision, nameof(perDivision)), nameof(perDivision))), channelsInUse);

    /// <summary>The time across the screen. A time is stated in few decimal digits, and so is ten times that: ten times 1 µs are 10 µs, which the product of the doubles misses by its last bit.</summary>
    internal Duration Across(Duration perDivision)
    {
        const int Kept = 15;
        double seconds = perDivision.SiValue, product = seconds * HorizontalDivisions;
        return Duration.FromSi(FewDigits.Round(seconds, Kept) == seconds ? FewDigits.Round(product, Kept) : product, nameof(perDivision));
    }

    /// <summary>The smallest full-scale range that holds a peak-to-peak voltage; null where none does. Without listed ranges, the voltage itself.</summary>
    public PeakToPeakVoltage? RangeFor(PeakToPeakVoltage voltage)
    {
        if (FullScaleRanges.Count == 0)
            return voltage;
        foreach (PeakToPeakVoltage range in FullScaleRanges)
        {
            if (range >= voltage)
                return range;
        }
        return null;
    }

    /// <summary>The name.</summary>
    public override string ToString() => $"{Name}, {_shares[0].Rate}, {_shares[0].Memory}, {Resolution}";

    /// <summary>For how many channels in use rate and memory are stated; 1 where they do not depend on it.</summary>
    internal int StatedChannels => _shares[_shares.Length - 1].From;

    internal const int MostChannels = 64;

    private (int From, SampleRate Rate, PointCount Memory) Share(int channelsInUse) => channelsInUse >= 1
        ? _shares.Last(share => share.From <= channelsInUse)
        : throw new ArgumentOutOfRangeException(nameof(channelsInUse), FormattableString.Invariant($"channelsInUse must be at least 1; was {channelsInUse}"));

    private static int Divisions(int divisions, string argument) => divisions >= 1 && divisions <= 100
        ? divisions
        : throw new ArgumentOutOfRangeException(argument, FormattableString.Invariant($"{argument} must be 1 to 100 divisions; was {divisions}"));

    private Digitizer Copy(Action<Digitizer> change)
    {
        var copy = (Digitizer)MemberwiseClone();
        change(copy);
        return copy;
    }
}
