using System.Numerics;

namespace Acquisition.Core.Chain;

/// <summary>Numbers of round trips on each of some lines, from none up to a last one of each: the exponents of a power series in several variables.</summary>
internal sealed class RoundTrips
{
    private readonly int[][] _trips;
    private readonly int[] _strides;

    /// <param name="lines">How many lines.</param>
    /// <param name="most">The most round trips on each.</param>
    internal RoundTrips(int lines, int most)
        : this(Filled(lines, most))
    {
    }

    private RoundTrips(int[] last)
    {
        _strides = new int[last.Length];
        int count = 1;
        for (int i = 0; i < last.Length; i++)
        {
            _strides[i] = count;
            count *= last[i] + 1;
        }
        _trips = new int[count][];
        for (int index = 0; index < count; index++)
        {
            _trips[index] = new int[last.Length];
            for (int i = 0; i < last.Length; i++)
                _trips[index][i] = index / _strides[i] % (last[i] + 1);
        }
    }

    internal int Count => _trips.Length;

    /// <summary>The round trips on each line.</summary>
    internal int[] At(int index) => _trips[index];

    /// <summary>Those from none up to the ones at an index, which come last.</summary>
    internal RoundTrips Upto(int index) => new(_trips[index]);

    /// <summary>The power series of 1/Σ c(S) Π x over the sets S of variables (bit i of S for the i-th): its coefficient for each of these exponents.</summary>
    internal Complex[] Series(Complex[] divisor)
    {
        var series = new Complex[Count];
        for (int index = 0; index < series.Length; index++)
        {
            Complex rest = index == 0 ? Complex.One : Complex.Zero;
            for (int set = 1; set < divisor.Length; set++)
            {
                if (Before(index, set) is var before and >= 0)
                    rest -= divisor[set] * series[before];
            }
            series[index] = rest / divisor[0];
        }
        return series;
    }

    /// <summary>The index with one trip less on each line of a set; negative where there is none.</summary>
    private int Before(int index, int set)
    {
        int before = index;
        for (int i = 0; i < _strides.Length; i++)
        {
            if ((set >> i & 1) == 0)
                continue;
            if (_trips[index][i] == 0)
                return -1;
            before -= _strides[i];
        }
        return before;
    }

    private static int[] Filled(int lines, int most)
    {
        var filled = new int[lines];
        for (int i = 0; i < lines; i++)
            filled[i] = most;
        return filled;
    }
}
