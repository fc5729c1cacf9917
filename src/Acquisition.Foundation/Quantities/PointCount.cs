using System;

namespace Acquisition.Core;

/// <summary>A whole number of points, that is of samples: a record length, a memory depth.</summary>
/// <remarks>
/// Held as a 64-bit integer from 0 to 9 007 199 254 740 992 points (2^53), so that each count is exact in text, in formulas and in arithmetic.
/// The default value is no points. Immutable and thread-safe.
/// </remarks>
public readonly partial struct PointCount
{
    /// <summary>The largest count: 2^53 points.</summary>
    public static PointCount MaxValue => new(Limit);

    private const long Limit = 1L << 53;

    /// <summary>How far a computed product may lie from a whole number, relative to it, and still mean that number.</summary>
    private const double ForgivenRelativeError = 4 * 2.220446049250313e-16;

    private readonly long _value;

    private PointCount(long value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.PointCount;

    internal double SiValue => _value;

    internal static PointCount FromSi(double value, string argument)
    {
        if (!(value >= 0 && value <= Limit)) throw Refuse.OutOfRange(value, Kind, argument, "from 0 pts to 9007199254740992 pts");
        if (value != Math.Floor(value)) throw Refuse.OutOfRange(value, Kind, argument, "a whole number of points");
        return new PointCount((long)value);
    }

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static PointCount FromResult(double value, string operand) =>
        value >= 0 && value <= Limit ? new PointCount((long)value) : throw Refuse.Result(value, Kind, operand, "from 0 pts to 9007199254740992 pts");

    private static PointCount FromResult(long value, string operand) =>
        value >= 0 && value <= Limit ? new PointCount(value) : throw Refuse.Result(value, Kind, operand, "from 0 pts to 9007199254740992 pts");

    private static bool IsInRange(double value) => value >= 0 && value <= Limit && value == Math.Floor(value);

    /// <summary>The number of points.</summary>
    public long Points => _value;

    /// <summary>A number of points.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="points"/> is negative or above 2^53.</exception>
    public static PointCount FromPoints(long points) =>
        points >= 0 && points <= Limit ? new PointCount(points) : throw Refuse.OutOfRange(points, Kind, nameof(points), "from 0 pts to 9007199254740992 pts");

    /// <summary>Thousands of points (10^3, not 2^10).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The count is negative, not whole, or above 2^53.</exception>
    public static PointCount FromKilopoints(double kilopoints) => FromScaled(kilopoints, 1e3, nameof(kilopoints));

    /// <summary>Millions of points (10^6, not 2^20).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The count is negative, not whole, or above 2^53.</exception>
    public static PointCount FromMegapoints(double megapoints) => FromScaled(megapoints, 1e6, nameof(megapoints));

    /// <summary>Thousands of millions of points (10^9).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The count is negative, not whole, or above 2^53.</exception>
    public static PointCount FromGigapoints(double gigapoints) => FromScaled(gigapoints, 1e9, nameof(gigapoints));

    /// <summary>
    /// The whole points in a computed product such as rate times time: rounded down, after a distance of a few last bits to the next whole number is
    /// forgiven, so that 140 ms at 100 kSa/s is 14 000 points although the product of the two binary numbers may fall short of it.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="points"/> is negative, not finite or above 2^53.</exception>
    internal static PointCount FromProduct(double points, string argument)
    {
        double nearest = Math.Round(points);
        bool isWhole = Math.Abs(points - nearest) <= ForgivenRelativeError * Math.Abs(points);
        return FromResult(isWhole ? nearest : Math.Floor(points), argument);
    }

    private static PointCount FromScaled(double value, double scale, string argument)
    {
        double points = value * scale;
        double nearest = Math.Round(points);
        bool isWhole = Math.Abs(points - nearest) <= ForgivenRelativeError * Math.Abs(points);
        return FromSi(isWhole ? nearest : points, argument);
    }

    /// <summary>The sum.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The sum is above 2^53.</exception>
    public static PointCount operator +(PointCount left, PointCount right) => FromResult(left._value + right._value, nameof(right));

    /// <summary>The difference.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The difference is negative.</exception>
    public static PointCount operator -(PointCount left, PointCount right) => FromResult(left._value - right._value, nameof(right));

    /// <summary>So many records of this length.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The product is negative or above 2^53.</exception>
    public static PointCount operator *(PointCount count, int factor) =>
        Math.Abs((double)count._value * factor) > 2 * (double)Limit ? FromResult((double)count._value * factor, nameof(factor)) : FromResult(count._value * factor, nameof(factor));

    /// <summary>How many times the divisor the count is.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="divisor"/> is no points.</exception>
    public static Ratio operator /(PointCount count, PointCount divisor) => Ratio.FromResult((double)count._value / divisor._value, nameof(divisor));

    /// <summary>The time that so many samples take at a rate: N intervals, the window (handbook 5.4).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rate"/> is 0 Sa/s.</exception>
    public static Duration operator /(PointCount count, SampleRate rate) => Duration.FromResult(count._value / rate.SiValue, nameof(rate));

    /// <summary>The rate that fills a time with so many samples (handbook 5.4).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="window"/> is not above 0 s.</exception>
    public static SampleRate operator /(PointCount count, Duration window) => SampleRate.FromResult(count._value / window.SiValue, nameof(window));
}
