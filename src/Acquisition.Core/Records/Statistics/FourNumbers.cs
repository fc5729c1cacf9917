#if NET8_0_OR_GREATER
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
#else
using System;
#endif

namespace Acquisition.Core.Records;

/// <summary>Four numbers that are computed at once where the processor can: what belongs to one edge is divided in the time of one division, to the same bits.</summary>
internal readonly struct FourNumbers
{
#if NET8_0_OR_GREATER
    internal FourNumbers(double first, double second, double third, double fourth)
        : this(Vector256.Create(first, second, third, fourth))
    {
    }

    internal FourNumbers(Vector256<double> numbers) => Vector = numbers;

    internal Vector256<double> Vector { get; }

    internal double First => Vector.ToScalar();

    internal double Second => Vector.GetElement(1);

    internal double Third => Vector.GetElement(2);

    internal double Fourth => Vector.GetElement(3);

    internal FourNumbers WithFirst(double first) => new(Vector.WithElement(0, first));

    /// <summary>Four numbers of a column, from an index on that is not checked: a batch is longer than what it holds, and a dozen checks for each transition take as long as its numbers.</summary>
    internal static FourNumbers Load(double[] column, int index) => new(Vector256.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(column), (nuint)index));

    internal static FourNumbers Load(int[] column, int index)
    {
        Vector128<int> whole = Vector128.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(column), (nuint)index);
        return Avx.IsSupported ? new(Avx.ConvertToVector256Double(whole)) : new(whole[0], whole[1], whole[2], whole[3]);
    }

    /// <summary>Makes columns of rows.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static void Transpose(ref FourNumbers first, ref FourNumbers second, ref FourNumbers third, ref FourNumbers fourth)
    {
        Vector256<double> a = first.Vector, b = second.Vector, c = third.Vector, d = fourth.Vector;
        if (!Avx.IsSupported)
        {
            first = new(a[0], b[0], c[0], d[0]);
            second = new(a[1], b[1], c[1], d[1]);
            third = new(a[2], b[2], c[2], d[2]);
            fourth = new(a[3], b[3], c[3], d[3]);
            return;
        }
        (a, b, c, d) = (Avx.UnpackLow(a, b), Avx.UnpackHigh(a, b), Avx.UnpackLow(c, d), Avx.UnpackHigh(c, d));
        first = new(Avx.Permute2x128(a, c, 0x20));
        second = new(Avx.Permute2x128(b, d, 0x20));
        third = new(Avx.Permute2x128(a, c, 0x31));
        fourth = new(Avx.Permute2x128(b, d, 0x31));
    }

    /// <summary>Puts them into a column, from an index on that is not checked either.</summary>
    internal void Store(double[] column, int index) => Vector.StoreUnsafe(ref MemoryMarshal.GetArrayDataReference(column), (nuint)index);

    /// <summary>Their whole parts.</summary>
    internal Vector128<int> Whole() => Avx.IsSupported ? Avx.ConvertToVector128Int32WithTruncation(Vector) : Vector128.Create((int)First, (int)Second, (int)Third, (int)Fourth);

    /// <summary>Puts their whole parts into a column.</summary>
    internal void StoreWhole(int[] column, int index) => Whole().StoreUnsafe(ref MemoryMarshal.GetArrayDataReference(column), (nuint)index);

    internal FourNumbers Ceiling() => new(Vector256.Ceiling(Vector));

    internal FourNumbers Floor() => new(Vector256.Floor(Vector));

    /// <summary>The larger of two, the other one where there is no number.</summary>
    internal FourNumbers AtLeast(FourNumbers other) => new(Vector256.ConditionalSelect(Vector256.GreaterThan(Vector, other.Vector), Vector, other.Vector));

    internal FourNumbers AtLeast(double other) => AtLeast(new FourNumbers(Vector256.Create(other)));

    /// <summary>The smaller of two, the other one where there is no number.</summary>
    internal FourNumbers AtMost(FourNumbers other) => new(Vector256.ConditionalSelect(Vector256.LessThan(Vector, other.Vector), Vector, other.Vector));

    /// <summary>Others where there is no number.</summary>
    internal FourNumbers IfNumberElse(FourNumbers other) => new(Vector256.ConditionalSelect(Vector256.Equals(Vector, Vector), Vector, other.Vector));

    /// <summary>1 where they are below others, else 0.</summary>
    internal FourNumbers OneWhereBelow(FourNumbers other) => new(Vector256.LessThan(Vector, other.Vector) & Vector256<double>.One);

    /// <summary>0 for what is not above it; NaN remains.</summary>
    internal FourNumbers AtLeastZero() => new(Vector256.ConditionalSelect(Vector256.LessThanOrEqual(Vector, Vector256<double>.Zero), Vector256<double>.Zero, Vector));

    public static FourNumbers operator +(FourNumbers left, FourNumbers right) => new(left.Vector + right.Vector);

    public static FourNumbers operator -(FourNumbers left, FourNumbers right) => new(left.Vector - right.Vector);

    public static FourNumbers operator *(FourNumbers left, double right) => new(left.Vector * Vector256.Create(right));

    public static FourNumbers operator /(FourNumbers left, double right) => new(left.Vector / Vector256.Create(right));

    public static FourNumbers operator /(FourNumbers left, FourNumbers right) => new(left.Vector / right.Vector);
