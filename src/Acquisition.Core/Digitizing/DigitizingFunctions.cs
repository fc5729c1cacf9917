using System;
using System.Collections.Generic;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Digitizing;

/// <summary>Sampling in the formula language: rate, record length and window, aliases, interpolation, rare events. Each function calls the method of the same meaning.</summary>
internal static class DigitizingFunctions
{
    /// <summary>The names that <see cref="All"/> declares.</summary>
    internal const string Names =
        "nyquist_rate sample_interval sample_rate memory_limited_rate record_length window samples_per_period intervals_on_edge alias nyquist_zone " +
        "equivalent_rate boxcar_bandwidth skew_image linear_error cubic_error sinc_error hold_droop peak_error rate_for_peak sample_chance " +
        "capture_chance capture_time";

    internal static IEnumerable<FunctionDefinition> All()
    {
        foreach (FunctionDefinition function in Clock())
            yield return function;
        foreach (FunctionDefinition function in BetweenSamples())
            yield return function;
        foreach (FunctionDefinition function in Events())
            yield return function;
    }

    private static IEnumerable<FunctionDefinition> Clock()
    {
        yield return FunctionDefinition.Named("nyquist_rate", "Twice the highest content of a signal: the sample rate must lie above it.", "handbook 5.1")
            .Takes("highest_content", QuantityKind.Frequency)
            .Returns(QuantityKind.SampleRate, f => Sampling.NyquistRate(Hertz(f)).SiValue, _ => 2)
            .Example("nyquist_rate(20 MHz)", "40 MSa/s");
        yield return FunctionDefinition.Named("sample_interval", "The time from one sample to the next.", "handbook 5.4")
            .Takes("sample_rate", QuantityKind.SampleRate)
            .Returns(QuantityKind.Duration, rate => Sampling.SampleInterval(Rate(rate)).SiValue, rate => -1 / (rate * rate))
            .Example("sample_interval(2 GSa/s)", "500 ps");
        yield return FunctionDefinition.Named("sample_rate", "The rate that fills a window with so many points.", "handbook 5.4")
            .Takes("record_length", QuantityKind.PointCount).Takes("window", QuantityKind.Duration)
            .Returns(QuantityKind.SampleRate, (n, t) => Sampling.Rate(Points(n), Seconds(t)).SiValue, (_, t) => 1 / t, (n, t) => -n / (t * t))
            .Example("sample_rate(14 kpts, 140 ms)", "100 kSa/s");
        yield return FunctionDefinition.Named("memory_limited_rate", "The highest rate at which a window fits the memory.", "handbook 5.4")
            .Takes("maximum_rate", QuantityKind.SampleRate).Takes("memory", QuantityKind.PointCount).Takes("window", QuantityKind.Duration)
            .Returns(QuantityKind.SampleRate, (rate, memory, window) => Sampling.MemoryLimitedRate(Rate(rate), Points(memory), Seconds(window)).SiValue)
            .Example("memory_limited_rate(5 GSa/s, 10 Mpts, 10 ms)", "1 GSa/s");
        yield return FunctionDefinition.Named("record_length", "The points that a window needs at a rate.", "handbook 5.4")
            .Takes("sample_rate", QuantityKind.SampleRate).Takes("window", QuantityKind.Duration)
            .Returns(QuantityKind.PointCount, (rate, window) => Sampling.RecordLength(Rate(rate), Seconds(window)).SiValue)
            .Example("record_length(2 GSa/s, 100 ms)", "200 Mpts");
        yield return FunctionDefinition.Named("window", "The time that so many points fill at a rate: N intervals.", "handbook 5.4")
            .Takes("record_length", QuantityKind.PointCount).Takes("sample_rate", QuantityKind.SampleRate)
            .Returns(QuantityKind.Duration, (n, rate) => Sampling.Window(Points(n), Rate(rate)).SiValue, (_, rate) => 1 / rate, (n, rate) => -n / (rate * rate))
            .Example("window(10 kpts, 5 GSa/s)", "2 µs");
        yield return FunctionDefinition.Named("samples_per_period", "Samples per period of a sine.", "handbook 5.4")
            .Takes("sample_rate", QuantityKind.SampleRate).Takes("frequency", QuantityKind.Frequency)
            .Returns(QuantityKind.Ratio, (rate, f) => Sampling.SamplesPerPeriod(Rate(rate), Hertz(f)).SiValue, (_, f) => 1 / f, (rate, f) => -rate / (f * f))
            .Example("samples_per_period(2.5 GSa/s, 400 MHz)", "6.25");
        yield return FunctionDefinition.Named("intervals_on_edge", "Sample intervals on an edge; three to five are the usual demand.", "handbook 5.13")
            .Takes("sample_rate", QuantityKind.SampleRate).Takes("rise_time", QuantityKind.Duration)
            .Returns(QuantityKind.Ratio, (rate, tr) => Sampling.IntervalsOnEdge(Rate(rate), Seconds(tr)).SiValue, (_, tr) => tr, (rate, _) => rate)
            .Example("intervals_on_edge(5 GSa/s, 1 ns)", "5");
        yield return FunctionDefinition.Named("alias", "The frequency at which a frequency appears once it has been sampled.", "handbook 5.2")
            .Takes("frequency", QuantityKind.Frequency).Takes("sample_rate", QuantityKind.SampleRate)
            .Returns(QuantityKind.Frequency, (f, rate) => Aliasing.Fold(Hertz(f), Rate(rate)).SiValue)
            .Example("alias(1.3 GHz, 1 GSa/s)", "300 MHz");
        yield return FunctionDefinition.Named("nyquist_zone", "The Nyquist zone of a frequency; even zones turn the spectrum round.", "handbook 5.2")
            .Takes("frequency", QuantityKind.Frequency).Takes("sample_rate", QuantityKind.SampleRate)
            .Returns(QuantityKind.Ratio, (f, rate) => Aliasing.NyquistZone(Hertz(f), Rate(rate)))
            .Example("nyquist_zone(600 MHz, 1 GSa/s)", "2");
        yield return FunctionDefinition.Named("equivalent_rate", "The effective rate of sequential sampling by its delay step.", "handbook 5.6")
            .Takes("delay_step", QuantityKind.Duration)
            .Returns(QuantityKind.SampleRate, step => EquivalentTime.SequentialRate(Seconds(step)).SiValue, step => -1 / (step * step))
            .Example("equivalent_rate(10 ps)", "100 GSa/s");
        yield return FunctionDefinition.Named("boxcar_bandwidth", "The half-power bandwidth of the high-resolution mode: the mean of so many raw samples.", "handbook 5.5")
            .Takes("raw_per_stored", ValueKind.Number).Takes("raw_rate", QuantityKind.SampleRate)
            .Returns(QuantityKind.Frequency, (m, rate) => HighResolution.Bandwidth(Whole(m, "raw_per_stored"), Rate(rate)).SiValue)
            .Example("boxcar_bandwidth(16, 1 GSa/s)", "27.7309 MHz");
        yield return FunctionDefinition.Named("skew_image", "The image of a sine through two interleaved converters that are off by a skew.", "handbook 5.7")
            .Takes("frequency", QuantityKind.Frequency).Takes("skew", QuantityKind.Duration)
            .Returns(QuantityKind.DecibelRatio, (f, skew) => Interleaving.SkewImage(Hertz(f), Seconds(skew)).SiValue)
            .Example("skew_image(1 GHz, 1 ps)", "-50.0570 dB");
    }

