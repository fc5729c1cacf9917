namespace Acquisition.Core;

/// <summary>A decimal number as it stands in a text: sign, digits, exponent. Nothing is rounded yet.</summary>
internal struct DecimalNumber
{
    internal bool IsNegative;

    /// <summary>The first significant digits, at most <see cref="DigitsHeld"/>.</summary>
    internal ulong Mantissa;

    /// <summary>The power of ten that goes with <see cref="Mantissa"/>.</summary>
    internal int Exponent;

    /// <summary>Whether digits other than zero follow those in <see cref="Mantissa"/>; then they must be read again from the text.</summary>
    internal bool HasMoreDigits;

    /// <summary>Where the digits begin in the text.</summary>
    internal int Start;

    /// <summary>Where the digits end, before the exponent.</summary>
    internal int DigitsEnd;

    /// <summary>Where the number ends.</summary>
    internal int End;

    /// <summary>The number itself where it is short enough to be one product or quotient of doubles, as nearly all are.</summary>
    internal readonly bool TryConvert(out double value)
    {
        bool isShort = !HasMoreDigits && !IsNegative;
        value = 0;
        return isShort && DecimalConversion.TryExactly(Mantissa, Exponent, out value);
    }

    /// <summary>How many digits always fit 64 bits.</summary>
    internal const int DigitsHeld = 19;
}
