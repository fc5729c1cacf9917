using System;
using System.Collections.Generic;
using System.Threading;
using Acquisition.Core.Records;
using Acquisition.Core.Signals;

namespace Acquisition.Core;

public sealed partial class SimulatedCapture
{
    /// <summary>So many raw samples between two looks at who watches: a response that takes 10 µs a sample is then cancelled within 10 ms.</summary>
    private const int SamplesPerLook = 1024;

    /// <summary>One record, triggered at the signal's 0 s.</summary>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="InvalidOperationException">The record takes more than 2 000 000 000 raw samples.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public Record Capture(IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        LongCall? call = LongCall.Of(progress, cancellation);
        Record record = CaptureAt(0, 0, call);
        call?.Completed();
        return record;
    }

    /// <summary>
    /// Segmented memory: a record for each trigger, with the trigger's time as its provenance of time (handbook 5.6). Triggers that come before a segment is full and the
    /// instrument armed again are missed.
    /// </summary>
    /// <param name="triggers">When the signal triggers, in order, on the signal's own time.</param>
    /// <param name="rearm">From the end of a segment until the next trigger is seen, at least 0 s.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException"><paramref name="triggers"/> is null.</exception>
    /// <exception cref="ArgumentException">The triggers are out of order.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rearm"/> is negative.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public SegmentedCapture CaptureSegments(IReadOnlyList<Duration> triggers, Duration rearm, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        _ = triggers ?? throw new ArgumentNullException(nameof(triggers));
        double dead = NotNegative(rearm, nameof(rearm)), window = Points.SiValue / StoredRate.SiValue, ready = double.NegativeInfinity;
        LongCall? call = LongCall.Of(progress, cancellation);
        var segments = new List<Record>();
        var missed = new List<Duration>();
        for (int i = 0; i < triggers.Count; i++)
        {
            double at = triggers[i].SiValue;
            if (i > 0 && at < triggers[i - 1].SiValue)
                throw new ArgumentException(FormattableString.Invariant($"triggers must be in order; entry {i} ({triggers[i]}) is before entry {i - 1} ({triggers[i - 1]})"), nameof(triggers));
            // A start before the trigger means that the memory must have filled that far before it.
            if (at + Math.Min(0, _start) < ready)
            {
                missed.Add(triggers[i]);
                continue;
            }
            segments.Add(CaptureAt(at, i, call?.Part((double)i / triggers.Count, (i + 1.0) / triggers.Count)).WithStart(Duration.FromSi(at + _start, nameof(triggers))));
            ready = at + _start + window + dead;
        }
        call?.Completed();
        return new SegmentedCapture(segments, missed);
    }

    /// <summary>Sequential equivalent time: one sample for each trigger, each later by a step, so that a repetitive signal is recorded at one over the step (handbook 5.6).</summary>
    /// <param name="step">By how much each sample is later after its trigger than the one before, above 0 s.</param>
    /// <param name="triggerInterval">From trigger to trigger: a whole number of periods of the signal, or the picture is not that of the signal.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentOutOfRangeException">A duration is not above 0 s.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public EquivalentTimeCapture CaptureSequentially(Duration step, Duration triggerInterval, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        double dt = Refuse.UnlessAboveZero(step.SiValue, Duration.Kind, nameof(step)), apart = Refuse.UnlessAboveZero(triggerInterval.SiValue, Duration.Kind, nameof(triggerInterval));
        int points = checked((int)Points.Points);
        var values = new double[points];
        var random = NumbersOf(0);
        LongCall? call = LongCall.Of(progress, cancellation);
        for (int i = 0; i < points; i++)
        {
            if (i % SamplesPerLook == 0)
                call?.Reached(i, points);
            values[i] = Quantised(RawSample(i * apart + _start + i * dt + _triggerJitter * NextOrZero(ref random, _triggerJitter), i, ref random));
        }
        call?.Completed();
        return new EquivalentTimeCapture(Finish(values, 1 / dt, 1).WithSampleInterval(step), points, Repetition(apart));
    }

    /// <summary>
    /// Random equivalent time: each trigger falls anywhere between two samples of the clock; its phase is measured and its samples go to the nearest earlier of so many places
    /// between samples, until every place is filled (handbook 5.6).
    /// </summary>
    /// <param name="placesPerInterval">How many times finer than the clock the record becomes: 2 to 10 000.</param>
    /// <param name="triggerInterval">From trigger to trigger: a whole number of periods of the signal, or the picture is not that of the signal.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="placesPerInterval"/> is not 2 to 10 000, or <paramref name="triggerInterval"/> is not above 0 s.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public EquivalentTimeCapture CaptureRandomly(int placesPerInterval, Duration triggerInterval, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        if (placesPerInterval is < 2 or > 10_000)
            throw new ArgumentOutOfRangeException(nameof(placesPerInterval), FormattableString.Invariant($"placesPerInterval must be 2 to 10000; was {placesPerInterval}"));
        double apart = Refuse.UnlessAboveZero(triggerInterval.SiValue, Duration.Kind, nameof(triggerInterval)), interval = 1 / RawRate.SiValue;
        int points = checked((int)Points.Points);
        var values = new double[points];
        var filled = new bool[Math.Min(placesPerInterval, points)];
        var random = NumbersOf(0);
        int left = filled.Length;
        long triggers = 0, taken = 0;
        LongCall? call = LongCall.Of(progress, cancellation);
        for (; left > 0; triggers++)
        {
            if (triggers % SamplesPerLook == 0)
                call?.Reached(taken, points);
            double phase = random.NextUnit();
            int place = (int)(phase * placesPerInterval);
            if (place >= filled.Length || filled[place])
                continue;
            filled[place] = true;
            left--;
            double shift = _triggerJitter * NextOrZero(ref random, _triggerJitter);
            for (int i = 0; place + (long)i * placesPerInterval < points; i++)
            {
                if (taken++ % SamplesPerLook == 0)
                    call?.Reached(taken, points);
                values[place + i * placesPerInterval] = Quantised(RawSample(triggers * apart + _start + (i + phase) * interval + shift, i, ref random));
            }
        }
        call?.Completed();
        return new EquivalentTimeCapture(Finish(values, RawRate.SiValue * placesPerInterval, 1), triggers, Repetition(apart));
    }

    private Record CaptureAt(double trigger, int segment, LongCall? call)
    {
        if (Points.SiValue * _rawPerStored > MostRawSamples)
            throw new InvalidOperationException(FormattableString.Invariant($"{Points} of {_rawPerStored} raw samples each are more than {MostRawSamples}: shorten the record"));
        var values = new double[(int)Points.Points];
        var random = NumbersOf(segment);
        for (int k = 0; k < _records; k++)
        {
            double shift = trigger + _start + _triggerJitter * NextOrZero(ref random, _triggerJitter);
            AddRecord(values, shift, ref random, call?.Part((double)k / _records, (k + 1.0) / _records));
        }
        for (int i = 0; i < values.Length && _records > 1; i++)
            values[i] /= _records;
        return Finish(values, StoredRate.SiValue, _mode == AcquisitionMode.HighResolution ? _rawPerStored : 1);
    }

    private void AddRecord(double[] values, double start, ref RandomStream random, LongCall? call)
    {
        double rate = RawRate.SiValue;
        bool pairs = _mode == AcquisitionMode.PeakDetect && _rawPerStored > 1;
        int stored = pairs ? 2 : 1, raw = _rawPerStored * stored;
        int untilLook = 0;
        for (int i = 0; i < values.Length; i += stored)
        {
            double sum = 0, low = double.PositiveInfinity, high = double.NegativeInfinity;
            for (int j = 0; j < raw; j++)
            {
                long n = (long)i * _rawPerStored + j;
                if (_mode == AcquisitionMode.Sample && j > 0)
                    break;
                if (--untilLook < 0)
                {
                    untilLook = SamplesPerLook;
                    call?.Reached(i + (double)j * stored / raw, values.Length);
                }
                double value = Quantised(RawSample(start + n / rate, n, ref random));
                sum += value;
                low = Math.Min(low, value);
                high = Math.Max(high, value);
            }
            values[i] += pairs ? low : _mode == AcquisitionMode.HighResolution ? sum / raw : sum;
            if (pairs && i + 1 < values.Length)
                values[i + 1] += high;
        }
    }

    /// <summary>What the converter sees: one instant of the signal, moved by skew and jitter, with gain, offset and noise.</summary>
    private double RawSample(double time, long index, ref RandomStream random)
    {
        ConverterMismatch? converter = _converters.Length > 0 ? _converters[(int)(index % _converters.Length)] : null;
        if (_jitter > 0)
            time += _jitter * NormalSampler.Next(ref random);
        double value = converter is null ? _signal.Value(time) : _signal.Value(time + converter.Skew.SiValue) * (1 + converter.Gain.SiValue) + converter.Offset.SiValue;
        return _noise > 0 ? value + _noise * NormalSampler.Next(ref random) : value;
    }

    private double Quantised(double volts) => _bits == 0 ? volts : _centre + Code(volts) * Step;

    private double Step => _fullScale / (1 << _bits);

    private int Code(double volts)
    {
        int half = 1 << _bits - 1;
        return (int)Math.Max(-half, Math.Min(half - 1, Math.Floor((volts - _centre) / Step + 0.5)));
    }

    /// <summary>The record of values that are done: codes where each is one code, numbers where they are means.</summary>
    private Record Finish(double[] values, double rate, int averaged)
    {
        if (_bits == 0)
            return Record.OfRate(NumberSamples.Of(values), QuantityKind.Voltage, rate).With(start: _start);
        int half = 1 << _bits - 1;
        double low = _centre - half * Step, high = _centre + (half - 1) * Step;
        if (_records > 1 || averaged > 1)
            return Record.OfRate(NumberSamples.Of(values), QuantityKind.Voltage, rate).With(start: _start, resolution: Step / ((double)_records * averaged), low: low, high: high);
        SampleStore samples;
        if (_bits <= 8)
        {
            var codes = new byte[values.Length];
            for (int i = 0; i < codes.Length; i++)
                codes[i] = unchecked((byte)(sbyte)Code(values[i]));
            samples = new ByteCodes(codes, true, Step, _centre);
        }
        else
        {
            var codes = new short[values.Length];
            for (int i = 0; i < codes.Length; i++)
                codes[i] = (short)Code(values[i]);
            samples = new ShortCodes(codes, true, Step, _centre);
        }
        return Record.OfRate(samples, QuantityKind.Voltage, rate).With(start: _start, low: low, high: high);
    }

    /// <summary>The random numbers of a segment. No input of a Monte Carlo run has the number -1, so a record and a run of the same seed do not draw alike.</summary>
    private RandomStream NumbersOf(int segment) => new(_seed, -1, segment);

    private static double NextOrZero(ref RandomStream random, double scale) => scale > 0 ? NormalSampler.Next(ref random) : 0;

    private Finding? Repetition(double apart)
    {
        if (_signal.Period is not { } period)
            return new Finding("signal-not-repetitive", Severity.Failure, $"{_signal.Name} does not repeat: a record put together over many triggers is not a picture of it", "sample in real time", "handbook 5.6");
        double periods = apart / period.SiValue, off = Math.Abs(periods - Math.Round(periods));
        return off > 1e-6 || periods < 0.5
            ? new Finding("trigger-not-coherent", Severity.Failure, FormattableString.Invariant($"the triggers are {periods:G9} periods of the signal apart: only whole numbers make a picture of it"), "trigger on the signal", "handbook 5.6")
            : null;
    }
}
