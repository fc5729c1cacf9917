namespace Acquisition.Core;

/// <summary>
/// The short way for text as the library itself writes it: digits with at most one point, a space or none, and the kind's own unit with or without a prefix.
/// It reads the bits that <see cref="QuantityReader"/> reads, or leaves the text to it (a test compares the two). With it the first quantity of a process waits
/// for one method and no tables.
/// </summary>
internal static class PlainQuantity
{
    /// <summary>More could not all be held.</summary>
    private const int MostDigits = 16;

    internal static bool TryRead(Chars text, QuantityKind kind, out double value)
    {
        value = 0;
        ulong mantissa = 0;
        int at = 0, point = -1, exponent = 0;
        for (; at < text.Length; at++)
        {
            char c = text[at];
            if (c >= '0' && c <= '9')
                mantissa = mantissa * 10 + (uint)(c - '0');
            else if (c == '.' && point < 0 && at > 0)
                point = at;
            else
                break;
            if (at == MostDigits) return false;
        }
        if (at == 0 || at == point + 1) return false;
        if (point > 0) exponent = point + 1 - at;
        if (at < text.Length && text[at] == ' ') at++;

        string symbol = kind.Symbol;
        int prefixes = text.Length - at - symbol.Length;
        if (prefixes < 0 || prefixes > 1) return false;
        if (prefixes == 1)
        {
            int power = kind.Prefix == WrittenPrefix.Engineering ? UnitPrefix.PowerOf(text[at]) : 0;
            if (power == 0) return false;
            exponent += power;
            at++;
        }
        for (int i = 0; i < symbol.Length; i++)
        {
            if (text[at + i] != symbol[i]) return false;
        }
        return DecimalConversion.TryExactly(mantissa, exponent, out value);
    }
}
