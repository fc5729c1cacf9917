using System;
using System.ComponentModel;
using System.Diagnostics;

namespace Acquisition.Core;

[TypeConverter(typeof(QuantityTypeConverter<Temperature>))]
[DebuggerDisplay("{ToString(),nq}")]
public readonly partial struct Temperature : IQuantity, IEquatable<Temperature>, IComparable<Temperature>, IComparable, IFormattable
{
    /// <summary>This value as a <see cref="Quantity"/>, the form that text and formulas use.</summary>
    public Quantity ToQuantity() => new(SiValue, Kind);

    /// <summary>The value that <paramref name="quantity"/> holds, if it is of this kind.</summary>
    /// <exception cref="ArgumentException"><paramref name="quantity"/> is of another kind, or out of range.</exception>
    public static Temperature FromQuantity(Quantity quantity) => FromSi(quantity.Require(Kind, nameof(quantity)), nameof(quantity));

    /// <summary>Reads text such as the one <see cref="ToString()"/> writes; see docs/notation.md.</summary>
    /// <exception cref="QuantityFormatException">The text is not a quantity of this kind; the message names place, finding and remedy.</exception>
    public static Temperature Parse(string text) => Parse(text, null);

    /// <summary>Reads text; <paramref name="provider"/> is a culture whose decimal separator is accepted, or null for invariant text.</summary>
    /// <exception cref="QuantityFormatException">The text is not a quantity of this kind.</exception>
    public static Temperature Parse(string text, IFormatProvider? provider) => FromText(QuantityText.Parse(text, Kind, provider));

    /// <summary>Reads text without ever throwing; false when it is not a quantity of this kind.</summary>
    public static bool TryParse(string? text, out Temperature result) => TryParse(text, null, out result);

    /// <summary>Reads text without ever throwing; <paramref name="provider"/> is a culture whose decimal separator is accepted, or null for invariant text.</summary>
    public static bool TryParse(string? text, IFormatProvider? provider, out Temperature result)
    {
        bool read = QuantityText.TryParse(text, Kind, provider, out double value) && IsInRange(value);
        result = read ? FromSi(value, nameof(text)) : default;
        return read;
    }

    private static Temperature FromText(double value)
    {
        try
        {
            return FromSi(value, nameof(value));
        }
        catch (ArgumentOutOfRangeException refusal)
        {
            throw QuantityText.NotAllowed(refusal);
        }
    }

    /// <summary>The value with its unit, culture-invariant, in the shortest form that reads back to the same bits.</summary>
    public override string ToString() => QuantityText.Format(SiValue, Kind, null, null);

    /// <summary>The value in a chosen format (docs/notation.md), culture-invariant.</summary>
    /// <exception cref="FormatException"><paramref name="format"/> is not known.</exception>
    public string ToString(string? format) => QuantityText.Format(SiValue, Kind, format, null);

    /// <summary>The value in a chosen format; <paramref name="formatProvider"/> supplies the decimal separator, null is invariant.</summary>
    /// <exception cref="FormatException"><paramref name="format"/> is not known.</exception>
    public string ToString(string? format, IFormatProvider? formatProvider) => QuantityText.Format(SiValue, Kind, format, formatProvider);

    /// <summary>The value as a format object says: digits, unit, ASCII symbols, no-break space, culture.</summary>
    /// <exception cref="FormatException">The unit of <paramref name="format"/> is no unit of this kind.</exception>
    public string ToString(QuantityFormat format) => (format ?? QuantityFormat.RoundTrip).Format(ToQuantity());

    /// <inheritdoc/>
    public bool Equals(Temperature other) => SiValue == other.SiValue;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Temperature other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => (SiValue + 0.0).GetHashCode();

    /// <inheritdoc/>
    public int CompareTo(Temperature other) => SiValue.CompareTo(other.SiValue);

    int IComparable.CompareTo(object? obj) => obj switch
    {
        null => 1,
        Temperature other => CompareTo(other),
        _ => throw Refuse.Incomparable(Kind, obj, nameof(obj)),
    };

    /// <summary>Whether the two are the same value.</summary>
    public static bool operator ==(Temperature left, Temperature right) => left.SiValue == right.SiValue;

    /// <summary>Whether the two differ.</summary>
    public static bool operator !=(Temperature left, Temperature right) => left.SiValue != right.SiValue;

    /// <summary>Whether the left one is smaller.</summary>
    public static bool operator <(Temperature left, Temperature right) => left.SiValue < right.SiValue;

    /// <summary>Whether the left one is larger.</summary>
    public static bool operator >(Temperature left, Temperature right) => left.SiValue > right.SiValue;

    /// <summary>Whether the left one is smaller or the same.</summary>
    public static bool operator <=(Temperature left, Temperature right) => left.SiValue <= right.SiValue;

    /// <summary>Whether the left one is larger or the same.</summary>
    public static bool operator >=(Temperature left, Temperature right) => left.SiValue >= right.SiValue;

    /// <summary>The smaller of the two.</summary>
    public static Temperature Min(Temperature left, Temperature right) => right < left ? right : left;

    /// <summary>The larger of the two.</summary>
    public static Temperature Max(Temperature left, Temperature right) => right > left ? right : left;
}

