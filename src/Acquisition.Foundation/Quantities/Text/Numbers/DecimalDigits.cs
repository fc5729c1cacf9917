using System.Globalization;
using System.Numerics;

namespace Acquisition.Core;

/// <summary>A decimal number to be written: digits without sign, times ten to the power of <see cref="Place"/>.</summary>
internal readonly struct DecimalDigits
{
    private readonly ulong _small;
    private readonly string? _large;

    private DecimalDigits(ulong small, string? large, int place)
    {
        _small = small;
        _large = large;
        Place = place;
        Count = large?.Length ?? CountOf(small);
    }

    internal DecimalDigits(ulong digits, int place)
        : this(digits, null, place) { }

    internal DecimalDigits(BigInteger digits, int place)
        : this(digits <= ulong.MaxValue ? (ulong)digits : 0, digits <= ulong.MaxValue ? null : digits.ToString(CultureInfo.InvariantCulture), place) { }

    /// <summary>The power of ten of the last digit.</summary>
    internal int Place { get; }

    /// <summary>How many digits there are; 1 for zero.</summary>
    internal int Count { get; }

    internal bool IsZero => _small == 0 && _large is null;

    /// <summary>The power of ten of the first digit.</summary>
    internal int Lead => IsZero ? 0 : Place + Count - 1;

    /// <summary>The same digits, the point moved.</summary>
    internal DecimalDigits TimesTen(int power) => new(_small, _large, Place + power);

    /// <summary>Without zeros at the end.</summary>
    internal DecimalDigits Trimmed()
    {
        if (IsZero) return new DecimalDigits(0UL, 0);
        if (_large is not null)
        {
            string kept = _large.TrimEnd('0');
            return kept.Length <= DecimalNumber.DigitsHeld
                ? new DecimalDigits(ulong.Parse(kept, NumberStyles.None, CultureInfo.InvariantCulture), Place + _large.Length - kept.Length)
                : new DecimalDigits(0, kept, Place + _large.Length - kept.Length);
        }
        ulong digits = _small;
        int place = Place;
        for (; digits % 10 == 0; digits /= 10) place++;
        return new DecimalDigits(digits, place);
    }

    /// <summary>
    /// Rounds these digits of at most 15, the shortest of a double, as its exact value would be rounded. No other decimal of at most 15 digits reads as the same double, so
    /// no point half-way between two results lies between the digits and the exact value; only where the digits are such a point themselves must the exact value decide.
    /// </summary>
    /// <returns>False where the exact value must decide: at such a point, or where more than 15 digits are asked for.</returns>
    internal bool TryRound(int place, out DecimalDigits rounded)
    {
        const int DigitsThatDecide = 15;
        rounded = this;
        int dropped = place - Place;
        if (dropped <= 0) return Lead - place < DigitsThatDecide;
        if (dropped > DecimalNumber.DigitsHeld - 1)
        {
            rounded = new DecimalDigits(0UL, 0);
            return true;
        }
        ulong unit = 1;
        for (int i = 0; i < dropped; i++) unit *= 10;
        ulong cut = _small % unit;
        rounded = new DecimalDigits(_small / unit + (cut > unit / 2 ? 1UL : 0UL), place).Trimmed();
        return cut != unit / 2;
    }

    internal ExactFraction ToFraction(bool isNegative)
    {
        BigInteger digits = _large is null ? _small : BigInteger.Parse(_large, NumberStyles.None, CultureInfo.InvariantCulture);
        return new ExactFraction(isNegative ? -digits : digits, BigInteger.One).TimesTen(Place);
    }

    /// <summary>Puts the digits into the first <see cref="Count"/> places of a buffer.</summary>
    internal void CopyTo(CharBuffer buffer)
    {
        ulong rest = _small;
        for (int i = Count - 1; i >= 0; i--)
        {
            buffer[i] = _large is null ? (char)('0' + (int)(rest % 10)) : _large[i];
            rest /= 10;
        }
    }

    private static int CountOf(ulong digits)
    {
        int count = 1;
        for (; digits >= 10; digits /= 10) count++;
        return count;
    }
}
