using System;

namespace Acquisition.Core;

/// <summary>A time interval: an edge, a window, a delay. Negative means earlier.</summary>
/// <remarks>Held in seconds, finite. The default value is 0 s. Immutable and thread-safe.</remarks>
public readonly partial struct Duration
{
    private readonly double _value;

    private Duration(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.Duration;

    internal double SiValue => _value;

    internal static Duration FromSi(double value, string argument) =>
        IsInRange(value) ? new Duration(value) : throw Refuse.NotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static Duration FromResult(double value, string operand) =>
        IsInRange(value) ? new Duration(value) : throw Refuse.NotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => Math.Abs(value) <= double.MaxValue;

    /// <summary>The duration in seconds.</summary>
    public double Seconds => _value;

    /// <summary>A duration given in seconds.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Duration FromSeconds(double seconds) => FromSi(seconds, nameof(seconds));

    /// <summary>The duration in milliseconds.</summary>
    public double Milliseconds => _value * 1e3;

    /// <summary>A duration given in milliseconds.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Duration FromMilliseconds(double milliseconds) => FromSi(milliseconds / 1e3, nameof(milliseconds));

    /// <summary>The duration in microseconds.</summary>
    public double Microseconds => _value * 1e6;

    /// <summary>A duration given in microseconds.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Duration FromMicroseconds(double microseconds) => FromSi(microseconds / 1e6, nameof(microseconds));

    /// <summary>The duration in nanoseconds.</summary>
    public double Nanoseconds => _value * 1e9;

    /// <summary>A duration given in nanoseconds.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Duration FromNanoseconds(double nanoseconds) => FromSi(nanoseconds / 1e9, nameof(nanoseconds));

    /// <summary>The duration in picoseconds.</summary>
    public double Picoseconds => _value * 1e12;

    /// <summary>A duration given in picoseconds.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Duration FromPicoseconds(double picoseconds) => FromSi(picoseconds / 1e12, nameof(picoseconds));

    /// <summary>The duration in femtoseconds.</summary>
    public double Femtoseconds => _value * 1e15;

    /// <summary>A duration given in femtoseconds.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Duration FromFemtoseconds(double femtoseconds) => FromSi(femtoseconds / 1e15, nameof(femtoseconds));

    /// <summary>How many cycles of a frequency pass in this time.</summary>
    public static Ratio operator *(Duration duration, Frequency frequency) => Ratio.FromResult(duration._value * frequency.SiValue, nameof(frequency));

    /// <summary>How many samples a rate takes in this time, rounded down to whole points after the last bits are forgiven (see <see cref="PointCount.FromProduct"/>).</summary>
    public static PointCount operator *(Duration duration, SampleRate rate) => PointCount.FromProduct(duration._value * rate.SiValue, nameof(rate));

    /// <summary>The frequency at which <paramref name="cycles"/> cycles take this time.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="duration"/> is 0 s.</exception>
    public static Frequency operator /(double cycles, Duration duration) => Frequency.FromResult(cycles / duration._value, nameof(duration));
}
