using System;

namespace Acquisition.Core.Digitizing;

/// <summary>A sinc under a Kaiser window.</summary>
internal sealed class SincKernel : Reconstruction
{
    /// <summary>Intervals of the window's table: cubics between 1024 points of so smooth a curve are exact to about 1e-13.</summary>
    private const int TableIntervals = 1024;

    private readonly int _half;
    private readonly bool _unityAtDc;
    private readonly double[] _window, _slope;

    internal SincKernel(int taps, double kaiserShape, bool unityAtDc)
        : base(FormattableString.Invariant($"sinc, {taps} taps, Kaiser {kaiserShape}"))
    {
        if (taps < 2 || taps > 512 || taps % 2 != 0)
            throw new ArgumentOutOfRangeException(nameof(taps), FormattableString.Invariant($"taps must be even, 2 to 512; was {taps}"));
        if (!(kaiserShape >= 0 && kaiserShape <= 50))
            throw new ArgumentOutOfRangeException(nameof(kaiserShape), FormattableString.Invariant($"kaiserShape must be from 0 to 50; was {kaiserShape}"));
        _half = taps / 2;
        _unityAtDc = unityAtDc;
        _window = new double[TableIntervals + 1];
        _slope = new double[TableIntervals + 1];
        double scale = BesselI(0, kaiserShape);
        for (int i = 0; i <= TableIntervals; i++)
        {
            double x = (double)i / TableIntervals, z = kaiserShape * Math.Sqrt((1 - x) * (1 + x));
            _window[i] = BesselI(0, z) / scale;
            // d/dx I0(β√(1-x²)) = -β² x I1(z)/z, scaled to one interval of the table.
            _slope[i] = -kaiserShape * kaiserShape * x * BesselI(1, z) / scale / TableIntervals;
        }
    }

    public override int Taps => 2 * _half;

    public override int UntrustedAtEnds => _half;

    private protected override int Before => _half - 1;

    private protected override void Weigh(double u, double[] weights)
    {
        // sin π(u-n) = ±sin πu: one sine for all taps.
        double sine = Math.Sin(Math.PI * (u <= 0.5 ? u : 1 - u)) / Math.PI, sum = 0;
        for (int k = 0; k < weights.Length; k++)
        {
            int n = k - _half + 1;
            double distance = u - n;
            double sinc = distance == 0 ? 1 : (n % 2 == 0 ? sine : -sine) / distance;
            weights[k] = sinc * Window(Math.Abs(distance) / _half);
            sum += weights[k];
        }
        if (!_unityAtDc)
            return;
        for (int k = 0; k < weights.Length; k++)
            weights[k] /= sum;
    }

    private double Window(double x)
    {
        double place = x * TableIntervals;
        int i = (int)place;
        if (i >= TableIntervals)
            return i == TableIntervals ? _window[TableIntervals] : 0;
        double t = place - i, s = 1 - t;
        return s * s * ((1 + 2 * t) * _window[i] + t * _slope[i]) + t * t * ((1 + 2 * s) * _window[i + 1] - s * _slope[i + 1]);
    }

    /// <summary>I0(z), or I1(z)/z for order 1, by their power series: all terms positive, no cancellation.</summary>
    private static double BesselI(int order, double z)
    {
        double quarter = z * z / 4, term = order == 0 ? 1 : 0.5, sum = term;
        for (int k = 1; k < 200 && term > 1e-17 * sum; k++)
        {
            term *= quarter / ((double)k * (k + order));
            sum += term;
        }
        return sum;
    }
}
