using System;
using System.Collections.Generic;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>
/// What was captured: uniform samples, measured or simulated, with their rate, start, unit, vertical resolution, limits and provenance. Codes of a converter stay codes:
/// a record of 200 million 8-bit samples takes 200 MB and no more.
/// </summary>
/// <remarks>Immutable and thread-safe. A sample owns the interval that begins at its time, so that a record of N samples lasts N intervals (handbook 5.4).</remarks>
public sealed partial class Record
{
    private readonly double _rate, _interval, _start;
    private readonly bool _keepsInterval;

    private Record(SampleStore samples, QuantityKind kind, double rate, double interval, bool keepsInterval, double start, double? resolution, double? low, double? high, string name, string provenance, IReadOnlyList<Finding> findings)
    {
        Samples = samples;
        Kind = kind;
        _rate = rate;
        _interval = interval;
        _keepsInterval = keepsInterval;
        _start = start;
        ResolutionSi = resolution;
        LowLimitSi = low;
        HighLimitSi = high;
        Name = name;
        Provenance = provenance;
        Findings = findings.Frozen();
    }

    internal SampleStore Samples { get; }

    internal int Length => Samples.Length;

    internal double? ResolutionSi { get; }

    internal double? LowLimitSi { get; }

    internal double? HighLimitSi { get; }

    internal double IntervalSeconds => _interval;

    internal double RateSi => _rate;

    /// <summary>What the samples are: volts mostly.</summary>
    public QuantityKind Kind { get; }

    /// <summary>What was captured, such as the name of a column or channel; empty where unknown.</summary>
    public string Name { get; }

    /// <summary>Where the samples are from, in words; empty where unknown.</summary>
    public string Provenance { get; }

    /// <summary>What to know of the samples before anything is measured on them: units that a file does not say and that were assumed. What is measured on them passes them on.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>How many samples.</summary>
    public PointCount Count => PointCount.FromPoints(Samples.Length);

    /// <summary>Samples per second.</summary>
    public SampleRate SampleRate => SampleRate.FromSi(_rate, "rate");

    /// <summary>The time from sample to sample.</summary>
    public Duration SampleInterval => Duration.FromSi(_interval, "interval");

    /// <summary>The time of the first sample, counted from the trigger or whatever the record counts from.</summary>
    public Duration Start => Duration.FromSi(_start, "start");

    /// <summary>The window: N samples own N intervals (handbook 5.4).</summary>
    public Duration Window => Duration.FromSi(Span(Samples.Length), "window");

    /// <summary>The vertical step of the converter; null where unknown.</summary>
    public Quantity? Resolution => Of(ResolutionSi);

    /// <summary>At or below this value the converter is at its end and the signal may lie beyond; null where unknown.</summary>
    public Quantity? LowLimit => Of(LowLimitSi);

    /// <summary>At or above this value the converter is at its end and the signal may lie beyond; null where unknown.</summary>
    public Quantity? HighLimit => Of(HighLimitSi);

    /// <summary>The time of a sample.</summary>
    /// <param name="index">Which sample, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="index"/> is outside the record.</exception>
    public Duration TimeAt(long index) => Duration.FromSi(TimeSi(RequireIndex(index)), nameof(index));

    /// <summary>A sample with its unit.</summary>
    /// <param name="index">Which sample, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="index"/> is outside the record, or the sample is not a finite number.</exception>
    public Quantity ValueAt(long index) => new(Samples[RequireIndex(index)], Kind);

    /// <summary>A sample in the SI unit of the record's kind (volts of a record of volts). It may be NaN where the file or array held one.</summary>
    /// <param name="index">Which sample, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="index"/> is outside the record.</exception>
    public double ReadingAt(long index) => Samples[RequireIndex(index)];

    /// <summary>All samples in the SI unit of the record's kind, as a new array.</summary>
    public double[] ToSiValues()
    {
        var values = new double[Samples.Length];
        Samples.Copy(0, values, 0, values.Length);
        return values;
    }

    /// <summary>Copies a block of samples, in the SI unit of the record's kind, into an array.</summary>
    /// <param name="firstIndex">The first sample of the block, from 0.</param>
    /// <param name="siValues">Where they go.</param>
    /// <param name="offset">The first place they go to.</param>
    /// <param name="count">How many.</param>
    /// <exception cref="ArgumentNullException"><paramref name="siValues"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The block is not within the record, or not within the array.</exception>
    public void CopySiValues(long firstIndex, double[] siValues, int offset, int count)
    {
        _ = siValues ?? throw new ArgumentNullException(nameof(siValues));
        if (firstIndex < 0 || count < 0 || firstIndex > Samples.Length - (long)count)
            throw new ArgumentOutOfRangeException(nameof(firstIndex), FormattableString.Invariant($"firstIndex and count must name a block within the {Samples.Length} samples; were {firstIndex} and {count}"));
        if (offset < 0 || offset > siValues.Length - count)
            throw new ArgumentOutOfRangeException(nameof(offset), FormattableString.Invariant($"offset and count must name a block within the array of {siValues.Length}; were {offset} and {count}"));
        Samples.Copy((int)firstIndex, siValues, offset, count);
    }

    /// <summary>A stretch of the record, with its own start; nothing is copied.</summary>
    /// <param name="firstIndex">The first sample, from 0.</param>
    /// <param name="count">How many samples, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The stretch is empty or not within the record.</exception>
    public Record Slice(long firstIndex, long count)
    {
        if (firstIndex < 0 || count < 1 || firstIndex > Samples.Length - count)
            throw new ArgumentOutOfRangeException(nameof(firstIndex), FormattableString.Invariant($"firstIndex and count must name at least one of the {Samples.Length} samples; were {firstIndex} and {count}"));
        return With(samples: Samples.Slice((int)firstIndex, (int)count), start: TimeSi((int)firstIndex));
    }

    /// <summary>Name, count, rate and unit in one line.</summary>
    public override string ToString() => (Name.Length > 0 ? Name + ": " : "") + $"{Count} at {SampleRate.InWords(7)} ({Kind.Symbol})";

    /// <summary>The time of a place in the record, which may lie between samples, s.</summary>
    internal double TimeSi(double place) => _start + Span(place);

    /// <summary>So many intervals, s: divided where the rate is what was given, so that whole rates give the nearest times.</summary>
    internal double Span(double intervals) => _keepsInterval ? intervals * _interval : intervals / _rate;

    internal FourNumbers Span(FourNumbers intervals) => _keepsInterval ? intervals * _interval : intervals / _rate;

    private Quantity? Of(double? siValue) => siValue is { } value ? new Quantity(value, Kind) : null;

    private int RequireIndex(long index) => index >= 0 && index < Samples.Length
        ? (int)index
        : throw new ArgumentOutOfRangeException(nameof(index), FormattableString.Invariant($"index must be from 0 to {Samples.Length - 1}; was {index}"));
}
