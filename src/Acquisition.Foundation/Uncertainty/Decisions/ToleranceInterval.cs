using System;

namespace Acquisition.Core.Uncertainty;

/// <summary>Tolerance limits as plain numbers in one unit; a missing one is infinite. A limit conforms (JCGM 106 3.3.4) unless it is excluded, as by <c>x &lt; 5 V</c>.</summary>
internal readonly struct ToleranceInterval
{
    internal ToleranceInterval(double low, double high, bool isLowExcluded = false, bool isHighExcluded = false)
    {
        Low = low;
        High = high;
        IsLowExcluded = isLowExcluded && !double.IsInfinity(low);
        IsHighExcluded = isHighExcluded && !double.IsInfinity(high);
    }

    internal double Low { get; }

    internal double High { get; }

    internal bool IsLowExcluded { get; }

    internal bool IsHighExcluded { get; }

    /// <summary>What sums and products of numbers with few digits lose: some units in the last place of what they are made of.</summary>
    internal const double LastPlaces = 4 * 2.220446049250313e-16;

    /// <summary>The same limits moved inwards by a guard band, or outwards by a negative one. Acceptance limits belong to what is accepted (JCGM 106 8.2, 8.3).</summary>
    internal ToleranceInterval Narrowed(double guardBand) => guardBand == 0 ? this : new ToleranceInterval(Low + guardBand, High - guardBand);

    /// <summary>Whether a value lies within. One that only rounding keeps from a limit is at it: within, or beyond where the limit is excluded.</summary>
    /// <param name="y">The value.</param>
    /// <param name="rounding">What rounding may have moved it by, where that is more than the last places of value and limit.</param>
    internal bool Contains(double y, double rounding)
    {
        double low = Slack(Low), high = Slack(High);
        return (IsLowExcluded ? y > Low + low : y >= Low - low) && (IsHighExcluded ? y < High - high : y <= High + high);

        double Slack(double limit) => double.IsInfinity(limit) ? 0 : Math.Max(rounding, LastPlaces * Math.Max(Math.Abs(y), Math.Abs(limit)));
    }

    /// <summary>The limits in words, such as <c>at most 1 V</c>.</summary>
    internal string InWords(object? lower, object? upper) =>
        lower is null ? $"{(IsHighExcluded ? "below" : "at most")} {upper}"
        : upper is null ? $"{(IsLowExcluded ? "above" : "at least")} {lower}"
        : $"from {(IsLowExcluded ? "above " : "")}{lower} to {(IsHighExcluded ? "below " : "")}{upper}";
}
