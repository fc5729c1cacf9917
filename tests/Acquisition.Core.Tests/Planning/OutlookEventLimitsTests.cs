using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>Where the findings about sampling, modes and rare pulses begin, and how grave they are on either side.</summary>
public sealed class OutlookEventLimitsTests
{
    private static readonly Digitizer Sampler = new Digitizer(100.MSaPerS(), 1.Mpts(), 8.bit()).WithName("sampler");

    private static string Said(Outlook outlook, string code) => outlook.Findings.SingleOrDefault(finding => finding.Code == code)?.Severity.ToString() ?? "nothing";

    private static Finding Of(Outlook outlook, string code) => outlook.Findings.Single(finding => finding.Code == code);

    private static SampledSignal Sine(double megahertz) => Signal.Sine(megahertz.MHz(), 1.Vpk()).Through(Response.Cascade()).SampledBy(Sampler);

    private static SampledSignal Edges(double nanoseconds) => Signal.Square(100.kHz(), 1.Vpp(), nanoseconds.ns()).Through(Response.Cascade()).SampledBy(Sampler);

    // Samples every 10 ns: three intervals on 30 ns (handbook 5.13).
    [Theory]
    [InlineData(9.9, "Failure")]
    [InlineData(10.1, "Warning")]
    [InlineData(29.9, "Warning")]
    [InlineData(30.1, "nothing")]
    public void FewPointsOnAnEdge_AreSaidBelowThree(double nanoseconds, string severity) => Assert.Equal(severity, Said(Edges(nanoseconds).Over(100.us()), "few-points-per-edge"));

    // 3/20 ns = 150 MSa/s, more than there is; 3/25 ns = 120 MSa/s, for which 200 MSa/s with 1 Mpts last 8.333 ms.
    [Fact]
    public void FewPointsOnAnEdge_AreCuredByTheRate()
    {
        Assert.Equal("150 MSa/s; this digitizer has 100 MSa/s at best", Of(Edges(20).Over(100.us()), "few-points-per-edge").Remedy);
        Outlook slow = Signal.Square(100.kHz(), 1.Vpp(), 25.ns()).Through(Response.Cascade()).SampledBy(new Digitizer(200.MSaPerS(), 1.Mpts(), 8.bit())).Over(10.ms());
        Assert.Equal("120 MSa/s, which the memory allows for a window of up to 8.333 ms", Of(slow, "few-points-per-edge").Remedy);
        Assert.Equal("2.5 sample intervals lie on the edge of 25 ns; 3 to 5 are needed to time it", Of(slow, "few-points-per-edge").Message);
    }

    // Straight lines leave 1 - cos(π/n) (handbook 5.8): 4.894 % at 10 points per period, 6.031 % at 9.
    [Fact]
    public void StraightLinesThroughFewPoints_AreSaid()
    {
        Assert.Equal("nothing", Said(Sine(10).WithInterpolation(Reconstruction.Linear).Over(100.us()), "coarse-interpolation"));
        Finding coarse = Of(Sine(100.0 / 9).WithInterpolation(Reconstruction.Linear).Over(100.us()), "coarse-interpolation");
        Assert.Equal(Severity.Warning, coarse.Severity);
        Assert.Equal("straight lines interpolation is off by up to 6.031 % of the amplitude at 9 samples per period", coarse.Message);
        // The error goes with the square of the interval: 100 MSa/s x √6.031 for 1 %.
        Assert.StartsWith("sinc interpolation, or 245.6 MSa/s", coarse.Remedy, StringComparison.Ordinal);
        Assert.Equal("nothing", Said(Edges(20).WithInterpolation(Reconstruction.Linear).Over(100.us()), "coarse-interpolation"));
    }

    // Near half the rate even a sinc is off; four samples per period cure: 4 x 49 MHz.
    [Fact]
    public void ASincNearHalfTheRate_IsCuredByTheRate() => Assert.StartsWith("196 MSa/s;", Of(Sine(49).Over(100.us()), "coarse-interpolation").Remedy, StringComparison.Ordinal);