    private static IEnumerable<FunctionDefinition> BetweenSamples()
    {
        yield return FunctionDefinition.Named("linear_error", "The largest error of straight lines between the samples of a sine, of its amplitude.", "handbook 5.8")
            .Takes("frequency", QuantityKind.Frequency).Takes("sample_rate", QuantityKind.SampleRate)
            .Returns(QuantityKind.Ratio, (f, rate) => InterpolationError.Linear(Hertz(f), Rate(rate)).SiValue)
            .Example("linear_error(100 MHz, 1 GSa/s) in %", "4.89435 %");
        yield return FunctionDefinition.Named("cubic_error", "The largest error of cubics through four samples of a sine, of its amplitude.", "handbook 5.8")
            .Takes("frequency", QuantityKind.Frequency).Takes("sample_rate", QuantityKind.SampleRate)
            .Returns(QuantityKind.Ratio, (f, rate) => InterpolationError.CubicLagrange(Hertz(f), Rate(rate)).SiValue)
            .Example("cubic_error(100 MHz, 1 GSa/s) in %", "0.353458 %");
        yield return FunctionDefinition.Named("sinc_error", "The largest error of a windowed sinc between the samples of a sine, of its amplitude.", "handbook 5.9")
            .Takes("frequency", QuantityKind.Frequency).Takes("sample_rate", QuantityKind.SampleRate).TakesOptional("taps", QuantityKind.Ratio, 32).TakesOptional("kaiser_shape", QuantityKind.Ratio, 9)
            .Returns(QuantityKind.Ratio, (f, rate, taps, shape) => Reconstruction.WindowedSinc(Whole(taps, "taps"), shape).WorstError(Hertz(f), Rate(rate)).SiValue)
            .Example("sinc_error(450 MHz, 1 GSa/s) in %", "8.45370 %");
        yield return FunctionDefinition.Named("hold_droop", "The loss of a held output at a frequency.", "handbook 5.10")
            .Takes("frequency", QuantityKind.Frequency).Takes("sample_rate", QuantityKind.SampleRate)
            .Returns(QuantityKind.DecibelRatio, (f, rate) => InterpolationError.HoldDroop(Hertz(f), Rate(rate)).SiValue)
            .Example("hold_droop(500 MHz, 1 GSa/s)", "-3.92240 dB");
        yield return FunctionDefinition.Named("peak_error", "By how much the largest sample on a crest may fall short of it, of the amplitude.", "handbook 5.10")
            .Takes("frequency", QuantityKind.Frequency).Takes("sample_rate", QuantityKind.SampleRate)
            .Returns(QuantityKind.Ratio, (f, rate) => PeakReading.WorstShortfall(Hertz(f), Rate(rate)).SiValue)
            .Example("peak_error(200 MHz, 1 GSa/s) in %", "19.0983 %");
        yield return FunctionDefinition.Named("rate_for_peak", "The lowest rate at which the largest sample on a crest is short by no more than an error.", "handbook 5.10")
            .Takes("frequency", QuantityKind.Frequency).Takes("error", QuantityKind.Ratio)
            .Returns(QuantityKind.SampleRate, (f, e) => PeakReading.RateFor(Hertz(f), Ratio.FromSi(e, "error")).SiValue)
            .Example("rate_for_peak(100 MHz, 1 %)", "2.21959 GSa/s");
    }

