using System;
using System.Collections.Generic;
using Acquisition.Core.Records;

namespace Acquisition.Core;

// Records from arrays. An array is copied unless copy is false: then it is handed over, and whoever made it must not change it any more.
public sealed partial class Record
{
    /// <summary>A record of volts.</summary>
    /// <param name="volts">The samples, at least one. NaN is kept: what is measured on it then says so.</param>
    /// <param name="rate">The sample rate, above 0 Sa/s.</param>
    /// <param name="copy">Whether the array is copied; false hands it over to the record, and nobody may change it any more.</param>
    /// <exception cref="ArgumentException"><paramref name="volts"/> is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rate"/> is 0 Sa/s.</exception>
    public static Record FromVolts(double[] volts, SampleRate rate, bool copy = true) =>
        Make(NumberSamples.Of(Own(volts, copy, nameof(volts))), QuantityKind.Voltage, rate);

    /// <summary>A record of volts in single precision.</summary>
    /// <param name="volts">The samples, at least one.</param>
    /// <param name="rate">The sample rate, above 0 Sa/s.</param>
    /// <param name="copy">Whether the array is copied; false hands it over to the record, and nobody may change it any more.</param>
    /// <exception cref="ArgumentException"><paramref name="volts"/> is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rate"/> is 0 Sa/s.</exception>
    public static Record FromVolts(float[] volts, SampleRate rate, bool copy = true) =>
        Make(NumberSamples.Of(Own(volts, copy, nameof(volts))), QuantityKind.Voltage, rate);

    /// <summary>A record of any kind of quantity.</summary>
    /// <param name="siValues">The samples in the unit that the kind is held in, at least one.</param>
    /// <param name="kind">What they are.</param>
    /// <param name="rate">The sample rate, above 0 Sa/s.</param>
    /// <param name="copy">Whether the array is copied; false hands it over to the record, and nobody may change it any more.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="siValues"/> is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rate"/> is 0 Sa/s.</exception>
    public static Record FromValues(double[] siValues, QuantityKind kind, SampleRate rate, bool copy = true) =>
        Make(NumberSamples.Of(Own(siValues, copy, nameof(siValues))), kind ?? throw new ArgumentNullException(nameof(kind)), rate);

    /// <summary>A record of any kind of quantity in single precision.</summary>
    /// <param name="siValues">The samples in the unit that the kind is held in, at least one.</param>
    /// <param name="kind">What they are.</param>
    /// <param name="rate">The sample rate, above 0 Sa/s.</param>
    /// <param name="copy">Whether the array is copied; false hands it over to the record, and nobody may change it any more.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="siValues"/> is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rate"/> is 0 Sa/s.</exception>
    public static Record FromValues(float[] siValues, QuantityKind kind, SampleRate rate, bool copy = true) =>
        Make(NumberSamples.Of(Own(siValues, copy, nameof(siValues))), kind ?? throw new ArgumentNullException(nameof(kind)), rate);

    /// <summary>A record of 8-bit codes; sample = <paramref name="atZero"/> + code × <paramref name="step"/>. The ends of the code range are taken as the converter's limits.</summary>
    /// <typeparam name="T">The quantity that was converted: <see cref="Voltage"/> mostly.</typeparam>
    /// <param name="codes">The codes, at least one.</param>
    /// <param name="rate">The sample rate, above 0 Sa/s.</param>
    /// <param name="step">The value of one code, above zero.</param>
    /// <param name="atZero">The value of code 0.</param>
    /// <param name="signed">Whether the bytes are two's complement (-128 to 127) instead of 0 to 255.</param>
    /// <param name="copy">Whether the array is copied; false hands it over to the record, and nobody may change it any more.</param>
    /// <exception cref="ArgumentException"><paramref name="codes"/> is empty, or step and value differ in kind.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rate"/> or <paramref name="step"/> is not above zero.</exception>
    public static Record FromCodes<T>(byte[] codes, SampleRate rate, T step, T atZero, bool signed = false, bool copy = true)
        where T : struct, IQuantity =>
        OfCodes(new ByteCodes(Own(codes, copy, nameof(codes)), signed, Step(step), At(atZero, step)), step.ToQuantity().Kind, rate);

    /// <summary>A record of codes of up to 16 bits; sample = <paramref name="atZero"/> + code × <paramref name="step"/>. The ends of the 16-bit range are taken as the converter's limits: give those of a shorter converter with <see cref="WithLimits{T}"/>.</summary>
    /// <typeparam name="T">The quantity that was converted: <see cref="Voltage"/> mostly.</typeparam>
    /// <param name="codes">The codes, at least one.</param>
    /// <param name="rate">The sample rate, above 0 Sa/s.</param>
    /// <param name="step">The value of one code, above zero.</param>
    /// <param name="atZero">The value of code 0.</param>
    /// <param name="signed">Whether the codes are two's complement (-32768 to 32767); false reads the same bits as 0 to 65535.</param>
    /// <param name="copy">Whether the array is copied; false hands it over to the record, and nobody may change it any more.</param>
    /// <exception cref="ArgumentException"><paramref name="codes"/> is empty, or step and value differ in kind.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rate"/> or <paramref name="step"/> is not above zero.</exception>
    public static Record FromCodes<T>(short[] codes, SampleRate rate, T step, T atZero, bool signed = true, bool copy = true)
        where T : struct, IQuantity =>
        OfCodes(new ShortCodes(Own(codes, copy, nameof(codes)), signed, Step(step), At(atZero, step)), step.ToQuantity().Kind, rate);

