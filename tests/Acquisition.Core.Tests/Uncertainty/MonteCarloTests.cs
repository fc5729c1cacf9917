using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Signals;
using Acquisition.Core.Tests.Handbook;
using Acquisition.Core.Uncertainty;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Uncertainty;

public sealed class MonteCarloTests
{
    private static readonly MonteCarloOptions Small = MonteCarloOptions.Default.WithTrials(200_000);

    [Theory]
    [HandbookData("MC-J")]
    public void TrialsPerBlock(string id) => CheckValue.All[id].Confirm(NumericalTolerance.BlockTrials(CheckValue.All[id].Number("p")));

    [Theory]
    [HandbookData("MC-D")]
    public void NumericalTolerance_OfAnUncertainty(string id) =>
        CheckValue.All[id].Confirm(NumericalTolerance.Of(CheckValue.All[id].Number("u"), CheckValue.All[id].Integer("n_dig")));

    private static readonly Lazy<MonteCarloResult> Logarithm = new(() => MonteCarlo.Run(
        Uncertain.Of(Ratio.FromFraction(0.6), Spread.Bound(Ratio.FromFraction(0.5))), x => Ratio.FromFraction(Math.Log(x.Fraction))));

    [Theory]
    [HandbookData("MC-L")]
    public void LogarithmOfARectangle_IsLopsided(string id)
    {
        CheckValue value = CheckValue.All[id];
        MonteCarloResult result = Logarithm.Value;
        double actual = id switch
        {
            "MC-L1" => result.Estimate.SiValue,
            "MC-L2" => result.StandardUncertainty.SiValue,
            "MC-L3" => result.ShortestInterval().Low.SiValue,
            "MC-L4" => result.ShortestInterval().High.SiValue,
            _ => throw new InvalidOperationException(id + " is new"),
        };

        // Five standard errors of a million trials for mean and deviation; the interval's end rests on the 5 % tail, where the density is 0.14.
        Assert.Equal(value.Expected, actual, id == "MC-L3" ? 0.01 : 0.004);
    }

    [Fact]
    public void SameSeed_GivesTheSameBitsOnAnyNumberOfThreads()
    {
        Uncertain<Voltage> u = Uncertain.Of(5.V(), Spread.Standard(30.mV(), 7));
        Uncertain<Resistance> r = Uncertain.Of(50.Ohm(), Spread.Arcsine(1.Percent()));
        MonteCarloResult[] results = new[] { 1, 2, 3, 7, 0 }
            .Select(threads => MonteCarlo.Run(u, r, (a, b) => a / b, Small.WithThreads(threads).WithSeed(42))).ToArray();

        foreach (MonteCarloResult result in results)
        {
            Assert.Equal(results[0].Estimate, result.Estimate);
            Assert.Equal(results[0].StandardUncertainty, result.StandardUncertainty);
            Assert.Equal(results[0].ShortestInterval().Low, result.ShortestInterval().Low);
            Assert.Equal(results[0].SortedResultsInSi(), result.SortedResultsInSi());
        }
    }

    [Fact]
    public void AdaptiveRun_IsTheSameOnAnyNumberOfThreads()
    {
        Uncertain<Voltage> u = Uncertain.Of(5.V(), Spread.Standard(30.mV()));
        MonteCarloResult one = MonteCarlo.Run(u, a => a * 2, MonteCarloOptions.Default.Adaptive().WithThreads(1)), many = MonteCarlo.Run(u, a => a * 2, MonteCarloOptions.Default.Adaptive());

        Assert.Equal(one.Trials, many.Trials);
        Assert.Equal(one.Estimate, many.Estimate);
        Assert.True(one.IsStabilized);
    }

