using System;

namespace Acquisition.Core;

/// <summary>One harmonic of a tone in a spectrum.</summary>
public sealed class HarmonicLine
{
    internal HarmonicLine(int order, Frequency frequency, RmsVoltage? rms, DecibelRatio? level, bool isInNoise, string? collision)
    {
        Order = order;
        Frequency = frequency;
        Rms = rms;
        Level = level;
        IsInNoise = isInNoise;
        Collision = collision;
    }

    /// <summary>Number of the harmonic; 1 is the fundamental.</summary>
    public int Order { get; }

    /// <summary>Where it appears: folded down where order times frequency lies above half the sample rate (handbook 5.2).</summary>
    public Frequency Frequency { get; }

    /// <summary>Its rms; null where it cannot be told from another line (see <see cref="Collision"/>).</summary>
    public RmsVoltage? Rms { get; }

    /// <summary>Its level relative to the fundamental, in dBc; null where it cannot be told from another line or is empty.</summary>
    public DecibelRatio? Level { get; }

    /// <summary>Whether its bins hold less than three times the noise that they would hold anyway: the harmonic is at most this large.</summary>
    public bool IsInNoise { get; }

    /// <summary>What it falls onto: <c>DC</c>, <c>half the sample rate</c>, <c>the fundamental</c> or <c>harmonic 3</c>; null where it stands alone.</summary>
    public string? Collision { get; }

    /// <summary>Order, frequency and level in one line.</summary>
    public override string ToString() => $"harmonic {Order} at {Frequency.InWords(6)}: " + (Collision is null ? (IsInNoise ? "at most " : "") + (Level?.InWords() ?? "nothing") : "on " + Collision);

    internal static double Fold(double frequency, double rate) => Math.Abs(frequency - rate * Math.Floor(frequency / rate + 0.5));
}
