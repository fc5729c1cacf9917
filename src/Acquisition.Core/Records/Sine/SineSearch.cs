using System;
using System.Collections.Generic;

namespace Acquisition.Core.Records;

/// <summary>Four-parameter fit without a hint: where to start, then the fit (handbook 9.2, 9.3).</summary>
/// <remarks>
/// A fit converges when it starts within about a quarter of a bin of the whole record. A spectrum of the first few thousand samples, interpolated, is that
/// good for a record several times as long; each fit then starts the next on as many samples as its uncertainty reaches. Where the line does not stand out of the first
/// samples, or lies within a few bins of DC or Nyquist (where its mirror image bends the interpolation), the spectrum of nearly the whole record or
/// a scan of trial frequencies takes over.
/// </remarks>
internal static class SineSearch
{
    private const int Head = 4096;
    private const int Edge = 4;

    /// <summary>Lines less prominent than this occur by chance: 25 times the mean power, exp(-25) per bin.</summary>
    private const double Prominent = 25;

    internal static SineSolution? Solve(SamplePasses x)
    {
        int n = x.Length;
        int head = PowerOfTwoUpTo(Math.Min(n, Head)), whole = PowerOfTwoUpTo(n);
        SineSolution? quick = n >= 32 ? From(x, head) : null;
        if (quick is { Converged: true } && Explains(x, quick))
            return quick;
        SineSolution? slow = n >= 32 && whole > head ? From(x, whole) : null;
        if (slow is { Converged: true } && Explains(x, slow))
            return slow;
        SineSolution? scanned = Scan(x, n < 32 ? 0.5 : (2.0 * Edge + 1) / n, fromNyquist: false);
        SineSolution? mirrored = n < 32 ? null : Scan(x, (2.0 * Edge + 1) / n, fromNyquist: true);
        return Best(Best(quick, slow), Best(scanned, mirrored));
    }

    private static SineSolution? Best(SineSolution? one, SineSolution? other)
    {
        if (one is not { Converged: true })
            return other ?? one;
        return other is { Converged: true } && other.ResidualSquares < one.ResidualSquares ? other : one;
    }

    /// <summary>Whether the sine takes more than half of the variance away; if not, a larger line may have been missed.</summary>
    private static bool Explains(SamplePasses x, SineSolution fit) =>
        fit.Model.Amplitude * fit.Model.Amplitude / 2 * x.Length > fit.ResidualSquares && fit.Model.Cycles * x.Length > 1;

    private static SineSolution? From(SamplePasses x, int length)
    {
        InterpolatedDft peak = InterpolatedDft.Of(x, length, hann: true);
        if (peak.Bin < Edge || peak.Bin > length / 2 - Edge || (length < x.Length / 2 && peak.Prominence < Prominent))
            return null;
        SineSolution? fit = SineSolver.Solve(x, 0, length, peak.Position / length, free: true);
        for (int span = length; fit is { Converged: true } && span < x.Length;)
        {
            // As far as five uncertainties of the frequency stay within a twentieth of a bin; a record that drifts is not trusted with more than a factor of 32.
            double reach = 0.01 / Math.Max(fit.CyclesUncertainty, 1e-15);
            span = (int)Math.Min(Math.Min(Math.Max(reach, 4.0 * span), 32.0 * span), x.Length);
            fit = SineSolver.Solve(x, 0, span, fit.Model.Cycles, free: true, near: fit);
        }
        return fit;
    }

    /// <summary>The best of trial frequencies a quarter of a bin apart, each with its own amplitude, phase and offset; then the fit.</summary>
    private static SineSolution? Scan(SamplePasses x, double width, bool fromNyquist)
    {
        int n = x.Length;
        double centre = (n - 1) / 2.0, half = Math.Max((n - 1) / 2.0, 0.5), best = double.MaxValue, at = -1;
        var matrix = new double[16];
        var gradient = new double[4];
        for (int i = 1; i * 0.25 / n < width; i++)
        {
            double cycles = fromNyquist ? 0.5 - i * 0.25 / n : i * 0.25 / n;
            if (!(cycles > 0 && cycles < 0.5))
                continue;
            var model = new SineModel(0, 0, 0, cycles);
            SineSums sums = SineSolver.Sums(x, 0, n, null, centre, half, model);
            sums.Normal(model, false, matrix, gradient);
            if (NormalSystem.Factor(matrix, 3) is not { } system)
                continue;
            double[] step = system.Solve(gradient);
            double left = sums.RR - step[0] * gradient[0] - step[1] * gradient[1] - step[2] * gradient[2];
            if (left < best)
            {
                best = left;
                at = cycles;
            }
        }
        return at > 0 ? SineSolver.Solve(x, 0, n, at, free: true) : null;
    }

    private static int PowerOfTwoUpTo(int n)
    {
        int power = 1;
        while (power <= n / 2)
            power *= 2;
        return power;
    }
}
