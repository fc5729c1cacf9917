using System;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>One factor of a rational response: (c0 + c1 s + c2 s²) / (1 + d1 s + d2 s²), s in rad/s. First order where c2 and d2 are 0.</summary>
internal readonly struct Section
{
    internal readonly double C0, C1, C2, D1, D2;

    internal Section(double c0, double c1, double c2, double d1, double d2)
    {
        C0 = c0;
        C1 = c1;
        C2 = c2;
        D1 = d1;
        D2 = d2;
    }

    /// <summary>An all-pole factor with gain 1 at DC.</summary>
    internal static Section Poles(double d1, double d2) => new(1, 0, 0, d1, d2);

    /// <summary>A real pole at -1/tau.</summary>
    internal static Section Pole(double tau) => new(1, 0, 0, tau, 0);

    /// <summary>A pair of conjugate poles, or (with a zero imaginary part) one real pole.</summary>
    internal static Section FromPole(Complex pole)
    {
        if (pole.Imaginary == 0)
            return Pole(-1 / pole.Real);
        double square = pole.Real * pole.Real + pole.Imaginary * pole.Imaginary;
        return Poles(-2 * pole.Real / square, 1 / square);
    }

    /// <summary>The number of poles.</summary>
    internal int Order => D2 != 0 ? 2 : D1 != 0 ? 1 : 0;

    /// <summary>The poles, in rad/s: as many as <see cref="Order"/>.</summary>
    internal void Poles(out Complex first, out Complex second)
    {
        first = second = Complex.Zero;
        if (D2 == 0)
        {
            if (D1 != 0)
                first = new Complex(-1 / D1, 0);
            return;
        }
        double discriminant = D1 * D1 - 4 * D2;
        if (discriminant < 0)
        {
            first = new Complex(-D1 / (2 * D2), Math.Sqrt(-discriminant) / (2 * D2));
            second = Complex.Conjugate(first);
        }
        else
        {
            // The product of the roots is 1/d2: the far root first, without cancellation, the near one from it.
            double far = -(D1 + Math.Sqrt(discriminant)) / (2 * D2);
            first = new Complex(far, 0);
            second = new Complex(1 / (D2 * far), 0);
        }
    }

    /// <summary>The same shape with every frequency multiplied by <paramref name="factor"/>.</summary>
    internal Section Scaled(double factor) => new(C0, C1 / factor, C2 / (factor * factor), D1 / factor, D2 / (factor * factor));
}
