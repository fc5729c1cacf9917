using System;
using System.Collections.Generic;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core;

/// <summary>A straight line fitted by least squares, such as a calibration: intercept and slope with their uncertainties and correlation, and the line anywhere (JCGM 100 H.3).</summary>
/// <typeparam name="TX">The quantity along the line.</typeparam>
/// <typeparam name="TY">The quantity that the line gives.</typeparam>
/// <remarks>y = intercept + slope (x - reference). All scatter is in y, alike for all points and independent. Two values taken from one line are correlated by it. Immutable.</remarks>
public sealed class StraightLine<TX, TY>
    where TX : struct, IQuantity
    where TY : struct, IQuantity
{
    private readonly double _reference;
    private readonly double _slope;
    private readonly LinearCombination _slopeCombination;

    private StraightLine(double reference, double intercept, double slope, double interceptUncertainty, double slopeUncertainty, double correlation, double residual, int count, string name)
    {
        _reference = reference;
        _slope = slope;
        SlopeStandardUncertaintyInSi = slopeUncertainty;
        CorrelationCoefficient = correlation;
        ResidualStandardDeviation = new Quantity(residual, UncertaintyKind.Of(StrongType<TY>.Kind));
        DegreesOfFreedom = count - 2;
        var set = new CorrelatedSet(new[,] { { 1, correlation }, { correlation, 1 } });
        var atReference = new UncertaintySource(
            name + " at the reference", new Quantity(intercept, StrongType<TY>.Kind), new StudentTDistribution(interceptUncertainty, count - 2), $"straight line through {count} points");
        // The slope has no strong type; its estimate is shown in SI units.
        var slopeSource = new UncertaintySource(
            name + " slope (SI)", new Quantity(slope, QuantityKind.Ratio), new StudentTDistribution(slopeUncertainty, count - 2), $"straight line through {count} points");
        atReference.Join(set, 0);
        slopeSource.Join(set, 1);
        Intercept = new Uncertain<TY>(intercept, LinearCombination.Of(atReference));
        _slopeCombination = LinearCombination.Of(slopeSource);
    }

    /// <summary>The line at the reference.</summary>
    public Uncertain<TY> Intercept { get; }

    /// <summary>The slope, in SI units of y per SI unit of x (decibels for decibel kinds).</summary>
    public double SlopeInSi => _slope;

    /// <summary>The standard uncertainty of the slope, in SI units.</summary>
    public double SlopeStandardUncertaintyInSi { get; }

    /// <summary>The correlation coefficient of intercept and slope.</summary>
    public double CorrelationCoefficient { get; }

    /// <summary>The standard deviation of the points about the line.</summary>
    public Quantity ResidualStandardDeviation { get; }

    /// <summary>The number of points less two.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>Fits a line.</summary>
    /// <param name="x">Where the points are, taken as exact; at least three, not all alike.</param>
    /// <param name="y">The readings there.</param>
    /// <param name="reference">Where the intercept is taken; near the middle it is hardly correlated with the slope.</param>
    /// <param name="name">The name in budgets.</param>
    /// <exception cref="ArgumentException">There are fewer than three points, the lists differ in length, or all points lie at one x.</exception>
#pragma warning disable CA1000 // the type arguments are the points' own and read well here
    public static StraightLine<TX, TY> Fit(IReadOnlyList<TX> x, IReadOnlyList<TY> y, TX reference, string name = "line")
#pragma warning restore CA1000
    {
        double[] xs = TypeA.Values(x, 3, nameof(x)), ys = TypeA.Values(y, 3, nameof(y));
        if (xs.Length != ys.Length) throw new ArgumentException($"{xs.Length} places need as many readings; had {ys.Length}", nameof(y));
        var ofX = ReadingStatistics.Of(xs);
        var ofY = ReadingStatistics.Of(ys);
        if (ofX.SumOfSquares == 0) throw new ArgumentException("a line needs points at different places; all were at " + x[0].ToQuantity(), nameof(x));
        double product = 0;
        for (int i = 0; i < xs.Length; i++) product += (xs[i] - ofX.Mean) * (ys[i] - ofY.Mean);
        double slope = product / ofX.SumOfSquares, squares = 0;
        for (int i = 0; i < xs.Length; i++)
        {
            double residual = ys[i] - ofY.Mean - slope * (xs[i] - ofX.Mean);
            squares += residual * residual;
        }
        double s = Math.Sqrt(squares / (xs.Length - 2)), reach = reference.ToQuantity().SiValue - ofX.Mean;
        double slopeUncertainty = s / Math.Sqrt(ofX.SumOfSquares);
        double factor = Math.Sqrt(1.0 / xs.Length + reach * reach / ofX.SumOfSquares);
        double correlation = reach / (Math.Sqrt(ofX.SumOfSquares) * factor);
        return new StraightLine<TX, TY>(reference.ToQuantity().SiValue, ofY.Mean + slope * reach, slope, s * factor, slopeUncertainty, correlation, s, xs.Length, name ?? throw new ArgumentNullException(nameof(name)));
    }

    /// <summary>The line at an exact place.</summary>
    public Uncertain<TY> At(TX x) => At(Uncertain.Exact(x));

    /// <summary>The line at an uncertain place.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="x"/> is null.</exception>
    public Uncertain<TY> At(Uncertain<TX> x)
    {
        if (x is null) throw new ArgumentNullException(nameof(x));
        double distance = x.SiEstimate - _reference;
        LinearCombination line = LinearCombination.Sum(Intercept.Combination, 1, _slopeCombination, distance);
        return Uncertain<TY>.Made(Intercept.SiEstimate + _slope * distance, LinearCombination.Sum(line, 1, x.Combination, _slope), nameof(x));
    }
}
