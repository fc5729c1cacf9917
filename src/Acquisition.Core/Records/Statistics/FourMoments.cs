#if NET8_0_OR_GREATER
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
#endif

namespace Acquisition.Core.Records;

/// <summary>Four <see cref="RunningMoments"/> side by side, which share the time of one; NaN is no value.</summary>
internal struct FourMoments
{
#if NET8_0_OR_GREATER
    // Read and written by who adds many in a row: in variables of its own, which the compiler keeps in registers. It does not do so with fields.
    internal Vector256<double> Counts, Means, Squares, Minima, Maxima;

    public FourMoments()
    {
        Minima = Vector256.Create(double.PositiveInfinity);
        Maxima = Vector256.Create(double.NegativeInfinity);
    }

    internal readonly RunningMoments this[int index] => new((long)Counts[index], Means[index], Squares[index], Minima[index], Maxima[index]);

    /// <summary>Adds a value to each.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static void Add(
        FourNumbers values, ref Vector256<double> counts, ref Vector256<double> means, ref Vector256<double> squares, ref Vector256<double> minima, ref Vector256<double> maxima)
    {
        Vector256<double> value = values.Vector, there = Vector256.Equals(value, value), off = value - means;
        counts += Vector256<double>.One & there;
        means += off / counts & there;
        squares += off * (value - means) & there;
        // One instruction for either, which gives the second operand where there is no value.
        minima = Avx.IsSupported ? Avx.Min(value, minima) : Vector256.ConditionalSelect(Vector256.LessThan(value, minima), value, minima);
        maxima = Avx.IsSupported ? Avx.Max(value, maxima) : Vector256.ConditionalSelect(Vector256.GreaterThan(value, maxima), value, maxima);
    }
#else
    private RunningMoments _first, _second, _third, _fourth;

    public FourMoments()
    {
    }

    internal readonly RunningMoments this[int index] => index switch
    {
        0 => _first,
        1 => _second,
        2 => _third,
        _ => _fourth,
    };

    /// <summary>Adds a value to each.</summary>
    internal void Add(FourNumbers values)
    {
        Add(ref _first, values.First);
        Add(ref _second, values.Second);
        Add(ref _third, values.Third);
        Add(ref _fourth, values.Fourth);
    }

    private static void Add(ref RunningMoments moments, double value)
    {
        if (!double.IsNaN(value))
            moments.Add(value);
    }
#endif
}
