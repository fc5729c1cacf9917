using System;
using System.Numerics;

namespace Acquisition.Core.Responses;

internal sealed partial class Factors
{
    /// <summary>The complex gain at many frequencies in Hz.</summary>
    internal void Fill(double[] hertz, Complex[] gains, int from, int count)
    {
        int i = from, end = from + count;
#if NET8_0_OR_GREATER
        int lanes = Vector<double>.Count;
        for (; Vector.IsHardwareAccelerated && i + lanes <= end; i += lanes)
            FillLanes(hertz, gains, i);
#endif
        for (; i < end; i++)
            gains[i] = At(2 * Math.PI * hertz[i]);
    }

#if NET8_0_OR_GREATER
    private void FillLanes(double[] hertz, Complex[] gains, int at)
    {
        Vector<double> omega = new Vector<double>(hertz, at) * (2 * Math.PI), square = omega * omega, one = Vector<double>.One;
        Vector<double> dr = one, di = Vector<double>.Zero, nr = one, ni = Vector<double>.Zero;
        Section[] sections = _sections;
        for (int k = 0; k < sections.Length; k++)
        {
            Vector<double> r = one - square * sections[k].D2, m = omega * sections[k].D1, product = dr * r - di * m;
            di = dr * m + di * r;
            dr = product;
        }
        if (!_allPole)
        {
            for (int k = 0; k < sections.Length; k++)
            {
                Vector<double> r = new Vector<double>(sections[k].C0) - square * sections[k].C2, m = omega * sections[k].C1, product = nr * r - ni * m;
                ni = nr * m + ni * r;
                nr = product;
            }
        }
        Vector<double> power = dr * dr + di * di, scale = new Vector<double>(Gain) / power;
        var largest = new Vector<double>(1e300);
        if (!Vector.LessThanAll(power, largest) || !Vector.LessThanAll(Vector.Abs(nr) + Vector.Abs(ni), largest))
        {
            // Where products overflow the scalar way sorts it out.
            for (int k = 0; k < Vector<double>.Count; k++)
                gains[at + k] = At(2 * Math.PI * hertz[at + k]);
            return;
        }
        if (Variance != 0)
            scale *= ExpOfNegative(square * (-0.5 * Variance));
        Vector<double> real, imaginary;
        if (_allPole)
            (real, imaginary) = (dr * scale, -di * scale);
        else
            (real, imaginary) = ((nr * dr + ni * di) * scale, (ni * dr - nr * di) * scale);
        Span<double> reals = stackalloc double[Vector<double>.Count], imaginaries = stackalloc double[Vector<double>.Count];
        real.CopyTo(reals);
        imaginary.CopyTo(imaginaries);
        for (int k = 0; k < reals.Length; k++)
        {
            double re = reals[k], im = imaginaries[k];
            if (Delay != 0)
            {
                double angle = omega[k] * Delay, cosine = Math.Cos(angle), sine = Math.Sin(angle);
                (re, im) = (re * cosine + im * sine, im * cosine - re * sine);
            }
            gains[at + k] = new Complex(re, im);
        }
    }

    /// <summary>exp(x) for x of at most 0 to a unit or two of the last digit: x = n ln 2 + r, a Taylor polynomial in r, and n added to the exponent bits.</summary>
    private static Vector<double> ExpOfNegative(Vector<double> x)
    {
        const double shift = 6755399441055744.0; // 1.5 · 2^52: adding it leaves the nearest whole number in the low bits.
        const double high = 0.693147180369123816490, low = 1.90821492927058770002e-10; // ln 2 in two parts, the first with trailing zeros.
        Vector<double> lowest = new(-708), held = Vector.Max(x, lowest);
        Vector<double> shifted = held * 1.4426950408889634 + new Vector<double>(shift), n = shifted - new Vector<double>(shift);
        Vector<double> r = held - n * high - n * low;
        Vector<double> sum = new(1.0 / 6227020800);
        sum = sum * r + new Vector<double>(1.0 / 479001600);
        sum = sum * r + new Vector<double>(1.0 / 39916800);
        sum = sum * r + new Vector<double>(1.0 / 3628800);
        sum = sum * r + new Vector<double>(1.0 / 362880);
        sum = sum * r + new Vector<double>(1.0 / 40320);
        sum = sum * r + new Vector<double>(1.0 / 5040);
        sum = sum * r + new Vector<double>(1.0 / 720);
        sum = sum * r + new Vector<double>(1.0 / 120);
        sum = sum * r + new Vector<double>(1.0 / 24);
        sum = sum * r + new Vector<double>(1.0 / 6);
        sum = sum * r + new Vector<double>(0.5);
        sum = sum * r + Vector<double>.One;
        sum = sum * r + Vector<double>.One;
        Vector<double> result = Vector.AsVectorDouble(Vector.AsVectorInt64(sum) + Vector.ShiftLeft(Vector.AsVectorInt64(shifted), 52));
        return Vector.ConditionalSelect(Vector.LessThan(x, lowest), Vector<double>.Zero, result);
    }
#endif
}
