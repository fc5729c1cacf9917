using System;
using System.Globalization;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core;

/// <summary>How uncertain a value is, as a data sheet, a certificate or a set of readings states it: a width and what is known about its shape.</summary>
/// <remarks>
/// The width is given in the unit of the value, or as a <see cref="Ratio"/> of its magnitude (<c>5 %</c>); for values that are ratios themselves a <see cref="Ratio"/> is the
/// width itself, for levels and decibel ratios it is a <see cref="DecibelRatio"/>, for temperatures a difference in kelvins. Immutable. Sources: JCGM 100 4.2 and 4.3,
/// JCGM 101 6.4, handbook 11.3.
/// </remarks>
public sealed class Spread
{
    private readonly Func<double, Distribution> _scaled;
    private readonly string _statement;

    private Spread(Quantity width, Func<double, Distribution> scaled, string statement)
    {
        Width = width;
        _scaled = scaled;
        _statement = statement;
    }

    /// <summary>The stated width: half-width, standard or expanded uncertainty, as the factory says.</summary>
    public Quantity Width { get; }

    /// <summary>A standard uncertainty: normal, or with finite degrees of freedom a t-distribution (JCGM 101 6.4.7, 6.4.9).</summary>
    /// <param name="standardUncertainty">The standard uncertainty.</param>
    /// <param name="degreesOfFreedom">Its degrees of freedom, above 0; infinite where it is taken as known.</param>
    /// <exception cref="ArgumentOutOfRangeException">The uncertainty is negative, or the degrees of freedom are not above 0.</exception>
    public static Spread Standard<T>(T standardUncertainty, double degreesOfFreedom = double.PositiveInfinity)
        where T : struct, IQuantity
    {
        Coverage.RequireDegreesOfFreedom(degreesOfFreedom, nameof(degreesOfFreedom));
        return double.IsPositiveInfinity(degreesOfFreedom)
            ? Of(standardUncertainty, nameof(standardUncertainty), u => new NormalDistribution(u), "standard")
            : Of(standardUncertainty, nameof(standardUncertainty), u => new StudentTDistribution(u, degreesOfFreedom), Invariant($"standard, {degreesOfFreedom:0.####} degrees of freedom"));
    }

    /// <summary>Limits without further statement, as on a data sheet: rectangular (JCGM 100 4.3.7).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The half-width is negative.</exception>
    public static Spread Bound<T>(T halfWidth)
        where T : struct, IQuantity =>
        Of(halfWidth, nameof(halfWidth), a => new RectangularDistribution(a), "limits, rectangular");

    /// <summary>Limits that are themselves in doubt: rectangular, with degrees of freedom from the relative uncertainty of the standard uncertainty, 1/(2 r²) (JCGM 100 G.4.2).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The half-width is negative, or the relative uncertainty is not above 0.</exception>
    public static Spread BoundInDoubt<T>(T halfWidth, Ratio relativeUncertaintyOfIt)
        where T : struct, IQuantity
    {
        double degreesOfFreedom = DegreesOfFreedomFrom(relativeUncertaintyOfIt);
        return Of(halfWidth, nameof(halfWidth), a => new RectangularDistribution(a, degreesOfFreedom), Invariant($"limits, rectangular, {degreesOfFreedom:0.####} degrees of freedom"));
    }

    /// <summary>Limits with values near the middle more likely: triangular (JCGM 100 4.3.9).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The half-width is negative.</exception>
    public static Spread Triangular<T>(T halfWidth)
        where T : struct, IQuantity =>
        Of(halfWidth, nameof(halfWidth), a => new TrapezoidalDistribution(a, 0), "limits, triangular");

