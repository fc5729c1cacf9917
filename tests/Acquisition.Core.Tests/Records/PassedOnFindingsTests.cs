using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Records;

/// <summary>What a record says of itself is said by all that is measured on it: here that nobody has stated a unit, and that samples lie at the ends of the converter.</summary>
public sealed class PassedOnFindingsTests
{
    /// <summary>The lantern buoy's lamp current through its sense resistor, a sine; a table whose heads say no units.</summary>
    private static Record WithoutUnits(double cycles, double amplitude = 1)
    {
        IEnumerable<string> rows = Enumerable.Range(0, 400)
            .Select(n => FormattableString.Invariant($"{n},{amplitude * Math.Cos(2 * Math.PI * cycles * n + 0.3) + 0.001 * (n * 7919 % 11):R}"));
        return Assert.Single(CsvRecords.Read(new StringReader("t,lamp\n" + string.Join("\n", rows) + "\n")));
    }

    private static FittedSine SineAt(double cycles, double amplitude = 1) => SineFit.FourParameter(WithoutUnits(cycles, amplitude)).Sine!;

    private static void SaysThatUnitsAreAssumed(IReadOnlyList<Finding> findings, int times = 2)
    {
        Assert.Equal(times, findings.Count(finding => finding.Code == "unit-assumed"));
        Assert.Equal(findings.Count, findings.Select(finding => finding.ToString()).Distinct().Count());
    }

