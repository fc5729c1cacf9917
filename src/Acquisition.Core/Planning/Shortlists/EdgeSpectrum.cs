using System;
using System.Numerics;

namespace Acquisition.Core.Planning;

/// <summary>
/// The edge of a signal behind many chains at once: a square wave with that edge, long enough to settle, summed from its odd harmonics. Each stage's gains at those
/// harmonics are computed once, so that a chain costs a few multiplications and a search instead of a step response. Edges shown more than twice as slow are not
/// followed: they are so far off that the root-sum-square rule says enough.
/// </summary>
internal sealed class EdgeSpectrum
{
    private const int Lines = 144;
    private readonly Complex[] _edge = new Complex[Lines];
    private readonly double _fundamental;
    private readonly double _rise;

    internal EdgeSpectrum(Edge edge)
    {
        _rise = edge.RiseTime.SiValue;
        _fundamental = 1 / (32 * _rise);
        for (int i = 0; i < Lines; i++)
        {
            int number = (2 * i) + 1;
            // A square from 0 to 1: 1/2 + sum of 2/(π n) sin(n ω t) over odd n, times the spectrum of the edge.
            _edge[i] = new Complex(0, -2 / (Math.PI * number)) * edge.Spectrum(2 * Math.PI * number * _fundamental);
        }
    }

    /// <summary>The gains of a stage at the harmonics, relative to its gain at DC.</summary>
    internal Complex[] GainsOf(Response stage)
    {
        var gains = new Complex[Lines];
        double dc = stage.DcGain;
        for (int i = 0; i < Lines; i++)
            gains[i] = stage.ComplexGain(((2 * i) + 1) * _fundamental) / dc;
        return gains;
    }

    /// <summary>The 10 % to 90 % duration behind two stages, s; NaN where it is more than about twice the signal's own.</summary>
    internal double RiseTime(Complex[] first, Complex[] second, Complex[] workspace)
    {
        double bend = 0;
        for (int i = 0; i < Lines; i++)
        {
            workspace[i] = _edge[i] * first[i] * second[i];
            if (i == 0)
                bend = (first[0] * second[0]).Phase;
        }
        double omega = 2 * Math.PI * _fundamental, middle = -bend / omega;
        // Sixteen rise times belong to each edge, in which a ringing lead dies out; the search keeps to five.
        double limit = 5 * _rise, step = _rise / 6;
        double ninety = Walk(workspace, omega, middle, step, limit, 0.9), ten = Walk(workspace, omega, middle, -step, limit, 0.1);
        double duration = ninety - ten;
        return duration < 2.8 * _rise ? duration : double.NaN;
    }

    internal static int LineCount => Lines;

    // From the middle outward to the level, then bisection with interpolation.
    private static double Walk(Complex[] lines, double omega, double from, double step, double limit, double level)
    {
        double sign = step > 0 ? 1 : -1, inner = from, outer = from, innerValue = sign * (Value(lines, omega, from) - level), outerValue = innerValue;
        while (outerValue < 0)
        {
            inner = outer;
            innerValue = outerValue;
            outer += step;
            if (Math.Abs(outer - from) > limit)
                return double.NaN;
            outerValue = sign * (Value(lines, omega, outer) - level);
        }
        if (inner == outer)
        {
            // The middle itself lies beyond the level: walk back to where it does not.
            while (innerValue >= 0)
            {
                outer = inner;
                outerValue = innerValue;
                inner -= step;
                if (Math.Abs(inner - from) > limit)
                    return double.NaN;
                innerValue = sign * (Value(lines, omega, inner) - level);
            }
        }
        for (int i = 0; i < 30 && Math.Abs(outer - inner) > 1e-5 * Math.Abs(step); i++)
        {
            double at = inner - (innerValue * (outer - inner) / (outerValue - innerValue));
            double value = sign * (Value(lines, omega, at) - level);
            if (Math.Abs(value) < 1e-9)
                return at;
            if (value >= 0)
            {
                outer = at;
                outerValue = value;
                innerValue *= 0.5;
            }
            else
            {
                inner = at;
                innerValue = value;
                outerValue *= 0.5;
            }
        }
        return outer - (outerValue * (outer - inner) / (outerValue - innerValue));
    }

    private static double Value(Complex[] lines, double omega, double time)
    {
        // Horner's scheme in exp(2 j ω t), times exp(j ω t).
        double angle = omega * time, re1 = Math.Cos(angle), im1 = Math.Sin(angle), re2 = (re1 * re1) - (im1 * im1), im2 = 2 * re1 * im1, re = 0, im = 0;
        for (int i = Lines - 1; i >= 0; i--)
        {
            double next = (re * re2) - (im * im2) + lines[i].Real;
            im = (re * im2) + (im * re2) + lines[i].Imaginary;
            re = next;
        }
        return 0.5 + (re * re1) - (im * im1);
    }
}
