using System;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>One point of a measured response: frequency, gain and, where it was measured, phase.</summary>
public readonly struct FrequencyPoint : IEquatable<FrequencyPoint>
{
    /// <summary>A point with gain and phase.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative.</exception>
    public FrequencyPoint(Frequency frequency, DecibelRatio gain, Angle phase)
    {
        if (!(frequency.SiValue >= 0))
            throw Refuse.OutOfRange(frequency.SiValue, Frequency.Kind, nameof(frequency), "at least 0 Hz");
        Frequency = frequency;
        Gain = gain;
        Phase = phase;
    }

    /// <summary>A point whose phase is not known, taken as 0: a sweep of amplitudes. What is computed in time from such points assumes linear phase (handbook 2.7).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative.</exception>
    public FrequencyPoint(Frequency frequency, DecibelRatio gain)
        : this(frequency, gain, default)
    {
    }

    /// <summary>The frequency.</summary>
    public Frequency Frequency { get; }

    /// <summary>The gain.</summary>
    public DecibelRatio Gain { get; }

    /// <summary>The phase of output against input; lagging is negative. Jumps of a whole turn from point to point are undone.</summary>
    public Angle Phase { get; }

    /// <inheritdoc/>
    public bool Equals(FrequencyPoint other) => Frequency.Equals(other.Frequency) && Gain.Equals(other.Gain) && Phase.Equals(other.Phase);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is FrequencyPoint other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => Frequency.GetHashCode() ^ (Gain.GetHashCode() * 397) ^ (Phase.GetHashCode() * 7919);

    /// <summary>Whether the two are the same.</summary>
    public static bool operator ==(FrequencyPoint left, FrequencyPoint right) => left.Equals(right);

    /// <summary>Whether the two differ.</summary>
    public static bool operator !=(FrequencyPoint left, FrequencyPoint right) => !left.Equals(right);

    internal static FrequencyPoint From(double hertz, Complex gain, string argument) =>
        new(Frequency.FromSi(hertz, argument), DecibelRatio.FromSi(Math.Max(20 * Math.Log10(Complex.Abs(gain)), -400), argument), Angle.FromSi(gain.Phase, argument));
}