    /// <summary>The same record with another start.</summary>
    public Record WithStart(Duration start) => With(start: start.SiValue);

    /// <summary>The same samples so far apart.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="interval"/> is not above 0 s.</exception>
    public Record WithSampleInterval(Duration interval)
    {
        double seconds = Refuse.UnlessAboveZero(interval.SiValue, Duration.Kind, nameof(interval));
        return new Record(Samples, Kind, SampleRate.FromSi(1 / seconds, nameof(interval)).SiValue, seconds, true, _start, ResolutionSi, LowLimitSi, HighLimitSi, Name, Provenance, Findings);
    }

    /// <summary>The same record with a name.</summary>
    public Record WithName(string name) => With(name: name ?? throw new ArgumentNullException(nameof(name)));

    /// <summary>The same record with words about where it is from.</summary>
    public Record WithProvenance(string provenance) => With(provenance: provenance ?? throw new ArgumentNullException(nameof(provenance)));

    /// <summary>The same record with the step of its converter.</summary>
    /// <exception cref="ArgumentException">The step is of another kind than the samples.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The step is not above zero.</exception>
    public Record WithResolution<T>(T step)
        where T : struct, IQuantity =>
        With(resolution: Refuse.UnlessAboveZero(step.ToQuantity().Require(Kind, nameof(step)), Kind, nameof(step)));

    /// <summary>The same record with the ends of its converter: samples at or beyond them count as clipped.</summary>
    /// <exception cref="ArgumentException">A limit is of another kind than the samples.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The high limit is not above the low one.</exception>
    public Record WithLimits<T>(T low, T high)
        where T : struct, IQuantity
    {
        double from = low.ToQuantity().Require(Kind, nameof(low)), to = high.ToQuantity().Require(Kind, nameof(high));
        return to > from ? With(low: from, high: to) : throw Refuse.OutOfRange(to, Kind, nameof(high), "above the low limit " + QuantityText.Format(from, Kind, null, null));
    }

    /// <summary>The same record without limits: no sample counts as clipped.</summary>
    public Record WithoutLimits() => new(Samples, Kind, _rate, _interval, _keepsInterval, _start, ResolutionSi, null, null, Name, Provenance, Findings);

    /// <summary>A record of samples that nobody else holds, so far apart.</summary>
    internal static Record OfInterval(SampleStore samples, QuantityKind kind, double interval, double start) =>
        OfRate(samples, kind, SampleRate.FromSi(1 / interval, nameof(interval)).SiValue).WithSampleInterval(Duration.FromSi(interval, nameof(interval))).WithStart(Duration.FromSi(start, nameof(start)));

    internal static Record OfRate(SampleStore samples, QuantityKind kind, double rate)
    {
        double fs = Refuse.UnlessAboveZero(rate, SampleRate.Kind, nameof(rate));
        double? step = null, low = null, high = null;
        if (samples is CodeSamples codes)
            (step, low, high) = (codes.Scale, codes.ValueOf(0), codes.ValueOf(codes.Codes - 1));
        return new Record(samples, kind, fs, 1 / fs, false, 0, step, low, high, "", "", Array.Empty<Finding>());
    }

    internal Record With(SampleStore? samples = null, double? start = null, double? resolution = null, double? low = null, double? high = null, string? name = null, string? provenance = null, IReadOnlyList<Finding>? findings = null) =>
        new(samples ?? Samples, Kind, _rate, _interval, _keepsInterval, start ?? _start, resolution ?? ResolutionSi, low ?? LowLimitSi, high ?? HighLimitSi, name ?? Name, provenance ?? Provenance, findings ?? Findings);

    private static Record Make(SampleStore samples, QuantityKind kind, SampleRate rate) => OfRate(samples, kind, rate.SiValue);

    private static Record OfCodes(CodeSamples samples, QuantityKind kind, SampleRate rate) => OfRate(samples, kind, rate.SiValue);

    private static double Step<T>(T step)
        where T : struct, IQuantity
    {
        Quantity quantity = step.ToQuantity();
        return Refuse.UnlessAboveZero(quantity.SiValue, quantity.Kind, nameof(step), "invert the samples of an inverting input yourself");
    }

    private static double At<T>(T atZero, T step)
        where T : struct, IQuantity => atZero.ToQuantity().Require(step.ToQuantity().Kind, nameof(atZero));

    private static T[] Own<T>(T[] values, bool copy, string argument)
    {
        _ = values ?? throw new ArgumentNullException(argument);
        if (values.Length == 0)
            throw new ArgumentException($"{argument} must hold at least one sample", argument);
        return copy ? (T[])values.Clone() : values;
    }
}
