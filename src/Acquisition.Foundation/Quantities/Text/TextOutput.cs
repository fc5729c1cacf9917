namespace Acquisition.Core;

/// <summary>Characters put one after the other into a buffer that is long enough by construction.</summary>
internal ref struct TextOutput
{
    private readonly CharBuffer _buffer;

    internal TextOutput(CharBuffer buffer)
    {
        _buffer = buffer;
        Length = 0;
    }

    internal int Length { get; private set; }

    internal void Add(char c) => _buffer[Length++] = c;

    internal void Add(string text)
    {
        foreach (char c in text) _buffer[Length++] = c;
    }

    internal void AddInteger(int value, int leastDigits)
    {
        for (int power = 1000; power > 0; power /= 10)
        {
            bool isNeeded = value >= power || leastDigits > 3 || (leastDigits == 3 && power <= 100) || (leastDigits == 2 && power <= 10) || power == 1;
            if (isNeeded) Add((char)('0' + value / power % 10));
        }
    }

    /// <summary>Digits with the decimal separator at its place and zeros where they are needed.</summary>
    internal void AddPositional(DecimalDigits digits, int leastDecimals, char decimalMark)
    {
#if NET8_0_OR_GREATER
        CharBuffer text = stackalloc char[digits.Count];
#else
        CharBuffer text = new char[digits.Count];
#endif
        digits.CopyTo(text);
        int lead = digits.Lead;
        for (int power = lead < 0 ? 0 : lead; power >= 0; power--) Add(DigitAt(text, lead, power));
        int decimals = digits.Place < 0 && !digits.IsZero ? -digits.Place : 0;
        if (decimals < leastDecimals) decimals = leastDecimals;
        if (decimals == 0) return;
        Add(decimalMark);
        for (int power = -1; power >= -decimals; power--) Add(DigitAt(text, lead, power));
    }

    private static char DigitAt(CharBuffer digits, int lead, int power)
    {
        int place = lead - power;
        return place >= 0 && place < digits.Length ? digits[place] : '0';
    }
}
