using System;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Uncertainty;

public sealed class ReadingsTests
{
    // JCGM 100 F.2.2.1: identical indications leave the resolution, u = δx/√12 = 0.29 δx; here 1 mV/√12 = 0.2887 mV.
    [Fact]
    public void ReadingsThatAreAllAlike_AreNotExact_AndPointToTheResolution()
    {
        Uncertain<Voltage> mean = TypeA.Mean(new[] { 1.V(), 1.V(), 1.V() }, "supply");

        Finding finding = Assert.Single(mean.Budget().Findings);
        Assert.Equal("readings-identical", finding.Code);
        Assert.Equal("supply is 1 V each time (mean of 3 readings): the scatter is below the resolution, which is not the same as none", finding.Message);
        Assert.Contains("Spread.Resolution(step)", finding.Remedy, StringComparison.Ordinal);

        Uncertain<Voltage> cured = mean + Uncertain.Of(0.V(), Spread.Resolution(1.mV()), "last digit");
        Assert.Equal(0.2887e-3, cured.StandardUncertainty.SiValue, 1e-7);
        Assert.Contains(cured.Budget().Findings, each => each.Code == "readings-identical");
        Assert.DoesNotContain((mean - mean).Budget().Findings, each => each.Code == "readings-identical");
    }

    [Fact]
    public void ReadingsThatAreAllAlike_AreSaidToBe_HoweverTheyAreTaken()
    {
        Voltage[] alike = { 1.V(), 1.V(), 1.V() }, others = { 1.V(), 2.V(), 4.V() };

        Assert.Contains(TypeA.AnyOf(alike).Budget().Findings, each => each.Code == "readings-identical");
        Assert.Contains(TypeA.Simultaneous(alike, others).First.Budget().Findings, each => each.Code == "readings-identical");
        Assert.DoesNotContain(TypeA.Simultaneous(alike, others).Second.Budget().Findings, each => each.Code == "readings-identical");
        Assert.Contains(GroupedReadings<Voltage>.Of(new[] { alike, alike }).MeanWithGroupEffect().Budget().Findings, each => each.Code == "readings-identical");
        Assert.DoesNotContain(TypeA.MeanWithPooledScatter(alike, 0.V(), 9).Budget().Findings, each => each.Code == "readings-identical");
        Assert.DoesNotContain(TypeA.Mean(others).Budget().Findings, each => each.Code == "readings-identical");
    }

    private static readonly Voltage[] Ripple = new[] { 1.01, 1.03, 0.99, 1.00, 1.02 }.Select(Voltage.FromVolts).ToArray();

    [Fact]
    public void MeanOfReadings_HasTheStandardDeviationOfTheMean()
    {
        Uncertain<Voltage> mean = TypeA.Mean(Ripple, "ripple");

        Assert.Equal(1.01, mean.Value.Volts, 1e-15);
        Assert.Equal(Math.Sqrt(0.001 / 4 / 5), mean.StandardUncertainty.SiValue, 1e-15);
        Assert.Equal(4, mean.Budget().EffectiveDegreesOfFreedom, 1e-9);
    }

    [Fact]
    public void AnyReading_ScattersAsTheReadingsDid()
    {
        Uncertain<Voltage> any = TypeA.AnyOf(Ripple);

        Assert.Equal(Math.Sqrt(0.001 / 5), any.StandardUncertainty.SiValue, 1e-15);
        MonteCarloResult result = MonteCarlo.Run(any, x => x, MonteCarloOptions.Default.WithTrials(200_000));
        Assert.Equal(Ripple.Min().Volts, result.SortedResultsInSi()[0], 1e-12);
        Assert.Equal(5, result.SortedResultsInSi().Select(x => Math.Round(x, 6)).Distinct().Count());
    }

    [Fact]
    public void OneReading_IsRefusedAsTooFew()
    {
        var exception = Assert.Throws<ArgumentException>(() => TypeA.Mean(new[] { 1.V() }));

        Assert.StartsWith("at least 2 readings are needed; had 1", exception.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void PooledScatter_ServesASingleReading()
    {
        Uncertain<Voltage> single = TypeA.MeanWithPooledScatter(new[] { 1.V() }, 10.mV(), 24);

        Assert.Equal(0.01, single.StandardUncertainty.SiValue);
        Assert.Equal(24, single.Budget().EffectiveDegreesOfFreedom, 1e-9);
    }

    [Fact]
    public void SimultaneousReadings_OfDifferentLength_AreRefused() =>
        Assert.Throws<ArgumentException>(() => TypeA.Simultaneous(Ripple, Ripple.Take(4).ToArray()));

    [Fact]
    public void GroupsThatDoNotDiffer_GiveAVarianceRatioNearOne()
    {
        var random = new Random(7);
        Voltage[][] groups = Enumerable.Range(0, 200).Select(_ => Enumerable.Range(0, 5).Select(_ => Voltage.FromVolts(Normal(random))).ToArray()).ToArray();

        GroupedReadings<Voltage> grouped = GroupedReadings<Voltage>.Of(groups);

        Assert.InRange(grouped.VarianceRatio, 0.75, 1.3);
        Assert.Equal(Voltage.FromVolts(grouped.MeanWithGroupEffect().Estimate.SiValue), grouped.MeanWithoutGroupEffect().Value);
    }

    [Fact]
    public void TwoValuesFromOneLine_AreCorrelated()
    {
        StraightLine<Frequency, DecibelRatio> line = StraightLine<Frequency, DecibelRatio>.Fit(
            new[] { 1.MHz(), 2.MHz(), 3.MHz(), 4.MHz() }, new[] { 0.1.dB(), 0.22.dB(), 0.29.dB(), 0.41.dB() }, 0.Hz());

        Assert.Equal(1, line.At(10.MHz()).CorrelationWith(line.At(10.MHz())), 1e-12);
        Assert.Equal(0, (line.At(10.MHz()) - line.At(10.MHz())).StandardUncertainty.SiValue, 1e-15);
        Assert.InRange(line.At(1.MHz()).CorrelationWith(line.At(4.MHz())), -0.99, 0.9);
    }

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
