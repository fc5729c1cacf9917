using System;

namespace Acquisition.Core;

/// <summary>A spectrum in decibels: the reference and the floor are part of it, and so is the number of bins that the floor hides.</summary>
public sealed class SpectrumLevels
{
    private readonly double[] _decibels;

    internal SpectrumLevels(double[] decibels, PeakVoltage reference, DecibelRatio floor, int flooredBins)
    {
        _decibels = decibels;
        Reference = reference;
        Floor = floor;
        FlooredBins = flooredBins;
    }

    /// <summary>What 0 dB means.</summary>
    public PeakVoltage Reference { get; }

    /// <summary>The lowest level written; the logarithm of an empty bin would have none.</summary>
    public DecibelRatio Floor { get; }

    /// <summary>Bins that hold less than the floor, or nothing.</summary>
    public int FlooredBins { get; }

    /// <summary>The levels in decibels, from DC to half the sample rate; a copy.</summary>
    public double[] ToDecibels() => (double[])_decibels.Clone();

    /// <summary>The level of a bin.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such bin.</exception>
    public DecibelRatio this[int bin] =>
        bin >= 0 && bin < _decibels.Length
            ? DecibelRatio.FromDecibels(_decibels[bin])
            : throw new ArgumentOutOfRangeException(nameof(bin), $"bin must be from 0 to {_decibels.Length - 1}; was {bin}");

    /// <summary>Reference, floor and hidden bins in one line.</summary>
    public override string ToString() => $"levels relative to {Reference.InWords()}, floor {Floor.InWords()} ({FlooredBins} bins)";
}
