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
        ChancePerOccurrence = observedShare is { } share ? sampleChance * share : sampleChance;
    }

    /// <summary>The width of the pulse.</summary>
    public Duration Width { get; }

    /// <summary>How often it happens; null where that is not known.</summary>
    public Frequency? Rate { get; }

    /// <summary>How much of its height the chain lets through.</summary>
    public Ratio Height { get; }

    /// <summary>The chance that at least one sample falls on a pulse that lies inside the window.</summary>
    public Ratio ChanceOfASample { get; }

    /// <summary>The samples that fall on it at least.</summary>
    public PointCount FewestSamples { get; }

    /// <summary>The share of the time in which the instrument looks; null where its records per second are not known, or so many that they would overlap.</summary>
    public Ratio? ObservedShare { get; }

    /// <summary>The chance that one pulse, at any time, leaves a sample: both chances together, or the first alone where the second is not known.</summary>
    public Ratio ChancePerOccurrence { get; }

    /// <summary>How many pulses must happen until one is caught with a confidence: ln(1 - C) / ln(1 - p), rounded up.</summary>
    /// <param name="confidence">The wanted confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not between 0 and 1.</exception>
    /// <exception cref="InvalidOperationException">No pulse is ever caught.</exception>
    public long TrialsFor(Ratio confidence)
    {
        if (!(confidence.SiValue > 0 && confidence.SiValue < 1))
            throw Refuse.OutOfRange(confidence.SiValue, Ratio.Kind, nameof(confidence), "above 0 and below 1 (100 %)");
        double trials = Trials(confidence.SiValue);
        return trials < long.MaxValue ? (long)Math.Ceiling(trials * (1 - 1e-12)) : throw new InvalidOperationException("the pulse is never caught: no number of trials reaches a confidence");
    }

    /// <summary>Whether some number of pulses reaches a confidence of 99 %.</summary>
    internal bool IsEverCaught => Trials(0.99) < long.MaxValue;

    /// <summary>How long it takes on average until enough pulses have happened; null where their rate is not known.</summary>
    /// <param name="confidence">The wanted confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not between 0 and 1.</exception>
    public Duration? TimeFor(Ratio confidence) => Rate is { } rate ? Duration.FromSi(TrialsFor(confidence) / rate.SiValue, nameof(confidence)) : null;

    private double Trials(double confidence)
    {
        double chance = ChancePerOccurrence.SiValue;
        return chance >= 1 ? 1 : chance > 0 ? Math.Log(1 - confidence) / Logarithm(1 - chance, chance) : double.PositiveInfinity;
    }

    // ln(1 - p) without losing a small p.
    private static double Logarithm(double rest, double chance) => chance < 1e-5 ? -chance - (chance * chance / 2) : Math.Log(rest);
}
