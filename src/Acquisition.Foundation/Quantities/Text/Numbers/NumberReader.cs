namespace Acquisition.Core;

/// <summary>
/// Reads a decimal number at a place in a text: sign, digits (grouped in exact threes by a space or <c>_</c> before the point), fraction, and an exponent
/// as <c>e6</c>, <c>×10^6</c> or <c>×10⁶</c>. Linear in the length of the number.
/// </summary>
internal static class NumberReader
{
    /// <summary>Beyond any exponent that matters, so that a long one cannot overflow.</summary>
    private const int ExponentLimit = 100_000;

    internal static bool TryRead(Chars text, int start, char decimalMark, bool embedded, out DecimalNumber number, out TextProblem problem)
    {
        problem = default;
        return TryReadPlain(text, start, decimalMark, out number) || TryReadAny(text, start, decimalMark, embedded, out number, out problem);
    }

    /// <summary>The frequent case: a few digits that plainly end, at most one point between them. False says nothing but that it is another case.</summary>
    internal static bool TryReadPlain(Chars text, int start, char decimalMark, out DecimalNumber number)
    {
        number = default;
        ulong mantissa = 0;
        int at = start, point = -1;
        for (; at < text.Length; at++)
        {
            char c = text[at];
            if (c >= '0' && c <= '9')
                mantissa = mantissa * 10 + (uint)(c - '0');
            else if (c == decimalMark && point < 0)
                point = at;
            else
                break;
        }
        int length = at - start;
        if (length == 0 || length >= DecimalNumber.DigitsHeld || point == start || point == at - 1) return false;
        int after = at < text.Length && text[at] == ' ' ? at + 1 : at;
        if (after < text.Length && (text[after] > '~' || text[after] is ' ' or 'e' or 'E' or ',' or '.' or '_' or (>= '0' and <= '9'))) return false;
        number.Mantissa = mantissa;
        number.Exponent = point < 0 ? 0 : point + 1 - at;
        number.Start = start;
        number.DigitsEnd = at;
        number.End = at;
        return true;
    }

    internal static bool TryReadAny(Chars text, int start, char decimalMark, bool embedded, out DecimalNumber number, out TextProblem problem)
    {
        number = default;
        int at = start;
        if (at < text.Length && (text[at] == '-' || text[at] == '\u2212' || text[at] == '+'))
        {
            number.IsNegative = text[at] != '+';
            at++;
        }
        number.Start = at;
        var digits = new Digits();
        int integerDigits = ReadInteger(text, ref at, ref digits, out problem);
        if (problem.Fault != TextFault.None) return false;
        if (at < text.Length && text[at] == decimalMark && (integerDigits > 0 || IsDigit(text, at + 1)))
        {
            int fraction = ++at;
            for (; IsDigit(text, at); at++) digits.Add(text[at], isFraction: true);
            if (at == fraction) return Fail(TextFault.FractionExpected, at, 0, out problem);
        }
        else if (integerDigits == 0)
        {
            bool isForeign = at < text.Length && char.IsDigit(text[at]);
            return Fail(isForeign ? TextFault.ForeignDigit : TextFault.NumberExpected, isForeign ? at : start, isForeign ? 1 : 0, out problem);
        }
        number.DigitsEnd = at;
        if (at < text.Length && text[at] is not ' ' && !EndsWell(text, at, embedded, out problem)) return false;
        int exponent = MayBeExponent(text, at) ? ReadExponent(text, ref at) : 0;
        number.Mantissa = digits.Mantissa;
        number.Exponent = digits.Exponent + exponent;
        number.HasMoreDigits = digits.HasMore;
        number.End = at;
        return true;
    }

    /// <summary>Whether a number may end before this character: not before one that looks as if it went on.</summary>
    private static bool EndsWell(Chars text, int at, bool embedded, out TextProblem problem)
    {
        problem = default;
        if (text[at] == ',' && IsDigit(text, at + 1) && !embedded) return Fail(TextFault.Comma, at, 1, out problem);
        if (text[at] == '.' && IsDigit(text, at + 1)) return Fail(TextFault.Point, at, 1, out problem);
        if (char.IsDigit(text[at])) return Fail(TextFault.ForeignDigit, at, 1, out problem);
        if (text[at] == '_' && IsDigit(text, at + 1)) return Fail(TextFault.GroupNotOfThree, at + 1, DigitRun(text, at + 1), out problem);
        return true;
    }