    [Theory]
    [InlineData(0.99, "Warning")]
    [InlineData(1, "nothing")]
    public void AWindow_IsTooShortBelowOnePeriod(double periods, string severity) =>
        Assert.Equal(severity, Said(Sine(0.1).Over(Duration.FromSeconds(periods * 1e-5)), "window-too-short"));

    [Fact]
    public void AWindowTooShort_IsToldWithThePeriod()
    {
        Finding finding = Of(Sine(0.1).Over(5.us()), "window-too-short");
        Assert.Equal(("the window of 5 µs shows less than one period, 10 µs", "a window of at least 10 µs"), (finding.Message, finding.Remedy));
    }

    [Theory]
    [InlineData(2, "nothing")]
    [InlineData(3, "Warning")]
    public void MoreChannelsThanStated_AreSaid(int channels, string severity)
    {
        Digitizer two = Sampler.WithChannelsInUse(2, 50.MSaPerS(), 500.kpts());
        Outlook outlook = Signal.Sine(1.MHz(), 1.Vpk()).Through(Response.Cascade()).SampledBy(two).WithChannelsInUse(channels).Over(100.us());
        Assert.Equal(severity, Said(outlook, "channels-not-stated"));
        if (severity == "Warning")
        {
            Assert.Equal("rate and memory of sampler are stated for up to 2 channels in use; those of 2 are taken for 3", Of(outlook, "channels-not-stated").Message);
            Assert.Equal("state rate and memory for 3 channels, or use 2 at most", Of(outlook, "channels-not-stated").Remedy);
        }
        // Of one rate for all nothing is said.
        Assert.Equal("nothing", Said(Signal.Sine(1.MHz(), 1.Vpk()).Through(Response.Cascade()).SampledBy(Sampler).WithChannelsInUse(4).Over(100.us()), "channels-not-stated"));
    }

    // Half the rate itself shows nothing; 2.5 samples per period cure. 60 MHz at 100 MSa/s shows at 40 MHz (handbook 5.1).
    [Fact]
    public void AToneFromHalfTheRateOn_IsAliased()
    {
        Assert.Equal("nothing", Said(Sine(49.9).Over(100.us()), "fundamental-aliased"));
        Assert.Equal("Failure", Said(Sine(50).Over(100.us()), "fundamental-aliased"));
        Finding aliased = Of(Sine(60).Over(100.us()), "fundamental-aliased");
        Assert.Equal("the signal at 60 MHz is sampled at 100 MSa/s and shows at 40 MHz", aliased.Message);
        Assert.Equal("150 MSa/s; this digitizer has 100 MSa/s at best", aliased.Remedy);
        Assert.Equal("nothing", Said(Sine(60).WithPeakDetect().Over(100.us()), "fundamental-aliased"));
    }

    // Peak to peak 1 V, 8/π² of the power in the first line and 1/n² of it in each odd one. Of 15 MHz the third, 45 MHz, is below half the rate: 1 - (8/π²)(1 + 1/9) = 9.94 % of the power, 31.5 % of the rms, folds.
    // Behind one pole of 20 MHz: lines 1/n² / (1 + (15 n/20)²), summed apart from this library; the library ends at 20 bandwidths, which takes 0.2 % of the share.
    [Fact]
    public void HarmonicsThatFold_AreSaidWithTheStrongest()
    {
        SampledSignal square = Signal.Square(15.MHz(), 1.Vpp()).Through(Response.SinglePole(20.MHz())).SampledBy(Sampler);
        double[] power = Enumerable.Range(0, 5000).Select(k => 2.0 * k + 1).Select(n => 1 / (n * n) / (1 + (0.75 * n * 0.75 * n))).ToArray();
        double share = Math.Sqrt(power.Skip(2).Sum() / power.Sum());
        Outlook outlook = square.Over(100.us());
        Assert.Equal(share, outlook.AliasShare!.Value.Fraction, 3e-3 * share);
        Finding folded = Of(outlook, "harmonics-aliased");
        Assert.Equal(share > 0.1 ? Severity.Failure : Severity.Warning, folded.Severity);
        // 75 MHz folds to 25 MHz: (2/5π) / √(1 + 3.75²) = 32.81 mV.
        Assert.EndsWith("; the strongest is harmonic 5, 75 MHz, which shows at 25 MHz with 32.81 mVpk", folded.Message, StringComparison.Ordinal);
        // Five times 20 MHz is what the sampler has: 1 Mpts of it last 10 ms; half the rate over 2.5.
        Assert.Equal("100 MSa/s, which the memory allows for a window of up to 10 ms, or a bandwidth limit below 20 MHz", folded.Remedy);
        Assert.Equal("nothing", Said(Signal.Square(100.kHz(), 1.Vpp(), 1.us()).Through(Response.SinglePole(1.MHz())).SampledBy(Sampler).Over(100.us()), "harmonics-aliased"));
        Assert.Equal("Failure", Said(Signal.Square(15.MHz(), 1.Vpp()).Through(Response.SinglePole(2.GHz())).SampledBy(Sampler).Over(100.us()), "harmonics-aliased"));
    }

