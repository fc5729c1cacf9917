using System;
using System.Collections.Generic;
using MathNet.Numerics;

namespace Acquisition.Core.Records;

/// <summary>The form of a window: its value across the record and its transform (handbook 9.7).</summary>
internal abstract class WindowShape
{
    /// <summary>Mean of the window, for peak 1.</summary>
    internal abstract double CoherentGain { get; }

    /// <summary>Equivalent noise bandwidth in bins.</summary>
    internal abstract double NoiseBandwidth { get; }

    /// <summary>Half the width of the main lobe, to the first null, in bins.</summary>
    internal abstract double MainLobe { get; }

    /// <summary>Value at a fraction of the record from 0 to 1, peak 1 at one half.</summary>
    internal abstract double At(double fraction);

    /// <summary>Transform at an offset in bins, relative to its value at 0, for a long record.</summary>
    internal abstract double Transform(double bins);

    /// <summary>The highest side lobe relative to the main one, as an amplitude: the largest value beyond the first null.</summary>
    internal double HighestSideLobe()
    {
        const double Step = 0.01, Last = 60;
        double null1 = MainLobe, best = 0, at = null1;
        // A null or a dip may come before the nominal end of the main lobe: start at the first minimum below 5 %.
        for (double x = 0.5 + Step; x < null1; x += Step)
        {
            double here = Math.Abs(Transform(x));
            if (here < 0.05 && here < Math.Abs(Transform(x - Step)) && here <= Math.Abs(Transform(x + Step)))
            {
                null1 = x;
                break;
            }
        }
        for (double x = null1; x < Last; x += Step)
        {
            double value = Math.Abs(Transform(x));
            if (value > best)
            {
                best = value;
                at = x;
            }
        }
        double low = at - Step, high = at + Step;
        for (int i = 0; i < 60; i++)
        {
            double third = (high - low) / 3;
            if (Math.Abs(Transform(low + third)) < Math.Abs(Transform(high - third)))
                low += third;
            else
                high -= third;
        }
        return Math.Abs(Transform((low + high) / 2));
    }
}

/// <summary>A sum of cosines: <c>sum (-1)^k a_k cos(2 pi k n/M)</c>, scaled to peak 1.</summary>
internal sealed class CosineSum : WindowShape
{
    private readonly double[] _terms;

    internal CosineSum(IReadOnlyList<double> terms)
    {
        double sum = 0;
        foreach (double term in terms)
            sum += term;
        _terms = new double[terms.Count];
        for (int k = 0; k < _terms.Length; k++)
            _terms[k] = terms[k] / sum;
    }

    internal override double CoherentGain => _terms[0];

    internal override double NoiseBandwidth
    {
        get
        {
            double sum = _terms[0] * _terms[0];
            for (int k = 1; k < _terms.Length; k++)
                sum += _terms[k] * _terms[k] / 2;
            return sum / (_terms[0] * _terms[0]);
        }
    }

    internal override double MainLobe => _terms.Length;

    internal override double At(double fraction)
    {
        double sum = 0;
        for (int k = 0; k < _terms.Length; k++)
            sum += (k % 2 == 0 ? 1 : -1) * _terms[k] * Math.Cos(2 * Math.PI * k * fraction);
        return sum;
    }

    internal override double Transform(double bins)
    {
        double sum = _terms[0] * Sinc(bins);
        for (int k = 1; k < _terms.Length; k++)
            sum += _terms[k] / 2 * (Sinc(bins - k) + Sinc(bins + k));
        return sum / _terms[0];
    }

    private static double Sinc(double x) => x == 0 ? 1 : Math.Sin(Math.PI * x) / (Math.PI * x);
}

/// <summary>The Kaiser window: <c>I0(beta sqrt(1 - u^2)) / I0(beta)</c>, u from -1 to 1 (Kaiser and Schafer 1980).</summary>
internal sealed class KaiserShape : WindowShape
{
    private readonly double _beta;
    private readonly double _peak;

    internal KaiserShape(double beta)
    {
        _beta = beta;
        _peak = SpecialFunctions.BesselI0(beta);
    }

    internal override double CoherentGain => Sinhc(_beta) / _peak;

    /// <summary>By Simpson's rule over half of the window: its square is smooth.</summary>
    internal override double NoiseBandwidth
    {
        get
        {
            const int Intervals = 4000;
            double sum = 0;
            for (int i = 0; i <= Intervals; i++)
            {
                double value = At(0.5 + 0.5 * i / Intervals);
                sum += value * value * (i == 0 || i == Intervals ? 1 : i % 2 == 0 ? 2 : 4);
            }
            return sum / (3.0 * Intervals) / (CoherentGain * CoherentGain);
        }
    }

    internal override double MainLobe => Math.Sqrt(1 + _beta * _beta / (Math.PI * Math.PI));

    internal override double At(double fraction)
    {
        double u = 2 * fraction - 1;
        return SpecialFunctions.BesselI0(_beta * Math.Sqrt(Math.Max(0, 1 - u * u))) / _peak;
    }

    internal override double Transform(double bins)
    {
        double z = _beta * _beta - Math.PI * Math.PI * bins * bins;
        return (z >= 0 ? Sinhc(Math.Sqrt(z)) : Math.Sin(Math.Sqrt(-z)) / Math.Sqrt(-z)) / Sinhc(_beta);
    }

    private static double Sinhc(double x) => x == 0 ? 1 : Math.Sinh(x) / x;
}
