using System;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core;

/// <summary>A strong quantity that is not exactly known; made by <see cref="Uncertain"/>, from readings by <see cref="TypeA"/>, or by arithmetic.</summary>
/// <typeparam name="T">The quantity type.</typeparam>
/// <remarks>
/// Arithmetic is that of <typeparamref name="T"/>, with exact derivatives and with correlation by shared source kept. Products and quotients of different types are operators on modern
/// compilers; <see cref="Times{TOther,TResult}"/> and <see cref="DividedBy{TOther,TResult}"/> serve every compiler. Source: JCGM 100 5.1.2, 5.2.2 and F.1.2.3.
/// </remarks>
#if NET8_0_OR_GREATER
[System.Text.Json.Serialization.JsonConverter(typeof(ResultJsonConverter))]
#endif
public sealed class Uncertain<T> : UncertainQuantity
    where T : struct, IQuantity
{
    internal Uncertain(double value, LinearCombination combination)
        : base(value, combination) => Kind = StrongType<T>.Kind;

    internal override QuantityKind Kind { get; }

    internal override UncertainQuantity WithCombination(LinearCombination combination) => new Uncertain<T>(SiEstimate, combination);

    /// <summary>The estimate.</summary>
    public T Value => StrongType<T>.Nearest(SiEstimate, "estimate");

    /// <summary>A value that is taken as exact.</summary>
#pragma warning disable CA1000 // Uncertain.Exact(value) is the everyday door; this one serves the implicit conversion
    public static implicit operator Uncertain<T>(T value) => Uncertain.Exact(value);
#pragma warning restore CA1000

    /// <summary>The sum.</summary>
    /// <exception cref="InvalidOperationException">The type does not add to itself: two levels, or two temperatures.</exception>
    public static Uncertain<T> operator +(Uncertain<T> left, Uncertain<T> right)
    {
        RequireAdditive("added");
        return Combine(left, 1, right, 1);
    }

    /// <summary>The difference.</summary>
    /// <exception cref="InvalidOperationException">The difference is of another type: two levels differ by decibels.</exception>
    public static Uncertain<T> operator -(Uncertain<T> left, Uncertain<T> right)
    {
        RequireAdditive("subtracted");
        return Combine(left, 1, right, -1);
    }

    /// <summary>The same magnitude with the other sign.</summary>
    public static Uncertain<T> operator -(Uncertain<T> value) => Scaled(value, -1, nameof(value));

    /// <summary>The value, scaled by an exact number.</summary>
    public static Uncertain<T> operator *(Uncertain<T> value, double factor) => Scaled(value, factor, nameof(factor));

    /// <summary>The value, scaled by an exact number.</summary>
    public static Uncertain<T> operator *(double factor, Uncertain<T> value) => Scaled(value, factor, nameof(factor));

    /// <summary>The value, divided by an exact number.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="divisor"/> is zero or not a number.</exception>
    public static Uncertain<T> operator /(Uncertain<T> value, double divisor)
    {
        RequireScalable();
        return Made((value ?? throw new ArgumentNullException(nameof(value))).SiEstimate / divisor, value.Combination.Times(1 / divisor), nameof(divisor));
    }

    /// <summary>The value, scaled by an uncertain ratio.</summary>
    public static Uncertain<T> operator *(Uncertain<T> value, Uncertain<Ratio> factor)
    {
        RequireScalable();
        return Product<Ratio, T>(value, factor);
    }

    /// <summary>How many times the divisor the value is.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The divisor's estimate is zero.</exception>
    public static Uncertain<Ratio> operator /(Uncertain<T> value, Uncertain<T> divisor)
    {
        RequireScalable();
        return Quotient<T, Ratio>(value, divisor);
    }

    /// <summary>The product with another quantity, of the type that the dimensions ask for.</summary>
    /// <exception cref="ArgumentException"><typeparamref name="TResult"/> is not what the product is.</exception>
    public Uncertain<TResult> Times<TOther, TResult>(Uncertain<TOther> other)
        where TOther : struct, IQuantity
        where TResult : struct, IQuantity
    {
        RequireProduct<TOther, TResult>(StrongType<T>.Kind.Dimension * StrongType<TOther>.Kind.Dimension, "product");
        return Product<TOther, TResult>(this, other);
    }

    /// <summary>The quotient by another quantity, of the type that the dimensions ask for.</summary>
    /// <exception cref="ArgumentException"><typeparamref name="TResult"/> is not what the quotient is.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The divisor's estimate is zero.</exception>
    public Uncertain<TResult> DividedBy<TOther, TResult>(Uncertain<TOther> other)
        where TOther : struct, IQuantity
        where TResult : struct, IQuantity
    {
        RequireProduct<TOther, TResult>(StrongType<T>.Kind.Dimension / StrongType<TOther>.Kind.Dimension, "quotient");
        return Quotient<TOther, TResult>(this, other);
    }

    internal static Uncertain<TResult> Product<TOther, TResult>(Uncertain<T> left, Uncertain<TOther> right)
        where TOther : struct, IQuantity
        where TResult : struct, IQuantity
    {
        if (left is null) throw new ArgumentNullException(nameof(left));
        if (right is null) throw new ArgumentNullException(nameof(right));
        return Uncertain<TResult>.Made(
            left.SiEstimate * right.SiEstimate,
            LinearCombination.Sum(left.Combination, right.SiEstimate, right.Combination, left.SiEstimate),
            nameof(right));
    }

    internal static Uncertain<TResult> Quotient<TOther, TResult>(Uncertain<T> left, Uncertain<TOther> right)
        where TOther : struct, IQuantity
        where TResult : struct, IQuantity
    {
        if (left is null) throw new ArgumentNullException(nameof(left));
        if (right is null) throw new ArgumentNullException(nameof(right));
        if (right.SiEstimate == 0) throw Refuse.OutOfRange(0, right.Kind, nameof(right), "other than 0 to divide by");
        double quotient = left.SiEstimate / right.SiEstimate;
        return Uncertain<TResult>.Made(
            quotient,
            LinearCombination.Sum(left.Combination, 1 / right.SiEstimate, right.Combination, -quotient / right.SiEstimate),
            nameof(right));
    }

    /// <summary>The value after the same range check that the plain type makes.</summary>
    internal static Uncertain<T> Made(double value, LinearCombination combination, string argument)
    {
        // A count of points stays unrounded inside, so that it is the value that is rounded and not the uncertainty.
        if (!(Math.Abs(value) <= double.MaxValue)) throw Refuse.NotFiniteResult(value, StrongType<T>.Kind, argument);
        if (!ReferenceEquals(StrongType<T>.Kind, QuantityKind.PointCount)) RequireHeld(value, argument);
        return new Uncertain<T>(value, combination);
    }

    private static void RequireHeld(double value, string argument)
    {
        try
        {
            StrongType<T>.FromSi(value, argument);
        }
        catch (ArgumentOutOfRangeException refusal)
        {
            throw Refuse.OfResult(refusal, argument);
        }
    }

    private static Uncertain<T> Combine(Uncertain<T> left, double leftSign, Uncertain<T> right, double rightSign)
    {
        if (left is null) throw new ArgumentNullException(nameof(left));
        if (right is null) throw new ArgumentNullException(nameof(right));
        return Made(leftSign * left.SiEstimate + rightSign * right.SiEstimate, LinearCombination.Sum(left.Combination, leftSign, right.Combination, rightSign), nameof(right));
    }

    private static Uncertain<T> Scaled(Uncertain<T> value, double factor, string argument)
    {
        RequireScalable();
        return Made((value ?? throw new ArgumentNullException(nameof(value))).SiEstimate * factor, value.Combination.Times(factor), argument);
    }

    private static void RequireAdditive(string what)
    {
        QuantityKind kind = StrongType<T>.Kind;
        if (kind.Nature is QuantityNature.Level or QuantityNature.Point)
            throw new InvalidOperationException($"two values of kind {kind.Name} cannot be {what}; "
                + (kind.Nature == QuantityNature.Level ? "add decibels to a level, use Uncertain.Difference for two levels, or convert to power" : "use Uncertain.Difference for the difference in kelvins"));
    }

    private static void RequireScalable()
    {
        QuantityKind kind = StrongType<T>.Kind;
        if (kind.Nature is QuantityNature.Level or QuantityNature.Point) throw new InvalidOperationException($"a {kind.Name} cannot be scaled; leave the scale by name first, such as by Uncertain.ToPower");
    }

    private static void RequireProduct<TOther, TResult>(Dimension dimension, string what)
        where TOther : struct, IQuantity
        where TResult : struct, IQuantity
    {
        QuantityKind left = StrongType<T>.Kind, right = StrongType<TOther>.Kind, result = StrongType<TResult>.Kind;
        bool logarithmic = left.Nature >= QuantityNature.DecibelRatio || right.Nature >= QuantityNature.DecibelRatio || result.Nature >= QuantityNature.DecibelRatio;
        if (logarithmic || result.Dimension != dimension)
            throw new ArgumentException($"the {what} of a {left.Name} and a {right.Name} is not a {result.Name}");
    }
}
