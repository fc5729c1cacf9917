using System;
#if NET8_0_OR_GREATER
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
#endif

namespace Acquisition.Core.Records;

/// <summary>Eight-bit codes as the scan for transitions looks at them: levels are codes, and blocks of samples are compared at once.</summary>
internal readonly struct ByteView : ISampleView
{
#if NET8_0_OR_GREATER
    /// <summary>Thirty-two bytes of zeros and as many of ones: read from 32 - n, ones from place n on.</summary>
    private static ReadOnlySpan<byte> Beyond =>
    [
        0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0,
        255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255, 255,
    ];
#endif

    private readonly CodeSamples _scale;
    private readonly byte[] _codes;
    private readonly int _first;
    private readonly byte _flip;
    private readonly double[] _values;

    internal ByteView(CodeSamples scale, byte[] codes, int first, byte flip, double[] values)
    {
        _scale = scale;
        _codes = codes;
        _first = first;
        Length = scale.Length;
        _flip = flip;
        _values = values;
    }

    public int Length { get; }

    public int Codes => 256;

    public double this[int index] => _values[_codes[_first + index]];

    public Level LevelOf(double value) => new(value, _scale.Threshold(value));

    public bool IsAtOrAbove(int index, in Level level) => (_codes[_first + index] ^ _flip) >= level.Code;

    public int NextAtOrAbove(in Level level, int from, int to) =>
        level.Code is > 0 and < 256 ? Next(_flip, level.Code, _first + from, _first + to) - _first : level.Code == 0 ? Math.Min(from, to) : to;

    public int NextBelow(in Level level, int from, int to) =>
        level.Code is > 0 and < 256 ? Next((byte)~_flip, 256 - level.Code, _first + from, _first + to) - _first : level.Code == 0 ? to : Math.Min(from, to);

#if NET8_0_OR_GREATER
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Read(ref FoundEdge edge)
    {
        // Six samples of each transition: the places are those of samples, and a byte is an index into 256 values. Checking both again would take as long as reading.
        ref byte codes = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_codes), _first);
        ref double values = ref MemoryMarshal.GetArrayDataReference(_values);
        edge.BeforeProximal = Unsafe.Add(ref values, (nint)Unsafe.Add(ref codes, edge.Last));
        edge.AfterProximal = Unsafe.Add(ref values, (nint)Unsafe.Add(ref codes, edge.Last + 1));
        edge.BeforeMiddle = Unsafe.Add(ref values, (nint)Unsafe.Add(ref codes, edge.Crossing - 1));
        edge.AfterMiddle = Unsafe.Add(ref values, (nint)Unsafe.Add(ref codes, edge.Crossing));
        edge.BeforeDistal = Unsafe.Add(ref values, (nint)Unsafe.Add(ref codes, edge.First - 1));
        edge.AfterDistal = Unsafe.Add(ref values, (nint)Unsafe.Add(ref codes, edge.First));
    }
#else
    public void Read(ref FoundEdge edge) => edge.Read(this);
#endif

    public int Crossings(in Level level, int from, int to, int[] places, out int count)
    {
        count = 0;
        if (level.Code is <= 0 or > 255)
            return to;
        int i = from;
#if NET8_0_OR_GREATER
        if (Avx2.IsSupported)
            i = CrossingsByWord(level, from, to, places, ref count);
#endif
        if (i >= to || count > places.Length - 64)
            return i;
        bool above = IsAtOrAbove(i - 1, level);
        for (; i < to && count < places.Length; i++)
        {
            if (IsAtOrAbove(i, level) == above)
                continue;
            above = !above;
            places[count++] = i;
        }
        return i;
    }

    public double Extreme(bool highest, int from, int to)
    {
        byte flip = (byte)(highest ? ~_flip : _flip);
        return _values[Lowest(flip, _first + from, _first + to) ^ flip];
    }