    [Fact]
    public void SineFits_SayIt_RefusedOnesAfterTheReason()
    {
        SaysThatUnitsAreAssumed(SineFit.FourParameter(WithoutUnits(0.1)).Findings);
        SaysThatUnitsAreAssumed(SineFit.ThreeParameter(WithoutUnits(0.1), 0.1.Hz()).Findings);
        SineFit refused = SineFit.FourParameter(WithoutUnits(0.001));
        Assert.Equal("sine-fit-under-one-period", refused.Findings[0].Code);
        SaysThatUnitsAreAssumed(refused.Findings);
        Assert.StartsWith("Failure sine-fit-under-one-period", refused.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain(SineFit.FourParameter(WithoutUnits(0.1).ToSiValues(), 1.SaPerS()).Findings, finding => finding.Code == "unit-assumed");
    }

    [Fact]
    public void FitsOfChannels_SayItOnce() =>
        SaysThatUnitsAreAssumed(CommonSineFit.Of(WithoutUnits(0.1), WithoutUnits(0.1, 0.5)).Findings);

    [Fact]
    public void SpectraAndTheTestOfOneTone_SayIt()
    {
        SaysThatUnitsAreAssumed(Spectrum.Of(WithoutUnits(0.1), SpectralWindow.Hann).Findings);
        SaysThatUnitsAreAssumed(Spectrum.Averaged(WithoutUnits(0.1), SpectralWindow.Hann, 100.pts(), 50.Percent()).Findings);
        SaysThatUnitsAreAssumed(SingleToneTest.Of(WithoutUnits(0.1)).Findings);
        Assert.Empty(Spectrum.Of(WithoutUnits(0.1).ToSiValues(), 1.SaPerS(), SpectralWindow.Hann).Findings);
    }

    [Fact]
    public void StatisticsHistogramAndTrace_SayIt()
    {
        SaysThatUnitsAreAssumed(RecordStatistics.Of(WithoutUnits(0.1)).Value.Findings);
        SaysThatUnitsAreAssumed(AmplitudeHistogram.Of(WithoutUnits(0.1), 20).Findings);
        SaysThatUnitsAreAssumed(WithoutUnits(0.1).Reconstruct(Reconstruction.Sinc, 2).Findings);
        SaysThatUnitsAreAssumed(WithoutUnits(0.1).Reconstruct(Reconstruction.Linear, 2).Trace.Findings);
    }

    [Fact]
    public void Sweeps_SayItOnce_WithAllThatIsMadeOfThem()
    {
        double[] cycles = { 0.05, 0.1, 0.2, 0.4 };
        Sweep sweep = Sweep.OfSines(cycles.Select(f => SineAt(f, 1 / Math.Sqrt(1 + Math.Pow(f / 0.15, 2)))));
        SaysThatUnitsAreAssumed(sweep.Findings);
        SaysThatUnitsAreAssumed(sweep.WithReference(0.1.Hz()).Findings);
        SaysThatUnitsAreAssumed(sweep.WithReferenceBand(0.04.Hz(), 0.11.Hz()).Findings);
        SaysThatUnitsAreAssumed(sweep.WithReferenceLevel(0.dB()).Findings);
        SaysThatUnitsAreAssumed(sweep.Between(0.06.Hz(), 0.3.Hz()).Findings);
        SaysThatUnitsAreAssumed(sweep.Less(sweep).Findings);
        SaysThatUnitsAreAssumed(Sweep.OfDecibels(cycles, new double[4]).Less(sweep).Findings);
        SaysThatUnitsAreAssumed(sweep.Bandwidth().Findings);
        SaysThatUnitsAreAssumed(sweep.FitTo(Response.SinglePole).Findings);
        SweepFit refused = sweep.Between(0.06.Hz(), 0.15.Hz()).FitTo(Response.SinglePole);
        Assert.Equal("sweep-fit-too-few-points", refused.Findings[0].Code);
        SaysThatUnitsAreAssumed(refused.Findings);
        SaysThatUnitsAreAssumed(Sweep.OfGains(cycles.Select(f => CommonSineFit.Of(WithoutUnits(f), WithoutUnits(f, 0.5)).Compare(0, 1)!)).Findings);
        Assert.Empty(Sweep.OfDecibels(cycles, new double[4]).Findings);
    }

    [Fact]
    public void Attributions_SayIt()
    {
        double[] cycles = { 0.05, 0.1, 0.2 };
        Sweep sweep = Sweep.OfSines(cycles.Select(f => SineAt(f)));
        AttributionResult result = RollOffAttribution.OfElements("generator", "front end").WithSweep(sweep, "generator", "front end").Solve();
        SaysThatUnitsAreAssumed(result.Findings);
    }

    [Fact]
    public void WarningsOfManyFits_AreOneOfTheSweep_NotesAreNone()
    {
        FittedSine few = SineAt(0.0051), fewer = SineAt(0.0073), many = SineAt(0.1);
        Finding warning = Assert.Single(Sweep.OfSines(new[] { many, few, fewer }).Findings, finding => finding.Code == "few-periods");
        Assert.Equal("the record holds 2.04 periods: harmonics, drift and offset pull the fit (and 1 more like it)", warning.Message);
        Assert.Equal(Severity.Warning, warning.Severity);
        Assert.DoesNotContain("more like it", Assert.Single(Sweep.OfSines(new[] { few, many }).Findings, finding => finding.Code == "few-periods").Message);
        Assert.Contains(SineFit.FourParameter(WithoutUnits(0.1)).Findings, finding => finding.Severity == Severity.Note);
        Assert.All(Sweep.OfSines(new[] { many }).Findings, finding => Assert.True(finding.Severity > Severity.Note));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void SamplesAtTheEndsOfTheConverter_AreCountedByStatisticsAndSpectra(bool asNumbers)
    {
        byte[] codes = Enumerable.Range(0, 1000).Select(n => (byte)(n % 100 < 7 ? 0 : n % 100 < 90 ? 10 + n % 50 : 255)).ToArray();
        Record record = Record.FromCodes(codes, 1.MSaPerS(), 1.mV(), 0.V());
        if (asNumbers)
            record = Record.FromVolts(record.ToSiValues(), 1.MSaPerS()).WithLimits(0.V(), 255.mV());

        foreach (IReadOnlyList<Finding> findings in new[] { RecordStatistics.Of(record).Value.Findings, Spectrum.Of(record, SpectralWindow.Hann).Findings })
        {
            Assert.Equal(["clipped", "clipped"], findings.Select(finding => finding.Code));
            Assert.StartsWith("70 samples lie at or beyond the low end of the converter, 0 V: ", findings[0].Message, StringComparison.Ordinal);
            Assert.StartsWith("100 samples lie at or beyond the high end of the converter, 255 mV: ", findings[1].Message, StringComparison.Ordinal);
        }
        Assert.Empty(RecordStatistics.Of(record.WithoutLimits()).Value.Findings);
        Assert.Empty(Spectrum.Of(record.WithLimits(-1.mV(), 256.mV()), SpectralWindow.Hann).Findings);
    }
}
