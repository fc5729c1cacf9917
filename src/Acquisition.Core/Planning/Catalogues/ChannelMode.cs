using System;

namespace Acquisition.Core.Planning;

/// <summary>What an instrument gives to each channel while so many channels are in use: converters and memory are often shared among channels.</summary>
public sealed class ChannelMode
{
    /// <summary>States rate and memory per channel for a number of channels in use.</summary>
    /// <param name="channelsInUse">How many channels are in use at most, at least 1.</param>
    /// <param name="maximumRate">The highest sample rate of each of them.</param>
    /// <param name="memory">The record length of each of them.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are no channels, no rate, or fewer than two points.</exception>
    public ChannelMode(int channelsInUse, SampleRate maximumRate, PointCount memory)
    {
        ChannelsInUse = channelsInUse >= 1 ? channelsInUse : throw new ArgumentOutOfRangeException(nameof(channelsInUse), FormattableString.Invariant($"channelsInUse must be at least 1; was {channelsInUse}"));
        Refuse.UnlessAboveZero(maximumRate.SiValue, SampleRate.Kind, nameof(maximumRate));
        if (memory.Points < 2)
            throw Refuse.OutOfRange(memory.SiValue, PointCount.Kind, nameof(memory), "at least 2 pts");
        MaximumRate = maximumRate;
        Memory = memory;
    }

    /// <summary>How many channels are in use at most.</summary>
    public int ChannelsInUse { get; }

    /// <summary>The highest sample rate of each of them.</summary>
    public SampleRate MaximumRate { get; }

    /// <summary>The record length of each of them.</summary>
    public PointCount Memory { get; }

    /// <summary>The mode in one line.</summary>
    public override string ToString() => FormattableString.Invariant($"{ChannelsInUse} in use: {MaximumRate}, {Memory}");
}
