using System;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Uncertainty;

/// <summary>A symmetric trapezoid; with top 0 the triangle (JCGM 100 4.3.9, JCGM 101 6.4.4 and 6.4.5).</summary>
internal sealed class TrapezoidalDistribution : Distribution
{
    private readonly double _halfWidth;
    private readonly double _topToBase;

    internal TrapezoidalDistribution(double halfWidth, double topToBase)
    {
        _halfWidth = halfWidth;
        _topToBase = topToBase;
    }

    internal override string Name => _topToBase == 0 ? "triangular" : "trapezoidal";

    internal override double HalfWidth => _halfWidth;

    internal override double StandardUncertainty => _halfWidth * Math.Sqrt((1 + _topToBase * _topToBase) / 6);

    internal override double Cumulative(double deviation)
    {
        double x = Math.Abs(deviation) / _halfWidth;
        if (x >= 1) return deviation > 0 ? 1 : 0;
        double height = 1 / (1 + _topToBase);
        double tail = x <= _topToBase ? 0.5 - height * x : height * (1 - x) * (1 - x) / (2 * (1 - _topToBase));
        return deviation > 0 ? 1 - tail : tail;
    }

    internal override double Quantile(double probability)
    {
        double tail = Math.Min(probability, 1 - probability);
        double height = 1 / (1 + _topToBase);
        double tailAtShoulder = height * (1 - _topToBase) / 2;
        double x = tail >= tailAtShoulder ? (0.5 - tail) / height : 1 - Math.Sqrt(2 * tail * (1 - _topToBase) / height);
        return (probability < 0.5 ? -x : x) * _halfWidth;
    }

    /// <summary>A trapezoid is the sum of two rectangles.</summary>
    internal override void Fill(ref RandomStream stream, double[] column, int count)
    {
        double wide = _halfWidth * (1 + _topToBase) / 2, narrow = _halfWidth * (1 - _topToBase) / 2;
        for (int i = 0; i < count; i++) column[i] = wide * stream.NextSymmetric() + narrow * stream.NextSymmetric();
    }
}
