using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text;
using System.Threading;
using Acquisition.Core.Formulas;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Acquisition.Core.Uncertainty;
using Xunit;

namespace Acquisition.Core.Tests.Conventions;

/// <summary>Every call that can take long tells how far it is and can be cancelled; watched or not, it gives the same.</summary>
public partial class LongCallTests
{
    private static readonly Uncertain<Voltage> Volts = Uncertain.Of(1.V(), Spread.Standard(10.mV()));
    private static readonly Uncertain<Resistance> Ohms = Uncertain.Of(50.Ohm(), Spread.Standard(1.Ohm()));
    private static readonly MonteCarloOptions Few = MonteCarloOptions.Default.WithTrials(100_000);
    private static readonly Lazy<Record> ManyCodes = new(() => Record.FromCodes(Train(10_000_000), 1.GSaPerS(), 10.mV(), 0.V(), signed: false));
    private static readonly Lazy<Record> ManyNumbers = new(() => Record.FromVolts(Array.ConvertAll(Train(9_000_000), code => (float)code), 1.GSaPerS()));
    private static readonly Lazy<Record> Tone = new(() => Record.FromCodes(Sine(1 << 18, 100), 100.MSaPerS(), 1.mV(), -128.mV(), signed: false));
    private static readonly Lazy<Record> Weak = new(() => Record.FromCodes(Sine(20_000, 3), 100.MSaPerS(), 1.mV(), -128.mV(), signed: false));
    private static readonly SimulatedCapture Capture =
        new SimulatedCapture(Signal.Sine(1.MHz(), 1.Vpk()), 100.MSaPerS(), 20_000.pts()).WithNoise(1.mVrms()).WithTriggerJitter(1.ns()).WithConverter(8.bit(), 3.Vpp());