#else
    internal FourNumbers(double first, double second, double third, double fourth)
    {
        First = first;
        Second = second;
        Third = third;
        Fourth = fourth;
    }

    internal double First { get; }

    internal double Second { get; }

    internal double Third { get; }

    internal double Fourth { get; }

    internal FourNumbers WithFirst(double first) => new(first, Second, Third, Fourth);

    internal static FourNumbers Load(double[] column, int index) => new(column[index], column[index + 1], column[index + 2], column[index + 3]);

    internal static FourNumbers Load(int[] column, int index) => new(column[index], column[index + 1], column[index + 2], column[index + 3]);

    /// <summary>Makes columns of rows.</summary>
    internal static void Transpose(ref FourNumbers first, ref FourNumbers second, ref FourNumbers third, ref FourNumbers fourth)
    {
        FourNumbers a = first, b = second, c = third, d = fourth;
        first = new(a.First, b.First, c.First, d.First);
        second = new(a.Second, b.Second, c.Second, d.Second);
        third = new(a.Third, b.Third, c.Third, d.Third);
        fourth = new(a.Fourth, b.Fourth, c.Fourth, d.Fourth);
    }

    internal void Store(double[] column, int index)
    {
        column[index] = First;
        column[index + 1] = Second;
        column[index + 2] = Third;
        column[index + 3] = Fourth;
    }

    /// <summary>Puts their whole parts into a column.</summary>
    internal void StoreWhole(int[] column, int index)
    {
        column[index] = (int)First;
        column[index + 1] = (int)Second;
        column[index + 2] = (int)Third;
        column[index + 3] = (int)Fourth;
    }

    internal FourNumbers Ceiling() => new(Math.Ceiling(First), Math.Ceiling(Second), Math.Ceiling(Third), Math.Ceiling(Fourth));

    internal FourNumbers Floor() => new(Math.Floor(First), Math.Floor(Second), Math.Floor(Third), Math.Floor(Fourth));

    /// <summary>The larger of two, the other one where there is no number.</summary>
    internal FourNumbers AtLeast(FourNumbers other) => new(
        First > other.First ? First : other.First, Second > other.Second ? Second : other.Second, Third > other.Third ? Third : other.Third, Fourth > other.Fourth ? Fourth : other.Fourth);

    internal FourNumbers AtLeast(double other) => AtLeast(new FourNumbers(other, other, other, other));

    /// <summary>The smaller of two, the other one where there is no number.</summary>
    internal FourNumbers AtMost(FourNumbers other) => new(
        First < other.First ? First : other.First, Second < other.Second ? Second : other.Second, Third < other.Third ? Third : other.Third, Fourth < other.Fourth ? Fourth : other.Fourth);

    /// <summary>Others where there is no number.</summary>
    internal FourNumbers IfNumberElse(FourNumbers other) => new(
        double.IsNaN(First) ? other.First : First, double.IsNaN(Second) ? other.Second : Second, double.IsNaN(Third) ? other.Third : Third, double.IsNaN(Fourth) ? other.Fourth : Fourth);

    /// <summary>1 where they are below others, else 0.</summary>
    internal FourNumbers OneWhereBelow(FourNumbers other) => new(First < other.First ? 1 : 0, Second < other.Second ? 1 : 0, Third < other.Third ? 1 : 0, Fourth < other.Fourth ? 1 : 0);

    /// <summary>0 for what is not above it; NaN remains.</summary>
    internal FourNumbers AtLeastZero() => new(First <= 0 ? 0 : First, Second <= 0 ? 0 : Second, Third <= 0 ? 0 : Third, Fourth <= 0 ? 0 : Fourth);

    public static FourNumbers operator +(FourNumbers left, FourNumbers right) => new(left.First + right.First, left.Second + right.Second, left.Third + right.Third, left.Fourth + right.Fourth);

    public static FourNumbers operator -(FourNumbers left, FourNumbers right) => new(left.First - right.First, left.Second - right.Second, left.Third - right.Third, left.Fourth - right.Fourth);

    public static FourNumbers operator *(FourNumbers left, double right) => new(left.First * right, left.Second * right, left.Third * right, left.Fourth * right);

    public static FourNumbers operator /(FourNumbers left, double right) => new(left.First / right, left.Second / right, left.Third / right, left.Fourth / right);

    public static FourNumbers operator /(FourNumbers left, FourNumbers right) => new(left.First / right.First, left.Second / right.Second, left.Third / right.Third, left.Fourth / right.Fourth);
#endif

    /// <summary>Where on the way from one sample to the next a level is passed: 0 at the first, 1 at the second.</summary>
    internal static FourNumbers Passage(double[] before, double[] after, int index, FourNumbers level)
    {
        FourNumbers from = Load(before, index);
        return (level - from) / (Load(after, index) - from);
    }

    /// <summary>The least of the four.</summary>
    internal double Least() => System.Math.Min(System.Math.Min(First, Second), System.Math.Min(Third, Fourth));
}