    /// <summary>Limits with a flat top: trapezoidal (JCGM 100 4.3.9).</summary>
    /// <param name="halfWidth">Half the width of the base.</param>
    /// <param name="topToBase">Width of the top over width of the base, from 0 (triangle) to 1 (rectangle).</param>
    /// <exception cref="ArgumentOutOfRangeException">The half-width is negative, or the ratio is not from 0 to 1.</exception>
    public static Spread Trapezoidal<T>(T halfWidth, Ratio topToBase)
        where T : struct, IQuantity
    {
        double top = topToBase.SiValue;
        if (!(top >= 0 && top <= 1)) throw Refuse.OutOfRange(top, QuantityKind.Ratio, nameof(topToBase), "from 0 to 1");
        return Of(halfWidth, nameof(halfWidth), a => top == 1 ? new RectangularDistribution(a) : new TrapezoidalDistribution(a, top), Invariant($"limits, trapezoidal, top {top:0.###} of base"));
    }

    /// <summary>A sinusoidal ripple, or a mismatch of unknown phase: arcsine, U-shaped (JCGM 101 6.4.6).</summary>
    /// <param name="halfWidth">The peak deviation.</param>
    /// <exception cref="ArgumentOutOfRangeException">The half-width is negative.</exception>
    public static Spread Arcsine<T>(T halfWidth)
        where T : struct, IQuantity =>
        Of(halfWidth, nameof(halfWidth), a => new ArcsineDistribution(a), "limits, arcsine");

    /// <summary>Limits that are known to within a tolerance only: curvilinear trapezoid (JCGM 101 6.4.3).</summary>
    /// <param name="halfWidth">The half-width between the limits.</param>
    /// <param name="toleranceOfIt">How far each limit may be off, of the half-width's kind and at most the half-width.</param>
    /// <exception cref="ArgumentOutOfRangeException">The half-width is negative, or the tolerance is not from 0 to the half-width.</exception>
    public static Spread CurvilinearTrapezoid<T>(T halfWidth, T toleranceOfIt)
        where T : struct, IQuantity
    {
        Quantity width = halfWidth.ToQuantity(), tolerance = toleranceOfIt.ToQuantity();
        if (!(tolerance.SiValue >= 0 && tolerance.SiValue <= width.SiValue))
            throw Refuse.OutOfRange(tolerance.SiValue, tolerance.Kind, nameof(toleranceOfIt), "from 0 to the half-width " + width);
        double part = width.SiValue == 0 ? 0 : tolerance.SiValue / width.SiValue;
        return Of(halfWidth, nameof(halfWidth), a => part == 0 ? new RectangularDistribution(a) : new CurvilinearTrapezoidDistribution(a, a * part), $"limits known to ± {tolerance}");
    }

    /// <summary>An expanded uncertainty with its coverage factor, as on a calibration certificate: normal (JCGM 100 4.3.3).</summary>
    /// <param name="expandedUncertainty">U.</param>
    /// <param name="coverageFactor">k, above 0.</param>
    /// <param name="degreesOfFreedom">The degrees of freedom where the certificate states them.</param>
    /// <exception cref="ArgumentOutOfRangeException">U is negative, k is not above 0, or the degrees of freedom are not.</exception>
    public static Spread Expanded<T>(T expandedUncertainty, double coverageFactor, double degreesOfFreedom = double.PositiveInfinity)
        where T : struct, IQuantity
    {
        if (!(coverageFactor > 0 && coverageFactor <= double.MaxValue)) throw Refuse.OutOfRange(coverageFactor, QuantityKind.Ratio, nameof(coverageFactor), "above 0");
        Coverage.RequireDegreesOfFreedom(degreesOfFreedom, nameof(degreesOfFreedom));
        return Of(expandedUncertainty, nameof(expandedUncertainty), NormalOrT(1 / coverageFactor, degreesOfFreedom), Invariant($"expanded, k = {coverageFactor:0.####}"));
    }

    /// <summary>An interval with its coverage probability: normal, or a t-distribution where degrees of freedom are given (JCGM 100 4.3.4).</summary>
    /// <param name="halfWidth">Half the width of the interval.</param>
    /// <param name="probability">The coverage probability, above 0 and below 1.</param>
    /// <param name="degreesOfFreedom">The degrees of freedom where they are stated.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public static Spread WithProbability<T>(T halfWidth, Ratio probability, double degreesOfFreedom = double.PositiveInfinity)
        where T : struct, IQuantity
    {
        double p = Coverage.RequireProbability(probability.SiValue, nameof(probability));
        Coverage.RequireDegreesOfFreedom(degreesOfFreedom, nameof(degreesOfFreedom));
        return Of(halfWidth, nameof(halfWidth), NormalOrT(1 / StudentT.CoverageFactor(p, degreesOfFreedom), degreesOfFreedom), Invariant($"interval, p = {p * 100:0.####} %"));
    }