    [Fact]
    public void AnotherSeed_GivesOtherDraws()
    {
        Uncertain<Voltage> u = Uncertain.Of(5.V(), Spread.Standard(30.mV()));

        Assert.NotEqual(MonteCarlo.Run(u, x => x, Small).Estimate, MonteCarlo.Run(u, x => x, Small.WithSeed(2)).Estimate);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void Draws_FollowTheirDistributionFunction(byte shape)
    {
        Distribution distribution = SpreadTests.Shape(shape, 2);
        const int Count = 100_000;
        var draws = new double[Count];
        var stream = new RandomStream(11, shape, 0);
        distribution.Fill(ref stream, draws, Count);
        Array.Sort(draws);

        // Kolmogorov's distance: exceeding 1.95/√n has a probability of 0.1 % for draws of the distribution; the seed is fixed.
        double distance = draws.Select((x, i) => Math.Max(Math.Abs(distribution.Cumulative(x) - (double)i / Count), Math.Abs(distribution.Cumulative(x) - (i + 1.0) / Count))).Max();
        Assert.True(distance < 1.95 / Math.Sqrt(Count), FormattableString.Invariant($"{distribution.Name}: {distance:G3}"));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(30)]
    public void StudentDraws_FollowTheirDistributionFunction(double dof)
    {
        var distribution = new StudentTDistribution(1, dof);
        var draws = new double[100_000];
        var stream = new RandomStream(5, 1, 0);
        distribution.Fill(ref stream, draws, draws.Length);
        Array.Sort(draws);
        double distance = draws.Select((x, i) => Math.Abs(distribution.Cumulative(x) - (i + 0.5) / draws.Length)).Max();

        Assert.True(distance < 1.95 / Math.Sqrt(draws.Length), FormattableString.Invariant($"{distance:G3}"));
    }

    [Theory]
    [InlineData(0.9)]
    [InlineData(-1)]
    [InlineData(0)]
    public void CorrelatedInputs_AreDrawnCorrelated(double r)
    {
        (Uncertain<Ratio> a, Uncertain<Ratio> b) = Uncertain.Correlated(UncertainArithmeticTests.Number(1, 0.1), UncertainArithmeticTests.Number(2, 0.3), r);

        MonteCarloResult sum = MonteCarlo.Run(a, b, (x, y) => x + y, Small);

        Assert.Equal((a + b).StandardUncertainty.SiValue, sum.StandardUncertainty.SiValue, 0.003);
        Assert.Equal(3, sum.Estimate.SiValue, 0.005);
    }

    [Fact]
    public void InputsThatShareASource_MoveTogether()
    {
        Uncertain<Voltage> reference = Uncertain.Of(1.V(), Spread.Bound(10.mV()));

        MonteCarloResult difference = MonteCarlo.Run(reference + 1.V(), reference * 1.0, (a, b) => a - b, Small);

        Assert.Equal(1, difference.Estimate.SiValue, 1e-12);
        Assert.Equal(0, difference.StandardUncertainty.SiValue, 1e-12);
    }

    [Fact]
    public void SimultaneousReadings_ShareTheirDegreesOfFreedom()
    {
        Voltage[] a = new[] { 1.01, 1.03, 0.99, 1.00, 1.02, 1.00 }.Select(Voltage.FromVolts).ToArray();
        (Uncertain<Voltage> first, Uncertain<Voltage> second) = TypeA.Simultaneous(a, a.Select(x => x * 2).ToArray());

        MonteCarloResult result = MonteCarlo.Run(first, second, (x, y) => x + y, MonteCarloOptions.Default.WithCoverage(Ratio.FromPercent(95)));

        double u = (first + second).StandardUncertainty.SiValue;
        CoverageInterval interval = result.SymmetricInterval();
        Assert.Equal(StudentT.CoverageFactor(0.95, 5), (interval.High.SiValue - interval.Low.SiValue) / 2 / u, 0.02);
    }

    [Fact]
    public void FewTrialsForTheCoverage_AreFlagged() =>
        Assert.Contains(MonteCarlo.Run(Uncertain.Of(1.V(), Spread.Standard(1.mV())), x => x, Small.WithTrials(10_000)).Findings, finding => finding.Code == "few-trials");

    [Fact]
    public void ModelWithoutValue_IsRefusedWithTheNumberOfTrials()
    {
        var exception = Assert.Throws<InvalidOperationException>(() => MonteCarlo.Run(
            [UncertainArithmeticTests.Number(0, 1)],
            (x, y, count) =>
            {
                for (int i = 0; i < count; i++) y[i] = Math.Sqrt(x[0][i]);
            },
            QuantityKind.Ratio, Small));

        Assert.Contains("of 200000 trials had no value", exception.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void RefusalInsideTheModel_ReachesTheCallerAsItself() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => MonteCarlo.Run(UncertainArithmeticTests.Number(0, 1), x => x.ToDecibelsAsPowers(), Small));

    [Fact]
    public void UnstableRun_SaysSo()
    {
        MonteCarloResult result = MonteCarlo.Run(Uncertain.Of(1.V(), Spread.Standard(1.mV(), 2)), x => x, MonteCarloOptions.Default.Adaptive(3, 100_000));

        Assert.False(result.IsStabilized);
        Assert.Contains(result.Findings, finding => finding.Code == "not-stabilized");
        Assert.Contains(result.Findings, finding => finding.Code == "no-standard-deviation");
    }

    [Fact]
    public void ConformingPart_OfTheTrials_IsTheProbability()
    {
        MonteCarloResult result = MonteCarlo.Run(Uncertain.Of(1.V(), Spread.Standard(0.1.V())), x => x);

        Assert.Equal(Normal.Cumulative(1), result.PartBetween((-100).V().ToQuantity(), 1.1.V().ToQuantity()).Fraction, 0.002);
    }

    /// <summary>Picking the ends of the results gives the same intervals as sorting them all.</summary>
    [Property(MaxTest = 20)]
    public bool TailsWithoutSorting_AreThoseOfTheSortedResults(int seed, byte part)
    {
        var random = new Random(seed);
        double[] values = Enumerable.Range(0, 50_000).Select(_ => random.NextDouble() * random.NextDouble()).ToArray();
        int count = 1 + part * 30;
        Tails tails = Tails.Of(values, 0, values.Length, count, true);
        double[] sorted = (double[])values.Clone();
        Array.Sort(sorted);
        return tails.Lowest.SequenceEqual(sorted.Take(count)) && tails.Highest.SequenceEqual(sorted.Skip(values.Length - count));
    }

    /// <summary>A linear model of normal inputs is the case where first order is exact: it must be validated by JCGM 101 clause 8.</summary>
    [Property(MaxTest = 10)]
    public bool LinearModel_IsValidated(byte a, byte b)
    {
        Uncertain<Ratio> x = UncertainArithmeticTests.Number(1, 0.1), y = UncertainArithmeticTests.Number(2, 0.2);
        double p = a + 1, q = b + 1;
        MonteCarloResult result = MonteCarlo.Run(
            [x, y],
            (inputs, output, count) =>
            {
                for (int i = 0; i < count; i++) output[i] = p * inputs[0][i] + q * inputs[1][i];
            },
            QuantityKind.Ratio);
        return FirstOrderValidation.Of((p * x + q * y).Budget(), result, 1).IsValidated;
    }

    [Theory]
    [InlineData(999)]
    [InlineData(0)]
    public void TooFewTrials_AreRefused(int trials) => Assert.Throws<ArgumentOutOfRangeException>(() => MonteCarloOptions.Default.WithTrials(trials));
}