    /// <summary>A space of any kind that may stand in text: U+0020, U+00A0, U+2009, U+202F.</summary>
    internal static bool IsSpace(char c) => c is ' ' or '\u00A0' or '\u2009' or '\u202F';

    internal static bool IsDigit(Chars text, int at) => at < text.Length && text[at] >= '0' && text[at] <= '9';

    private static int ReadInteger(Chars text, ref int at, ref Digits digits, out TextProblem problem)
    {
        int start = at, inGroup = 0;
        char separator = '\0';
        problem = default;
        while (at < text.Length)
        {
            char c = text[at];
            if (c >= '0' && c <= '9')
            {
                digits.Add(c, isFraction: false);
                inGroup++;
                at++;
                continue;
            }
            bool isSeparator = (IsSpace(c) || c == '_') && inGroup > 0 && IsDigit(text, at + 1);
            if (!isSeparator) break;
            bool isThree = inGroup <= 3 && (separator == '\0' || (inGroup == 3 && c == separator)) && DigitRun(text, at + 1) == 3;
            if (!isThree)
            {
                Fail(TextFault.GroupNotOfThree, at + 1, DigitRun(text, at + 1), out problem);
                break;
            }
            separator = c;
            inGroup = 0;
            at++;
        }
        return at - start;
    }

    /// <summary>The length of the run of digits, counted no further than four.</summary>
    private static int DigitRun(Chars text, int at)
    {
        int length = 0;
        while (length < 4 && IsDigit(text, at + length)) length++;
        return length;
    }

    /// <summary>Rules out what follows most numbers: an ASCII character other than e, after one space or none.</summary>
    private static bool MayBeExponent(Chars text, int at)
    {
        if (at >= text.Length) return false;
        if (text[at] == ' ') return at + 1 < text.Length && (text[at + 1] == ' ' || text[at + 1] > '~');
        return text[at] is 'e' or 'E' or > '~';
    }

    private static int ReadExponent(Chars text, ref int at)
    {
        if (at < text.Length && (text[at] == 'e' || text[at] == 'E'))
        {
            int place = at + 1;
            return TryReadInteger(text, ref place, isSuperscript: false, out int exponent) ? Accept(ref at, place, exponent) : 0;
        }
        int sign = SkipSpaces(text, at);
        if (sign >= text.Length || text[sign] != '×') return 0;
        int ten = SkipSpaces(text, sign + 1);
        if (ten + 1 >= text.Length || text[ten] != '1' || text[ten + 1] != '0') return 0;
        int power = ten + 2;
        bool isSuperscript = power < text.Length && text[power] != '^';
        if (!isSuperscript) power++;
        return TryReadInteger(text, ref power, isSuperscript, out int tens) ? Accept(ref at, power, tens) : 0;
    }

    private static int Accept(ref int at, int end, int value)
    {
        at = end;
        return value;
    }

    private static bool TryReadInteger(Chars text, ref int at, bool isSuperscript, out int value)
    {
        value = 0;
        int place = at;
        bool isNegative = place < text.Length && (isSuperscript ? text[place] == '⁻' : text[place] == '-' || text[place] == '\u2212');
        bool isSigned = isNegative || (place < text.Length && text[place] == (isSuperscript ? '⁺' : '+'));
        if (isSigned) place++;
        int digits = place;
        for (; place < text.Length; place++)
        {
            int digit = isSuperscript ? UnitFactor.SuperscriptDigit(text[place]) : IsDigit(text, place) ? text[place] - '0' : -1;
            if (digit < 0) break;
            if (value < ExponentLimit) value = value * 10 + digit;
        }
        if (place == digits) return false;
        if (isNegative) value = -value;
        at = place;
        return true;
    }

    private static int SkipSpaces(Chars text, int at)
    {
        while (at < text.Length && IsSpace(text[at])) at++;
        return at;
    }

    private static bool Fail(TextFault fault, int start, int length, out TextProblem problem)
    {
        problem = new TextProblem(fault, start, length);
        return false;
    }

    /// <summary>Collects significant digits and keeps the exponent right for those that do not fit.</summary>
    private struct Digits
    {
        private int _held;

        internal ulong Mantissa;
        internal int Exponent;
        internal bool HasMore;

        internal void Add(char c, bool isFraction)
        {
            if (_held < DecimalNumber.DigitsHeld)
            {
                Mantissa = Mantissa * 10 + (uint)(c - '0');
                if (Mantissa != 0) _held++;
                if (isFraction) Exponent--;
                return;
            }
            HasMore |= c != '0';
            if (!isFraction) Exponent++;
        }
    }
}