    // One pole: 1 - exp(-w/τ), τ = 15.915 ns: 0.9 from 36.65 ns on, 0.5 from 11.03 ns on (handbook 2.2).
    [Theory]
    [InlineData(37, "nothing")]
    [InlineData(36, "Warning")]
    [InlineData(11.2, "Warning")]
    [InlineData(10.9, "Failure")]
    public void APulse_IsSaidToBeFlattenedBelowNineTenths(double nanoseconds, string severity) =>
        Assert.Equal(severity, Said(Signal.Sine(1.MHz(), 1.Vpk()).Through(Response.SinglePole(10.MHz())).SampledBy(Sampler).WatchingFor(nanoseconds.ns()).Over(100.us()), "pulse-flattened"));

    // Samples every 10 ns.
    [Theory]
    [InlineData(10, "nothing")]
    [InlineData(9.9, "Warning")]
    [InlineData(5, "Warning")]
    [InlineData(4.9, "Failure")]
    public void APulseBetweenTheSamples_IsSaid(double nanoseconds, string severity)
    {
        Outlook outlook = Sine(1).WatchingFor(nanoseconds.ns()).Over(100.us());
        Assert.Equal(severity, Said(outlook, "pulse-between-samples"));
        Assert.Equal("Note", Said(outlook, "record-rate-unknown"));
    }

    // 1 Mpts over 100 ms: 10 MSa/s of 100. A pulse of 50 ns is met by peak detection, one of 5 ns by no rate that there is.
    [Fact]
    public void APulseBetweenTheSamples_IsCuredByPeakDetectionWhereTheConverterWouldMeetIt()
    {
        Outlook met = Sine(1).WatchingFor(50.ns()).Over(100.ms()), lost = Sine(1).WatchingFor(5.ns()).Over(100.ms());
        Assert.Equal("a pulse of 50 ns meets a sample with a chance of 50 %: the samples are 100 ns apart", Of(met, "pulse-between-samples").Message);
        Assert.Equal("peak detection, or 20 MSa/s, which the memory allows for a window of up to 50 ms", Of(met, "pulse-between-samples").Remedy);
        Assert.Equal("200 MSa/s; this digitizer has 100 MSa/s at best", Of(lost, "pulse-between-samples").Remedy);
        Assert.Equal("nothing", Said(Sine(1).WithPeakDetect().WatchingFor(50.ns()).Over(100.ms()), "pulse-between-samples"));
    }

    // A tenth of the time is looked at, every pulse in it is met: ln 0.01/ln 0.9 = 43.7, and 4.60517/(0.1 R) seconds (handbook 5.11).
    [Theory]
    [InlineData(1, "46.05 s")]
    [InlineData(0.3, "153.5 s (2.558 min)")]
    [InlineData(0.005, "9210 s (2.558 h)")]
    [InlineData(0.0001, "460500 s (5.33 days)")]
    public void TheTimeToLook_IsToldInItsUnit(double hertz, string time)
    {
        Outlook outlook = Sine(1).WatchingFor(50.ns(), Frequency.FromHertz(hertz)).WithRecordRate(100.Hz()).Over(1.ms());
        string message = Of(outlook, "dead-time").Message;
        Assert.StartsWith("the instrument looks 10 % of the time; 44 pulses must happen to catch one with 99 % confidence, and where they come at random one has to look for ", message, StringComparison.Ordinal);
        string[] words = time.Split(' ');
        Assert.Equal(outlook.Events!.TimeFor(99.Percent())!.Value.Seconds, 46.0517 / hertz, 1e-3 / hertz);
        if (words.Length > 2)
            Assert.EndsWith(" " + words[2] + " " + words[3], message, StringComparison.Ordinal);
        else
            Assert.EndsWith("look for " + time, message, StringComparison.Ordinal);
    }

