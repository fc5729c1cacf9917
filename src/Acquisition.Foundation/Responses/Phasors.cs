using System;

namespace Acquisition.Core.Responses;

/// <summary>exp(jωt) at the nodes of a stretch of time, which lie in pairs about its middle.</summary>
internal sealed class Phasors
{
    private const int Nodes = PiecewisePolynomial.Terms;

    private readonly double _middle, _half;

    /// <param name="middle">The middle of the stretch, s.</param>
    /// <param name="half">Half its length, s.</param>
    internal Phasors(double middle, double half)
    {
        _middle = middle;
        _half = half;
    }

    internal double[] Cosines { get; } = new double[Nodes];

    internal double[] Sines { get; } = new double[Nodes];

    /// <summary>Those of an angular frequency, rad/s.</summary>
    internal void Fill(double omega)
    {
        double middleCosine = Math.Cos(omega * _middle), middleSine = Math.Sin(omega * _middle);
        for (int i = 0; i < Nodes / 2; i++)
        {
            double angle = omega * _half * PiecewisePolynomial.Nodes[i], cosine = Math.Cos(angle), sine = Math.Sin(angle);
            (Cosines[i], Sines[i]) = (middleCosine * cosine - middleSine * sine, middleSine * cosine + middleCosine * sine);
            (Cosines[Nodes - 1 - i], Sines[Nodes - 1 - i]) = (middleCosine * cosine + middleSine * sine, middleSine * cosine - middleCosine * sine);
        }
    }
}
