using System;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core;

/// <summary>The limits that a quantity must keep: a lower one, an upper one, or both (JCGM 106 3.3.4 to 3.3.6).</summary>
/// <typeparam name="T">The quantity type.</typeparam>
/// <remarks>Immutable. The limits themselves conform.</remarks>
public sealed class ToleranceLimits<T>
    where T : struct, IQuantity
{
    internal ToleranceLimits(double low, double high)
    {
        SiLow = low;
        SiHigh = high;
    }

    internal double SiLow { get; }

    internal double SiHigh { get; }

    /// <summary>The lower limit; null where there is none.</summary>
    public T? Lower => double.IsInfinity(SiLow) ? null : StrongType<T>.FromSi(SiLow, "lower");

    /// <summary>The upper limit; null where there is none.</summary>
    public T? Upper => double.IsInfinity(SiHigh) ? null : StrongType<T>.FromSi(SiHigh, "upper");

    /// <summary>The limits in words, such as <c>at most 1 V</c>.</summary>
    public override string ToString() =>
        Lower is null ? $"at most {Upper}" : Upper is null ? $"at least {Lower}" : $"from {Lower} to {Upper}";
}

/// <summary>Makes <see cref="ToleranceLimits{T}"/>.</summary>
public static class ToleranceLimits
{
    /// <summary>An upper limit alone.</summary>
    public static ToleranceLimits<T> AtMost<T>(T upper)
        where T : struct, IQuantity =>
        new(double.NegativeInfinity, upper.ToQuantity().SiValue);

    /// <summary>A lower limit alone.</summary>
    public static ToleranceLimits<T> AtLeast<T>(T lower)
        where T : struct, IQuantity =>
        new(lower.ToQuantity().SiValue, double.PositiveInfinity);

    /// <summary>A lower and an upper limit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The upper limit is not above the lower one.</exception>
    public static ToleranceLimits<T> Between<T>(T lower, T upper)
        where T : struct, IQuantity
    {
        double low = lower.ToQuantity().SiValue, high = upper.ToQuantity().SiValue;
        return high > low ? new ToleranceLimits<T>(low, high) : throw Refuse.OutOfRange(high, StrongType<T>.Kind, nameof(upper), "above the lower limit " + lower);
    }
}
