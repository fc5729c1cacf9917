using System.Collections.Generic;
using Acquisition.Core.Tests.Handbook;
using Xunit;

namespace Acquisition.Core.Tests.Digitizing;

/// <summary>Handbook 5 and 12.2: values computed independently by tests/scripts/handbook/s05_sampling.py and s12_selection.py.</summary>
public sealed class SamplingHandbookTests
{
    private static Frequency Hz(CheckValue v, string name) => Frequency.FromHertz(v.Number(name));

    private static SampleRate Rate(CheckValue v, string name) => SampleRate.FromSamplesPerSecond(v.Number(name));

    private static Duration Time(CheckValue v, string name) => Duration.FromSeconds(v.Number(name));

    /// <summary>f/fs of an entry, as a frequency at 1 GSa/s.</summary>
    private static Frequency Relative(CheckValue v) => Frequency.FromGigahertz(v.Number("f/fs"));

    private static readonly SampleRate OneGigasample = SampleRate.FromGigasamplesPerSecond(1);

    [Theory, HandbookData("AL-", "SE-F3")]
    public void Fold_AgreesWithTheHandbook(string id)
    {
        CheckValue v = CheckValue.All[id];
        v.Confirm(Aliasing.Fold(Hz(v, v.Has("f") ? "f" : "f_signal"), Rate(v, "fs")).Hertz);
    }

    [Theory, HandbookData("BP-")]
    public void BandPassRates_AgreeWithTheHandbook(string id)
    {
        CheckValue v = CheckValue.All[id];
        IReadOnlyList<BandPassSampling> ranges = Aliasing.BandPassRates(Hz(v, "fL"), Hz(v, "fH"));
        Assert.Equal(5, ranges.Count);
        BandPassSampling range = ranges[v.Integer("n") - 1];
        v.Confirm((id.StartsWith("BP-LO", System.StringComparison.Ordinal) ? range.LowestRate : range.HighestRate!.Value).SamplesPerSecond);
    }

    [Theory, HandbookData("SR-", "SE-D")]
    public void RateLengthAndWindow_AgreeWithTheHandbook(string id)
    {
        CheckValue v = CheckValue.All[id];
        v.Confirm(id switch
        {
            "SR-001" => Sampling.Rate(PointCount.FromPoints(v.Integer("points")), Time(v, "window")).SamplesPerSecond,
            "SR-002" or "SE-D3" => Sampling.MemoryLimitedRate(Rate(v, "fs_max"), PointCount.FromPoints(v.Integer("memory")), Time(v, "window")).SamplesPerSecond,
            "SR-003" or "SE-D2" => Sampling.RecordLength(Rate(v, "fs"), Time(v, "window")).Points,
            "SR-004" or "SE-D4" => Sampling.IntervalsOnEdge(Rate(v, "fs"), Time(v, "tr")).Fraction,
            "SR-005" => Sampling.SamplesPerPeriod(Rate(v, "fs"), Hz(v, "f")).Fraction,
            "SR-006" => Sampling.FirstToLastSample(PointCount.FromPoints(v.Integer("points")), Rate(v, "fs")).Seconds,
            _ => v.Number("points_per_edge") / Sampling.IntervalsOnEdge(SampleRate.FromSamplesPerSecond(1), Time(v, "tr")).Fraction,
        });
    }

    [Theory, HandbookData("SR-002", "SE-D3")]
    public void ATimebase_IsCappedByMemoryAsTheHandbookSays(string id)
    {
        CheckValue v = CheckValue.All[id];
        var digitizer = new Digitizer(Rate(v, "fs_max"), PointCount.FromPoints(v.Integer("memory")), BitDepth.FromBits(8));
        Timebase timebase = digitizer.TimebaseFor(Time(v, "window"));
        Assert.Contains(timebase.Findings, finding => finding.Code == "memory-caps-rate");
        v.Confirm(timebase.Rate.SamplesPerSecond);
    }

    [Theory, HandbookData("IN-LIN", "IN-CUB", "IN-CAT")]
    public void PolynomialInterpolationErrors_AgreeWithTheHandbook(string id)
    {
        CheckValue v = CheckValue.All[id];
        v.Confirm((id.Substring(0, id.LastIndexOf('-')) switch
        {
            "IN-LIN" => InterpolationError.Linear(Relative(v), OneGigasample),
            "IN-LINB" => InterpolationError.LinearBound(Relative(v), OneGigasample),
            "IN-CUB" => InterpolationError.CubicLagrange(Relative(v), OneGigasample),
            "IN-CUBB" => InterpolationError.CubicLagrangeBound(Relative(v), OneGigasample),
            _ => WorstOverPhase(Reconstruction.CubicConvolution, Relative(v)),
        }).Fraction);
    }

    /// <summary>The handbook's figure for cubic convolution is the error of a real sine at its worst phase; the bound over a complex exponential is the same where the error is in phase, at mid-interval.</summary>
    private static Ratio WorstOverPhase(Reconstruction kernel, Frequency frequency) => kernel.WorstError(frequency, OneGigasample);

    [Theory, HandbookData("IN-LIN-", "IN-CUB-")]
    public void TheKernelsThemselves_HaveTheHandbooksWorstErrors(string id)
    {
        CheckValue v = CheckValue.All[id];
        Reconstruction kernel = id.StartsWith("IN-LIN-", System.StringComparison.Ordinal) ? Reconstruction.Linear : Reconstruction.CubicLagrange;
        v.Confirm(kernel.WorstError(Relative(v), OneGigasample).Fraction);
    }

