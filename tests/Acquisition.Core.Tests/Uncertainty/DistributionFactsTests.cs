using System;
using System.Linq;
using Acquisition.Core.Signals;
using Acquisition.Core.Uncertainty;
using Xunit;

namespace Acquisition.Core.Tests.Uncertainty;

/// <summary>What each distribution states of itself, against its textbook form and against short runs of its own draws.</summary>
public sealed class DistributionFactsTests
{
    /// <summary>Symmetrical about 0; 0 below the lowest and 1 above the highest value that there is.</summary>
    [Theory]
    [InlineData(0), InlineData(1), InlineData(2), InlineData(3), InlineData(4), InlineData(5)]
    public void DistributionFunction_IsSymmetrical_AndEndsAtZeroAndOne(byte shape)
    {
        Distribution distribution = SpreadTests.Shape(shape, 2);
        Assert.Equal(0.5, distribution.Cumulative(0), 1e-12);
        foreach (double x in new[] { 0.01, 0.3, 0.8, 1.3, 1.45, 1.9, 2.5, 3 })
        {
            Assert.Equal(1, distribution.Cumulative(x) + distribution.Cumulative(-x), 1e-12);
            Assert.True(distribution.Cumulative(x) >= distribution.Cumulative(0.99 * x));
        }
        Assert.Equal(0, distribution.Quantile(0.5), 1e-9);
        bool limited = shape is >= 1 and <= 4;
        Assert.Equal(limited ? 1 : 0.9, distribution.Cumulative(2.6), limited ? 1e-15 : 0.05);
        Assert.Equal(limited ? 0 : 0.1, distribution.Cumulative(-2.6), limited ? 1e-15 : 0.05);
    }

    /// <summary>By hand: the area of each shape from its left end to a place in it.</summary>
    [Fact]
    public void DistributionFunctions_AreTheAreasOfTheirShapes()
    {
        // Half-width 2, top 0.4 of the base: a plateau of 1/(2 · 1.4) from -0.8 to 0.8, ramps of width 1.2 beside it.
        var trapezoid = new TrapezoidalDistribution(2, 0.4);
        Assert.Equal(1.2 / 2.8 / 2, trapezoid.Cumulative(-0.8), 1e-12);
        Assert.Equal(0.6 / 5.6 / 2, trapezoid.Cumulative(-1.4), 1e-12);
        Assert.Equal(0.5 + 0.5 / 2.8, trapezoid.Cumulative(0.5), 1e-12);
        Assert.Equal(-1.4, trapezoid.Quantile(0.6 / 5.6 / 2), 1e-12);
        Assert.Equal(0.5, trapezoid.Quantile(0.5 + 0.5 / 2.8), 1e-12);
        Assert.Equal(2 * Math.Sqrt(1.16 / 6), trapezoid.StandardUncertainty, 1e-12);
        Assert.Equal(0.125, new TrapezoidalDistribution(2, 0).Cumulative(-1), 1e-12);
        Assert.Equal(0.25, new RectangularDistribution(2).Cumulative(-1), 1e-12);
        Assert.Equal(1, new RectangularDistribution(2).Quantile(0.75), 1e-12);
        // sin 30° = 1/2: a sixth of the turn below.
        Assert.Equal(2 / 3.0, new ArcsineDistribution(2).Cumulative(1), 1e-12);
        Assert.Equal(1, new ArcsineDistribution(2).Quantile(2 / 3.0), 1e-12);
        Assert.Equal(0.8413447460685429, new NormalDistribution(2).Cumulative(2), 1e-12);
        // One degree of freedom is Cauchy: 3/4 below its scale.
        Assert.Equal(0.75, new StudentTDistribution(2, 1).Cumulative(2), 1e-12);
        Assert.Equal(2, new StudentTDistribution(2, 1).Quantile(0.75), 1e-12);
    }

    [Fact]
    public void OnlyLimits_HaveAHalfWidth_AndOnlyWhatIsInDoubtDegreesOfFreedom()
    {
        Assert.Equal(2, new RectangularDistribution(2).HalfWidth);
        Assert.Equal(2, new TrapezoidalDistribution(2, 0.4).HalfWidth);
        Assert.Equal(2, new ArcsineDistribution(2).HalfWidth);
        Assert.Equal(double.PositiveInfinity, new RectangularDistribution(2, 50).HalfWidth);
        Assert.Equal(double.PositiveInfinity, new NormalDistribution(2).HalfWidth);
        Assert.Equal(double.PositiveInfinity, new CurvilinearTrapezoidDistribution(2, 0.5).HalfWidth);
        Assert.Equal(double.PositiveInfinity, new ArcsineDistribution(2).DegreesOfFreedom);
        Assert.Equal(50, new RectangularDistribution(2, 50).DegreesOfFreedom);
        Assert.Equal(7, new NormalDistribution(2, 7).DegreesOfFreedom);
        Assert.Equal([true, true, false, false, false, false], new Distribution[]
        {
            new NormalDistribution(1), new StudentTDistribution(1, 5), new RectangularDistribution(1), new ArcsineDistribution(1), new TrapezoidalDistribution(1, 0), new CurvilinearTrapezoidDistribution(1, 0.1),
        }.Select(distribution => distribution.IsBellShaped));
        // The variance of t is ν/(ν - 2); with 2 degrees of freedom or fewer there is none.
        Assert.Equal(Math.Sqrt(5 / 3.0), new StudentTDistribution(1, 5).StandardDeviation, 1e-12);
        Assert.Equal(double.PositiveInfinity, new StudentTDistribution(1, 2).StandardDeviation);
        Assert.Equal(1, new StudentTDistribution(1, 5).StandardUncertainty);
    }

