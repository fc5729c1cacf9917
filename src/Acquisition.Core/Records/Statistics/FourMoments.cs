#if NET8_0_OR_GREATER
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
#endif

namespace Acquisition.Core.Records;

/// <summary>Four <see cref="RunningMoments"/> side by side, which share the time of one; NaN is no value.</summary>
internal struct FourMoments
{
#if NET8_0_OR_GREATER
    private Vector256<double> _count, _mean, _squares, _minimum, _maximum;

    public FourMoments()
    {
        _minimum = Vector256.Create(double.PositiveInfinity);
        _maximum = Vector256.Create(double.NegativeInfinity);
    }

    internal readonly RunningMoments this[int index] => new((long)_count[index], _mean[index], _squares[index], _minimum[index], _maximum[index]);

    /// <summary>
    /// Adds four values of each row: some to all, others in turns to even and odd, from one index to before another. Each value waits for the division of the one before, so that all three
    /// are added to in the time of one.
    /// </summary>
    internal static void Add(FourNumbers[] some, ref FourMoments all, FourNumbers[] others, ref FourMoments even, ref FourMoments odd, int from, int to)
    {
        // In variables of their own, which the compiler keeps in registers: it does not do so with fields.
        Vector256<double> c0 = all._count, m0 = all._mean, s0 = all._squares, l0 = all._minimum, h0 = all._maximum;
        Vector256<double> c1 = even._count, m1 = even._mean, s1 = even._squares, l1 = even._minimum, h1 = even._maximum;
        Vector256<double> c2 = odd._count, m2 = odd._mean, s2 = odd._squares, l2 = odd._minimum, h2 = odd._maximum;
        for (int k = from; k < to; k++)
        {
            Add(some[k].Vector, ref c0, ref m0, ref s0, ref l0, ref h0);
            if (k % 2 == 0)
                Add(others[k].Vector, ref c1, ref m1, ref s1, ref l1, ref h1);
            else
                Add(others[k].Vector, ref c2, ref m2, ref s2, ref l2, ref h2);
        }
        (all._count, all._mean, all._squares, all._minimum, all._maximum) = (c0, m0, s0, l0, h0);
        (even._count, even._mean, even._squares, even._minimum, even._maximum) = (c1, m1, s1, l1, h1);
        (odd._count, odd._mean, odd._squares, odd._minimum, odd._maximum) = (c2, m2, s2, l2, h2);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Add(
        Vector256<double> value, ref Vector256<double> count, ref Vector256<double> mean, ref Vector256<double> squares, ref Vector256<double> minimum, ref Vector256<double> maximum)
    {
        Vector256<double> there = Vector256.Equals(value, value), off = value - mean;
        count += Vector256<double>.One & there;
        mean += off / count & there;
        squares += off * (value - mean) & there;
        minimum = Vector256.ConditionalSelect(Vector256.LessThan(value, minimum), value, minimum);
        maximum = Vector256.ConditionalSelect(Vector256.GreaterThan(value, maximum), value, maximum);
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

    /// <summary>Adds columns of four: some to all, others in turns to even and odd, from one index to before another.</summary>
    internal static void Add(FourNumbers[] some, ref FourMoments all, FourNumbers[] others, ref FourMoments even, ref FourMoments odd, int from, int to)
    {
        for (int k = from; k < to; k++)
        {
            all.Add(some[k]);
            if (k % 2 == 0)
                even.Add(others[k]);
            else
                odd.Add(others[k]);
        }
    }

    private void Add(FourNumbers values)
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
