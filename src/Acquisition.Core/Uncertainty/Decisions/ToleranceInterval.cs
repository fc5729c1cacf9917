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

    internal bool Contains(double y) => (IsLowExcluded ? y > Low : y >= Low) && (IsHighExcluded ? y < High : y <= High);

    /// <summary>The limits in words, such as <c>at most 1 V</c>.</summary>
    internal string InWords(object? lower, object? upper) =>
        lower is null ? $"{(IsHighExcluded ? "below" : "at most")} {upper}"
        : upper is null ? $"{(IsLowExcluded ? "above" : "at least")} {lower}"
        : $"from {(IsLowExcluded ? "above " : "")}{lower} to {(IsHighExcluded ? "below " : "")}{upper}";
}
