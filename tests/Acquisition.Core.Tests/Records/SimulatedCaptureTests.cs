using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Records;
using Acquisition.Core.Tests.Handbook;
using Xunit;

namespace Acquisition.Core.Tests.Records;

public sealed class SimulatedCaptureTests
{
    private static readonly Signal Clock = Signal.Square(24.MHz(), 2.Vpp(), 5.ns());
    private static readonly Signal Tone = Signal.Sine(10.MHz(), 1.Vpk());
    private static readonly Signal Silence = Signal.Sine(1.MHz(), PeakVoltage.FromVolts(1e-30));

    [Fact]
    public void SameSeed_GivesTheSameRecord_AndAnotherSeedAnother()
    {
        SimulatedCapture capture = new SimulatedCapture(Clock, 1.GSaPerS(), 2.kpts()).WithNoise(10.mVrms()).WithClockJitter(5.ps());

        Assert.Equal(capture.Capture().ToSiValues(), capture.Capture().ToSiValues());
        Assert.NotEqual(capture.Capture().ToSiValues(), capture.WithSeed(1).Capture().ToSiValues());
    }

    [Fact]
    public void IdealCapture_IsTheSignalAtItsTimes()
    {
        Record record = new SimulatedCapture(Tone, 1.GSaPerS(), 100.pts()).WithStart(-20.ns()).Capture();

        for (int i = 0; i < 100; i++)
            Assert.Equal(Tone.ValueAt(record.TimeAt(i)).Volts, record.ReadingAt(i), 1e-12);
    }

    [Fact]
    public void BenchDigitizer_ShowsTheClockAsItsBandwidthAllows()
    {
        Record record = new SimulatedCapture(Signal.Square(24.MHz(), 2.Vpp(), 1.ns()), 5.GSaPerS(), 20.kpts()).Through(Response.Gaussian(200.MHz())).WithConverter(8.bit(), 4.Vpp()).WithNoise(10.mVrms()).Capture();
        PulseMeasurement pulses = PulseMeasurement.Of(record);

        Assert.Equal(24, pulses.Frequency.Value.Megahertz, 0.01);
        // Rise times of a linear edge of 1 ns and a Gaussian of 0.34/200 MHz combine to 1.97 ns by root-sum-square; noise and steps blur that by some percent.
        Assert.InRange(pulses.RisingDuration.Value.Mean.Nanoseconds, 1.85, 2.1);
        Assert.Equal(2, pulses.States.Value.Amplitude.SiValue, 0.03);
    }

    [Fact]
    public void Converter_MakesCodesAndClipsWhatItCannotHold()
    {
        Record eight = new SimulatedCapture(Tone, 1.GSaPerS(), 1.kpts()).WithConverter(8.bit(), 1.Vpp()).Capture();
        Record twelve = new SimulatedCapture(Tone, 1.GSaPerS(), 1.kpts()).WithConverter(12.bit(), 4.Vpp(), 0.5.V()).Capture();

        Assert.Equal("i1", eight.Samples.ItemType);
        Assert.Equal("i2", twelve.Samples.ItemType);
        Assert.Equal(-0.5, eight.ToSiValues().Min());
        Assert.Equal(0.5 - 1.0 / 256, eight.ToSiValues().Max());
        Assert.Equal(4.0 / 4096, twelve.Resolution!.Value.SiValue);
        Assert.All(twelve.ToSiValues().Zip(Enumerable.Range(0, 1000)), x => Assert.True(Math.Abs(x.First - Tone.ValueAt(twelve.TimeAt(x.Second)).Volts) <= 2.0 / 4096 + 1e-12));
        Assert.Contains(PulseMeasurement.Of(eight, PulseSettings.Default.WithStateLevels(-0.4.V(), 0.4.V())).Findings, x => x.Code == "clipped");
    }

    [Theory]
    [HandbookData("HR-B004", "HR-B016", "HR-B064")]
    public void HighResolution_TakesHalfABitOfNoisePerDoubling(string id)
    {
        CheckValue v = CheckValue.All[id];
        SimulatedCapture raw = new SimulatedCapture(Silence, 1.GSaPerS(), 20.kpts()).WithNoise(1.Vrms());
        double before = RecordStatistics.Of(raw.Capture()).Value.AcRms.SiValue, after = RecordStatistics.Of(raw.WithHighResolution(v.Integer("boxcar")).Capture()).Value.AcRms.SiValue;

        Assert.Equal(v.Expected, Math.Log(before / after, 2), 0.03);
    }

