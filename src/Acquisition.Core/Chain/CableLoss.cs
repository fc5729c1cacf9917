using System;

namespace Acquisition.Core;

/// <summary>The loss of a cable: a √f + b f, skin effect and dielectric (handbook 7.9). From data-sheet points; trust it up to an octave beyond them.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class CableLoss
{
    private CableLoss(double skin, double dielectric, double reference)
    {
        Skin = skin;
        Dielectric = dielectric;
        Reference = reference;
    }

    /// <summary>No loss.</summary>
    public static CableLoss None { get; } = new(0, 0, 1);

    /// <summary>All skin effect, through one point.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is not above 0 Hz, or <paramref name="loss"/> is negative.</exception>
    public static CableLoss FromPoint(Frequency frequency, DecibelRatio loss)
    {
        double f = Refuse.UnlessAboveZero(frequency.SiValue, Frequency.Kind, nameof(frequency));
        return new CableLoss(NotNegative(loss, nameof(loss)) / Math.Sqrt(f), 0, f);
    }

    /// <summary>Skin effect and dielectric through two points.</summary>
    /// <param name="lowFrequency">The lower frequency.</param>
    /// <param name="lowLoss">The loss there, positive.</param>
    /// <param name="highFrequency">The higher frequency.</param>
    /// <param name="highLoss">The loss there, positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequencies do not rise, or the losses do not grow like a √f + b f with a and b of at least 0: faster than √f, no faster than f.</exception>
    public static CableLoss FromPoints(Frequency lowFrequency, DecibelRatio lowLoss, Frequency highFrequency, DecibelRatio highLoss)
    {
        double f1 = Refuse.UnlessAboveZero(lowFrequency.SiValue, Frequency.Kind, nameof(lowFrequency)), f2 = highFrequency.SiValue;
        if (!(f2 > f1))
            throw Refuse.OutOfRange(f2, Frequency.Kind, nameof(highFrequency), $"above the lower frequency {lowFrequency}");
        double low = NotNegative(lowLoss, nameof(lowLoss)), high = NotNegative(highLoss, nameof(highLoss));
        double least = low * Math.Sqrt(f2 / f1), most = low * f2 / f1;
        if (high < least * (1 - 1e-12) || high > most * (1 + 1e-12))
        {
            throw Refuse.OutOfRange(high, DecibelRatio.Kind, nameof(highLoss), $"from {DecibelRatio.FromDecibels(least):G4} to {DecibelRatio.FromDecibels(most):G4}",
                "a cable's loss grows faster than the square root of frequency and no faster than frequency");
        }
        double determinant = Math.Sqrt(f1) * f2 - Math.Sqrt(f2) * f1;
        double a = (low * f2 - high * f1) / determinant, b = (high * Math.Sqrt(f1) - low * Math.Sqrt(f2)) / determinant;
        return new CableLoss(Math.Max(0, a), Math.Max(0, b), f2);
    }

    /// <summary>Decibels per √Hz.</summary>
    internal double Skin { get; }

    /// <summary>Decibels per Hz.</summary>
    internal double Dielectric { get; }

    /// <summary>The highest frequency of the data, Hz.</summary>
    internal double Reference { get; }

    /// <summary>The loss at a frequency, positive.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative.</exception>
    public DecibelRatio At(Frequency frequency)
    {
        double f = frequency.SiValue;
        return f >= 0 ? DecibelRatio.FromSi(Skin * Math.Sqrt(f) + Dielectric * f, nameof(frequency)) : throw Refuse.OutOfRange(f, Frequency.Kind, nameof(frequency), "at least 0 Hz");
    }

    /// <summary>The skin-effect part at 1 GHz, as data sheets give it.</summary>
    public DecibelRatio SkinAtOneGigahertz => DecibelRatio.FromSi(Skin * Math.Sqrt(1e9), "loss");

    /// <summary>The dielectric part at 1 GHz.</summary>
    public DecibelRatio DielectricAtOneGigahertz => DecibelRatio.FromSi(Dielectric * 1e9, "loss");

    /// <summary>The loss of so many times the length.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="lengths"/> is negative.</exception>
    public CableLoss Times(Ratio lengths) => lengths.SiValue >= 0
        ? new CableLoss(Skin * lengths.SiValue, Dielectric * lengths.SiValue, Reference)
        : throw Refuse.OutOfRange(lengths.SiValue, Ratio.Kind, nameof(lengths), "at least 0");

    private static double NotNegative(DecibelRatio loss, string argument) =>
        loss.SiValue >= 0 ? loss.SiValue : throw Refuse.OutOfRange(loss.SiValue, DecibelRatio.Kind, argument, "at least 0 dB (a loss counts positive)");
}
