using System.Runtime.CompilerServices;

namespace Acquisition.Core.Signals;

/// <summary>
/// One stream of pseudo-random numbers, for simulated records and Monte Carlo trials: the generator xoshiro256++ (Blackman and Vigna 2019), its state filled by SplitMix64 from the
/// seed of the run, the number of the sequence (the input that is drawn) and the number of the block. So each block of each sequence is the same whatever computes it, in whatever
/// order and on however many threads.
/// </summary>
/// <remarks>
/// Integer arithmetic and exact scaling only, hence the same numbers on every platform. JCGM 101 6.5 and annex C ask for a generator of at least this quality. Streams begin anywhere
/// in a period of 2^256 - 1; a million of them, 2^40 numbers long each, overlap with a probability below 2^-176 (n² L / 2^256), so none is skipped ahead (its authors' jump).
/// </remarks>
internal struct RandomStream
{
    private const double Unit = 1.0 / (1L << 53);

    /// <summary>The step of SplitMix64, 2^64 over the golden ratio.</summary>
    private const ulong Golden = 0x9E3779B97F4A7C15;

    private ulong _s0;
    private ulong _s1;
    private ulong _s2;
    private ulong _s3;

    internal RandomStream(long seed, int sequence, int block)
        : this(Start(seed, sequence, block))
    {
    }

    private RandomStream(ulong start)
        : this(Mix(unchecked(start + Golden)), Mix(unchecked(start + 2 * Golden)), Mix(unchecked(start + 3 * Golden)), Mix(unchecked(start + 4 * Golden)))
    {
    }

    /// <summary>The four words of state themselves, not all of them 0.</summary>
    internal RandomStream(ulong s0, ulong s1, ulong s2, ulong s3)
    {
        _s0 = s0;
        _s1 = s1;
        _s2 = s2;
        _s3 = s3;
    }

    /// <summary>64 random bits.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal ulong NextBits()
    {
        ulong sum = _s0 + _s3;
        ulong result = (sum << 23 | sum >> 41) + _s0;
        ulong shifted = _s1 << 17;
        _s2 ^= _s0;
        _s3 ^= _s1;
        _s1 ^= _s2;
        _s0 ^= _s3;
        _s2 ^= shifted;
        _s3 = _s3 << 45 | _s3 >> 19;
        return result;
    }

    /// <summary>A number from 0 to just below 1, in steps of 2^-53.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal double NextUnit() => (long)(NextBits() >> 11) * Unit;

    /// <summary>A number between -1 and 1, symmetric: the odd multiples of 2^-53.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal double NextSymmetric() => ((long)NextBits() >> 11 << 1 | 1) * (Unit);

    /// <summary>Fills the start of a column with numbers between -<paramref name="halfWidth"/> and <paramref name="halfWidth"/>.</summary>
    internal void FillSymmetric(double[] column, int count, double halfWidth)
    {
        RandomStream local = this;
        double scale = halfWidth * Unit;
        for (int i = 0; i < column.Length && i < count; i++) column[i] = ((long)local.NextBits() >> 11 << 1 | 1) * scale;
        this = local;
    }

    private static ulong Start(long seed, int sequence, int block) =>
        unchecked(Mix(Mix((ulong)seed + Golden) ^ (((ulong)(uint)sequence << 32 | (uint)block) + 0xD1B54A32D192ED03)));

    /// <summary>The output function of SplitMix64 (Steele, Lea and Flood 2014).</summary>
    internal static ulong Mix(ulong z)
    {
        z = (z ^ z >> 30) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ z >> 27) * 0x94D049BB133111EBUL;
        return z ^ z >> 31;
    }
}
