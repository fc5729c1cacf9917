using System;
using System.Numerics;

namespace Acquisition.Core;

/// <summary>One transition of a signal: its shape and its 10 % to 90 % duration, which may be zero for an ideal jump.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class Edge
{
    /// <summary>10 % to 90 % of a Gaussian step in standard deviations: 2 z(0.9) (handbook 2.2).</summary>
    internal const double GaussianRisePerSigma = 2.5631031310892007;

    private static readonly double Ln2 = Math.Log(2), Ln9 = Math.Log(9), SqrtPi = Math.Sqrt(Math.PI);

    /// <summary>Makes an edge.</summary>
    /// <param name="riseTime">The 10 % to 90 % duration; 0 s for an ideal jump.</param>
    /// <param name="shape">How it goes from one level to the other.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rise time is negative, or the shape is not one of the known ones.</exception>
    public Edge(Duration riseTime, EdgeShape shape = EdgeShape.Linear)
    {
        if (!(riseTime.SiValue >= 0))
            throw Refuse.OutOfRange(riseTime.SiValue, Duration.Kind, nameof(riseTime), "at least 0 s");
        Scale = shape switch
        {
            EdgeShape.Linear => riseTime.SiValue / 0.8,
            EdgeShape.Gaussian => riseTime.SiValue / GaussianRisePerSigma,
            EdgeShape.Exponential => riseTime.SiValue / Ln9,
            _ => throw new ArgumentOutOfRangeException(nameof(shape), $"shape must be Linear, Gaussian or Exponential; was {(int)shape}"),
        };
        RiseTime = riseTime;
        Shape = shape;
    }

    /// <summary>The 10 % to 90 % duration.</summary>
    public Duration RiseTime { get; }

    /// <summary>How it goes from one level to the other.</summary>
    public EdgeShape Shape { get; }

    /// <summary>The whole ramp of a linear edge, the standard deviation of a Gaussian one, the time constant of an exponential one, s.</summary>
    internal double Scale { get; }

    /// <summary>How late the centroid of the slope lies after the 50 % point, s: where the edge asks for delay.</summary>
    internal double CentroidLag => Shape == EdgeShape.Exponential ? Scale * (1 - Ln2) : 0;

    /// <summary>The integral of S (1 - S) over time, s: what the edge takes from the power of an ideal jump of 1.</summary>
    internal double PowerDeficit => Shape switch
    {
        EdgeShape.Linear => Scale / 6,
        EdgeShape.Gaussian => Scale / SqrtPi,
        _ => Scale / 2,
    };

    /// <summary>How long before the 50 % point the edge has begun, s (to 1e-9 of its height).</summary>
    internal double Before => Shape switch
    {
        EdgeShape.Linear => Scale / 2,
        EdgeShape.Gaussian => 6 * Scale,
        _ => Scale * Ln2,
    };

    /// <summary>How long after the 50 % point the edge has ended, s (to 1e-9 of its height).</summary>
    internal double After => Shape switch
    {
        EdgeShape.Linear => Scale / 2,
        EdgeShape.Gaussian => 6 * Scale,
        _ => 20 * Scale,
    };

    /// <summary>How long before the 50 % point it is felt at all, s (to 1e-16 of its height).</summary>
    internal double FirstFelt => Shape == EdgeShape.Gaussian ? 8.5 * Scale : Before;

    /// <summary>How long after the 50 % point it is felt at all, s (to 1e-16 of its height).</summary>
    internal double LastFelt => Shape switch
    {
        EdgeShape.Linear => After,
        EdgeShape.Gaussian => 8.5 * Scale,
        _ => 37 * Scale,
    };

    /// <summary>The fraction of the height reached so many seconds after the 50 % point; an ideal jump is at one half there.</summary>
    internal double Fraction(double seconds)
    {
        if (Scale == 0)
            return seconds > 0 ? 1 : seconds < 0 ? 0 : 0.5;
        double x = seconds / Scale;
        switch (Shape)
        {
            case EdgeShape.Linear:
                return x <= -0.5 ? 0 : x >= 0.5 ? 1 : x + 0.5;
            case EdgeShape.Gaussian:
                return ErrorFunction.NormalBelow(x);
            default:
                return x <= -Ln2 ? 0 : 1 - 0.5 * Math.Exp(-x);
        }
    }

    /// <summary>The spectrum of the slope of an edge of height 1 about its 50 % point: 1 at DC.</summary>
    internal Complex Spectrum(double omega)
    {
        double x = omega * Scale;
        switch (Shape)
        {
            case EdgeShape.Linear:
                double half = x / 2;
                return Math.Abs(half) < 1e-4 ? 1 - half * half / 6 : Math.Sin(half) / half;
            case EdgeShape.Gaussian:
                return Math.Exp(-0.5 * x * x);
            default:
                return Complex.FromPolarCoordinates(1, x * Ln2) / new Complex(1, x);
        }
    }

    /// <summary>Rise time and shape.</summary>
    public override string ToString() => Scale == 0 ? "jump" : $"{Shape} edge, {RiseTime.InWords()}";
}