    /// <summary>Of 20 000 draws, as many lie below each quantile as should, to five standard deviations of the count; the seed is fixed.</summary>
    [Theory]
    [InlineData(0), InlineData(1), InlineData(2), InlineData(3), InlineData(4), InlineData(5)]
    public void AFewDraws_LieBelowTheirQuantilesAsOftenAsTheyShould(byte shape)
    {
        Distribution distribution = SpreadTests.Shape(shape, 2);
        const int count = 20_000;
        double[] draws = new double[count + 1];
        draws[count] = 1234;
        var stream = new RandomStream(3, shape, 7);
        distribution.Fill(ref stream, draws, count);
        foreach (double p in new[] { 0.01, 0.1, 0.25, 0.5, 0.75, 0.9, 0.99 })
        {
            double quantile = distribution.Quantile(p);
            Assert.Equal(p, draws.Take(count).Count(x => x <= quantile) / (double)count, 5 * Math.Sqrt(p * (1 - p) / count));
        }
        Assert.Equal(1234, draws[count]);
        Assert.InRange(draws.Take(count).Average(), -5 * distribution.StandardDeviation / Math.Sqrt(count), 5 * distribution.StandardDeviation / Math.Sqrt(count));
        if (distribution.HalfWidth < double.PositiveInfinity)
            Assert.True(draws.Take(count).All(x => Math.Abs(x) <= 2));
    }

    /// <summary>A gamma variable of shape a has the mean a and the variance a, also below 1, where a larger shape is shrunk.</summary>
    [Theory]
    [InlineData(0.5), InlineData(1), InlineData(2.5), InlineData(20)]
    public void GammaDraws_HaveTheirMeanAndVariance(double shape)
    {
        var stream = new RandomStream(8, 0, 0);
        double[] draws = new double[20_000];
        for (int i = 0; i < draws.Length; i++)
            draws[i] = GammaSampler.Next(ref stream, shape);
        double mean = draws.Average();
        Assert.Equal(shape, mean, 5 * Math.Sqrt(shape / draws.Length));
        // The fourth central moment is 3 a² + 6 a.
        Assert.Equal(shape, draws.Average(x => (x - mean) * (x - mean)), 5 * Math.Sqrt((2 * shape * shape + 6 * shape) / draws.Length));
        Assert.True(draws.All(x => x >= 0));
    }

    /// <summary>Every layer of the ziggurat in 60 000 draws: the counts in 20 cells of equal probability.</summary>
    [Fact]
    public void NormalDraws_FillCellsOfEqualProbabilityEvenly()
    {
        var stream = new RandomStream(21, 0, 0);
        int[] cells = new int[20];
        for (int i = 0; i < 60_000; i++)
            cells[Math.Min(19, (int)(20 * Normal.Cumulative(NormalSampler.Next(ref stream))))]++;
        // χ² of 19 degrees of freedom exceeds 43.8 with a probability of 0.1 %.
        Assert.InRange(cells.Sum(n => Math.Pow(n - 3000, 2) / 3000), 0, 43.8);
    }

    /// <summary>By hand: five readings, each with a fifth of the probability.</summary>
    [Fact]
    public void Readings_AreAStaircase()
    {
        var readings = new DiscreteDistribution([0.3, -0.1, -0.3, 0.1, 0]);
        Assert.Equal([0, 0.2, 0.2, 0.6, 1, 1], new[] { -0.31, -0.3, -0.2, 0, 0.3, 9 }.Select(readings.Cumulative));
        Assert.Equal([-0.3, -0.3, -0.1, 0, 0.3, 0.3], new[] { 0, 0.2, 0.21, 0.5, 0.81, 1 }.Select(readings.Quantile));
        Assert.Equal(Math.Sqrt(0.2 / 5), readings.StandardUncertainty, 1e-12);
        double[] draws = new double[5000];
        var stream = new RandomStream(1, 0, 0);
        readings.Fill(ref stream, draws, draws.Length);
        Assert.All(new[] { -0.3, -0.1, 0, 0.1, 0.3 }, value => Assert.InRange(draws.Count(x => x == value), 850, 1150));
    }

