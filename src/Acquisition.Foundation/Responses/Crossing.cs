using System;

namespace Acquisition.Core.Responses;

/// <summary>A frequency at which the gain of a response passes a level, and in which direction.</summary>
public sealed class Crossing
{
    internal Crossing(Frequency frequency, bool falling)
    {
        Frequency = frequency;
        IsFalling = falling;
    }

    /// <summary>Where.</summary>
    public Frequency Frequency { get; }

    /// <summary>Whether the gain falls through the level with rising frequency; otherwise it rises through it.</summary>
    public bool IsFalling { get; }

    /// <summary>Frequency and direction.</summary>
    public override string ToString() => $"{Frequency.InWords(6)} ({(IsFalling ? "falling" : "rising")})";
}