    private static readonly Dictionary<string, Func<IProgress<Ratio>?, CancellationToken, object>> Calls = new()
    {
        ["shortlist"] = (progress, cancellation) => Summary(Shortlist.Of(Wanted(), Workshop(), ShortlistWeights.Default, progress, cancellation)),
        ["trials of one input"] = (progress, cancellation) => Summary(MonteCarlo.Run(Volts, v => v * 2, Few, progress, cancellation)),
        ["trials of two inputs on one thread"] = (progress, cancellation) => Summary(MonteCarlo.Run(Volts, Ohms, (v, r) => v / r, Few.WithThreads(1), progress, cancellation)),
        ["trials of three inputs"] = (progress, cancellation) => Summary(MonteCarlo.Run(Volts, Ohms, Ohms, (v, r, s) => v / (r + s), Few, progress, cancellation)),
        ["trials of four inputs"] = (progress, cancellation) => Summary(MonteCarlo.Run(Volts, Volts, Ohms, Ohms, (v, w, r, s) => (v + w) / (r + s), Few, progress, cancellation)),
        ["adaptive trials"] = (progress, cancellation) => Summary(MonteCarlo.Run(Volts, v => v * 2, MonteCarloOptions.Default.Adaptive(2, 500_000), progress, cancellation)),
        ["trials of a formula"] = (progress, cancellation) => Summary(FormulaContext.Standard.WithInput("u", Acquisition.Core.Functions.ValueKind.Of(QuantityKind.Voltage)).WithInput("r", Acquisition.Core.Functions.ValueKind.Of(QuantityKind.Resistance)).Build("u / r").PropagateDistributions(
            new Dictionary<string, UncertainQuantity> { ["u"] = Volts, ["r"] = Ohms }, null, Few, progress, cancellation)),
        ["trials of a worksheet"] = (progress, cancellation) => Summary(Worksheet.Build("given u = 1 V ± 10 mV\nlet p = u^2 / 50 ohm").PropagateDistributions("p", null, Few, progress, cancellation)),
        ["worksheet with uncertainty"] = (progress, cancellation) => string.Join("|", Worksheet.Build(LongSheet()).Evaluate(
            new Dictionary<string, FormulaValue>(), DecisionRule.GuardedAcceptance, progress, cancellation).Entries.Select(entry => entry.ToString())),
        ["capture"] = (progress, cancellation) => Values(Capture.WithAveraging(4).Capture(progress, cancellation)),
        ["capture of segments"] = (progress, cancellation) =>
            Capture.CaptureSegments([0.s(), 1.ms(), 2.ms()], 1.us(), progress, cancellation).Segments.SelectMany(Values).ToArray(),
        ["capture in sequential equivalent time"] = (progress, cancellation) => Values(Capture.CaptureSequentially(10.ps(), 1.us(), progress, cancellation).Record),
        ["capture in random equivalent time"] = (progress, cancellation) => Values(Capture.CaptureRandomly(50, 1.us(), progress, cancellation).Record),
        ["predicted trace"] = (progress, cancellation) => Values(Signal.Sine(1.MHz(), 1.Vpk()).Through(Response.Gaussian(100.MHz()))
            .SampledBy(new Digitizer(1.GSaPerS(), 1.Mpts(), 8.bit())).Over(20.us()).PredictTrace(7, progress, cancellation)),
        ["pulses of codes"] = (progress, cancellation) => Summary(PulseMeasurement.Of(ManyCodes.Value, PulseSettings.Default, progress, cancellation)),
        ["pulses of numbers"] = (progress, cancellation) => Summary(PulseMeasurement.Of(ManyNumbers.Value, PulseSettings.Default, progress, cancellation)),
        ["statistics of codes"] = (progress, cancellation) => RecordStatistics.Of(ManyCodes.Value, progress, cancellation).ToString(),
        ["statistics of numbers"] = (progress, cancellation) => RecordStatistics.Of(ManyNumbers.Value, progress, cancellation).ToString(),
        ["histogram of codes"] = (progress, cancellation) => AmplitudeHistogram.Of(ManyCodes.Value, 100, progress, cancellation).Counts,
        ["histogram of numbers"] = (progress, cancellation) => AmplitudeHistogram.Of(ManyNumbers.Value, 100, progress, cancellation).Counts,
        ["preview"] = (progress, cancellation) => RecordPreview.Of(ManyCodes.Value, 300, progress, cancellation).HighSiValues,
        ["preview of one column"] = (progress, cancellation) => RecordPreview.Of(ManyNumbers.Value, 1, progress, cancellation).HighSiValues,
        ["three-parameter fit"] = (progress, cancellation) => Summary(SineFit.ThreeParameter(Tone.Value, 1.MHz(), progress, cancellation)),
        ["three-parameter fit of an array"] = (progress, cancellation) => Summary(SineFit.ThreeParameter(Tone.Value.ToSiValues(), 100.MSaPerS(), 1.MHz(), progress, cancellation)),
        ["four-parameter fit"] = (progress, cancellation) => Summary(SineFit.FourParameter(Tone.Value, progress, cancellation)),
        ["four-parameter fit of an array"] = (progress, cancellation) => Summary(SineFit.FourParameter(Tone.Value.ToSiValues(), 100.MSaPerS(), progress, cancellation)),
        ["four-parameter fit from a start"] = (progress, cancellation) => Summary(SineFit.FourParameter(Tone.Value, 1.MHz(), progress, cancellation)),
        ["four-parameter fit of an array from a start"] = (progress, cancellation) => Summary(SineFit.FourParameter(Tone.Value.ToSiValues(), 100.MSaPerS(), 1.MHz(), progress, cancellation)),
        ["fit of a line that is hard to find"] = (progress, cancellation) => Summary(SineFit.FourParameter(Weak.Value, progress, cancellation)),
        ["fit of channels"] = (progress, cancellation) => string.Join("|", CommonSineFit.Of(new[] { Tone.Value, Tone.Value }, progress, cancellation).Channels.Select(Summary)),
        ["fit of channels in arrays"] = (progress, cancellation) => string.Join(
            "|", CommonSineFit.Of(100.MSaPerS(), new[] { Tone.Value.ToSiValues(), Tone.Value.ToSiValues() }, progress, cancellation).Channels.Select(Summary)),
        ["spectrum"] = (progress, cancellation) => Spectrum.Of(Tone.Value, SpectralWindow.Hann, progress, cancellation).PeakAmplitudesInVolts(),
        ["spectrum of an array"] = (progress, cancellation) => Spectrum.Of(Tone.Value.ToSiValues(), 100.MSaPerS(), SpectralWindow.Hann, progress, cancellation).PeakAmplitudesInVolts(),
        ["averaged spectrum"] = (progress, cancellation) => Spectrum.Averaged(Tone.Value, SpectralWindow.Hann, 4096.pts(), 50.Percent(), progress, cancellation).PeakAmplitudesInVolts(),
        ["averaged spectrum of an array"] = (progress, cancellation) =>
            Spectrum.Averaged(Tone.Value.ToSiValues(), 100.MSaPerS(), SpectralWindow.Hann, 4096.pts(), 50.Percent(), progress, cancellation).PeakAmplitudesInVolts(),
        ["test of one tone"] = (progress, cancellation) => SingleToneTest.Of(Tone.Value, null, 10, progress, cancellation).ToString(),
        ["test of one tone in an array"] = (progress, cancellation) => SingleToneTest.Of(Tone.Value.ToSiValues(), 100.MSaPerS(), null, 10, progress, cancellation).ToString(),
        ["trace through a record"] = (progress, cancellation) => Values(Tone.Value.Reconstruct(Reconstruction.Sinc, 10, progress, cancellation).Trace),
        ["trace through an array"] = (progress, cancellation) => Reconstruction.Linear.Upsample(Tone.Value.ToSiValues(), 9, progress, cancellation),
        ["columns of a formula"] = (progress, cancellation) => Columns("u^2 / r", progress, cancellation),
        ["columns of a formula that branches"] = (progress, cancellation) => Columns("if u > 0.5 V then exp(u / 10 V) * (u^2 / r) else 0 W", progress, cancellation),
        ["attribution"] = (progress, cancellation) => Paths().Solve(progress, cancellation).ResponseOf("probe", "front end")!.Points.Select(point => point.Level.Decibels).ToArray(),
        ["table"] = (progress, cancellation) => Values(CsvRecords.Read(new MemoryStream(Encoding.UTF8.GetBytes(Table(60_000))), null, progress, cancellation)[0]),
        ["array"] = (progress, cancellation) => Values(NpyRecords.Read(Array2(), 1.MSaPerS(), progress, cancellation)[0]),
        ["array of codes"] = (progress, cancellation) => Values(NpyRecords.Read(Array1(), 1.MSaPerS(), 1.mV(), 0.V(), progress, cancellation)[0]),
        ["sound file"] = (progress, cancellation) => Values(WavRecords.Read(Sound(), progress, cancellation)[1]),
        ["sound file in volts"] = (progress, cancellation) => Values(WavRecords.Read(Sound(), 2.V(), progress, cancellation)[0]),
    };

