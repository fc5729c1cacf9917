using System;
using System.Numerics;
#if NET8_0_OR_GREATER
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
#endif

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
    // Optimized from its first call: it is the inner loop of a single call, which would otherwise run to its end before the runtime has noticed.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void FillLanes(double[] hertz, Complex[] gains, int at)
    {
        Vector<double> omega = new Vector<double>(hertz, at) * (2 * Math.PI), square = omega * omega, one = Vector<double>.One;
        Vector<double> dr = one, di = Vector<double>.Zero, nr = one, ni = Vector<double>.Zero;
        Section[] sections = _sections;
        for (int k = 0; k < sections.Length; k++)
        {
            Vector<double> m = omega * sections[k].D1;
            if (sections[k].D2 == 0)
            {
                (dr, di) = (MultiplyAddNegated(di, m, dr), MultiplyAdd(dr, m, di));
                continue;
            }
            Vector<double> r = MultiplyAddNegated(square, new Vector<double>(sections[k].D2), one);
            (dr, di) = (MultiplyAddNegated(di, m, dr * r), MultiplyAdd(dr, m, di * r));
        }
        if (!_allPole)
        {
            for (int k = 0; k < sections.Length; k++)
            {
                Vector<double> r = MultiplyAddNegated(square, new Vector<double>(sections[k].C2), new Vector<double>(sections[k].C0)), m = omega * sections[k].C1;
                (nr, ni) = (MultiplyAddNegated(ni, m, nr * r), MultiplyAdd(nr, m, ni * r));
            }
        }
        Vector<double> power = dr * dr + di * di, scale = new Vector<double>(Gain) / power;
        var largest = new Vector<double>(1e300);
        if (!Vector.LessThanAll(power, largest) || (!_allPole && !Vector.LessThanAll(Vector.Abs(nr) + Vector.Abs(ni), largest)))
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
        if (Delay != 0)
            (real, imaginary) = Late(real, imaginary, omega);
        Store(real, imaginary, gains, at);
    }

    /// <summary>Turned back by the delay.</summary>
    private (Vector<double> Real, Vector<double> Imaginary) Late(Vector<double> real, Vector<double> imaginary, Vector<double> omega)
    {
        Span<double> cosines = stackalloc double[Vector<double>.Count], sines = stackalloc double[Vector<double>.Count];
        for (int k = 0; k < cosines.Length; k++)
            (sines[k], cosines[k]) = Math.SinCos(omega[k] * Delay);
        Vector<double> cosine = new(cosines), sine = new(sines);
        return (real * cosine + imaginary * sine, imaginary * cosine - real * sine);
    }

    /// <summary>exp(x) for x of at most 0 to a unit or two of the last digit: x = n ln 2 + r, a Taylor polynomial in r, and n added to the exponent bits.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static Vector<double> ExpOfNegative(Vector<double> x)
    {
        const double shift = 6755399441055744.0; // 1.5 · 2^52: adding it leaves the nearest whole number in the low bits.
        const double high = 0.693147180369123816490, low = 1.90821492927058770002e-10; // ln 2 in two parts, the first with trailing zeros.
        Vector<double> lowest = new(-708), held = Vector.Max(x, lowest);
        Vector<double> shifted = held * 1.4426950408889634 + new Vector<double>(shift), n = shifted - new Vector<double>(shift);
        Vector<double> r = MultiplyAddNegated(n, new Vector<double>(low), MultiplyAddNegated(n, new Vector<double>(high), held));
        Vector<double> sum = new(1.0 / 6227020800);
        sum = MultiplyAdd(sum, r, new Vector<double>(1.0 / 479001600));
        sum = MultiplyAdd(sum, r, new Vector<double>(1.0 / 39916800));
        sum = MultiplyAdd(sum, r, new Vector<double>(1.0 / 3628800));
        sum = MultiplyAdd(sum, r, new Vector<double>(1.0 / 362880));
        sum = MultiplyAdd(sum, r, new Vector<double>(1.0 / 40320));
        sum = MultiplyAdd(sum, r, new Vector<double>(1.0 / 5040));
        sum = MultiplyAdd(sum, r, new Vector<double>(1.0 / 720));
        sum = MultiplyAdd(sum, r, new Vector<double>(1.0 / 120));
        sum = MultiplyAdd(sum, r, new Vector<double>(1.0 / 24));
        sum = MultiplyAdd(sum, r, new Vector<double>(1.0 / 6));
        sum = MultiplyAdd(sum, r, new Vector<double>(0.5));
        sum = MultiplyAdd(sum, r, Vector<double>.One);
        sum = MultiplyAdd(sum, r, Vector<double>.One);
        Vector<double> result = Vector.AsVectorDouble(Vector.AsVectorInt64(sum) + Vector.ShiftLeft(Vector.AsVectorInt64(shifted), 52));
        return Vector.ConditionalSelect(Vector.LessThan(x, lowest), Vector<double>.Zero, result);
    }

    /// <summary>a · b + c, in one rounding where the machine does that in one instruction.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector<double> MultiplyAdd(Vector<double> a, Vector<double> b, Vector<double> c) =>
        IsFused ? Fma.MultiplyAdd(a.AsVector256(), b.AsVector256(), c.AsVector256()).AsVector() : a * b + c;

    /// <summary>c - a · b, likewise.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector<double> MultiplyAddNegated(Vector<double> a, Vector<double> b, Vector<double> c) =>
        IsFused ? Fma.MultiplyAddNegated(a.AsVector256(), b.AsVector256(), c.AsVector256()).AsVector() : c - a * b;

    private static bool IsFused => Fma.IsSupported && Vector<double>.Count == Vector256<double>.Count;

    /// <summary>Real and imaginary parts side by side.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Store(Vector<double> real, Vector<double> imaginary, Complex[] gains, int at)
    {
        Span<double> pairs = MemoryMarshal.Cast<Complex, double>(gains.AsSpan(at, Vector<double>.Count));
        if (IsFused)
        {
            Vector256<double> even = Avx.UnpackLow(real.AsVector256(), imaginary.AsVector256()), odd = Avx.UnpackHigh(real.AsVector256(), imaginary.AsVector256());
            Avx.Permute2x128(even, odd, 0x20).CopyTo(pairs);
            Avx.Permute2x128(even, odd, 0x31).CopyTo(pairs[Vector256<double>.Count..]);
            return;
        }
        for (int k = 0; k < Vector<double>.Count; k++)
            (pairs[2 * k], pairs[2 * k + 1]) = (real[k], imaginary[k]);
    }
#endif
}
