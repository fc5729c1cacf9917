using System;
using System.Collections.Generic;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>
/// The step response of poles and zeros behind a Gaussian: the response to a square wave so slow that everything has settled before its next edge,
/// summed over odd harmonics. The Gaussian ends the sum after a few dozen of them, and the sum is then exact to rounding.
/// </summary>
internal sealed partial class FourierStep : StepResponse
{
    /// <summary>Harmonics beyond which the convolution in time is the cheaper way.</summary>
    internal const int MostLines = 3000;

    private readonly TimeScales _scales;
    private readonly double _spacing;
    private readonly double[] _real, _imaginary;

    private FourierStep(Factors factors, TimeScales scales, double span, int lines)
    {
        _scales = scales;
        Final = factors.DcGain;
        _spacing = Math.PI / span;
        _real = new double[RoundedUp(lines)];
        _imaginary = new double[_real.Length];
        for (int k = 0; k < lines; k++)
        {
            Complex gain = factors.At((2 * k + 1) * _spacing);
            double weight = 2 / (Math.PI * (2 * k + 1));
            _real[k] = gain.Real * weight;
            _imaginary[k] = gain.Imaginary * weight;
        }
    }

    internal override double Final { get; }

    /// <summary>The step of factors without delay, or null where it would take too many lines.</summary>
    internal static FourierStep? For(Factors factors)
    {
        var scales = new TimeScales(factors);
        // 30 decay times leave 1e-13; the Gaussian reaches 8.5 standard deviations to either side.
        double span = 30 * scales.Slowest + 2 * scales.Reach;
        double lines = Math.Ceiling(8.2 / scales.Sigma * span / (2 * Math.PI));
        return lines <= MostLines ? new FourierStep(factors, scales, span, (int)lines) : null;
    }

    internal override double Value(double seconds, out double slope)
    {
        // Beyond its ends the sum repeats itself; the step does not.
        if (seconds <= -_scales.Reach || seconds >= End)
        {
            slope = 0;
            return seconds < 0 ? 0 : Final;
        }
        double value = Sum(seconds * _spacing, out double rate);
        slope = rate * _spacing;
        return 0.5 * Final + value;
    }

    internal override double Integral(double seconds)
    {
        double start = -_scales.Reach, end = End;
        if (seconds <= start)
            return 0;
        return seconds >= end ? Antiderivative(end) - Antiderivative(start) + Final * (seconds - end) : Antiderivative(seconds) - Antiderivative(start);
    }

    private double End => 30 * _scales.Slowest + _scales.Reach;

    private double Antiderivative(double seconds)
    {
        double angle = seconds * _spacing;
        double real = Math.Cos(angle), imaginary = Math.Sin(angle), turnReal = Math.Cos(2 * angle), turnImaginary = Math.Sin(2 * angle), sum = 0;
        for (int k = 0; k < _real.Length; k++)
        {
            sum -= (_real[k] * real - _imaginary[k] * imaginary) / (2 * k + 1);
            double next = real * turnReal - imaginary * turnImaginary;
            imaginary = real * turnImaginary + imaginary * turnReal;
            real = next;
        }
        return 0.5 * Final * seconds + sum / _spacing;
    }

    private protected override StepScan Scan()
    {
        var scan = new StepScan();
        double time = -_scales.Reach, end = End;
        int quiet = 0;
        while (time < end && quiet < 24)
        {
            double value = Value(time, out double slope);
            scan.Add(time, value, slope);
            // Settled to rounding for as long as a slow oscillation could hide: what follows is noise.
            quiet = time > 0 && Math.Abs(value - Final) < 1e-11 * Math.Abs(Final) ? quiet + 1 : 0;
            time += _scales.StepAt(time);
        }
        scan.Add(end, Final, 0);
        return scan;
    }
}