    private static IEnumerable<FunctionDefinition> Events()
    {
        yield return FunctionDefinition.Named("sample_chance", "The chance that at least one sample falls on a pulse that comes at any time.", "handbook 5.5")
            .Takes("pulse_width", QuantityKind.Duration).Takes("sample_rate", QuantityKind.SampleRate)
            .Returns(QuantityKind.Ratio, (width, rate) => PulseCapture.ChanceOfASample(Seconds(width), Rate(rate)).SiValue)
            .Example("sample_chance(26 ns, 100 kSa/s) in %", "0.26 %");
        yield return FunctionDefinition.Named("capture_chance", "The chance that a rare event falls into at least one record during a time.", "handbook 5.11")
            .Takes("event_rate", QuantityKind.Frequency).Takes("record_rate", QuantityKind.Frequency).Takes("window", QuantityKind.Duration).Takes("time", QuantityKind.Duration)
            .Returns(QuantityKind.Ratio, (events, records, window, time) => DeadTime.ChanceOfCapture(Hertz(events), Hertz(records), Seconds(window), Seconds(time)).SiValue)
            .Example("capture_chance(10 Hz, 1 kHz, 100 ns, 1000 s) in %", "63.2121 %");
        yield return FunctionDefinition.Named("capture_time", "How long to look for a rare event for a wanted confidence.", "handbook 5.11")
            .Takes("confidence", QuantityKind.Ratio).Takes("event_rate", QuantityKind.Frequency).Takes("record_rate", QuantityKind.Frequency).Takes("window", QuantityKind.Duration)
            .Returns(QuantityKind.Duration, (p, events, records, window) => DeadTime.TimeFor(Ratio.FromSi(p, "confidence"), Hertz(events), Hertz(records), Seconds(window)).SiValue)
            .Example("capture_time(99 %, 10 Hz, 1 MHz, 100 ns)", "4.60517 s");
    }

    internal static Frequency Hertz(double value) => Frequency.FromSi(value, "frequency");

    internal static Duration Seconds(double value) => Duration.FromSi(value, "duration");

    internal static SampleRate Rate(double value) => SampleRate.FromSi(value, "sample_rate");

    internal static PointCount Points(double value) => PointCount.FromSi(value, "record_length");

    internal static int Whole(double value, string argument) => value == Math.Floor(value) && Math.Abs(value) <= int.MaxValue
        ? (int)value
        : throw Refuse.OutOfRange(value, QuantityKind.Ratio, argument, "a whole number");
}
