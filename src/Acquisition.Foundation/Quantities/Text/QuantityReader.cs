namespace Acquisition.Core;

/// <summary>
/// Reads a quantity: a number, space of any kind or none, and a unit. The rules are in docs/notation.md. Never throws; work is linear in the length of the
/// text, and the text is bounded.
/// </summary>
internal static class QuantityReader
{
    /// <summary>Longer than the exact decimal expansion of any double with its unit.</summary>
    internal const int MaximumLength = 2048;

    /// <summary>Reads a text that is one quantity and nothing else.</summary>
    /// <param name="text">The text.</param>
    /// <param name="wanted">The kind it must have; null for any.</param>
    /// <param name="decimalMark">The decimal separator: a point, but for a culture that was asked for.</param>
    /// <param name="reading">The quantity.</param>
    /// <param name="problem">Why there is none.</param>
    internal static bool TryRead(Chars text, QuantityKind? wanted, char decimalMark, out QuantityReading reading, out TextProblem problem)
    {
        reading = default;
        if (text.Length > MaximumLength) return Fail(TextFault.TooLong, MaximumLength, 0, out problem);
        int start = 0, end = text.Length;
        while (start < end && char.IsWhiteSpace(text[start])) start++;
        while (end > start && char.IsWhiteSpace(text[end - 1])) end--;
        if (start == end) return Fail(TextFault.Empty, 0, 0, out problem);

        if (!NumberReader.TryRead(text, start, decimalMark, embedded: false, out DecimalNumber number, out problem)) return false;
        int at = SkipSpaces(text, number.End, end);
        if (at == end)
        {
            reading = Convert(text, number, UnitReading.PlainNumber(at));
            if (wanted is not null && !reading.Unit.Is(wanted)) return Fail(TextFault.UnitMissing, start, end - start, out problem);
        }
        else
        {
            if (!UnitReader.TryRead(text, at, embedded: false, out UnitReading unit, out problem))
            {
                if (problem.Fault == TextFault.UnitExpected && problem.Start == at && NumberReader.IsDigit(text, at)) problem = new TextProblem(TextFault.GroupNotOfThree, at, RunOfDigits(text, at));
                return false;
            }
            int rest = SkipSpaces(text, unit.End, end);
            if (rest < end) return Fail(TextFault.TrailingText, rest, end - rest, out problem);
            reading = Convert(text, number, unit);
            if (wanted is not null && !unit.Is(wanted)) return Fail(TextFault.WrongKind, start, end - start, out problem);
        }
        return IsHeld(number, reading, start, out problem);
    }

    private static QuantityReading Convert(Chars text, in DecimalNumber number, in UnitReading unit) => new(DecimalConversion.ToDouble(text, number, unit), unit);

    /// <summary>Refuses what left the range of a double; a zero must have been written as one.</summary>
    private static bool IsHeld(in DecimalNumber number, in QuantityReading reading, int start, out TextProblem problem)
    {
        double value = reading.SiValue;
        if (double.IsInfinity(value)) return Fail(TextFault.TooLarge, start, reading.End - start, out problem);
        bool isLost = value == 0 && number.Mantissa != 0 && reading.Unit.OffsetInHundredths == 0;
        if (isLost) return Fail(TextFault.TooSmall, start, reading.End - start, out problem);
        problem = default;
        return true;
    }

    private static int SkipSpaces(Chars text, int at, int end)
    {
        while (at < end && NumberReader.IsSpace(text[at])) at++;
        return at;
    }

    private static int RunOfDigits(Chars text, int at)
    {
        int end = at;
        while (NumberReader.IsDigit(text, end)) end++;
        return end - at;
    }

    private static bool Fail(TextFault fault, int start, int length, out TextProblem problem)
    {
        problem = new TextProblem(fault, start, length);
        return false;
    }
}

/// <summary>A quantity that was read, and where it ended.</summary>
internal readonly struct QuantityReading
{
    internal QuantityReading(double siValue, in UnitReading unit)
    {
        SiValue = siValue;
        Unit = unit;
    }

    internal double SiValue { get; }

    internal UnitReading Unit { get; }

    internal int End => Unit.End;

    internal QuantityKind Kind => Unit.Kind;
}
