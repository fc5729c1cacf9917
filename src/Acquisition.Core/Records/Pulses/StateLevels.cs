using System;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>The two levels that a pulse signal rests at, and the noise around them.</summary>
/// <remarks>Immutable.</remarks>
public sealed class StateLevels
{
    private readonly QuantityKind _kind;

    internal StateLevels(double low, double high, double noise, double step, double lowUncertainty, double highUncertainty, StateLevelMethod method, int? bins, QuantityKind kind, bool quiet = false)
    {
        IsQuiet = quiet;
        SampleUncertaintySi = quiet ? step / Math.Sqrt(12) : Math.Sqrt(noise * noise + step * step / 12);
        LowUncertaintySi = lowUncertainty;
        HighUncertaintySi = highUncertainty;
        LowSi = low;
        HighSi = high;
        NoiseSi = noise;
        Method = method;
        Bins = bins;
        _kind = kind;
    }

    internal double LowSi { get; }

    internal double HighSi { get; }

    internal double NoiseSi { get; }

    /// <summary>
    /// Of a single sample: noise and quantisation. Noise above a step holds the quantisation already; it then counts for at most 4 % too much. Of a signal without noise it is the
    /// quantisation alone: the samples that are still on their way to the state spread over several codes too, but that is no noise.
    /// </summary>
    internal double SampleUncertaintySi { get; }

    /// <summary>Whether the signal rests on one code in either state: there is no noise to see.</summary>
    internal bool IsQuiet { get; }

    /// <summary>What more is known of the noise; null where it was not looked for.</summary>
    internal StateNoise? OfNoise { get; init; }

    /// <summary>That the noise is slow, so that it may be a change; null where it is not.</summary>
    internal Finding? SlowNoise { get; init; }

    internal double LowUncertaintySi { get; }

    internal double HighUncertaintySi { get; }

    internal double AmplitudeSi => HighSi - LowSi;

    /// <summary>The level of the low state.</summary>
    public Quantity Low => new(LowSi, _kind);

    /// <summary>The level of the high state.</summary>
    public Quantity High => new(HighSi, _kind);

    /// <summary>From the low to the high state.</summary>
    public Quantity Amplitude => new(AmplitudeSi, _kind);

    /// <summary>
    /// The standard uncertainty of the low level within the record: quantisation, noise, and the distance from the mean of all samples near it, which tells how much the method
    /// matters. 0 for given levels. Gain and offset of the instrument are not in the record and not in it (handbook 6.11, 11.11).
    /// </summary>
    public Quantity LowUncertainty => new(LowUncertaintySi, _kind);

    /// <summary>The standard uncertainty of the high level; see <see cref="LowUncertainty"/>.</summary>
    public Quantity HighUncertainty => new(HighUncertaintySi, _kind);

    /// <summary>The standard uncertainty of the amplitude: that of both levels.</summary>
    public Quantity AmplitudeUncertainty => new(Math.Sqrt(LowUncertaintySi * LowUncertaintySi + HighUncertaintySi * HighUncertaintySi), _kind);

    /// <summary>
    /// The rms noise of a sample at the noisier state; 0 where it is below the step of the converter. Lines are fitted to windows along the states, longer and longer ones until they see no more of it: settling,
    /// tilt, drift and ringing are not in it, noise behind a bandwidth limit is. States of fewer than 8 samples show what all samples near them scatter by, settling included.
    /// </summary>
    public Quantity Noise => new(NoiseSi, _kind);

    /// <summary>How the levels were found.</summary>
    public StateLevelMethod Method { get; }

    /// <summary>The bins of the histogram; null for methods without one.</summary>
    public int? Bins { get; }

    /// <summary>The level so far from the low to the high state.</summary>
    public Quantity At(Ratio reference) => new(AtFraction(reference.SiValue), _kind);

    internal double AtFraction(double fraction) => LowSi + fraction * AmplitudeSi;

    /// <summary>Levels and method in one line.</summary>
    public override string ToString() => $"{Low.InWords()} and {High.InWords()} ({MethodInWords}" + (Bins is { } bins ? FormattableString.Invariant($", {bins} bins)") : ")");

    private string MethodInWords => Method switch
    {
        StateLevelMethod.HistogramMode => "histogram mode",
        StateLevelMethod.HistogramBinCenter => "histogram bin centre",
        StateLevelMethod.ShorthMean => "shorth mean",
        StateLevelMethod.ShorthMidpoint => "shorth midpoint",
        _ => "given",
    };
}
