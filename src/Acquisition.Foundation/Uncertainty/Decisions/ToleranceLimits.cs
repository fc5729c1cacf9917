using System;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core;

/// <summary>The limits that a quantity must keep: a lower one, an upper one, or both (JCGM 106 3.3.4 to 3.3.6).</summary>
/// <typeparam name="T">The quantity type.</typeparam>
/// <remarks>Immutable. The limits themselves conform, unless they are said to be excluded.</remarks>
public sealed class ToleranceLimits<T>
    where T : struct, IQuantity
{
    internal ToleranceLimits(ToleranceInterval si) => Si = si;

    internal ToleranceInterval Si { get; }

    /// <summary>The lower limit; null where there is none.</summary>
    public T? Lower => double.IsInfinity(Si.Low) ? null : StrongType<T>.Nearest(Si.Low, "lower");

    /// <summary>The upper limit; null where there is none.</summary>
    public T? Upper => double.IsInfinity(Si.High) ? null : StrongType<T>.Nearest(Si.High, "upper");

    /// <summary>Whether a value exactly at the lower limit does not conform.</summary>
    public bool IsLowerExcluded => Si.IsLowExcluded;

    /// <summary>Whether a value exactly at the upper limit does not conform.</summary>
    public bool IsUpperExcluded => Si.IsHighExcluded;

    /// <summary>The limits in words, such as <c>at most 1 V</c>.</summary>
    public override string ToString() => Si.InWords(Lower, Upper);
}

/// <summary>Makes <see cref="ToleranceLimits{T}"/>.</summary>
public static class ToleranceLimits
{
    /// <summary>An upper limit alone.</summary>
    public static ToleranceLimits<T> AtMost<T>(T upper)
        where T : struct, IQuantity =>
        new(new ToleranceInterval(double.NegativeInfinity, upper.ToQuantity().SiValue));

    /// <summary>An upper limit alone that does not conform itself: <c>x &lt; upper</c>.</summary>
    public static ToleranceLimits<T> Below<T>(T upper)
        where T : struct, IQuantity =>
        new(new ToleranceInterval(double.NegativeInfinity, upper.ToQuantity().SiValue, isHighExcluded: true));

    /// <summary>A lower limit alone.</summary>
    public static ToleranceLimits<T> AtLeast<T>(T lower)
        where T : struct, IQuantity =>
        new(new ToleranceInterval(lower.ToQuantity().SiValue, double.PositiveInfinity));

    /// <summary>A lower limit alone that does not conform itself: <c>x &gt; lower</c>.</summary>
    public static ToleranceLimits<T> Above<T>(T lower)
        where T : struct, IQuantity =>
        new(new ToleranceInterval(lower.ToQuantity().SiValue, double.PositiveInfinity, isLowExcluded: true));

    /// <summary>A lower and an upper limit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The upper limit is not above the lower one.</exception>
    public static ToleranceLimits<T> Between<T>(T lower, T upper)
        where T : struct, IQuantity
    {
        double low = lower.ToQuantity().SiValue, high = upper.ToQuantity().SiValue;
        return high > low ? new ToleranceLimits<T>(new ToleranceInterval(low, high)) : throw Refuse.OutOfRange(high, StrongType<T>.Kind, nameof(upper), "above the lower limit " + lower);
    }
}
