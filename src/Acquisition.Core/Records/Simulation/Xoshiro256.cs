using Acquisition.Core.Signals;

namespace Acquisition.Core.Records;

/// <summary>
/// The generator xoshiro256** (Blackman and Vigna 2018, public domain), its state filled from the seed by SplitMix64 as its authors advise. The same seed gives the same
/// numbers on every runtime, which the framework's own generators do not promise.
/// </summary>
internal sealed class Xoshiro256
{
    private ulong _a, _b, _c, _d;

    /// <param name="seed">The seed.</param>
    /// <param name="stream">Which of the independent sequences of that seed.</param>
    internal Xoshiro256(long seed, long stream = 0)
    {
        ulong state = unchecked((ulong)seed + 0xD1B54A32D192ED03 * (ulong)stream);
        _a = SplitMix(ref state);
        _b = SplitMix(ref state);
        _c = SplitMix(ref state);
        _d = SplitMix(ref state);
    }

    /// <summary>The four words of state themselves, for the check against the published sequence.</summary>
    internal Xoshiro256(ulong a, ulong b, ulong c, ulong d) => (_a, _b, _c, _d) = (a, b, c, d);

    internal ulong Next()
    {
        unchecked
        {
            ulong result = Rotate(_b * 5, 7) * 9, t = _b << 17;
            _c ^= _a;
            _d ^= _b;
            _b ^= _c;
            _a ^= _d;
            _c ^= t;
            _d = Rotate(_d, 45);
            return result;
        }
    }

    /// <summary>Uniform between 0 and 1, neither included.</summary>
    internal double NextUniform() => ((Next() >> 12) + 0.5) * (1.0 / 4503599627370496);

    /// <summary>Normal, mean 0 and standard deviation 1: the quantile of a uniform number, one for one.</summary>
    internal double NextNormal() => ErrorFunction.NormalQuantile(NextUniform());

    internal static ulong SplitMix(ref ulong state)
    {
        unchecked
        {
            state += 0x9E3779B97F4A7C15;
            ulong z = state;
            z = (z ^ z >> 30) * 0xBF58476D1CE4E5B9;
            z = (z ^ z >> 27) * 0x94D049BB133111EB;
            return z ^ z >> 31;
        }
    }

    private static ulong Rotate(ulong x, int bits) => x << bits | x >> 64 - bits;
}
