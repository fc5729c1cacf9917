using System;
using System.Collections.Generic;

namespace Acquisition.Core.Responses;

/// <summary>An integral over panels between given points, each halved until two halves agree with the whole.</summary>
internal static class AdaptiveIntegral
{
    private const int Deepest = 30;

    /// <param name="function">What to integrate.</param>
    /// <param name="points">Rising; the integral goes from 0 to the last of them.</param>
    /// <param name="tolerance">Relative to the whole.</param>
    internal static double Of(Func<double, double> function, IReadOnlyList<double> points, double tolerance)
    {
        var wholes = new double[points.Count];
        double before = 0, estimate = 0;
        for (int i = 0; i < points.Count; i++)
        {
            wholes[i] = Panel(function, before, points[i]);
            estimate += wholes[i];
            before = points[i];
        }
        double sum = 0, allowed = tolerance * Math.Abs(estimate);
        before = 0;
        for (int i = 0; i < points.Count; i++)
        {
            sum += Refined(function, before, points[i], wholes[i], allowed, 0);
            before = points[i];
        }
        return sum + Tail(function, before);
    }

    /// <summary>What lies above the last point, by the power law that holds there; nothing where the function is gone.</summary>
    private static double Tail(Func<double, double> function, double last)
    {
        double here = function(last), earlier = function(0.5 * last);
        if (!(here > 0) || !(earlier > here))
            return 0;
        double exponent = Math.Log(earlier / here) / Math.Log(2);
        return exponent > 1.01 ? here * last / (exponent - 1) : 0;
    }

    private static double Refined(Func<double, double> function, double low, double high, double whole, double allowed, int depth)
    {
        double middle = 0.5 * (low + high), left = Panel(function, low, middle), right = Panel(function, middle, high);
        if (Math.Abs(left + right - whole) <= allowed || depth == Deepest)
            return left + right;
        return Refined(function, low, middle, left, allowed / 2, depth + 1) + Refined(function, middle, high, right, allowed / 2, depth + 1);
    }

    private static double Panel(Func<double, double> function, double low, double high)
    {
        double half = 0.5 * (high - low), middle = 0.5 * (high + low), sum = 0;
        for (int i = 0; i < GaussLegendre.Nodes.Length; i++)
            sum += GaussLegendre.Weights[i] * function(middle + half * GaussLegendre.Nodes[i]);
        return half * sum;
    }
}
