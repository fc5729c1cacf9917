using System;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>How finely a step has to be looked at when: each pole asks for a fraction of its own period for as long as what it contributes is alive.</summary>
internal sealed class TimeScales
{
    /// <summary>Decay times after which a mode is gone: e^-40 is 4e-18, with room for the polynomial in front of a repeated one.</summary>
    private const double Lifetimes = 40;

    /// <summary>A mode of which the scan has seen so many decay times has nothing left to show: e^-25 is 1e-11.</summary>
    private const double Seen = 25;

    private readonly double[] _steps, _ends, _rates, _lives;

    /// <param name="factors">The poles and the Gaussian.</param>
    /// <param name="mostPeriods">Periods of a resonance after which a scan no longer follows it: a sharp one would be followed for Q times ten of them.</param>
    internal TimeScales(Factors factors, int mostPeriods = 1000)
    {
        Complex[] poles = factors.Poles();
        _steps = new double[poles.Length];
        _ends = new double[poles.Length];
        _rates = new double[poles.Length];
        _lives = new double[poles.Length];
        double sigma = Math.Sqrt(factors.Variance);
        Finest = double.PositiveInfinity;
        Reach = 8.5 * sigma;
        Sigma = sigma;
        for (int i = 0; i < poles.Length; i++)
        {
            // A Gaussian washes out whatever is finer than itself.
            _steps[i] = Math.Max(0.5 / Complex.Abs(poles[i]), 0.4 * sigma);
            _rates[i] = Complex.Abs(poles[i]);
            _lives[i] = Lifetimes / -poles[i].Real;
            _ends[i] = poles[i].Imaginary == 0 ? _lives[i] : Math.Min(_lives[i], mostPeriods * 2 * Math.PI / _rates[i]);
            Slowest = Math.Max(Slowest, 1 / -poles[i].Real);
            Finest = Math.Min(Finest, 1 / Complex.Abs(poles[i]));
            ScanEnd = Math.Max(ScanEnd, _ends[i] + Reach);
        }
        End = Lifetimes * Slowest + Reach;
        Ringing = FindRinging(poles);
    }

    /// <summary>The longest decay time, s.</summary>
    internal double Slowest { get; }

    /// <summary>The inverse of the farthest pole, s.</summary>
    internal double Finest { get; }

    /// <summary>The standard deviation of the Gaussian factor, s.</summary>
    internal double Sigma { get; }

    /// <summary>How far before and after the step its Gaussian factor is felt, s.</summary>
    internal double Reach { get; }

    /// <summary>When everything has settled, s.</summary>
    internal double End { get; }

    /// <summary>When a scan ends, s: at <see cref="End"/>, or earlier where only resonances ring on.</summary>
    internal double ScanEnd { get; }

    /// <summary>The resonance that the scan leaves ringing; null where there is none.</summary>
    internal Ringing? Ringing { get; }

    /// <summary>The step to take at a time after the beginning.</summary>
    internal double StepAt(double seconds)
    {
        double step = seconds < Reach ? 0.4 * Sigma : double.PositiveInfinity;
        for (int i = 0; i < _steps.Length; i++)
        {
            if (seconds < _ends[i] + Reach)
                step = Math.Min(step, _steps[i]);
        }
        return step;
    }

    /// <summary>The magnitude of the farthest pole that is still alive at a time, rad/s.</summary>
    internal double FastestAt(double seconds)
    {
        double fastest = 0;
        for (int i = 0; i < _rates.Length; i++)
        {
            if (seconds < _lives[i] + Reach)
                fastest = Math.Max(fastest, _rates[i]);
        }
        return fastest;
    }

    private Ringing? FindRinging(Complex[] poles)
    {
        int longest = -1;
        for (int i = 0; i < poles.Length; i++)
        {
            if (poles[i].Imaginary > 0 && -poles[i].Real * _ends[i] < Seen && (longest < 0 || poles[i].Real > poles[longest].Real))
                longest = i;
        }
        if (longest < 0)
            return null;
        double alone = 0;
        for (int i = 0; i < poles.Length; i++)
        {
            if (i == longest || poles[i] == Complex.Conjugate(poles[longest]))
                continue;
            alone = Math.Max(alone, -poles[i].Real * _ends[i] < Seen ? double.PositiveInfinity : _lives[i] + Reach);
        }
        return new Ringing(poles[longest].Imaginary, -poles[longest].Real, _ends[longest] + Reach, alone);
    }
}