    [Theory]
    [HandbookData("HR-F004", "HR-F016")]
    public void HighResolution_HasTheBandwidthOfABoxcar(string id)
    {
        CheckValue v = CheckValue.All[id];
        int m = v.Integer("boxcar");
        var rate = SampleRate.FromSamplesPerSecond(m * 1e6);
        Signal atBandEdge = Signal.Sine(Frequency.FromHertz(v.Expected * 1e6), 1.Vpk());
        Record stored = new SimulatedCapture(atBandEdge, rate, 20.kpts()).WithHighResolution(m).Capture();

        Assert.Equal(0.5, RecordStatistics.Of(stored).Value.AcRms.SiValue, 0.001);
        Assert.Equal(1e6, stored.SampleRate.SamplesPerSecond);
    }

    [Theory]
    [HandbookData("PK-W-100", "PK-W-200", "PK-W-250")]
    public void LargestSampleOfOneCrest_MissesThePeakByAtMostTheTable(string id)
    {
        CheckValue v = CheckValue.All[id];
        double r = v.Number("f/fs"), worst = 0;
        var rate = SampleRate.FromSamplesPerSecond(1e9);
        Signal sine = Signal.Sine(Frequency.FromHertz(r * 1e9), 1.Vpk());
        for (int phase = 0; phase < 400; phase++)
        {
            // One period only: the largest of its samples is that of one crest.
            Record one = new SimulatedCapture(sine, rate, PointCount.FromPoints((long)Math.Round(1 / r))).WithStart(Duration.FromNanoseconds(phase / 400.0)).Capture();
            worst = Math.Max(worst, 1 - RecordStatistics.Of(one).Value.Maximum.SiValue);
        }
        Assert.Equal(v.Expected, worst, 2e-5);
    }

    [Fact]
    public void Decimation_MissesASpike_ThatPeakDetectKeeps()
    {
        Signal spikes = Signal.PulseTrain(Frequency.FromHertz(1e5), 1.Vpp(), 2.ns());
        SimulatedCapture capture = new SimulatedCapture(spikes, 1.GSaPerS(), 1.kpts()).WithStart(Duration.FromNanoseconds(3.5));

        Record sampled = capture.WithDecimation(100).Capture(), peaks = capture.WithPeakDetect(100).Capture();

        Assert.Equal(sampled.ToSiValues().Min(), sampled.ToSiValues().Max());
        Assert.Equal(1, peaks.ToSiValues().Max() - peaks.ToSiValues().Min(), 1e-9);
        Assert.Equal(1e7, peaks.SampleRate.SamplesPerSecond);
        // The smallest and then the largest of each two stored intervals.
        Assert.All(peaks.ToSiValues().Chunk(2), x => Assert.True(x[0] <= x[1]));
    }

    [Fact]
    public void Averaging_TakesNoiseBySquareRoot_AndTriggerJitterTakesBandwidth()
    {
        SimulatedCapture noisy = new SimulatedCapture(Silence, 1.GSaPerS(), 5.kpts()).WithNoise(1.Vrms());
        Assert.Equal(0.25, RecordStatistics.Of(noisy.WithAveraging(16).Capture()).Value.AcRms.SiValue, 0.01);

        // A sine of f seen with Gaussian trigger jitter s keeps exp(-(2 pi f s)^2/2) of its amplitude (handbook 6.9).
        double s = 10e-9, expected = Math.Exp(-0.5 * Math.Pow(2 * Math.PI * 10e6 * s, 2)) / Math.Sqrt(2);
        Record blurred = new SimulatedCapture(Tone, 1.GSaPerS(), 1.kpts()).WithTriggerJitter(10.ns()).WithAveraging(2000).Capture();
        Assert.Equal(expected, RecordStatistics.Of(blurred).Value.AcRms.SiValue, 0.02);
    }

    [Fact]
    public void InterleavedConverters_ShowTheImagesOfTheirMismatch()
    {
        Signal tone = Signal.Sine(Frequency.FromHertz(1e9 * 101 / 1024), 1.Vpk());
        var even = new ConverterMismatch(default, default, default);
        Record gain = new SimulatedCapture(tone, 1.GSaPerS(), 1024.pts()).WithInterleaving(even, new ConverterMismatch(default, Ratio.FromPercent(1), default)).Capture();
        Record skew = new SimulatedCapture(tone, 1.GSaPerS(), 1024.pts()).WithInterleaving(even, new ConverterMismatch(default, default, 1.ps())).Capture();
        Record offset = new SimulatedCapture(tone, 1.GSaPerS(), 1024.pts()).WithInterleaving(even, new ConverterMismatch(2.mV(), default, default)).Capture();

        // eps/2 of 1 %, handbook 5.7, over a carrier that is half of eps larger itself; tan(pi f dt); the offset's half as a tone at fs/2.
        Assert.Equal(0.005 / 1.005, Line(gain, 512 - 101) / Line(gain, 101), 1e-6);
        Assert.Equal(Math.Tan(Math.PI * 1e9 * 101 / 1024 * 1e-12), Line(skew, 512 - 101) / Line(skew, 101), 1e-7);
        Assert.Equal(1e-3, Math.Abs(offset.ToSiValues().Select((x, i) => i % 2 == 0 ? x : -x).Average()), 1e-9);
    }