#if NET8_0_OR_GREATER
[System.Text.Json.Serialization.JsonConverter(typeof(QuantityJsonConverter<Temperature>))]
public readonly partial struct Temperature
    : ISpanParsable<Temperature>, IUtf8SpanParsable<Temperature>, ISpanFormattable, IUtf8SpanFormattable,
      System.Numerics.IComparisonOperators<Temperature, Temperature, bool>
{
    /// <summary>Reads text from a span; see <see cref="Parse(string)"/>.</summary>
    /// <exception cref="QuantityFormatException">The text is not a quantity of this kind.</exception>
    public static Temperature Parse(ReadOnlySpan<char> s, IFormatProvider? provider = null) => FromText(QuantityText.Parse(s, Kind, provider));

    /// <summary>Reads text from a span without ever throwing.</summary>
    public static bool TryParse(ReadOnlySpan<char> s, out Temperature result) => TryParse(s, null, out result);

    /// <summary>Reads text from a span without ever throwing.</summary>
    public static bool TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, out Temperature result)
    {
        bool read = QuantityText.TryParse(s, Kind, provider, out double value) && IsInRange(value);
        result = read ? FromSi(value, nameof(s)) : default;
        return read;
    }

    /// <summary>Reads UTF-8 text; see <see cref="Parse(string)"/>.</summary>
    /// <exception cref="QuantityFormatException">The text is not a quantity of this kind.</exception>
    public static Temperature Parse(ReadOnlySpan<byte> utf8Text, IFormatProvider? provider = null) => FromText(QuantityText.Parse(utf8Text, Kind, provider));

    /// <summary>Reads UTF-8 text without ever throwing.</summary>
    public static bool TryParse(ReadOnlySpan<byte> utf8Text, IFormatProvider? provider, out Temperature result)
    {
        bool read = QuantityText.TryParse(utf8Text, Kind, provider, out double value) && IsInRange(value);
        result = read ? FromSi(value, nameof(utf8Text)) : default;
        return read;
    }

    /// <summary>Writes the text into a span; false when it does not fit.</summary>
    public bool TryFormat(Span<char> destination, out int charsWritten, ReadOnlySpan<char> format = default, IFormatProvider? provider = null) =>
        QuantityText.TryFormat(SiValue, Kind, destination, out charsWritten, format, provider);

    /// <summary>Writes the text as UTF-8 into a span; false when it does not fit.</summary>
    public bool TryFormat(Span<byte> utf8Destination, out int bytesWritten, ReadOnlySpan<char> format = default, IFormatProvider? provider = null) =>
        QuantityText.TryFormat(SiValue, Kind, utf8Destination, out bytesWritten, format, provider);
}
#endif
