using System;
using System.Collections.Generic;

namespace Acquisition.Core;

/// <summary>
/// What an instrument would capture: a signal through a response, with noise and clock jitter, sampled by one or several interleaved converters, decimated, and
/// quantised. The same settings and seed give the same record.
/// </summary>
/// <remarks>
/// Immutable: each With... method makes a copy. The order is that of the hardware: response, skew and jitter of the sampling instant, gain and offset of the converter, noise,
/// quantisation, decimation, averaging. Noise and jitter are white: each raw sample has its own.
/// </remarks>
public sealed partial class SimulatedCapture
{
    private const long MostRawSamples = 2_000_000_000;

    private Signal _signal;
    private double _noise, _jitter, _triggerJitter, _start;
    private long _seed;
    private int _rawPerStored = 1, _records = 1, _bits;
    private double _fullScale, _centre;
    private AcquisitionMode _mode;
    private ConverterMismatch[] _converters = Array.Empty<ConverterMismatch>();

    /// <summary>An ideal sampler of a signal.</summary>
    /// <param name="signal">What is applied.</param>
    /// <param name="rawRate">The rate of the converter, above 0 Sa/s. Records are stored at this rate over the raw samples per stored one.</param>
    /// <param name="points">The points of a record, at least 1.</param>
    /// <exception cref="ArgumentNullException"><paramref name="signal"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rawRate"/> is 0 Sa/s, or <paramref name="points"/> is not 1 to 2 000 000 000.</exception>
    public SimulatedCapture(Signal signal, SampleRate rawRate, PointCount points)
    {
        _signal = signal ?? throw new ArgumentNullException(nameof(signal));
        Refuse.UnlessAboveZero(rawRate.SiValue, SampleRate.Kind, nameof(rawRate));
        if (points.Points is < 1 or > MostRawSamples)
            throw Refuse.OutOfRange(points.SiValue, PointCount.Kind, nameof(points), FormattableString.Invariant($"1 pts to {MostRawSamples} pts"));
        RawRate = rawRate;
        Points = points;
    }

    /// <summary>The rate of the converter.</summary>
    public SampleRate RawRate { get; }

    /// <summary>The points of a record.</summary>
    public PointCount Points { get; }

    /// <summary>The rate of the record.</summary>
    public SampleRate StoredRate => SampleRate.FromSi(RawRate.SiValue / _rawPerStored, "rate");

    /// <summary>The same with the signal passing through a response, in its steady state.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="response"/> is null.</exception>
    /// <exception cref="NotSupportedException">The signal is random.</exception>
    public SimulatedCapture Through(Response response) => Copy(x => x._signal = (response ?? throw new ArgumentNullException(nameof(response))).Apply(_signal));

    /// <summary>The same with white noise of the converter's input.</summary>
    public SimulatedCapture WithNoise(RmsVoltage noise) => Copy(x => x._noise = noise.SiValue);

    /// <summary>The same with white jitter of the sampling instants (rms).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="jitter"/> is negative.</exception>
    public SimulatedCapture WithClockJitter(Duration jitter) => Copy(x => x._jitter = NotNegative(jitter, nameof(jitter)));

    /// <summary>The same with jitter from trigger to trigger (rms): all samples of a record move together.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="jitter"/> is negative.</exception>
    public SimulatedCapture WithTriggerJitter(Duration jitter) => Copy(x => x._triggerJitter = NotNegative(jitter, nameof(jitter)));

    /// <summary>The same with so many converters that take the raw samples in turn.</summary>
    /// <exception cref="ArgumentException">There is no converter.</exception>
    public SimulatedCapture WithInterleaving(params ConverterMismatch[] converters)
    {
        if (converters is null || converters.Length == 0 || Array.IndexOf(converters, null) >= 0)
            throw new ArgumentException("converters must hold at least one converter, and no null", nameof(converters));
        return Copy(x => x._converters = (ConverterMismatch[])converters.Clone());
    }