    /// <summary>Closed forms of one and two degrees of freedom; percentage points of printed tables (any textbook) for more; the normal distribution for infinitely many.</summary>
    [Theory]
    [InlineData(0.975, 1, 12.7062047)]
    [InlineData(0.975, 2, 4.30265273)]
    [InlineData(0.975, 3, 3.18244631)]
    [InlineData(0.975, 10, 2.22813885)]
    [InlineData(0.95, 5, 2.01504837)]
    [InlineData(0.995, 30, 2.74999565)]
    [InlineData(0.9999, 4, 13.0336717)]
    [InlineData(0.975, 5000, 1.96043847)]
    [InlineData(0.975, double.PositiveInfinity, 1.95996398)]
    public void StudentQuantiles_AreThoseOfTheTables(double probability, double degreesOfFreedom, double t)
    {
        Assert.Equal(t, StudentT.Quantile(probability, degreesOfFreedom), 1e-7 * t);
        Assert.Equal(-t, StudentT.Quantile(1 - probability, degreesOfFreedom), 1e-7 * t);
        Assert.Equal(t, StudentT.CoverageFactor(2 * probability - 1, degreesOfFreedom), 1e-7 * t);
        Assert.Equal(probability, StudentT.Cumulative(t, degreesOfFreedom), 1e-8);
        Assert.Equal(1 - probability, StudentT.Cumulative(-t, degreesOfFreedom), 1e-8);
        Assert.Equal(0, StudentT.Quantile(0.5, degreesOfFreedom));
    }

    [Fact]
    public void NormalProbabilityBetween_KeepsItsDigitsInTheTail()
    {
        Assert.Equal(0.6826894921370859, Normal.Between(-1, 1), 1e-14);
        Assert.Equal(0.1359051219832777, Normal.Between(1, 2), 1e-14);
        Assert.Equal(0.1359051219832777, Normal.Between(-2, -1), 1e-14);
        // Q(9) = 1.1286e-19 (Abramowitz and Stegun, table 26.2, by its asymptotic series 26.2.12).
        Assert.Equal(1.128588e-19, Normal.Between(9, 20), 1e-24);
        Assert.Equal(9, -Normal.Quantile(1.128588e-19), 1e-6);
        Assert.Equal(0.24197072451914337, Normal.Density(1), 1e-15);
        Assert.Equal(1, Normal.Quantile(0.8413447460685429), 1e-12);
    }

    /// <summary>Ends of the results picked out of many, a part of an array, one thread or two: those of the sorted part.</summary>
    [Theory]
    [InlineData(0, true), InlineData(1000, true), InlineData(1000, false)]
    public void EndsOfManyResults_AreThoseOfTheSortedOnes(int start, bool parallel)
    {
        var random = new Random(4);
        double[] values = Enumerable.Range(0, 42_000).Select(_ => Math.Exp(2 * random.NextDouble())).ToArray();
        foreach ((int length, int count) in new[] { (40_000, 1), (40_000, 2000), (40_000, 15_000), (32_768, 1600), (900, 45) })
        {
            Tails tails = Tails.Of(values, start, length, count, parallel);
            double[] sorted = values.Skip(start).Take(length).OrderBy(x => x).ToArray();
            Assert.Equal(sorted.Take(count), tails.Lowest);
            Assert.Equal(sorted.Skip(length - count), tails.Highest);
            Assert.Equal(count, tails.Count);
            int covered = length - count, best = Enumerable.Range(0, count).OrderBy(r => sorted[r + covered] - sorted[r]).First();
            Assert.Equal((sorted[best], sorted[best + covered]), tails.Shortest());
            Assert.Equal((sorted[(count + 1) / 2 - 1], sorted[(count + 1) / 2 - 1 + covered]), tails.Symmetric());
        }
        // All alike: no cut parts them.
        Tails flat = Tails.Of(Enumerable.Repeat(3.0, 40_000).ToArray(), 0, 40_000, 2000, parallel);
        Assert.Equal((3.0, 3.0), flat.Shortest());
    }

    [Fact]
    public void StatisticsOfJoinedBlocks_AreThoseOfTheWhole()
    {
        var random = new Random(5);
        double[] values = Enumerable.Range(0, 1000).Select(_ => 1e6 + random.NextDouble()).ToArray();
        BlockStatistics joined = BlockStatistics.Of(values, 0, 300);
        joined.Join(BlockStatistics.Of(values, 300, 1));
        joined.Join(BlockStatistics.Of(values, 301, 699));
        double mean = values.Average(), deviation = Math.Sqrt(values.Sum(x => (x - mean) * (x - mean)) / 999);
        Assert.Equal(1000, joined.Count);
        Assert.Equal(mean, joined.Mean, 1e-8);
        Assert.Equal(deviation, joined.StandardDeviation, 1e-9);
        Assert.Equal(0, BlockStatistics.Of(values, 7, 1).StandardDeviation);
    }
}
