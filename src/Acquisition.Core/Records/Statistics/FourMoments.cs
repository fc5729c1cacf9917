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

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal void Add(FourNumbers values)
    {
        Vector256<double> value = values.Vector, there = Vector256.Equals(value, value);
        _count += Vector256<double>.One & there;
        Vector256<double> off = value - _mean, mean = _mean + off / _count;
        _squares += off * (value - mean) & there;
        _mean = Vector256.ConditionalSelect(there, mean, _mean);
        _minimum = Vector256.ConditionalSelect(Vector256.LessThan(value, _minimum), value, _minimum);
        _maximum = Vector256.ConditionalSelect(Vector256.GreaterThan(value, _maximum), value, _maximum);
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
