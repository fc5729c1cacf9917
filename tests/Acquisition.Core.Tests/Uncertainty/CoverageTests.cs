using System;
using Acquisition.Core.Tests.Handbook;
using Acquisition.Core.Uncertainty;
using Xunit;

namespace Acquisition.Core.Tests.Uncertainty;

public sealed class CoverageTests
{
    [Theory]
    [HandbookData("CV-01", "CV-02", "CV-T")]
    public void CoverageFactor_OfAProbability_IsTheTwoSidedQuantile(string id)
    {
        CheckValue value = CheckValue.All[id];
        double dof = value.Inputs.GetProperty("dof").ValueKind == System.Text.Json.JsonValueKind.String ? double.PositiveInfinity : value.Number("dof");

        value.Confirm(Coverage.WithProbability(Ratio.FromFraction(value.Number("p"))).CoverageFactorFor(dof));
    }

    [Theory]
    [HandbookData("CV-03", "CV-04")]
    public void CoverageProbability_OfAFactor_IsTwoSided(string id)
    {
        CheckValue value = CheckValue.All[id];

        value.Confirm(Coverage.WithFactor(value.Number("k")).CoverageProbabilityFor(double.PositiveInfinity).Fraction);
    }

    [Theory]
    [HandbookData("CV-20", "CV-21", "CV-22")]
    public void CoverageFactor_OfOneDominantInput_FollowsItsShape(string id)
    {
        CheckValue value = CheckValue.All[id];
        Distribution distribution = value.Text("distribution") switch
        {
            "rectangular" => new RectangularDistribution(1),
            "triangular" => new TrapezoidalDistribution(1, 0),
            _ => new ArcsineDistribution(1),
        };

        value.Confirm(distribution.Quantile(0.5 + value.Number("p") / 2) / distribution.StandardUncertainty);
    }

    [Fact]
    public void UsualCoverage_WithInfiniteDegreesOfFreedom_IsExactlyTwo() => Assert.Equal(2, Coverage.Usual.CoverageFactorFor(double.PositiveInfinity));

    [Fact]
    public void EffectiveDegreesOfFreedom_AreTruncatedBeforeTheQuantile() =>
        Assert.Equal(Coverage.WithProbability(Ratio.FromPercent(99)).CoverageFactorFor(16), Coverage.WithProbability(Ratio.FromPercent(99)).CoverageFactorFor(16.74));

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(-0.1)]
    public void CoverageProbability_OutsideItsRange_IsRefusedWithTheRange(double fraction)
    {
        var exception = Assert.Throws<ArgumentOutOfRangeException>(() => Coverage.WithProbability(Ratio.FromFraction(fraction)));

        Assert.Contains("probability must be above 0 and below 1; was", exception.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(2.5)]
    [InlineData(7)]
    [InlineData(33.3)]
    [InlineData(1e3)]
    [InlineData(1e6)]
    public void StudentQuantile_IsTheInverseOfItsDistributionFunction(double dof)
    {
        foreach (double p in new[] { 1e-9, 1e-4, 0.01, 0.3, 0.5, 0.9, 0.999 })
            Assert.Equal(p, StudentT.Cumulative(StudentT.Quantile(p, dof), dof), 1e-12 + 1e-9 * p);
    }
}
