using System;

namespace Acquisition.Core.Signals;

/// <summary>The integral of a smooth function over a short interval: Gauss-Legendre, 8 points (Abramowitz and Stegun 25.4).</summary>
internal static class Quadrature
{
    private static readonly double[] Nodes = { 0.18343464249564980, 0.52553240991632899, 0.79666647741362674, 0.96028985649753623 };
    private static readonly double[] Weights = { 0.36268378337836198, 0.31370664587788729, 0.22238103445337447, 0.10122853629037626 };

    internal static double Of(Func<double, double> function, double low, double high)
    {
        double half = 0.5 * (high - low), middle = 0.5 * (high + low), sum = 0;
        for (int i = 0; i < Nodes.Length; i++)
            sum += Weights[i] * (function(middle + half * Nodes[i]) + function(middle - half * Nodes[i]));
        return half * sum;
    }
}
