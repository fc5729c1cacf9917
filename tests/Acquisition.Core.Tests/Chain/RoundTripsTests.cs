using System.Numerics;
using Acquisition.Core.Chain;
using Xunit;

namespace Acquisition.Core.Tests.Chain;

/// <summary>Power series of one over a polynomial, against series known from any textbook.</summary>
public sealed class RoundTripsTests
{
    /// <summary>1/(1 - x - y) = Σ (x + y)^n: the coefficient of x^i y^k is the binomial (i + k over i).</summary>
    [Fact]
    public void SeriesInTwoVariables_HoldsTheBinomials()
    {
        var trips = new RoundTrips(2, 4);
        Complex[] series = trips.Series(new Complex[] { 1, -1, -1, 0 });

        Assert.Equal(25, trips.Count);
        for (int index = 0; index < trips.Count; index++)
        {
            int i = trips.At(index)[0], k = trips.At(index)[1];
            Assert.Equal(Binomial(i + k, i), series[index].Real, 1e-12);
        }
    }

    /// <summary>1/(2 + x) = 1/2 Σ (-x/2)^n; what comes up to an index ends with it.</summary>
    [Fact]
    public void SeriesInOneVariable_IsGeometric()
    {
        var trips = new RoundTrips(1, 6);
        Complex[] series = trips.Upto(3).Series(new Complex[] { 2, 1 });

        Assert.Equal(new Complex[] { 0.5, -0.25, 0.125, -0.0625 }, series);
    }

    private static double Binomial(int n, int k) => k == 0 ? 1 : Binomial(n - 1, k - 1) * n / k;
}
