using System;
using System.Collections.Generic;
using System.Numerics;
using Acquisition.Core.Responses;

namespace Acquisition.Core;

/// <summary>
/// How one stage, or a whole chain of them, shapes what passes through it: a linear, time-invariant response. It answers in frequency (gain, phase, delay,
/// bandwidth) and in time (step, rise time, overshoot, settling), both computed from the same model.
/// </summary>
/// <remarks>Immutable and thread-safe. Frequencies are at least 0 Hz. Bandwidth means half power, 1/√2 in amplitude, re the <see cref="ReferenceGain"/> (handbook 1.2).</remarks>
#if NET8_0_OR_GREATER
[System.Text.Json.Serialization.JsonConverter(typeof(ResultJsonConverter))]
#endif
public abstract partial class Response
{
    private IReadOnlyList<Response>? _stages;

    private protected Response(string name) => Name = name;

    /// <summary>What the response is, in a few words: <c>Gaussian, 200 MHz</c>.</summary>
    public string Name { get; }

    /// <summary>The stages of a cascade, in order; the response itself where it is not one.</summary>
    public IReadOnlyList<Response> Stages => _stages ?? new[] { this };

    /// <summary>The parallel branches (mostly one) of a response that has factors, null for one known only by its gain at each frequency.</summary>
    internal virtual IReadOnlyList<Factors>? Branches => null;

    /// <summary>The ways through that arrive at times of their own, as far as they can be told apart; their sum is the response.</summary>
    /// <param name="rest">What the other stages of the cascade pass at a frequency in Hz, re their reference: what they stop need not be told apart.</param>
    internal virtual IReadOnlyList<Way> Ways(Func<double, double> rest) => new[] { new Way(this, 0) };

    /// <summary>The gain at one frequency of at least 0 Hz, unchecked: the kernel.</summary>
    internal abstract Complex ComplexGain(double hertz);

    /// <summary>The squared magnitude at one frequency.</summary>
    internal virtual double PowerGain(double hertz)
    {
        Complex gain = ComplexGain(hertz);
        return gain.Real * gain.Real + gain.Imaginary * gain.Imaginary;
    }

    /// <summary>The phase at one frequency in radians, continuous from DC where the model allows it.</summary>
    internal virtual double PhaseRadians(double hertz)
    {
        Complex gain = ComplexGain(hertz);
        return Math.Atan2(gain.Imaginary, gain.Real);
    }

    /// <summary>The group delay -dφ/dω at one frequency in seconds.</summary>
    internal virtual double GroupDelaySeconds(double hertz)
    {
        double step = hertz > 0 ? hertz * 1e-4 : FrequencyScale * 1e-6;
        double low = Math.Max(0, hertz - step), high = hertz + step;
        Complex turn = ComplexGain(high) * Complex.Conjugate(ComplexGain(low));
        return -Math.Atan2(turn.Imaginary, turn.Real) / (2 * Math.PI * (high - low));
    }

    /// <summary>A frequency in hertz near which the response changes: where searches begin.</summary>
    internal abstract double FrequencyScale { get; }

    /// <summary>The complex gain at a frequency: real and imaginary part of output over input.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative, or outside the data of a measured response.</exception>
    public Complex ComplexGain(Frequency frequency) => ComplexGain(Hertz(frequency, nameof(frequency)));

    /// <summary>The magnitude of the gain as a ratio of amplitudes.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative, or outside the data of a measured response.</exception>
    public Ratio AmplitudeRatio(Frequency frequency) => Ratio.FromSi(Magnitude(Hertz(frequency, nameof(frequency))), nameof(frequency));

    /// <summary>The gain in decibels, 20 lg of the ratio of amplitudes (handbook 1.1).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative, outside the data of a measured response, or one that the response blocks altogether.</exception>
    public DecibelRatio Gain(Frequency frequency)
    {
        double power = PowerGain(Hertz(frequency, nameof(frequency)));
        return power > 0
            ? DecibelRatio.FromSi(10 * Math.Log10(power), nameof(frequency))
            : throw Refuse.OutOfRange(frequency.SiValue, Frequency.Kind, nameof(frequency), "a frequency that passes", $"{Name} passes nothing there, and the logarithm of 0 does not exist");
    }

    /// <summary>The phase of output against input; lagging is negative. Continuous from DC for analogue models, cascades and measured responses: it does not jump by a turn.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative, or outside the data of a measured response.</exception>
    public Angle Phase(Frequency frequency) => Angle.FromSi(PhaseRadians(Hertz(frequency, nameof(frequency))), nameof(frequency));

    /// <summary>The group delay: minus the slope of phase over angular frequency; how late the envelope of a narrow band around the frequency arrives.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative, or outside the data of a measured response.</exception>
    public Duration GroupDelay(Frequency frequency) => Duration.FromSi(GroupDelaySeconds(Hertz(frequency, nameof(frequency))), nameof(frequency));

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    internal double Magnitude(double hertz) => Math.Sqrt(PowerGain(hertz));

    private protected static double Hertz(Frequency frequency, string argument) =>
        frequency.SiValue >= 0 ? frequency.SiValue : throw Refuse.OutOfRange(frequency.SiValue, Frequency.Kind, argument, "at least 0 Hz");
}
