using System;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>How finely a step has to be looked at when: each pole asks for a fraction of its own period for as long as what it contributes is alive.</summary>
internal sealed class TimeScales
{
    /// <summary>Decay times after which a mode is gone: e^-40 is 4e-18, with room for the polynomial in front of a repeated one.</summary>
    private const double Lifetimes = 40;

    private readonly double[] _steps, _ends;

    internal TimeScales(Factors factors)
    {
        Complex[] poles = factors.Poles();
        _steps = new double[poles.Length];
        _ends = new double[poles.Length];
        double sigma = Math.Sqrt(factors.Variance);
        Finest = double.PositiveInfinity;
        for (int i = 0; i < poles.Length; i++)
        {
            // A Gaussian washes out whatever is finer than itself.
            _steps[i] = Math.Max(0.5 / Complex.Abs(poles[i]), 0.4 * sigma);
            _ends[i] = Lifetimes / -poles[i].Real;
            Slowest = Math.Max(Slowest, 1 / -poles[i].Real);
            Finest = Math.Min(Finest, 1 / Complex.Abs(poles[i]));
        }
        Reach = 8.5 * sigma;
        Sigma = sigma;
        End = Lifetimes * Slowest + Reach;
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
}
