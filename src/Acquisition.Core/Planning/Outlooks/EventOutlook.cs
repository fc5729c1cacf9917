using System;

namespace Acquisition.Core.Planning;

/// <summary>Whether a narrow, perhaps rare pulse is caught (handbook 5.5, 5.11).</summary>
public sealed class EventOutlook
{
    internal EventOutlook(Duration width, Frequency? rate, Ratio height, Ratio sampleChance, long fewestSamples, Ratio? observedShare)
    {
        Width = width;
        Rate = rate;
        Height = height;
        ChanceOfASample = sampleChance;
        FewestSamples = PointCount.FromPoints(fewestSamples);
        ObservedShare = observedShare;
        ChancePerOccurrence = observedShare is { } share ? sampleChance * share : null;
    }

    /// <summary>The width of the pulse.</summary>
    public Duration Width { get; }

    /// <summary>How often it happens; null where that is not known.</summary>
    public Frequency? Rate { get; }

    /// <summary>How much of its height is left: behind the chain, and with high resolution in the stored point that holds most of it.</summary>
    public Ratio Height { get; }

    /// <summary>The chance that at least one sample falls on a pulse that lies inside the window; with high resolution that a stored point holds some of it.</summary>
    public Ratio ChanceOfASample { get; }

    /// <summary>The samples that fall on it at least; with high resolution the stored points that hold some of it.</summary>
    public PointCount FewestSamples { get; }

    /// <summary>The share of the time in which the instrument looks; null where its records per second are not known, or so many that they would overlap.</summary>
    public Ratio? ObservedShare { get; }

    /// <summary>The chance that one pulse, at any time, leaves a sample: both chances together; null where the share of the time is not known.</summary>
    public Ratio? ChancePerOccurrence { get; }

    /// <summary>How many pulses must happen until one is caught with a confidence: ln(1 - C) / ln(1 - p), rounded up; null where the share of the time is not known.</summary>
    /// <param name="confidence">The wanted confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not between 0 and 1.</exception>
    /// <exception cref="InvalidOperationException">No pulse is ever caught.</exception>
    public long? TrialsFor(Ratio confidence)
    {
        if (Trials(Require(confidence)) is not { } trials)
            return null;
        return trials < long.MaxValue ? (long)Math.Ceiling(trials * (1 - 1e-12)) : throw new InvalidOperationException("the pulse is never caught: no number of trials reaches a confidence");
    }

    /// <summary>Whether some number of pulses is known to reach a confidence of 99 %.</summary>
    internal bool IsEverCaught => Trials(0.99) < long.MaxValue;

    /// <summary>
    /// How long one has to look until a pulse is caught with a confidence, where pulses come at random: -ln(1 - C) / (R p), the Poisson law (handbook 5.11); null where their rate or the share of the time
    /// is not known. It is longer than so many pulses take on average: in a given time fewer may come.
    /// </summary>
    /// <param name="confidence">The wanted confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not between 0 and 1.</exception>
    /// <exception cref="InvalidOperationException">No pulse is ever caught.</exception>
    public Duration? TimeFor(Ratio confidence)
    {
        double missed = -Math.Log(1 - Require(confidence));
        if (Rate is not { } rate || ChancePerOccurrence is not { } chance)
            return null;
        return IsEverCaught ? Duration.FromSi(missed / (rate.SiValue * chance.SiValue), nameof(confidence)) : throw new InvalidOperationException("the pulse is never caught: no time reaches a confidence");
    }

    private double? Trials(double confidence) => ChancePerOccurrence?.SiValue switch
    {
        null => null,
        >= 1 => 1,
        > 0 and double chance => Math.Log(1 - confidence) / Logarithm(1 - chance, chance),
        _ => double.PositiveInfinity,
    };

    private static double Require(Ratio confidence) => confidence.SiValue is > 0 and < 1
        ? confidence.SiValue
        : throw Refuse.OutOfRange(confidence.SiValue, Ratio.Kind, nameof(confidence), "above 0 and below 1 (100 %)");

    // ln(1 - p) without losing a small p.
    private static double Logarithm(double rest, double chance) => chance < 1e-5 ? -chance - (chance * chance / 2) : Math.Log(rest);
}
