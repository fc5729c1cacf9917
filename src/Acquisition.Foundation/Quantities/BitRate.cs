using System;

namespace Acquisition.Core;

/// <summary>Bits sent per second on a line.</summary>
/// <remarks>Held in bits per second, finite and never negative. The default value is 0 bit/s. Immutable and thread-safe.</remarks>
public readonly partial struct BitRate
{
    private readonly double _value;

    private BitRate(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.BitRate;

    internal double SiValue => _value;

    internal static BitRate FromSi(double value, string argument) =>
        IsInRange(value) ? new BitRate(value) : throw Refuse.NegativeOrNotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static BitRate FromResult(double value, string operand) =>
        IsInRange(value) ? new BitRate(value) : throw Refuse.NegativeOrNotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => value >= 0 && value <= double.MaxValue;

    /// <summary>The bit rate in bits per second.</summary>
    public double BitsPerSecond => _value;

    /// <summary>A bit rate given in bits per second.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static BitRate FromBitsPerSecond(double bitsPerSecond) => FromSi(bitsPerSecond, nameof(bitsPerSecond));

    /// <summary>The bit rate in kilobits per second.</summary>
    public double KilobitsPerSecond => _value / 1e3;

    /// <summary>A bit rate given in kilobits per second.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static BitRate FromKilobitsPerSecond(double kilobitsPerSecond) => FromSi(kilobitsPerSecond * 1e3, nameof(kilobitsPerSecond));

    /// <summary>The bit rate in megabits per second.</summary>
    public double MegabitsPerSecond => _value / 1e6;

    /// <summary>A bit rate given in megabits per second.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static BitRate FromMegabitsPerSecond(double megabitsPerSecond) => FromSi(megabitsPerSecond * 1e6, nameof(megabitsPerSecond));

    /// <summary>The bit rate in gigabits per second.</summary>
    public double GigabitsPerSecond => _value / 1e9;

    /// <summary>A bit rate given in gigabits per second.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static BitRate FromGigabitsPerSecond(double gigabitsPerSecond) => FromSi(gigabitsPerSecond * 1e9, nameof(gigabitsPerSecond));

    /// <summary>The duration of one bit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The rate is 0 bit/s.</exception>
    public Duration UnitInterval => Duration.FromSi(1.0 / _value, "rate");

    /// <summary>The highest fundamental a two-level bit stream can hold: that of alternating bits, half the bit rate (handbook 4.2).</summary>
    public Frequency HighestFundamental => Frequency.FromSi(_value / 2, "rate");
}
