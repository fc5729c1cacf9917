using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Signals;
using Acquisition.Core.Uncertainty;
using Xunit;
using static Acquisition.Core.Tests.Uncertainty.UncertainArithmeticTests;

namespace Acquisition.Core.Tests.Uncertainty;

/// <summary>Runs of a few thousand trials: what they report is what their own results say, and near enough to what propagation says.</summary>
public sealed class MonteCarloShortTests
{
    private static readonly MonteCarloOptions Short = MonteCarloOptions.Default.WithTrials(6000);

    [Fact]
    public void WhatARunReports_IsWhatItsResultsSay()
    {
        MonteCarloResult run = MonteCarlo.Run(Number(1, 0.1), x => Ratio.FromFraction(x.Fraction * x.Fraction), Short);
        double[] results = run.SortedResultsInSi();
        double mean = results.Average(), deviation = Math.Sqrt(results.Sum(x => (x - mean) * (x - mean)) / (results.Length - 1));

        Assert.Equal(6000, run.Trials);
        Assert.Equal(6000, results.Length);
        Assert.Equal(mean, run.Estimate.SiValue, 1e-12);
        Assert.Equal(deviation, run.StandardUncertainty.SiValue, 1e-12);
        Assert.Equal(results.OrderBy(x => x), results);
        // 5700 of 6000 lie within: 150 on each side without, or those that leave the narrowest band.
        CoverageInterval symmetric = run.SymmetricInterval(), shortest = run.ShortestInterval();
        Assert.Equal((results[149], results[5849]), (symmetric.Low.SiValue, symmetric.High.SiValue));
        Assert.Equal(Enumerable.Range(0, 300).Min(r => results[r + 5700] - results[r]), shortest.High.SiValue - shortest.Low.SiValue, 1e-15);
        Assert.True(shortest.IsShortest && !symmetric.IsShortest);
        Assert.Equal(0.95, symmetric.CoverageProbability.Fraction, 1e-15);
        Assert.Equal(results[2999], run.Quantile(50.Percent()).SiValue);
        Assert.Equal(results[599], run.Quantile(10.Percent()).SiValue);
        Assert.Equal(results.Count(x => x is >= 0.9 and <= 1.1) / 6000.0, run.PartBetween(new Quantity(0.9, QuantityKind.Ratio), new Quantity(1.1, QuantityKind.Ratio)).Fraction, 1e-15);
        Assert.Equal(2 / 6000.0, run.PartBetween(new Quantity(results[7], QuantityKind.Ratio), new Quantity(results[8], QuantityKind.Ratio)).Fraction, 1e-15);
        // E(x²) = µ² + σ², σ(x²) = √(4 µ² σ² + 2 σ⁴); five standard errors.
        Assert.Equal(1.01, mean, 5 * 0.2 / Math.Sqrt(6000));
        Assert.Equal(Math.Sqrt(0.0402), deviation, 5 * 0.2 / Math.Sqrt(12000));
    }