    [Theory, HandbookData("IN-SNC-")]
    public void WindowedSinc_HasTheHandbooksErrorBound(string id)
    {
        CheckValue v = CheckValue.All[id];
        double shape = v.Inputs.GetProperty("kaiser_beta").ValueKind == System.Text.Json.JsonValueKind.Number ? v.Number("kaiser_beta") : 0;
        v.Confirm(Reconstruction.WindowedSinc(v.Integer("taps"), shape, unityAtDc: false).WorstError(Relative(v), OneGigasample).Fraction);
    }

    [Theory, HandbookData("ZOH")]
    public void Hold_AgreesWithTheHandbook(string id)
    {
        CheckValue v = CheckValue.All[id];
        v.Confirm(v.Unit == "dB" ? InterpolationError.HoldDroop(Relative(v), OneGigasample).Decibels : InterpolationError.Hold(Relative(v), OneGigasample).Fraction);
    }

    [Theory, HandbookData("PK-")]
    public void PeakReading_AgreesWithTheHandbook(string id)
    {
        CheckValue v = CheckValue.All[id];
        v.Confirm(id[3] switch
        {
            'W' => PeakReading.WorstShortfall(Relative(v), OneGigasample).Fraction,
            'M' => PeakReading.MeanShortfall(Relative(v), OneGigasample).Fraction,
            _ => PeakReading.RateFor(Frequency.FromHertz(1), Ratio.FromFraction(v.Number("error"))).SamplesPerSecond,
        });
    }

    [Theory, HandbookData("HR-")]
    public void HighResolution_AgreesWithTheHandbook(string id)
    {
        CheckValue v = CheckValue.All[id];
        // "M large" is the limit; a million are within 1e-12 of it.
        int m = id == "HR-FINF" ? 1_000_000 : v.Integer("boxcar");
        v.Confirm(id[3] == 'B' ? HighResolution.BitsGained(m).Bits : HighResolution.Bandwidth(m, SampleRate.FromSamplesPerSecond(m)).Hertz);
    }

    [Theory, HandbookData("ET-")]
    public void EquivalentTime_AgreesWithTheHandbook(string id)
    {
        CheckValue v = CheckValue.All[id];
        v.Confirm(id switch
        {
            "ET-001" => EquivalentTime.SequentialTime(PointCount.FromPoints(v.Integer("points")), Hz(v, "trigger_rate")).Seconds,
            "ET-002" => EquivalentTime.SequentialRate(Time(v, "sequential_step")).SamplesPerSecond,
            _ => EquivalentTime.MeanNumberOfTriggers(PointCount.FromPoints(v.Integer("bins"))),
        });
    }

    [Theory, HandbookData("TI-")]
    public void Interleaving_AgreesWithTheHandbook(string id)
    {
        CheckValue v = CheckValue.All[id];
        v.Confirm((v.Has("gain_mismatch") ? Interleaving.GainImage(Ratio.FromFraction(v.Number("gain_mismatch"))) : Interleaving.SkewImage(Hz(v, "f"), Time(v, "skew_between_two_halves"))).Decibels);
    }

    [Theory, HandbookData("CP-")]
    public void RareEvents_AgreeWithTheHandbook(string id)
    {
        CheckValue v = CheckValue.All[id];
        Frequency records = Hz(v, "waveforms_per_s");
        Duration window = Time(v, "window");
        v.Confirm(id == "CP-001" ? DeadTime.ObservedShare(records, window).Fraction
            : v.Has("probability") ? DeadTime.TimeFor(Ratio.FromFraction(v.Number("probability")), Hz(v, "event_rate"), records, window).Seconds
            : v.Has("model") ? DeadTime.PoissonChanceOfCapture(Hz(v, "event_rate"), records, window, Time(v, "time")).Fraction
            : DeadTime.ChanceOfCapture(Hz(v, "event_rate"), records, window, Time(v, "time")).Fraction);
    }

    [Theory, HandbookData("TM-")]
    public void TimeIntervals_AgreeWithTheHandbook(string id)
    {
        CheckValue v = CheckValue.All[id];
        RmsVoltage Noise() => RmsVoltage.FromVolts(v.Number("sigma_v"));
        v.Confirm((id switch
        {
            "TM-001" => TimeIntervalAccuracy.WithoutInterpolation(SampleRate.FromSampleInterval(Time(v, "Ts"))),
            "TM-002" => TimeIntervalAccuracy.WithoutInterpolation(SampleRate.FromSampleInterval(Time(v, "Ts")), Time(v, "interval")),
            "TM-003" => TimeIntervalAccuracy.OfEdge(Noise(), SlewRate.FromVoltsPerSecond(v.Number("slew"))),
            "TM-004" => TimeIntervalAccuracy.OfEdge(Noise(), Voltage.FromVolts(v.Number("amplitude_step")), Time(v, "tr_10_90")),
            "TM-005" => TimeIntervalAccuracy.TimebaseLimit(Time(v, "interval"), Ratio.FromPartsPerMillion(v.Number("timebase_ppm"))),
            _ => TimeIntervalAccuracy.Combined(Time(v, "sigma_edge"), default, Time(v, "timebase_abs"), default),
        }).Seconds);
    }
}
