using System;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Uncertainty;

/// <summary>A rectangle whose half-width is itself known only to within a tolerance (JCGM 101 6.4.3).</summary>
internal sealed class CurvilinearTrapezoidDistribution : Distribution
{
    private readonly double _halfWidth;
    private readonly double _tolerance;

    internal CurvilinearTrapezoidDistribution(double halfWidth, double tolerance)
    {
        _halfWidth = halfWidth;
        _tolerance = tolerance;
    }

    internal override string Name => "curvilinear trapezoid";

    internal override double StandardUncertainty => Math.Sqrt(_halfWidth * _halfWidth / 3 + _tolerance * _tolerance / 9);

    internal override double Cumulative(double deviation)
    {
        double widest = _halfWidth + _tolerance, firm = _halfWidth - _tolerance, x = Math.Abs(deviation);
        if (x >= widest) return deviation > 0 ? 1 : 0;
        double tail = x < firm
            ? 0.5 - x * Math.Log(widest / firm) / (4 * _tolerance)
            : (widest - x - (x == 0 ? 0 : x * Math.Log(widest / x))) / (4 * _tolerance);
        return deviation > 0 ? 1 - tail : tail;
    }

    internal override double Quantile(double probability) => Bisect(probability, -_halfWidth - _tolerance, _halfWidth + _tolerance);

    internal override void Fill(ref RandomStream stream, double[] column, int count)
    {
        for (int i = 0; i < count; i++) column[i] = (_halfWidth + _tolerance * stream.NextSymmetric()) * stream.NextSymmetric();
    }
}
