using System;

namespace Acquisition.Core.Responses;

/// <summary>The 16-point Gauss-Legendre rule on [-1, 1]: nodes by Newton's method on the Legendre polynomial.</summary>
internal static class GaussLegendre
{
    private const int Points = 16;

    static GaussLegendre()
    {
        for (int i = 0; i < Points; i++)
        {
            double x = Math.Cos(Math.PI * (i + 0.75) / (Points + 0.5)), slope = 0;
            for (int round = 0; round < 8; round++)
            {
                double before = 1, value = x;
                for (int k = 2; k <= Points; k++)
                    (before, value) = (value, ((2 * k - 1) * x * value - (k - 1) * before) / k);
                slope = Points * (x * value - before) / (x * x - 1);
                x -= value / slope;
            }
            Nodes[i] = x;
            Weights[i] = 2 / ((1 - x * x) * slope * slope);
        }
    }

    internal static double[] Nodes { get; } = new double[Points];

    internal static double[] Weights { get; } = new double[Points];
}
