using System;

namespace Acquisition.Core.Records;

/// <summary>Whether a record rests at more than the two states that were found: a signal of three levels, or one that a large disturbance lifts for long.</summary>
internal static class OtherStates
{
    /// <summary>A further state is worth a word when it holds this part of the samples of the lesser one of the two.</summary>
    private const double LeastShare = 0.25;

    /// <summary>Of the samples between the states a plateau holds most; a straight ramp leaves a fifth of them in a band as wide.</summary>
    private const double LeastOfThoseBetween = 0.6;

    private const double HalfBand = 0.1;

    internal static Finding? Find(AmplitudeDistribution distribution, StateLevels states, QuantityKind kind)
    {
        double low = states.LowSi, high = states.HighSi, amplitude = high - low;
        double held = Math.Min(Around(distribution, low, amplitude), Around(distribution, high, amplitude));
        // Overshoot reaches a third of the amplitude, and is short.
        double above = distribution.CountBetween(high + 0.5 * amplitude, double.PositiveInfinity), below = distribution.CountBetween(double.NegativeInfinity, low - 0.5 * amplitude);
        if (Math.Max(above, below) >= LeastShare * held)
        {
            RunningMoments beyond = above >= below ? distribution.Between(high + 0.5 * amplitude, distribution.Maximum) : distribution.Between(distribution.Minimum, low - 0.5 * amplitude);
            return PulseFindings.MoreStates(Math.Max(above, below), beyond.Mean, kind);
        }
        double between = distribution.CountBetween(low + HalfBand * amplitude, high - HalfBand * amplitude), most = 0, level = 0;
        for (double part = 0.2; part <= 0.801; part += 0.05)
        {
            double count = Around(distribution, low + part * amplitude, amplitude);
            if (count > most)
                (most, level) = (count, distribution.Between(low + (part - HalfBand) * amplitude, low + (part + HalfBand) * amplitude).Mean);
        }
        return most >= LeastShare * held && most >= LeastOfThoseBetween * between ? PulseFindings.MoreStates(most, level, kind) : null;
    }

    private static double Around(AmplitudeDistribution distribution, double level, double amplitude) => distribution.CountBetween(level - HalfBand * amplitude, level + HalfBand * amplitude);
}
