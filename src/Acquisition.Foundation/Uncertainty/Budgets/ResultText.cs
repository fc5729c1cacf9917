using System;
using System.Globalization;

namespace Acquisition.Core.Uncertainty;

/// <summary>Results with their uncertainty as text, by JCGM 100 clause 7: the uncertainty to a few digits, the value to the same place, one unit for both.</summary>
/// <remarks>Rounding is done in decimal on the fifteen digits that a double holds, halves away from zero, so that every platform writes the same.</remarks>
internal static class ResultText
{
    private const string Prefixes = "qryzafpnµm kMGTPEZYRQ";
    private const int NoPrefix = 10;

    /// <summary>The expanded uncertainty after ±, with k and p.</summary>
    internal static string PlusMinus(UncertaintyBudget budget, int digits)
    {
        string result = PlusMinus(budget.Value, budget.SiExpandedUncertainty, digits);
        if (budget.SiExpandedUncertainty == 0) return result;
        return result + string.Format(CultureInfo.InvariantCulture, ", k = {0:0.##}, p {1}", budget.CoverageFactor, ProbabilityText.Beside(budget.CoverageProbability.SiValue, 2));
    }

    internal static string PlusMinus(Quantity value, double uncertainty, int digits)
    {
        if (uncertainty == 0) return $"{value} (exact)";
        Rounded rounded = Round(value, uncertainty, digits);
        string pair = $"{rounded.Value} ± {rounded.Uncertainty}";
        return rounded.Unit.Length == 0 ? pair : $"({pair}){rounded.Unit}";
    }

    /// <summary>The standard uncertainty in parentheses, in units of the last digits of the value.</summary>
    internal static string Concise(Quantity value, double uncertainty, int digits)
    {
        if (uncertainty == 0) return $"{value} (exact)";
        Rounded rounded = Round(value, uncertainty, digits);
        // "12.3(1.5)": where the digits of the uncertainty straddle the point, the point is written (common practice; JCGM 100 7.2.2 shows only the other case).
        string inParentheses = rounded.Decimals == 0 || rounded.UncertaintyNumber >= 1
            ? rounded.Uncertainty
            : rounded.Uncertainty.Substring(2).TrimStart('0');
        return $"{rounded.Value}({inParentheses}){rounded.Unit}";
    }

    /// <summary>A value that ends where so many digits of an uncertainty do; with four digits where there is none.</summary>
    internal static string Beside(Quantity value, double uncertainty, int digits)
    {
        if (!(uncertainty > 0) || value.SiValue == 0) return value.InWords();
        int places = (int)(Math.Floor(Math.Log10(Math.Abs(value.SiValue))) - Math.Floor(Math.Log10(uncertainty))) + digits;
        return value.ToString(Math.Max(1, Math.Min(15, places)).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    private readonly struct Rounded
    {
        internal Rounded(decimal value, decimal uncertainty, int decimals, string unit)
        {
            string format = "F" + decimals.ToString(CultureInfo.InvariantCulture);
            Value = value.ToString(format, CultureInfo.InvariantCulture);
            Uncertainty = uncertainty.ToString(format, CultureInfo.InvariantCulture);
            UncertaintyNumber = uncertainty;
            Decimals = decimals;
            Unit = unit;
        }

        internal string Value { get; }

        internal string Uncertainty { get; }

        internal decimal UncertaintyNumber { get; }

        internal int Decimals { get; }

        internal string Unit { get; }
    }

    private static Rounded Round(Quantity value, double uncertainty, int digits)
    {
        int step = Step(value.Kind, Math.Max(Math.Abs(value.SiValue), uncertainty));
        while (true)
        {
            decimal scaledValue = Scale(value.SiValue, -3 * step), scaledUncertainty = Scale(uncertainty, -3 * step);
            int place = LeadingPlace(scaledUncertainty) - digits + 1;
            decimal roundedUncertainty = RoundTo(scaledUncertainty, place);
            // 0.0996 to two digits is 0.10: one place fewer, still two digits.
            if (LeadingPlace(roundedUncertainty) - digits + 1 > place) roundedUncertainty = RoundTo(roundedUncertainty, ++place);
            decimal roundedValue = RoundTo(scaledValue, place);
            bool spills = Math.Max(Math.Abs(roundedValue), roundedUncertainty) >= 1000 && Math.Abs(step) < 10 && HasPrefixes(value.Kind);
            if (spills)
            {
                step++;
                continue;
            }
            return new Rounded(roundedValue, roundedUncertainty, Math.Max(0, -place), Unit(value.Kind, step));
        }
    }

    private static int Step(QuantityKind kind, double magnitude)
    {
        if (magnitude == 0 || kind.Nature >= QuantityNature.Point) return 0;
        int step = (int)Math.Floor(Math.Floor(Math.Log10(magnitude) + 1e-12) / 3);
        // A plain number has no prefix; it is written out as long as that is short.
        if (!HasPrefixes(kind)) return step >= -1 && step <= 1 ? 0 : step;
        return Math.Max(-10, Math.Min(10, step));
    }

    private static bool HasPrefixes(QuantityKind kind) => kind.Symbol.Length > 0 && kind.Nature < QuantityNature.Point;

    private static string Unit(QuantityKind kind, int step)
    {
        if (kind.Symbol.Length == 0) return step == 0 ? "" : " ×10^" + (3 * step).ToString(CultureInfo.InvariantCulture);
        return " " + (step == 0 ? "" : Prefixes[step + NoPrefix].ToString()) + kind.Symbol;
    }

    private static decimal Scale(double number, int exponent)
    {
        double scaled = exponent >= 0 ? number * Math.Pow(10, exponent) : number / Math.Pow(10, -exponent);
        return Math.Abs(scaled) < 7e27 ? (decimal)scaled : throw new OverflowException("a value of more than 28 digits before the point cannot be written with its uncertainty");
    }

    /// <summary>The power of ten of the first digit.</summary>
    private static int LeadingPlace(decimal number)
    {
        if (number == 0) return -28;
        int place = 0;
        for (; number >= 10; number /= 10) place++;
        for (; number < 1; number *= 10) place--;
        return place;
    }

    private static decimal RoundTo(decimal number, int place)
    {
        if (place <= 0) return Math.Round(number, Math.Min(28, -place), MidpointRounding.AwayFromZero);
        decimal unit = 1;
        for (int i = 0; i < place; i++) unit *= 10;
        return Math.Round(number / unit, 0, MidpointRounding.AwayFromZero) * unit;
    }
}