    // 2 kHz of records of 1 ms would look twice the time there is.
    [Fact]
    public void RecordsThatOverlap_AreToldWithTheRateThatFits()
    {
        Finding overlap = Of(Sine(1).WithRecordRate(2.kHz()).Over(1.ms()), "records-overlap");
        Assert.StartsWith("2 kHz of records, each 1 ms long, would look 200 % of the time", overlap.Message, StringComparison.Ordinal);
        Assert.Equal("at most 1 kHz of records, or a window of at most 500 µs", overlap.Remedy);
        Assert.Equal("nothing", Said(Sine(1).WithRecordRate(1.kHz()).Over(1.ms()), "records-overlap"));
    }

    // The median of the highest of n normal deviates, Φ(x)^n = 1/2, x from a table of the normal distribution: 0.5450 for n = 2, 1.7226 for n = 16.
    [Fact]
    public void Modes_SayWhatTheyDoToTheRecord()
    {
        Assert.Contains("the extremes of 2 samples lie about ±0.545 standard deviations", Of(Sine(1).WithPeakDetect().Over(20.ms()), "peak-detect-distorts").Message, StringComparison.Ordinal);
        Assert.Contains("edges are timed no better than 20 ns", Of(Sine(1).WithPeakDetect().Over(20.ms()), "peak-detect-distorts").Message, StringComparison.Ordinal);
        Assert.DoesNotContain("the extremes of", Of(Sine(1).WithPeakDetect().Over(10.ms()), "peak-detect-distorts").Message, StringComparison.Ordinal);
        Assert.Contains("the extremes of 16 records lie about ±1.72", Of(Sine(1).WithEnvelope(16).Over(1.ms()), "envelope-widens").Message, StringComparison.Ordinal);
        // Half a bit for each doubling (handbook 5.5).
        Assert.StartsWith("the mean of 16 records gains 2 bit on a signal that repeats", Of(Sine(1).WithAveraging(16).Over(1.ms()), "average-loses-single-events").Message, StringComparison.Ordinal);
        Assert.Equal("Note", Said(Sine(1).WithAveraging(16).Over(1.ms()), "average-loses-single-events"));
        Assert.Equal("Failure", Said(Sine(1).WithAveraging(16).WatchingFor(50.ns()).Over(1.ms()), "average-loses-single-events"));
        Assert.StartsWith("the mean of 4 samples gains 1 bit against white noise", Of(Sine(1).WithHighResolution(4).Over(1.ms()), "high-resolution-limits").Message, StringComparison.Ordinal);
    }

    // Of a confidence of 1 - 0.5³ three tosses of a fair coin are enough, of a little more four.
    [Theory]
    [InlineData(0.875, 3)]
    [InlineData(0.8751, 4)]
    [InlineData(0.5, 1)]
    [InlineData(0.4, 1)]
    public void Trials_AreThoseOfACoin(double confidence, int trials)
    {
        var events = new EventOutlook(5.ns(), 10.Hz(), Ratio.FromFraction(1), Ratio.FromFraction(0.5), 0, Ratio.FromFraction(1));
        Assert.Equal(trials, events.TrialsFor(Ratio.FromFraction(confidence)));
        Assert.Equal(1, new EventOutlook(5.ns(), 10.Hz(), Ratio.FromFraction(1), Ratio.FromFraction(1), 0, Ratio.FromFraction(1)).TrialsFor(Ratio.FromFraction(confidence)));
    }
}