    public static TheoryData<string> Names => new(Calls.Keys);

    [Theory, MemberData(nameof(Names))]
    public void Progress_RisesFromNoneToTheWhole(string call)
    {
        var heard = new Listener();
        Calls[call](heard, CancellationToken.None);
        Assert.Equal(0, heard.Fractions[0]);
        Assert.Equal(1, heard.Fractions[^1]);
        Assert.Equal(heard.Fractions.Order(), heard.Fractions);
        Assert.Equal(heard.Fractions.Distinct(), heard.Fractions);
        Assert.InRange(heard.Fractions.Count, 4, 102);
    }

    [Theory, MemberData(nameof(Names))]
    public void Result_IsTheSameWatchedOrNot(string call)
    {
        using var source = new CancellationTokenSource();
        Assert.Equal(Calls[call](null, CancellationToken.None), Calls[call](new Listener(), source.Token));
    }

    [Theory, MemberData(nameof(Names))]
    public void CallThatIsCancelledBefore_DoesNotBegin(string call)
    {
        var heard = new Listener();
        Assert.ThrowsAny<OperationCanceledException>(() => Calls[call](heard, new CancellationToken(true)));
        Assert.Empty(heard.Fractions);
    }

    [Theory, MemberData(nameof(Names))]
    public void CallThatIsCancelledOnTheWay_EndsThere(string call)
    {
        using var source = new CancellationTokenSource();
        var heard = new Listener { OnReport = fraction => Cancel(fraction > 0, source) };
        OperationCanceledException cancelled = Assert.ThrowsAny<OperationCanceledException>(() => Calls[call](heard, source.Token));
        Assert.Equal(source.Token, cancelled.CancellationToken);
        Assert.InRange(heard.Fractions[^1], 0.001, 0.95);
    }

#if NET
    [Fact]
    public void ColumnsInSpans_ArePartsOfOneCall()
    {
        Formula formula = FormulaContext.Standard.WithInput("u", Acquisition.Core.Functions.ValueKind.Of(QuantityKind.Voltage)).Build("u^2 / 50 ohm");
        double[] volts = Array.ConvertAll(Train(100_000), code => code / 100.0), results = new double[volts.Length], once = new double[volts.Length];
        formula.EvaluateColumns([volts], once);
        var heard = new Listener();
        formula.EvaluateColumn(volts, results, heard);
        Assert.Equal(once, results);
        Assert.Equal((0, 1), (heard.Fractions[0], heard.Fractions[^1]));
        Assert.InRange(heard.Fractions.Count, 50, 102);
        using var source = new CancellationTokenSource();
        Assert.ThrowsAny<OperationCanceledException>(() => formula.EvaluateColumn(volts, results, new Listener { OnReport = fraction => Cancel(fraction > 0.5, source) }, source.Token));
    }
#endif

