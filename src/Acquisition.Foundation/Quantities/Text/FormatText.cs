using System;

namespace Acquisition.Core;

/// <summary>Reads a format text: <c>G4 MHz</c>, <c>F2</c>, <c>3</c>, <c>ns</c>.</summary>
internal static class FormatText
{
    /// <summary>Splits a format text into the digits and the place where the unit begins.</summary>
    /// <exception cref="FormatException">There are more digits than any number needs.</exception>
    internal static void Split(Chars format, out NumberStyle number, out int unit)
    {
        number = new NumberStyle(NumberStyleKind.Shortest, 0);
        unit = 0;
        NumberStyleKind kind = format.Length == 0 ? NumberStyleKind.Shortest : format[0] switch
        {
            'R' or 'r' => NumberStyleKind.Shortest,
            'G' or 'g' => NumberStyleKind.General,
            'F' or 'f' => NumberStyleKind.Decimals,
            'E' or 'e' => NumberStyleKind.Exponential,
            _ => NumberStyleKind.Significant,
        };
        int at = kind == NumberStyleKind.Significant || format.Length == 0 ? 0 : 1, first = at, digits = 0;
        for (; NumberReader.IsDigit(format, at); at++)
        {
            digits = digits * 10 + format[at] - '0';
            if (digits > NumberStyle.MostDigits) throw new FormatException($"format '{EchoedText.Of(format.ToString())}' asks for more than {NumberStyle.MostDigits} digits");
        }
        bool hasDigits = at > first;
        bool isNumberPart = (at == format.Length || format[at] == ' ') && (hasDigits || kind != NumberStyleKind.Significant);
        if (!isNumberPart) return;
        if (!hasDigits && kind == NumberStyleKind.General) kind = NumberStyleKind.Shortest;
        if (!hasDigits) digits = kind == NumberStyleKind.Exponential ? 6 : 2;
        if (digits == 0 && kind is NumberStyleKind.Significant or NumberStyleKind.General) kind = NumberStyleKind.Shortest;
        number = new NumberStyle(kind, digits);
        while (at < format.Length && format[at] == ' ') at++;
        unit = at;
    }
}

/// <summary>The digits a number is written with.</summary>
internal readonly struct NumberStyle
{
    /// <summary>Far more than a double has.</summary>
    internal const int MostDigits = 30;

    internal NumberStyle(NumberStyleKind kind, int digits)
    {
        Kind = kind;
        Digits = digits;
    }

    internal NumberStyleKind Kind { get; }

    internal int Digits { get; }
}

/// <summary>What the digit count of a format means.</summary>
internal enum NumberStyleKind : byte
{
    /// <summary>As many as read back to the same bits.</summary>
    Shortest,

    /// <summary>Significant digits, without zeros at the end.</summary>
    General,

    /// <summary>Significant digits, zeros at the end kept.</summary>
    Significant,

    /// <summary>Digits after the decimal separator.</summary>
    Decimals,

    /// <summary>Digits after the decimal separator of a number from 1 to 10 with an exponent.</summary>
    Exponential,
}