#if NET8_0_OR_GREATER
    public bool HasBits => Avx2.IsSupported;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public bool HasBitsAround(int crossing) => crossing >= EdgeBits.Before && crossing <= Length - EdgeBits.Samples - 1 + EdgeBits.Before;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public EdgeBits BitsAround(int crossing, EdgeLevels levels)
    {
        ref byte first = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_codes), _first + crossing - EdgeBits.Before);
        Vector256<byte> flips = Vector256.Create((byte)(levels.IsRising ? _flip : ~_flip)), codes = Vector256.LoadUnsafe(ref first) ^ flips, next = Vector256.LoadUnsafe(ref first, 1) ^ flips;
        uint onward = Vector256.GreaterThanOrEqual(next, codes).ExtractMostSignificantBits();
        return new EdgeBits(Bits(codes, levels.ProximalCode), Bits(codes, levels.DistalCode), Bits(codes, levels.FarCode), onward);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public bool TryRegions(EdgeLevels levels, in EdgeRegions regions, out FourNumbers extremes)
    {
        int left = regions.Before + 1 - regions.From, right = regions.To - regions.After, from = _first + regions.From, after = _first + regions.After;
        // Both begin within the record: one look at each tells that there are samples, and that they end before 32 do and before the array does.
        if (!((uint)(left - 1) < 32 && (uint)(right - 1) < 32 && Math.Max(from, after) <= _codes.Length - 32))
        {
            extremes = default;
            return false;
        }
        byte flip = (byte)(levels.IsRising ? _flip : ~_flip);
        Vector256<byte> flips = Vector256.Create(flip), leaving = Block(from) ^ flips, reaching = Block(after) ^ flips, beyond = Ones(right);
        int arrival = BitOperations.TrailingZeroCount(Bits(reaching, levels.ReachedCode));
        ref double values = ref MemoryMarshal.GetArrayDataReference(_values);
        double pre = Unsafe.Add(ref values, Lowest(leaving | Ones(left)) ^ flip), over = Unsafe.Add(ref values, (255 - Lowest(~reaching | beyond)) ^ flip);
        double under = arrival < right ? Unsafe.Add(ref values, Lowest(reaching | beyond | ~Ones(arrival)) ^ flip) : levels.Reached.Value;
        extremes = new FourNumbers(0, over, under, pre);
        return true;
    }

    /// <summary>The same, 64 samples at a time as long as there are as many and room for them: a bit for each that is beyond the level, and one for each that differs from the one before.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private int CrossingsByWord(in Level level, int from, int to, int[] places, ref int count)
    {
        ref byte start = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(_codes), _first);
        Vector256<byte> flips = Vector256.Create(_flip), threshold = Vector256.Create((byte)level.Code);
        ulong last = IsAtOrAbove(from - 1, level) ? 1u : 0;
        int i = from, found = 0, most = places.Length - 64;
        for (; i <= to - 64 && found <= most; i += 64)
        {
            Vector256<byte> a = Vector256.LoadUnsafe(ref start, (nuint)i) ^ flips, b = Vector256.LoadUnsafe(ref start, (nuint)i + 32) ^ flips;
            ulong above = Vector256.GreaterThanOrEqual(a, threshold).ExtractMostSignificantBits() | (ulong)Vector256.GreaterThanOrEqual(b, threshold).ExtractMostSignificantBits() << 32;
            ulong crossings = above ^ (above << 1 | last);
            last = above >> 63;
            if (crossings == 0)
                continue;
            // One or two are usual in a dense train; to write two, whether there are as many or not, is faster than to guess.
            int number = BitOperations.PopCount(crossings), at = found;
            found += number;
            places[at] = i + BitOperations.TrailingZeroCount(crossings);
            crossings &= crossings - 1;
            places[at + 1] = i + BitOperations.TrailingZeroCount(crossings);
            for (crossings &= crossings - 1, at += 2; crossings != 0; crossings &= crossings - 1)
                places[at++] = i + BitOperations.TrailingZeroCount(crossings);
        }
        count = found;
        return i;
    }

    /// <summary>Ones from a place on.</summary>
    private static Vector256<byte> Ones(int from) => Vector256.LoadUnsafe(ref MemoryMarshal.GetReference(Beyond), (nuint)(32 - from));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static uint Bits(Vector256<byte> codes, int code) => Vector256.GreaterThanOrEqual(codes, Vector256.Create((byte)code)).ExtractMostSignificantBits();
#endif

    internal void Extremes(int from, int to, out double lowest, out double highest)
    {
        lowest = Extreme(false, from, to);
        highest = Extreme(true, from, to);
    }

    /// <summary>The first code that is at or above a threshold when some of its bits are flipped: with all of them flipped, large codes are small.</summary>
    private int Next(byte flip, int threshold, int i, int end)
    {
#if NET8_0_OR_GREATER
        if (Avx2.IsSupported)
        {
            ref byte start = ref MemoryMarshal.GetArrayDataReference(_codes);
            Vector256<byte> flips = Vector256.Create(flip), thresholds = Vector256.Create((byte)threshold);
            for (; i + 32 <= end; i += 32)
            {
                uint at = Vector256.GreaterThanOrEqual(Vector256.LoadUnsafe(ref start, (nuint)i) ^ flips, thresholds).ExtractMostSignificantBits();
                if (at != 0)
                    return i + BitOperations.TrailingZeroCount(at);
            }
            if (i < end && i + 32 <= _codes.Length)
            {
                uint at = Vector256.GreaterThanOrEqual(Vector256.LoadUnsafe(ref start, (nuint)i) ^ flips, thresholds).ExtractMostSignificantBits() & ((1u << (end - i)) - 1);
                return at != 0 ? i + BitOperations.TrailingZeroCount(at) : end;
            }
        }
#endif
        while (i < end && (byte)(_codes[i] ^ flip) < threshold)
            i++;
        return i;
    }

    /// <summary>The lowest code when some bits are flipped.</summary>
    private int Lowest(byte flip, int i, int end)
    {
        int low = 255;
#if NET8_0_OR_GREATER
        if (Avx2.IsSupported && i + 32 <= end)
        {
            Vector256<byte> flips = Vector256.Create(flip), lows = Vector256<byte>.AllBitsSet;
            for (; i + 32 <= end; i += 32)
                lows = Vector256.Min(lows, Block(i) ^ flips);
            low = Lowest(lows);
        }
#endif
        for (; i < end; i++)
            low = Math.Min(low, (byte)(_codes[i] ^ flip));
        return low;
    }

#if NET8_0_OR_GREATER
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vector256<byte> Block(int i) => Vector256.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(_codes), (nuint)i);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int Lowest(Vector256<byte> codes)
    {
        Vector128<byte> low = Vector128.Min(codes.GetLower(), codes.GetUpper());
        // Of each pair of bytes the lower one, above it a zero.
        Vector128<ushort> pairs = Vector128.Min(low, (low.AsUInt16() >> 8).AsByte()).AsUInt16();
        return Sse41.MinHorizontal(pairs).ToScalar();
    }
#endif
}