    [Fact]
    public void NobodyWatching_CostsNoMemory()
    {
        Assert.Null(LongCall.Of(null, CancellationToken.None));
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 0; i < 1000; i++)
            _ = LongCall.Of(null, CancellationToken.None);
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
    }

    // A slow model: after the cancelling trial each thread makes no more than the rest of its 64.
    [Theory, InlineData(1), InlineData(2)]
    public void TrialsOfASlowModel_StopWithinSixtyFourTrialsAThread(int threads)
    {
        using var source = new CancellationTokenSource();
        int made = 0;
        Assert.ThrowsAny<OperationCanceledException>(() => MonteCarlo.Run(
            Volts,
            v =>
            {
                Cancel(Interlocked.Increment(ref made) == 100, source);
                return v;
            },
            Few.WithThreads(threads), null, source.Token));
        Assert.InRange(made, 100, 100 + 64 * threads);
    }

    [Fact]
    public void Reading_StopsWithinABlockOfTheFile()
    {
        using var source = new CancellationTokenSource();
        using var file = new CancellingStream(Sound(), 1_000_000, source);
        Assert.ThrowsAny<OperationCanceledException>(() => WavRecords.Read(file, null, source.Token));
        Assert.InRange(file.Given, 1_000_000, 1_000_000 + 65536);
    }

    [Fact]
    public void TableFromAStreamWithoutLength_IsReadWithProgressThatJumpsAtTheEnd()
    {
        var heard = new Listener();
        using var source = new CancellationTokenSource();
        using var pipe = new CancellingStream(new MemoryStream(Encoding.UTF8.GetBytes(Table(5000))), long.MaxValue, source);
        Assert.Equal(5000, CsvRecords.Read(pipe, null, heard, source.Token)[0].Length);
        Assert.Equal([0, 1], heard.Fractions);
    }

    [Fact]
    public void TextReaders_CanBeCancelled()
    {
        var cancelled = new CancellationToken(true);
        Assert.ThrowsAny<OperationCanceledException>(() => CsvRecords.Read(new StringReader(Table(10)), null, cancelled));
        Assert.ThrowsAny<OperationCanceledException>(() => Acquisition.Core.Responses.TouchstoneData.Read(new StringReader("# Hz S RI R 50\n1 0 0\n"), cancelled));
    }

    // Many threads at once may bring news in any order; who listens hears them in order and one at a time.
    [Fact]
    public void NewsFromManyThreads_ComeInOrderAndOneAtATime()
    {
        int within = 0, most = 0;
        var heard = new Listener
        {
            OnReport = _ =>
            {
                most = Math.Max(most, Interlocked.Increment(ref within));
                Thread.SpinWait(1000);
                Interlocked.Decrement(ref within);
            },
        };
        LongCall call = LongCall.Of(heard, CancellationToken.None)!;
        int done = 0;
        System.Threading.Tasks.Parallel.For(0, 10_000, new System.Threading.Tasks.ParallelOptions { MaxDegreeOfParallelism = 8 }, _ => call.Reached(Interlocked.Increment(ref done), 10_000));
        call.Completed();
        Assert.Equal(1, most);
        Assert.Equal(heard.Fractions.Order(), heard.Fractions);
        Assert.Equal(1, heard.Fractions[^1]);
    }

    private static void Cancel(bool now, CancellationTokenSource source)
    {
        if (now)
            source.Cancel();
    }

    private sealed class Listener : IProgress<Ratio>
    {
        public List<double> Fractions { get; } = [];

        public Action<double>? OnReport { get; init; }

        public void Report(Ratio value)
        {
            Fractions.Add(value.Fraction);
            OnReport?.Invoke(value.Fraction);
        }
    }

    /// <summary>A stream without a length that cancels once so many bytes are read.</summary>
    private sealed class CancellingStream(Stream inner, long after, CancellationTokenSource source) : Stream
    {
        public long Given { get; private set; }

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override int Read(byte[] buffer, int offset, int count)
        {
            int read = inner.Read(buffer, offset, count);
            Given += read;
            Cancel(Given >= after, source);
            return read;
        }

        public override void Flush() => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