    /// <summary>The same with one raw sample of so many stored (decimation): what lies above half the stored rate folds down, and spikes are missed.</summary>
    /// <param name="rawPerStored">How many: 1 to 1 000 000.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rawPerStored"/> is not 1 to 1 000 000.</exception>
    public SimulatedCapture WithDecimation(int rawPerStored) => Combining(AcquisitionMode.Sample, rawPerStored);

    /// <summary>The same with peak detection: of two stored intervals the smallest and then the largest raw sample.</summary>
    /// <param name="rawPerStored">How many raw samples a stored interval has: 1 to 1 000 000.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rawPerStored"/> is not 1 to 1 000 000.</exception>
    public SimulatedCapture WithPeakDetect(int rawPerStored) => Combining(AcquisitionMode.PeakDetect, rawPerStored);

    /// <summary>The same with the mean of so many raw samples stored (boxcar): less noise and more resolution, less bandwidth.</summary>
    /// <param name="rawPerStored">How many: 1 to 1 000 000.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rawPerStored"/> is not 1 to 1 000 000.</exception>
    public SimulatedCapture WithHighResolution(int rawPerStored) => Combining(AcquisitionMode.HighResolution, rawPerStored);

    /// <summary>The same with the mean of so many records, each with its own noise and jitter.</summary>
    /// <param name="records">How many: 1 to 1 000 000.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="records"/> is not 1 to 1 000 000.</exception>
    public SimulatedCapture WithAveraging(int records) => records is >= 1 and <= 1_000_000
        ? Copy(x => x._records = records)
        : throw new ArgumentOutOfRangeException(nameof(records), FormattableString.Invariant($"records must be 1 to 1000000; was {records}"));

    /// <summary>The same with an ideal converter: 2^bits steps over full scale, code 0 at the centre; what lies beyond is clipped, and the record says so.</summary>
    /// <param name="resolution">1 to 16 bits, whole.</param>
    /// <param name="fullScale">From the lowest to just above the highest code, above 0 V.</param>
    /// <param name="center">The voltage in the middle.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="resolution"/> is not whole or not 1 to 16 bits, or <paramref name="fullScale"/> is not above 0 V.</exception>
    public SimulatedCapture WithConverter(BitDepth resolution, PeakToPeakVoltage fullScale, Voltage center = default)
    {
        double bits = resolution.SiValue;
        if (!(bits >= 1 && bits <= 16 && bits == Math.Floor(bits)))
            throw Refuse.OutOfRange(bits, BitDepth.Kind, nameof(resolution), "a whole number from 1 bit to 16 bit");
        Refuse.UnlessAboveZero(fullScale.SiValue, PeakToPeakVoltage.Kind, nameof(fullScale));
        return Copy(x => (x._bits, x._fullScale, x._centre) = ((int)bits, fullScale.SiValue, center.SiValue));
    }

    /// <summary>The same with another start of the record, counted from the trigger; the signal's own time is 0 s at the trigger.</summary>
    public SimulatedCapture WithStart(Duration start) => Copy(x => x._start = start.SiValue);

    /// <summary>The same with another seed of noise and jitter.</summary>
    public SimulatedCapture WithSeed(long seed) => Copy(x => x._seed = seed);

    private static double NotNegative(Duration value, string argument) =>
        value.SiValue >= 0 ? value.SiValue : throw Refuse.OutOfRange(value.SiValue, Duration.Kind, argument, "at least 0 s");

    private SimulatedCapture Combining(AcquisitionMode mode, int rawPerStored) => rawPerStored is >= 1 and <= 1_000_000
        ? Copy(x => (x._mode, x._rawPerStored) = (mode, rawPerStored))
        : throw new ArgumentOutOfRangeException(nameof(rawPerStored), FormattableString.Invariant($"rawPerStored must be 1 to 1000000; was {rawPerStored}"));

    private SimulatedCapture Copy(Action<SimulatedCapture> change)
    {
        var copy = (SimulatedCapture)MemberwiseClone();
        change(copy);
        return copy;
    }
}
