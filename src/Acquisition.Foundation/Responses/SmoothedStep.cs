using System;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>
/// The step response of poles and zeros behind a Gaussian far faster than the slowest of them (an AC coupling before a fast front end): the step of the poles,
/// averaged over the Gaussian.
/// </summary>
internal sealed class SmoothedStep : StepResponse
{
    /// <summary>A value costs some fifty of poles alone: a resonance is followed half as long.</summary>
    private const int MostPeriods = 500;

    private static readonly double Sqrt3 = Math.Sqrt(3);

    private readonly RationalStep _poles;
    private readonly TimeScales _scales;
    private readonly double _sigma;
    private readonly double[] _breaks;

    /// <summary>About the step itself, where an average takes many points: value and slope, to 1e-13 of the step.</summary>
    private readonly Lazy<(PiecewisePolynomial Values, PiecewisePolynomial Slopes)> _early;

    internal SmoothedStep(Factors factors)
    {
        _poles = new RationalStep(factors.WithoutGaussian());
        _scales = new TimeScales(factors, MostPeriods);
        _sigma = _scales.Sigma;
        Final = factors.DcGain;
        _breaks = Breaks(factors, _sigma);
        _early = new Lazy<(PiecewisePolynomial, PiecewisePolynomial)>(Tabulate);
    }

    internal override double Final { get; }

    internal override Ringing? Ringing => _scales.Ringing;

    internal override double Value(double seconds, out double slope)
    {
        double reach = _scales.Reach;
        if (seconds > -reach && seconds < 2 * reach)
        {
            (PiecewisePolynomial values, PiecewisePolynomial slopes) = _early.Value;
            slope = slopes.Value(seconds);
            return values.Value(seconds);
        }
        return Averaged(seconds, out slope);
    }

    /// <summary>The average over the Gaussian, at any time.</summary>
    private double Averaged(double seconds, out double slope)
    {
        double reach = _scales.Reach, value = 0;
        slope = 0;
        if (seconds <= -reach)
            return 0;
        if (IsVeryLate(seconds))
            return OfThree(seconds, out slope);
        if (TryLateSpacing(seconds, out double spacing, out int count))
        {
            for (int k = -count; k <= count; k++)
            {
                double weight = spacing * Density(k * spacing), part = _poles.Value(seconds - k * spacing * _sigma, out double rate);
                value += weight * part;
                slope += weight * rate;
            }
            return value;
        }
        double low = Math.Max(0, seconds - reach), high = seconds + reach;
        double start = low;
        // Before the step nothing: the integral starts at the step, in panels that are fine where a fast pole is still at work.
        foreach (double mark in _breaks)
        {
            if (mark <= low)
                continue;
            double end = Math.Min(mark, high);
            AddPanel(start, end, seconds, ref value, ref slope);
            start = end;
            if (end >= high)
                break;
        }
        while (start < high)
        {
            double end = Math.Min(high, start + _sigma);
            AddPanel(start, end, seconds, ref value, ref slope);
            start = end;
        }
        if (low == 0)
            slope += _poles.Value(0) * Density(seconds / _sigma) / _sigma;
        return value;
    }

    /// <summary>In closed form as soon as the poles are slow beside the Gaussian; before, from the scan.</summary>
    internal override double Integral(double seconds)
    {
        if (IsVeryLate(seconds))
        {
            double reach = Sqrt3 * _sigma;
            return (4 * _poles.Integral(seconds) + _poles.Integral(seconds - reach) + _poles.Integral(seconds + reach)) / 6;
        }
        if (!TryLateSpacing(seconds, out double spacing, out int count))
            return base.Integral(seconds);
        double sum = 0;
        for (int k = -count; k <= count; k++)
            sum += spacing * Density(k * spacing) * _poles.Integral(seconds - k * spacing * _sigma);
        return sum;
    }

    private protected override StepScan Scan()
    {
        var scan = new StepScan();
        double time = -_scales.Reach;
        while (time < _scales.ScanEnd)
        {
            double value = Value(time, out double slope);
            scan.Add(time, value, slope);
            time += Math.Min(_scales.StepAt(time), Math.Max(0.4 * _sigma, 0.25 * Math.Abs(time)));
        }
        if (Ringing is null)
            scan.Add(_scales.End, Final, 0);
        return scan;
    }

    /// <summary>
    /// Whether only modes are left that turn slowly beside the Gaussian: the trapezoidal rule over it then converges faster than any power, and its spacing (in standard
    /// deviations) follows from the fastest of them: the first alias, exp(-(2π/spacing - ωσ)²/2), is to be below 1e-13.
    /// </summary>
    private bool TryLateSpacing(double seconds, out double spacing, out int count)
    {
        double fastest = _scales.FastestAt(seconds) * _sigma;
        spacing = Math.Min(0.75, 2 * Math.PI / (fastest + 7.8));
        count = (int)Math.Ceiling(8.25 / spacing);
        return seconds >= 2 * _scales.Reach && fastest < 8;
    }

    /// <summary>Whether only modes are left to which the Gaussian is as good as a point: three points then average over it, exactly up to fifth powers.</summary>
    private bool IsVeryLate(double seconds) => seconds >= 2 * _scales.Reach && _scales.FastestAt(seconds) * _sigma < 5e-3;

    private double OfThree(double seconds, out double slope)
    {
        double reach = Sqrt3 * _sigma;
        double value = 4 * _poles.Value(seconds, out double middle) + _poles.Value(seconds - reach, out double early) + _poles.Value(seconds + reach, out double late);
        slope = (4 * middle + early + late) / 6;
        return value / 6;
    }

    private void AddPanel(double low, double high, double seconds, ref double value, ref double slope)
    {
        double half = 0.5 * (high - low), middle = 0.5 * (high + low);
        for (int i = 0; i < GaussLegendre.Nodes.Length; i++)
        {
            double at = middle + half * GaussLegendre.Nodes[i];
            double weight = half * GaussLegendre.Weights[i] * Density((seconds - at) / _sigma) / _sigma;
            value += weight * _poles.Value(at, out double rate);
            slope += weight * rate;
        }
    }

    private (PiecewisePolynomial Values, PiecewisePolynomial Slopes) Tabulate()
    {
        double reach = _scales.Reach, size = Math.Max(Math.Abs(Final), Math.Abs(_poles.Largest(1, out _)));
        double[] marks = { -reach, 0, reach, 2 * reach };
        return (new PiecewisePolynomial(seconds => Averaged(seconds, out _), marks, 1e-13 * size),
            new PiecewisePolynomial(SlopeAt, marks, 1e-12 * size / _sigma));
    }

    private double SlopeAt(double seconds)
    {
        Averaged(seconds, out double slope);
        return slope;
    }

    private static double Density(double x) => Math.Exp(-0.5 * x * x) / Math.Sqrt(2 * Math.PI);

    private static double[] Breaks(Factors factors, double sigma)
    {
        double finest = sigma;
        foreach (Complex pole in factors.Poles())
            finest = Math.Min(finest, 1 / Complex.Abs(pole));
        int count = 1 + (int)Math.Ceiling(Math.Log(sigma / finest) / Math.Log(2));
        var breaks = new double[count];
        for (int i = 0; i < count; i++)
            breaks[i] = Math.Min(sigma, finest * Math.Pow(2, i));
        return breaks;
    }
}