    [Fact]
    public void Segments_HaveTheirTimes_AndEarlyTriggersAreMissed()
    {
        SegmentedCapture capture = new SimulatedCapture(Tone, 1.GSaPerS(), 100.pts()).CaptureSegments([0.ns(), 50.ns(), 205.ns(), 1000.ns()], 100.ns());

        Assert.Equal([0.0, 205, 1000], capture.Segments.Select(x => Math.Round(x.Start.Nanoseconds, 6)));
        Assert.Equal(50.ns(), Assert.Single(capture.MissedTriggers));
        Assert.Equal("3 segments of 100 pts at 1 GSa/s, 1 trigger missed", capture.ToString());
        Assert.Equal(Tone.ValueAt(1010.ns()).Volts, capture.Segments[2].ReadingAt(10), 1e-9);
    }

    [Fact]
    public void EquivalentTime_DrawsARepetitiveSignalAtItsOwnRate_AndSaysWhenItDoesNot()
    {
        SimulatedCapture capture = new(Tone, 100.MSaPerS(), 500.pts());
        EquivalentTimeCapture sequential = capture.CaptureSequentially(10.ps(), 10.us());

        Assert.Equal(500, sequential.NumberOfTriggers);
        Assert.Empty(sequential.Findings);
        CheckValue.All["ET-002"].Confirm(sequential.Record.SampleRate.SamplesPerSecond);
        Assert.Equal(Tone.ValueAt(Duration.FromPicoseconds(4990)).Volts, sequential.Record.ReadingAt(499), 1e-6);
        Assert.Equal("trigger-not-coherent", Assert.Single(capture.CaptureSequentially(10.ps(), 10.03.us()).Findings).Code);

        double triggers = Enumerable.Range(0, 40).Average(seed => capture.WithSeed(seed).CaptureRandomly(500, 10.us()).NumberOfTriggers);
        Assert.Equal(CheckValue.All["ET-003"].Expected, triggers, 400.0);
        Record random = capture.CaptureRandomly(50, 10.us()).Record;
        Assert.Equal(5e9, random.SampleRate.SamplesPerSecond);
        // Samples stand at the nearest earlier of the places: up to 200 ps of a 10 MHz sine late.
        for (int i = 0; i < 500; i++)
            Assert.Equal(Tone.ValueAt(random.TimeAt(i)).Volts, random.ReadingAt(i), 2 * Math.PI * 10e6 * 200e-12 * 1.01);
    }

    [Fact]
    public void Arguments_AreRefusedByName()
    {
        SimulatedCapture capture = new(Tone, 1.GSaPerS(), 100.pts());

        Assert.Throws<ArgumentOutOfRangeException>(() => new SimulatedCapture(Tone, default, 100.pts()));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SimulatedCapture(Tone, 1.GSaPerS(), default));
        Assert.Throws<ArgumentOutOfRangeException>(() => capture.WithConverter(17.bit(), 1.Vpp()));
        Assert.Throws<ArgumentOutOfRangeException>(() => capture.WithDecimation(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => capture.WithClockJitter(-1.ps()));
        Assert.Throws<ArgumentException>(() => capture.CaptureSegments([1.us(), 0.us()], 0.s()));
        Assert.Throws<NotSupportedException>(() => capture.Through(Response.Gaussian(1.GHz())) is var _ && new SimulatedCapture(Signal.RandomBits(BitRate.FromBitsPerSecond(1e6), 1.Vpp()), 1.GSaPerS(), 10.pts()).Capture() is null);
    }

    private static double Line(Record record, int bin)
    {
        double[] x = record.ToSiValues();
        double re = 0, im = 0;
        for (int i = 0; i < x.Length; i++)
        {
            re += x[i] * Math.Cos(2 * Math.PI * bin * i / x.Length);
            im += x[i] * Math.Sin(2 * Math.PI * bin * i / x.Length);
        }
        return Math.Sqrt(re * re + im * im);
    }
}
