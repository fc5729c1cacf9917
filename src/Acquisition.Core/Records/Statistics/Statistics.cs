using System;

namespace Acquisition.Core;

/// <summary>Mean, spread and extremes of a measured quantity over its repetitions in a record.</summary>
/// <typeparam name="T">The quantity.</typeparam>
/// <remarks>Immutable.</remarks>
public sealed class Statistics<T>
    where T : struct, IQuantity
{
    internal Statistics(long count, T mean, Measured<T> standardDeviation, T minimum, T maximum)
    {
        Count = count;
        Mean = mean;
        StandardDeviation = standardDeviation;
        Minimum = minimum;
        Maximum = maximum;
    }

    /// <summary>How many values, at least 1.</summary>
    public long Count { get; }

    /// <summary>The arithmetic mean.</summary>
    public T Mean { get; }

    /// <summary>The standard deviation of the values, divisor n - 1; absent for a single value.</summary>
    public Measured<T> StandardDeviation { get; }

    /// <summary>The smallest value.</summary>
    public T Minimum { get; }

    /// <summary>The largest value.</summary>
    public T Maximum { get; }

    /// <summary>Mean, extremes and count in one line.</summary>
    public override string ToString() => FormattableString.Invariant($"mean {Mean.InWords()}, from {Minimum.InWords()} to {Maximum.InWords()} (n = {Count})");
}