    /// <summary>Both ends are written to the same decimal place, that of the third digit of a quarter of the width (8.95 mV: to 10 µV; 15.0 mV: to 0.1 mV).</summary>
    [Fact]
    public void EndsOfAnInterval_AreWrittenToOnePlace()
    {
        Quantity low = new(0.98765432, QuantityKind.Voltage), high = new(1.0234567, QuantityKind.Voltage);
        Assert.StartsWith("[987.65 mV, 1.02346 V], p = 95 %, probabilistically symmetric", new CoverageInterval(low, high, 95.Percent(), false).ToString(), StringComparison.Ordinal);
        Assert.StartsWith("[0 V, 60.0 mV], p = 95 %, shortest", new CoverageInterval(new Quantity(0, QuantityKind.Voltage), new Quantity(0.06, QuantityKind.Voltage), 95.Percent(), true).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void SharedScaledAndMixedInputs_AreDrawnAsTheyWereMade()
    {
        Uncertain<Ratio> x = Number(1, 0.1), y = Number(2, 0.2);
        Assert.Equal(0, MonteCarlo.Run(x, x, (a, b) => a - b, Short).StandardUncertainty.SiValue);
        Assert.Equal(0, MonteCarlo.Run(x, 2 * x, (a, b) => 2 * a - b, Short).StandardUncertainty.SiValue, 1e-12);
        Assert.Equal(0.3, MonteCarlo.Run(3 * x, a => a, Short).StandardUncertainty.SiValue, 0.015);
        MonteCarloResult mixed = MonteCarlo.Run(x + y, x - y, (a, b) => a + 0 * b, Short);
        Assert.Equal(Math.Sqrt(0.05), mixed.StandardUncertainty.SiValue, 0.012);
        Assert.Equal(3, mixed.Estimate.SiValue, 0.015);
        Assert.Equal(0.2, MonteCarlo.Run(x + y, x - y, (a, b) => a + b, Short).StandardUncertainty.SiValue, 0.01);
    }

    [Theory]
    [InlineData(0.8), InlineData(-0.6)]
    public void CorrelatedInputs_KeepTheirCorrelation(double r)
    {
        (Uncertain<Ratio> a, Uncertain<Ratio> b, Uncertain<Ratio> c) = Uncertain.Correlated(Number(1, 0.1), Number(2, 0.3), Number(3, 0.2), r, 0, 0.4);
        Assert.Equal((a + b).StandardUncertainty.SiValue, MonteCarlo.Run(a, b, (x, y) => x + y, Short).StandardUncertainty.SiValue, 0.02);
        Assert.Equal((a - b).StandardUncertainty.SiValue, MonteCarlo.Run(a, b, (x, y) => x - y, Short).StandardUncertainty.SiValue, 0.02);
        Assert.Equal((b - c).StandardUncertainty.SiValue, MonteCarlo.Run(c, b, (x, y) => y - x, Short).StandardUncertainty.SiValue, 0.02);
        Assert.Equal(Math.Sqrt(0.09 + 0.04 - 2 * 0.4 * 0.06), (b - c).StandardUncertainty.SiValue, 1e-12);
        Assert.Equal(3, MonteCarlo.Run(c, x => x, Short).Estimate.SiValue, 0.015);
    }

    /// <summary>Four readings share three degrees of freedom: 95 % of a t-distribution lies within 3.18 standard uncertainties (tables).</summary>
    [Fact]
    public void ReadingsTakenTogether_ScatterAsT()
    {
        Voltage[] a = new[] { 1.01, 1.03, 0.98, 1.00 }.Select(Voltage.FromVolts).ToArray(), b = new[] { 2.0, 2.1, 2.05, 1.9 }.Select(Voltage.FromVolts).ToArray();
        (Uncertain<Voltage> first, Uncertain<Voltage> second) = TypeA.Simultaneous(a, b);
        MonteCarloResult run = MonteCarlo.Run(first, second, (x, y) => x, MonteCarloOptions.Default.WithTrials(20_000));
        CoverageInterval interval = run.SymmetricInterval();
        Assert.Equal(3.18, (interval.High.SiValue - interval.Low.SiValue) / 2 / first.StandardUncertainty.SiValue, 0.2);
    }

    [Fact]
    public void OneThreadOrMany_AndAnyModel_GiveTheSameBits()
    {
        Uncertain<Voltage> u = Uncertain.Of(5.V(), Spread.Standard(30.mV(), 7));
        MonteCarloResult one = MonteCarlo.Run(u, x => 2 * x, Short.WithThreads(1)), two = MonteCarlo.Run(u, x => 2 * x, Short.WithThreads(2)), any = MonteCarlo.Run(u, x => 2 * x, Short);
        MonteCarloResult columns = MonteCarlo.Run(
            [u],
            (inputs, results, count) =>
            {
                for (int i = 0; i < count; i++)
                    results[i] = 2 * inputs[0][i];
            },
            QuantityKind.Voltage, Short);
        foreach (MonteCarloResult other in new[] { two, any, columns })
        {
            Assert.Equal(one.SortedResultsInSi(), other.SortedResultsInSi());
            Assert.Equal(one.StandardUncertainty, other.StandardUncertainty);
        }
        Assert.NotEqual(one.Estimate, MonteCarlo.Run(u, x => 2 * x, Short.WithSeed(2)).Estimate);
        Assert.Equal(2, Short.WithSeed(2).Seed);
    }

    /// <summary>JCGM 101 7.2.2: 10 000/(1 - p) trials, 200 000 for 95 %, 20 000 for 50 %.</summary>
    [Fact]
    public void FewTrials_AreFlaggedBelowTheStandardsNumber()
    {
        bool Few(int trials, int percent) =>
            MonteCarlo.Run(Number(1, 0.1), x => x, MonteCarloOptions.Default.WithCoverage(percent.Percent()).WithTrials(trials)).Findings.Any(finding => finding.Code == "few-trials");
        Assert.False(Few(20_000, 50));
        Assert.True(Few(19_999, 50));
        Assert.True(Few(20_000, 60));
    }

    /// <summary>Blocks of 10 000 trials until twice the scatter of the blocks' averages is below the tolerance; one digit of 0.1 is soon reached, four are not.</summary>
    [Fact]
    public void AdaptiveRun_EndsWhenStable_OrWhenItMust()
    {
        MonteCarloResult coarse = MonteCarlo.Run(Number(1, 0.1), x => x, MonteCarloOptions.Default.Adaptive(1, 400_000));
        Assert.True(coarse.IsStabilized);
        Assert.InRange(coarse.Trials, 20_000, 40_000);
        Assert.Equal(0, coarse.Trials % 10_000);
        Assert.Equal(coarse.SortedResultsInSi().Average(), coarse.Estimate.SiValue, 1e-12);
        Assert.DoesNotContain(coarse.Findings, finding => finding.Code == "not-stabilized");
        MonteCarloResult fine = MonteCarlo.Run(Number(1, 0.1), x => x, MonteCarloOptions.Default.Adaptive(4, 30_000));
        Assert.False(fine.IsStabilized);
        Assert.Equal(30_000, fine.Trials);
        Assert.Contains("after 30000 trials", fine.Findings.Single(finding => finding.Code == "not-stabilized").Message);
        // What does not scatter is stable at once.
        MonteCarloResult exact = MonteCarlo.Run(Number(1, 0), x => x, MonteCarloOptions.Default.Adaptive(2, 100_000));
        Assert.True(exact.IsStabilized);
        Assert.Equal(20_000, exact.Trials);
    }

    /// <summary>Half of all draws about 0 are negative: 1000 trials, five standard deviations of the count.</summary>
    [Fact]
    public void TrialsWithoutAValue_AreCounted()
    {
        string message = Assert.Throws<InvalidOperationException>(() => MonteCarlo.Run(
            [Number(0, 1)],
            (x, y, count) =>
            {
                for (int i = 0; i < count; i++)
                    y[i] = Math.Sqrt(x[0][i]);
            },
            QuantityKind.Ratio, MonteCarloOptions.Default.WithTrials(1000))).Message;
        Assert.InRange(int.Parse(message.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture), 420, 580);
        Assert.Contains("of 1000 trials had no value", message);
        Assert.Throws<ArgumentNullException>(() => MonteCarlo.Run(Number(0, 1), (Func<Ratio, Ratio>)null!, Short));
        Assert.Throws<ArgumentNullException>(() => MonteCarlo.Run((Uncertain<Ratio>)null!, x => x, Short));
    }

    /// <summary>By an independent ziggurat in Python (tests/scripts/uncertainty/make_reference.py): sums of 50 000 draws, how many lie in the tail, and the word that is drawn next.</summary>
    [Fact]
    public void NormalDraws_AreThoseOfTheZigguratTakenByItself()
    {
        var draws = new double[50_000];
        var stream = new RandomStream(1, 2, 4);
        NormalSampler.Fill(ref stream, draws, draws.Length, 1);
        Assert.Equal(ReferenceValues.Number("normal_draws", "sum"), draws.Sum(), 1e-8);
        Assert.Equal(ReferenceValues.Number("normal_draws", "sum_of_squares"), draws.Sum(x => x * x), 1e-8);
        Assert.Equal(ReferenceValues.Number("normal_draws", "sum_of_cubes"), draws.Sum(x => x * x * x), 1e-8);
        Assert.Equal(ReferenceValues.Number("normal_draws", "in_the_tail"), draws.Count(x => Math.Abs(x) > 3.6541528853610088));
        Assert.Equal(ReferenceValues.Number("normal_draws", "next"), stream.NextUnit(), 1e-15);
        stream = new RandomStream(1, 2, 4);
        Assert.Equal(draws, draws.Select(_ => NormalSampler.Next(ref stream)).ToArray());
    }

    /// <summary>By hand: groups 1, 2, 3 V and 2, 4, 6 V. Within: (2 + 8)/4; between: 3 times the variance 2 of the means (JCGM 100 H.5).</summary>
    [Fact]
    public void TwoGroupsOfThree_HaveTheVariancesOfTheGuide()
    {
        GroupedReadings<Voltage> groups = GroupedReadings<Voltage>.Of(new[] { new[] { 1.V(), 2.V(), 3.V() }, new[] { 2.V(), 4.V(), 6.V() } });
        GroupedReadings<Voltage> stated = GroupedReadings<Voltage>.Of([2.V(), 4.V()], [1.V(), 2.V()], 3);
        foreach (GroupedReadings<Voltage> one in new[] { groups, stated })
        {
            Assert.Equal(2.5, Math.Pow(one.WithinGroups.SiValue, 2), 1e-12);
            Assert.Equal(6, Math.Pow(one.BetweenGroups.SiValue, 2), 1e-12);
            Assert.Equal(2.4, one.VarianceRatio, 1e-12);
            Assert.Equal(3.5 / 3, Math.Pow(one.GroupEffect.SiValue, 2), 1e-12);
            Uncertain<Voltage> with = one.MeanWithGroupEffect(), without = one.MeanWithoutGroupEffect("pooled");
            Assert.Equal(3, with.Value.Volts, 1e-12);
            Assert.Equal(1, with.StandardUncertainty.SiValue, 1e-12);
            Assert.Equal(1, with.Budget().EffectiveDegreesOfFreedom, 1e-9);
            // (1 · 6 + 4 · 2.5)/5 over six readings.
            Assert.Equal(Math.Sqrt(3.2 / 6), without.StandardUncertainty.SiValue, 1e-12);
            Assert.Equal(5, without.Budget().EffectiveDegreesOfFreedom, 1e-9);
            Assert.Equal("pooled", without.Budget().Lines.Single().Name);
        }
        Assert.Equal(0, GroupedReadings<Voltage>.Of(new[] { new[] { 1.V(), 3.V() }, new[] { 2.V(), 2.1.V() } }).GroupEffect.SiValue);
    }

    /// <summary>By hand: y = 1 V + 2 V/s · t with residuals ±0.1 V at 0, 1, 2, 3 s (JCGM 100 H.3).</summary>
    [Fact]
    public void LineThroughFourPoints_HasTheUncertaintiesOfTheGuide()
    {
        StraightLine<Duration, Voltage> line = StraightLine<Duration, Voltage>.Fit([0.s(), 1.s(), 2.s(), 3.s()], [1.1.V(), 2.9.V(), 4.9.V(), 7.1.V()], 1.s());
        // Σ (t - 1.5)² = 5; the residuals 0.1, -0.1, -0.1, 0.1 have no slope of their own: s² = 0.04/2.
        Assert.Equal(2, line.SlopeInSi, 1e-12);
        Assert.Equal(Math.Sqrt(0.02), line.ResidualStandardDeviation.SiValue, 1e-12);
        Assert.Equal(Math.Sqrt(0.02 / 5), line.SlopeStandardUncertaintyInSi, 1e-12);
        Assert.Equal(3, line.Intercept.Value.Volts, 1e-12);
        Assert.Equal(Math.Sqrt(0.02 * (0.25 + 0.25 / 5)), line.Intercept.StandardUncertainty.SiValue, 1e-12);
        Assert.Equal(-0.5 / Math.Sqrt(5) / Math.Sqrt(0.3), line.CorrelationCoefficient, 1e-12);
        Assert.Equal(2, line.DegreesOfFreedom);
        Assert.Equal(9, line.At(4.s()).Value.Volts, 1e-12);
        Assert.Equal(Math.Sqrt(0.02 * (0.25 + 6.25 / 5)), line.At(4.s()).StandardUncertainty.SiValue, 1e-12);
        // A place known to ±0.1 s adds 0.2 V.
        Assert.Equal(Math.Sqrt(0.02 * (0.25 + 6.25 / 5) + 0.04), line.At(Uncertain.Of(4.s(), Spread.Standard(0.1.s()))).StandardUncertainty.SiValue, 1e-12);
        Assert.Throws<ArgumentException>(() => StraightLine<Duration, Voltage>.Fit([1.s(), 1.s(), 1.s()], [1.V(), 2.V(), 3.V()], 1.s()));
        Assert.Throws<ArgumentException>(() => StraightLine<Duration, Voltage>.Fit([1.s(), 2.s()], [1.V(), 2.V()], 1.s()));
        Assert.Throws<ArgumentException>(() => StraightLine<Duration, Voltage>.Fit([1.s(), 2.s(), 3.s()], [1.V(), 2.V(), 3.V(), 4.V()], 1.s()));
    }

    /// <summary>10^(6.0206/20) = 2 and 10^(3.0103/10) = 2; a decibel is 11.5 % of an amplitude and 23.0 % of a power.</summary>
    [Fact]
    public void RatiosOfGains_CarryTheirUncertainty()
    {
        Uncertain<DecibelRatio> six = Uncertain.Of(DecibelRatio.FromDecibels(20 * Math.Log10(2)), Spread.Standard(0.1.dB())), three = Uncertain.Of(DecibelRatio.FromDecibels(10 * Math.Log10(2)), Spread.Standard(0.1.dB()));
        Assert.Equal(2, Uncertain.ToAmplitudeRatio(six).Value.Fraction, 1e-12);
        Assert.Equal(2 * 0.1 * Math.Log(10) / 20, Uncertain.ToAmplitudeRatio(six).StandardUncertainty.SiValue, 1e-12);
        Assert.Equal(2, Uncertain.ToPowerRatio(three).Value.Fraction, 1e-12);
        Assert.Equal(2 * 0.1 * Math.Log(10) / 10, Uncertain.ToPowerRatio(three).StandardUncertainty.SiValue, 1e-12);
        Assert.Equal(six.Value.Decibels, Uncertain.ToDecibelsAsAmplitudes(Uncertain.ToAmplitudeRatio(six)).Value.Decibels, 1e-12);
        Assert.Equal(0.1, Uncertain.ToDecibelsAsPowers(Uncertain.ToPowerRatio(three)).StandardUncertainty.SiValue, 1e-12);
    }
}