    /// <summary>The last digit of a display, or one code step: rectangular over the step (JCGM 100 F.2.2.1).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The step is negative.</exception>
    public static Spread Resolution<T>(T step)
        where T : struct, IQuantity =>
        Of(step, nameof(step), d => new RectangularDistribution(d / 2), "resolution, rectangular");

    /// <summary>Reads a statement such as <c>± 5 %</c>, <c>5 % (k=2)</c>, <c>0.2 dB (p=95 %)</c>, <c>1 mV (standard)</c> or <c>10 mV (triangular)</c>.</summary>
    /// <exception cref="QuantityFormatException">The text is no such statement; the message says what was expected.</exception>
    public static Spread Parse(string text) => SpreadText.Read(text, out string? problem) ?? throw new QuantityFormatException(problem!);

    /// <summary>Reads a statement without ever throwing; false, and null, when it is none.</summary>
    public static bool TryParse(string? text, out Spread? spread)
    {
        spread = SpreadText.Read(text, out _);
        return spread is not null;
    }

    /// <summary>The distribution of the deviation from <paramref name="value"/>.</summary>
    internal Distribution Around(Quantity value)
    {
        QuantityKind kind = value.Kind;
        if (ReferenceEquals(Width.Kind, QuantityKind.Ratio) && !ReferenceEquals(kind, QuantityKind.Ratio))
        {
            if (kind.Nature >= QuantityNature.Point)
                throw new ArgumentException($"a spread in percent of a {kind.Name} ({value}) has no meaning; state it in {UncertaintyKind.Of(kind).Symbol}");
            if (value.SiValue == 0 && Width.SiValue > 0)
                throw new ArgumentException($"a spread of {Width.InWords()} of {value} is none; state its width in {UncertaintyKind.Of(kind).Symbol}, such as percent of the range");
            return _scaled(Width.SiValue * Math.Abs(value.SiValue));
        }
        QuantityKind expected = UncertaintyKind.Of(kind);
        if (Width.Kind.Dimension != expected.Dimension || (expected.Nature == QuantityNature.DecibelRatio) != (Width.Kind.Nature == QuantityNature.DecibelRatio))
            throw new ArgumentException($"found a spread in {Width.Kind.Symbol} ({Width}) for a {kind.Name}, expected one in {expected.Symbol}" + (kind.Nature < QuantityNature.Point ? " or in percent" : ""));
        return _scaled(Width.SiValue);
    }

    /// <summary>The statement, such as <c>± 5 % (limits, rectangular)</c>.</summary>
    public override string ToString() =>
        (ReferenceEquals(Width.Kind, QuantityKind.Ratio) ? Invariant($"± {Width.SiValue * 100:0.######} %") : $"± {Width}") + $" ({_statement})";

    private static Spread Of<T>(T width, string argument, Func<double, Distribution> scaled, string statement)
        where T : struct, IQuantity
    {
        Quantity quantity = width.ToQuantity();
        if (quantity.SiValue < 0) throw Refuse.OutOfRange(quantity.SiValue, quantity.Kind, argument, "at least 0");
        return new Spread(quantity, scaled, statement);
    }

    private static Func<double, Distribution> NormalOrT(double part, double degreesOfFreedom) =>
        double.IsPositiveInfinity(degreesOfFreedom) ? u => new NormalDistribution(u * part) : u => new StudentTDistribution(u * part, degreesOfFreedom);

    internal static double DegreesOfFreedomFrom(Ratio relativeUncertainty)
    {
        double r = Refuse.UnlessAboveZero(relativeUncertainty.SiValue, QuantityKind.Ratio, nameof(relativeUncertainty));
        return 1 / (2 * r * r);
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
