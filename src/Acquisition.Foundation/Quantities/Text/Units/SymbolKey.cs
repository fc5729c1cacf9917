namespace Acquisition.Core;

/// <summary>
/// The letters of a unit symbol packed into one integer, six bits each, so that look-up compares integers. Look-alikes share a code: u, U+00B5 and
/// U+03BC are one micro, U+03A9 and U+2126 one ohm, K and U+212A one kelvin.
/// </summary>
internal static class SymbolKey
{
    /// <summary>The most letters that fit.</summary>
    internal const int MaximumLength = 10;

    private const string Letters = "\0abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZΩ°%";

    /// <summary>The code of a letter that may stand in a unit symbol, 0 for any other character.</summary>
    internal static int Code(char c)
    {
        if (c >= 'a' && c <= 'z') return c - 'a' + 1;
        if (c >= 'A' && c <= 'Z') return c - 'A' + 27;
        return c switch
        {
            'µ' or 'μ' => 'u' - 'a' + 1,
            'Ω' or '\u2126' => 53,
            '\u212A' => 'K' - 'A' + 27,
            '°' => 54,
            '%' => 55,
            _ => 0,
        };
    }

    internal static long Of(string symbol)
    {
        long key = 0;
        foreach (char c in symbol) key = key << 6 | (long)Code(c);
        return key;
    }

    internal static char Letter(long key, int length, int place) => Letters[(int)(key >> 6 * (length - 1 - place) & 63)];

    /// <summary>The key without its first letters.</summary>
    internal static long Rest(long key, int length, int dropped) => key & (1L << 6 * (length - dropped)) - 1;
}
