using System;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Uncertainty;

/// <summary>An arcsine (U-shaped) distribution: a sinusoidal ripple or a mismatch of unknown phase (JCGM 101 6.4.6).</summary>
internal sealed class ArcsineDistribution : Distribution
{
    private readonly double _halfWidth;

    internal ArcsineDistribution(double halfWidth) => _halfWidth = halfWidth;

    internal override string Name => "arcsine";

    internal override double HalfWidth => _halfWidth;

    internal override double StandardUncertainty => _halfWidth / Math.Sqrt(2);

    internal override double Cumulative(double deviation) => 0.5 + Math.Asin(Math.Max(-1, Math.Min(1, deviation / _halfWidth))) / Math.PI;

    internal override double Quantile(double probability) => _halfWidth * Math.Sin(Math.PI * (probability - 0.5));

    /// <summary>The cosine of twice a random angle from a point in the unit disc: arithmetic only, so that every platform draws the same.</summary>
    internal override void Fill(ref RandomStream stream, double[] column, int count)
    {
        for (int i = 0; i < count; i++)
        {
            double x2, y2, r2;
            do
            {
                double x = stream.NextSymmetric(), y = stream.NextSymmetric();
                x2 = x * x;
                y2 = y * y;
                r2 = x2 + y2;
            }
            while (r2 > 1 || r2 == 0);
            column[i] = _halfWidth * ((x2 - y2) / r2);
        }
    }
}
