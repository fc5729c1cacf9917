#if NET8_0_OR_GREATER
using System.Runtime.Intrinsics;
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

    private FourNumbers(Vector256<double> numbers) => Vector = numbers;

    internal Vector256<double> Vector { get; }

    internal double First => Vector.ToScalar();

    internal double Second => Vector.GetElement(1);

    internal double Third => Vector.GetElement(2);

    internal double Fourth => Vector.GetElement(3);

    internal FourNumbers WithFirst(double first) => new(Vector.WithElement(0, first));

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

    /// <summary>0 for what is not above it; NaN remains.</summary>
    internal FourNumbers AtLeastZero() => new(First <= 0 ? 0 : First, Second <= 0 ? 0 : Second, Third <= 0 ? 0 : Third, Fourth <= 0 ? 0 : Fourth);

    public static FourNumbers operator +(FourNumbers left, FourNumbers right) => new(left.First + right.First, left.Second + right.Second, left.Third + right.Third, left.Fourth + right.Fourth);

    public static FourNumbers operator -(FourNumbers left, FourNumbers right) => new(left.First - right.First, left.Second - right.Second, left.Third - right.Third, left.Fourth - right.Fourth);

    public static FourNumbers operator *(FourNumbers left, double right) => new(left.First * right, left.Second * right, left.Third * right, left.Fourth * right);

    public static FourNumbers operator /(FourNumbers left, double right) => new(left.First / right, left.Second / right, left.Third / right, left.Fourth / right);

    public static FourNumbers operator /(FourNumbers left, FourNumbers right) => new(left.First / right.First, left.Second / right.Second, left.Third / right.Third, left.Fourth / right.Fourth);
#endif
}
