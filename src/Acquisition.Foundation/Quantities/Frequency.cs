using System;

namespace Acquisition.Core;

/// <summary>A frequency: cycles per second. A bandwidth is a frequency too; a sample rate is not (see <see cref="SampleRate"/>).</summary>
/// <remarks>Held in hertz, finite. The default value is 0 Hz, which is DC. Immutable and thread-safe.</remarks>
public readonly partial struct Frequency
{
    private readonly double _value;

    private Frequency(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.Frequency;

    internal double SiValue => _value;

    internal static Frequency FromSi(double value, string argument) =>
        IsInRange(value) ? new Frequency(value) : throw Refuse.NotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static Frequency FromResult(double value, string operand) =>
        IsInRange(value) ? new Frequency(value) : throw Refuse.NotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => Math.Abs(value) <= double.MaxValue;

    /// <summary>The frequency in hertz.</summary>
    public double Hertz => _value;

    /// <summary>A frequency given in hertz.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Frequency FromHertz(double hertz) => FromSi(hertz, nameof(hertz));

    /// <summary>The frequency in millihertz.</summary>
    public double Millihertz => _value * 1e3;

    /// <summary>A frequency given in millihertz.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Frequency FromMillihertz(double millihertz) => FromSi(millihertz / 1e3, nameof(millihertz));

    /// <summary>The frequency in kilohertz.</summary>
    public double Kilohertz => _value / 1e3;

    /// <summary>A frequency given in kilohertz.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Frequency FromKilohertz(double kilohertz) => FromSi(kilohertz * 1e3, nameof(kilohertz));

    /// <summary>The frequency in megahertz.</summary>
    public double Megahertz => _value / 1e6;

    /// <summary>A frequency given in megahertz.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Frequency FromMegahertz(double megahertz) => FromSi(megahertz * 1e6, nameof(megahertz));

    /// <summary>The frequency in gigahertz.</summary>
    public double Gigahertz => _value / 1e9;

    /// <summary>A frequency given in gigahertz.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Frequency FromGigahertz(double gigahertz) => FromSi(gigahertz * 1e9, nameof(gigahertz));

    /// <summary>One cycle of this frequency.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is 0 Hz.</exception>
    public Duration Period => 1.0 / this;

    /// <summary>The time of <paramref name="cycles"/> cycles at <paramref name="frequency"/>; with 0.35 and a bandwidth, the trade's rule of thumb for a rise time.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is 0 Hz.</exception>
    public static Duration operator /(double cycles, Frequency frequency) => Duration.FromResult(cycles / frequency._value, nameof(frequency));

    /// <summary>How many cycles pass in a time.</summary>
    public static Ratio operator *(Frequency frequency, Duration duration) => Ratio.FromResult(frequency._value * duration.SiValue, nameof(duration));
}
