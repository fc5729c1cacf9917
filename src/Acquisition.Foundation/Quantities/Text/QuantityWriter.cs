using System;

namespace Acquisition.Core;

/// <summary>Writes a quantity: rounds once, from the exact value, then chooses the prefix, so that 999.96 MHz at 4 digits is 1.000 GHz.</summary>
internal static class QuantityWriter
{
    /// <summary>Room for the longest number (324 decimals or 309 digits), thirty digits more, and a unit.</summary>
    internal const int BufferLength = 640;

    private const int LongestUnit = 120;
    private const int LargestPrefix = 30;

    /// <summary>A number without a prefix is written with an exponent from this power of ten on.</summary>
    private const int FirstLargeExponent = 15;
    private const int LastSmallExponent = -6;

    internal static int Write(CharBuffer buffer, double value, QuantityKind kind, in WritingOptions options)
    {
        string symbol = options.IsAscii ? kind.AsciiSymbol : kind.Symbol;
        bool isFixed = options.Unit.Length > options.UnitStart;
        UnitReading unit = isFixed ? FixedUnit(kind, options) : UnitReading.PlainNumber(0);
        var output = new TextOutput(buffer);
        if (double.IsNaN(value) || double.IsInfinity(value)) output.Add(double.IsNaN(value) ? "NaN" : value > 0 ? "Infinity" : "-Infinity");
        else if (isFixed && !unit.IsDecimal) WriteExact(ref output, value, unit, options);
        else
        {
            double magnitude = Math.Abs(value);
            bool isNegative = value < 0 || (value == 0 && double.IsNegativeInfinity(1 / value));
            int shift = isFixed ? unit.Scale.PowerOfTen : 0;
            bool isPrefixed = !isFixed && kind.Prefix != WrittenPrefix.None && options.Number.Kind != NumberStyleKind.Exponential;
            DecimalDigits digits = isPrefixed ? DigitsWithPrefix(magnitude, kind.Prefix, options.Number, ref shift) : Digits(magnitude, options.Number, shift);
            WriteNumber(ref output, digits.TimesTen(-shift), isNegative, options, isPrefixed && shift != 0);
            if (isPrefixed && shift != 0)
            {
                output.Add(options.HasNoBreakSpace ? '\u00A0' : ' ');
                char prefix = UnitPrefix.Engineering(shift)!.Value;
                output.Add(options.IsAscii && prefix == 'µ' ? 'u' : prefix);
                output.Add(symbol);
                return output.Length;
            }
        }
        if (isFixed || symbol.Length > 0) output.Add(options.HasNoBreakSpace ? '\u00A0' : ' ');
        if (!isFixed) output.Add(symbol);
        else if (options.IsAscii) output.Add(UnitSpelling.ToAscii(options.Unit.ToString().Substring(options.UnitStart)));
        else for (int i = options.UnitStart; i < options.Unit.Length; i++) output.Add(options.Unit[i]);
        return output.Length;
    }

    private static UnitReading FixedUnit(QuantityKind kind, in WritingOptions options)
    {
        string text = options.Unit.ToString();
        bool isRead = UnitReader.TryRead(options.Unit, options.UnitStart, embedded: false, out UnitReading unit, out TextProblem problem);
        if (isRead && unit.End < options.Unit.Length) isRead = false;
        if (!isRead || text.Length > LongestUnit)
        {
            string? near = problem.Fault == TextFault.None ? null : UnitSuggestions.Near(text, problem.Start, problem.Length, null, '.');
            throw new FormatException($"format '{EchoedText.Of(text)}' is neither digits (R, G4, F2, E3, 4) nor a unit, nor both with a space between" + (near is null ? "" : $"; did you mean {near}?"));
        }
        bool isSameScale = unit.Nature is QuantityNature.Linear or QuantityNature.Point && kind.Nature is QuantityNature.Linear or QuantityNature.Point && unit.Dimension == kind.Dimension && unit.OffsetInHundredths == 0;
        if (!unit.Is(kind) && !isSameScale) throw new FormatException($"the unit of format '{EchoedText.Of(text)}' is one of {ProblemText.Article(unit.Kind.Name)}, the quantity is {ProblemText.Article(kind.Name)}");
        return unit;
    }

    /// <summary>Digits and prefix together: the prefix is chosen after rounding, and decimals are counted after the prefix.</summary>
    private static DecimalDigits DigitsWithPrefix(double magnitude, WrittenPrefix allowed, NumberStyle style, ref int shift)
    {
        DecimalDigits digits = Digits(magnitude, style.Kind == NumberStyleKind.Decimals ? new NumberStyle(NumberStyleKind.Shortest, 0) : style, 0);
        shift = PrefixOf(digits, allowed);
        if (style.Kind != NumberStyleKind.Decimals) return digits;
        digits = Digits(magnitude, style, shift);
        int carried = PrefixOf(digits, allowed);
        if (digits.IsZero || carried == shift) return digits;
        shift = carried;
        return Digits(magnitude, style, shift);
    }

