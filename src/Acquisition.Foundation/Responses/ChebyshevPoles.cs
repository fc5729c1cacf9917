using System;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>The poles of a Chebyshev type I response on their ellipse, scaled so that the half-power frequency is 1 rad/s (textbook: Zverev 1967, from memory).</summary>
internal static class ChebyshevPoles
{
    internal static Section[] Sections(int order, double rippleDecibels)
    {
        double epsilon = Math.Sqrt(Math.Pow(10, rippleDecibels / 10) - 1);
        double a = Math.Log(1 / epsilon + Math.Sqrt(1 / (epsilon * epsilon) + 1)) / order;
        // Half power: the Chebyshev polynomial reaches 1/epsilon.
        double halfPower = order == 1 ? 1 / epsilon : Math.Cosh(Math.Log(1 / epsilon + Math.Sqrt(1 / (epsilon * epsilon) - 1)) / order);
        var sections = new Section[(order + 1) / 2];
        for (int k = 0; k <= order / 2; k++)
        {
            double angle = Math.PI * (2 * k + 1) / (2 * order);
            double imaginary = 2 * k + 1 == order ? 0 : Math.Cosh(a) * Math.Cos(angle);
            sections[k] = Section.FromPole(new Complex(-Math.Sinh(a) * Math.Sin(angle), imaginary) / halfPower);
        }
        return sections;
    }
}
