using System;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Uncertainty;

/// <summary>A rectangular distribution: anywhere within the half-width alike (JCGM 100 4.3.7, JCGM 101 6.4.2).</summary>
internal sealed class RectangularDistribution : Distribution
{
    private readonly double _halfWidth;

    internal RectangularDistribution(double halfWidth, double degreesOfFreedom = double.PositiveInfinity)
    {
        _halfWidth = halfWidth;
        DegreesOfFreedom = degreesOfFreedom;
    }

    internal override string Name => "rectangular";

    /// <summary>Limits that are in doubt themselves are none.</summary>
    internal override double HalfWidth => double.IsPositiveInfinity(DegreesOfFreedom) ? _halfWidth : double.PositiveInfinity;

    internal override double StandardUncertainty => _halfWidth / Math.Sqrt(3);

    internal override double DegreesOfFreedom { get; }

    internal override double Cumulative(double deviation) => Math.Max(0, Math.Min(1, 0.5 + deviation / (2 * _halfWidth)));

    internal override double Quantile(double probability) => _halfWidth * (2 * probability - 1);

    internal override void Fill(ref RandomStream stream, double[] column, int count) => stream.FillSymmetric(column, count, _halfWidth);
}