    private static int PrefixOf(DecimalDigits digits, WrittenPrefix allowed)
    {
        int thousands = digits.Lead >= 0 ? digits.Lead / 3 : (digits.Lead - 2) / 3;
        return Math.Abs(3 * thousands) > LargestPrefix || (allowed == WrittenPrefix.Multiples && thousands < 0) ? 0 : 3 * thousands;
    }

    private static DecimalDigits Digits(double magnitude, NumberStyle style, int shift)
    {
        if (magnitude == 0) return new DecimalDigits(0UL, 0);
        if (style.Kind == NumberStyleKind.Shortest) return ShortestDigits.Of(magnitude);
        if (ShortestDigits.TryFew(magnitude, out DecimalDigits few) && few.TryRound(PlaceOf(few.Lead, style, shift), out DecimalDigits rounded)) return rounded;
        return Digits(ExactFraction.Of(magnitude), style, shift);
    }

    private static DecimalDigits Digits(ExactFraction magnitude, NumberStyle style, int shift)
    {
        if (magnitude.Numerator.IsZero) return new DecimalDigits(0UL, 0);
        return RoundedDigits.ToPlace(magnitude, PlaceOf(RoundedDigits.LeadOf(magnitude), style, shift)).Trimmed();
    }

    /// <summary>The power of ten of the last digit that is kept.</summary>
    private static int PlaceOf(int lead, NumberStyle style, int shift) => style.Kind switch
    {
        NumberStyleKind.Decimals => shift - style.Digits,
        NumberStyleKind.Exponential => lead - style.Digits,
        _ => lead + 1 - style.Digits,
    };

    private static void WriteExact(ref TextOutput output, double value, in UnitReading unit, in WritingOptions options)
    {
        ExactFraction shown = ExactFraction.Of(value).FromHeldUnit(unit.Constant, unit.OffsetInHundredths).Over(unit.Scale);
        bool isNegative = shown.Numerator.Sign < 0 || (value == 0 && shown.Numerator.IsZero && double.IsNegativeInfinity(1 / value));
        var magnitude = new ExactFraction(System.Numerics.BigInteger.Abs(shown.Numerator), shown.Denominator);
        DecimalDigits digits = options.Number.Kind == NumberStyleKind.Shortest ? RoundedDigits.Shortest(magnitude, isNegative, value, unit) : Digits(magnitude, options.Number, 0);
        // On a scale with an offset nothing is below its own zero: 273.15 K, held as the double nearest to it, is 0 °C, not -0 °C.
        bool isOffsetZero = digits.IsZero && (unit.OffsetInHundredths != 0 || unit.Constant == UnitConstant.ZeroDecibelU);
        WriteNumber(ref output, digits, isNegative && !isOffsetZero, options, isPrefixed: false);
    }

    private static void WriteNumber(ref TextOutput output, DecimalDigits digits, bool isNegative, in WritingOptions options, bool isPrefixed)
    {
        NumberStyle style = options.Number;
        if (isNegative) output.Add('-');
        int lead = digits.Lead;
        bool isExponential = style.Kind == NumberStyleKind.Exponential
            || (!isPrefixed && style.Kind != NumberStyleKind.Decimals && !digits.IsZero && (lead >= FirstLargeExponent || lead <= LastSmallExponent));
        int decimals = style.Kind switch
        {
            NumberStyleKind.Decimals or NumberStyleKind.Exponential => style.Digits,
            NumberStyleKind.Significant => Math.Max(0, style.Digits - 1 - (isExponential || digits.IsZero ? 0 : lead)),
            _ => 0,
        };
        if (!isExponential)
        {
            output.AddPositional(digits, decimals, options.DecimalMark);
            return;
        }
        output.AddPositional(digits.TimesTen(-lead), decimals, options.DecimalMark);
        output.Add('E');
        output.Add(lead < 0 ? '-' : '+');
        output.AddInteger(Math.Abs(lead), style.Kind == NumberStyleKind.Exponential ? 3 : 2);
    }
}

/// <summary>How a quantity is to be written.</summary>
internal ref struct WritingOptions
{
    internal NumberStyle Number;

    /// <summary>A text whose part from <see cref="UnitStart"/> on is the unit to write in; nothing there for the engineering prefix.</summary>
    internal Chars Unit;
    internal int UnitStart;
    internal bool IsAscii;
    internal bool HasNoBreakSpace;
    internal char DecimalMark;
}
