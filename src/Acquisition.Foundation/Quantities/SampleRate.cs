using System;

namespace Acquisition.Core;

/// <summary>Samples taken per second. It has the dimension of a frequency but is none: adding the two does not compile.</summary>
/// <remarks>Held in samples per second, finite and never negative. The default value is 0 Sa/s, which cannot clock anything: whatever divides by it refuses it by name. Immutable and thread-safe.</remarks>
public readonly partial struct SampleRate
{
    private readonly double _value;

    private SampleRate(double value) => _value = value;

    internal static QuantityKind Kind => QuantityKind.SampleRate;

    internal double SiValue => _value;

    internal static SampleRate FromSi(double value, string argument) =>
        IsInRange(value) ? new SampleRate(value) : throw Refuse.NegativeOrNotFinite(value, Kind, argument);

    /// <summary>What an operator gives; the operand named is the one that can be chosen otherwise.</summary>
    internal static SampleRate FromResult(double value, string operand) =>
        IsInRange(value) ? new SampleRate(value) : throw Refuse.NegativeOrNotFiniteResult(value, Kind, operand);

    private static bool IsInRange(double value) => value >= 0 && value <= double.MaxValue;

    /// <summary>The sample rate in samples per second.</summary>
    public double SamplesPerSecond => _value;

    /// <summary>A sample rate given in samples per second.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static SampleRate FromSamplesPerSecond(double samplesPerSecond) => FromSi(samplesPerSecond, nameof(samplesPerSecond));

    /// <summary>The sample rate in kilosamples per second.</summary>
    public double KilosamplesPerSecond => _value / 1e3;

    /// <summary>A sample rate given in kilosamples per second.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static SampleRate FromKilosamplesPerSecond(double kilosamplesPerSecond) => FromSi(kilosamplesPerSecond * 1e3, nameof(kilosamplesPerSecond));

    /// <summary>The sample rate in megasamples per second.</summary>
    public double MegasamplesPerSecond => _value / 1e6;

    /// <summary>A sample rate given in megasamples per second.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static SampleRate FromMegasamplesPerSecond(double megasamplesPerSecond) => FromSi(megasamplesPerSecond * 1e6, nameof(megasamplesPerSecond));

    /// <summary>The sample rate in gigasamples per second.</summary>
    public double GigasamplesPerSecond => _value / 1e9;

    /// <summary>A sample rate given in gigasamples per second.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static SampleRate FromGigasamplesPerSecond(double gigasamplesPerSecond) => FromSi(gigasamplesPerSecond * 1e9, nameof(gigasamplesPerSecond));

    /// <summary>The time from one sample to the next.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The rate is 0 Sa/s.</exception>
    public Duration SampleInterval => Duration.FromSi(1.0 / _value, "rate");

    /// <summary>Half the sample rate: content at and above it folds down (handbook 5.1).</summary>
    public Frequency NyquistFrequency => Frequency.FromSi(_value / 2, "rate");

    /// <summary>The rate whose samples are <paramref name="interval"/> apart.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="interval"/> is not above 0 s.</exception>
    public static SampleRate FromSampleInterval(Duration interval) => FromSi(1.0 / interval.SiValue, nameof(interval));

    /// <summary>How many samples are taken in a time, rounded down to whole points after the last bits are forgiven (see <see cref="PointCount.FromProduct"/>).</summary>
    public static PointCount operator *(SampleRate rate, Duration duration) => PointCount.FromProduct(rate._value * duration.SiValue, nameof(duration));

    /// <summary>How many samples fall into one period of a frequency.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is 0 Hz.</exception>
    public static Ratio operator /(SampleRate rate, Frequency frequency) => Ratio.FromResult(rate._value / frequency.SiValue, nameof(frequency));
}
