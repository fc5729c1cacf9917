using System;
using System.ComponentModel;
using System.Diagnostics;

namespace Acquisition.Core;

/// <summary>A quantity whose kind is known at run time only: what text and formulas work with.</summary>
/// <remarks>The value is finite. The default value is the plain number 0.</remarks>
[TypeConverter(typeof(QuantityTypeConverter<Quantity>))]
[DebuggerDisplay("{ToString(),nq}")]
public readonly partial struct Quantity : IEquatable<Quantity>, IFormattable, IQuantity
{
    private readonly QuantityKind? _kind;

    /// <summary>A value in the unit that <paramref name="kind"/> is held in.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="siValue"/> is not finite.</exception>
    public Quantity(double siValue, QuantityKind kind)
    {
        _kind = kind ?? throw new ArgumentNullException(nameof(kind));
        SiValue = Math.Abs(siValue) <= double.MaxValue ? siValue : throw Refuse.NotFinite(siValue, kind, nameof(siValue));
    }

    /// <summary>The value in the SI unit; for logarithmic kinds in their own unit (dB, dBm, dBV ...).</summary>
    public double SiValue { get; }

    /// <summary>What the quantity is.</summary>
    public QuantityKind Kind => _kind ?? QuantityKind.Ratio;

    /// <summary>The dimension.</summary>
    public Dimension Dimension => Kind.Dimension;

    /// <inheritdoc/>
    public Quantity ToQuantity() => this;

    internal double Require(QuantityKind kind, string argument) =>
        Kind.Equals(kind) ? SiValue : throw new ArgumentException($"found a {Kind.Name} ({this}), expected a {kind.Name}", argument);

    /// <inheritdoc/>
    public bool Equals(Quantity other) => SiValue == other.SiValue && Kind.Equals(other.Kind);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Quantity other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => (SiValue + 0.0).GetHashCode();

    /// <summary>Whether value and kind are the same.</summary>
    public static bool operator ==(Quantity left, Quantity right) => left.Equals(right);

    /// <summary>Whether value or kind differ.</summary>
    public static bool operator !=(Quantity left, Quantity right) => !left.Equals(right);

    /// <summary>Reads text of any kind, such as <c>2.8 ns</c> or <c>-20 dB/decade</c>; see docs/notation.md.</summary>
    /// <exception cref="QuantityFormatException">The text is no quantity; the message names place, finding and remedy.</exception>
    public static Quantity Parse(string text) => Parse(text, null);

    /// <summary>Reads text of any kind; <paramref name="provider"/> is a culture whose decimal separator is read, or null for invariant text.</summary>
    /// <exception cref="QuantityFormatException">The text is no quantity.</exception>
    public static Quantity Parse(string text, IFormatProvider? provider) =>
        TryParse(text ?? throw new ArgumentNullException(nameof(text)), provider, out Quantity result) ? result : throw QuantityText.Problem(text, null, provider);

    /// <summary>Reads text of any kind without ever throwing; false when it is no quantity.</summary>
    public static bool TryParse(string? text, out Quantity result) => TryParse(text, null, out result);

    /// <summary>Reads text of any kind without ever throwing; <paramref name="provider"/> is a culture whose decimal separator is read, or null.</summary>
    public static bool TryParse(string? text, IFormatProvider? provider, out Quantity result)
    {
        bool isRead = QuantityText.TryParse(text, null, provider, out double value, out QuantityKind? kind);
        result = isRead ? new Quantity(value, kind!) : default;
        return isRead;
    }

    /// <summary>The value with its unit, culture-invariant, in the shortest form that reads back to the same bits.</summary>
    public override string ToString() => QuantityText.Format(SiValue, Kind, null, null);

    /// <summary>The value in a chosen format (docs/notation.md), such as <c>G4 MHz</c>, culture-invariant.</summary>
    /// <exception cref="FormatException"><paramref name="format"/> is not known, or its unit is of another kind.</exception>
    public string ToString(string? format) => QuantityText.Format(SiValue, Kind, format, null);

    /// <summary>The value in a chosen format; <paramref name="formatProvider"/> supplies the decimal separator, null is invariant.</summary>
    /// <exception cref="FormatException"><paramref name="format"/> is not known, or its unit is of another kind.</exception>
    public string ToString(string? format, IFormatProvider? formatProvider) => QuantityText.Format(SiValue, Kind, format, formatProvider);

    /// <summary>The value as a format object says: digits, unit, ASCII symbols, no-break space, culture.</summary>
    /// <exception cref="FormatException">The unit of <paramref name="format"/> is no unit of this kind.</exception>
    public string ToString(QuantityFormat format) => (format ?? QuantityFormat.RoundTrip).Format(this);
}

#if NET8_0_OR_GREATER
[System.Text.Json.Serialization.JsonConverter(typeof(QuantityJsonConverter<Quantity>))]
public readonly partial struct Quantity : ISpanParsable<Quantity>, IUtf8SpanParsable<Quantity>, ISpanFormattable, IUtf8SpanFormattable
{
    /// <summary>Reads text from a span; see <see cref="Parse(string)"/>.</summary>
    /// <exception cref="QuantityFormatException">The text is no quantity.</exception>
    public static Quantity Parse(ReadOnlySpan<char> s, IFormatProvider? provider = null) =>
        TryParse(s, provider, out Quantity result) ? result : throw QuantityText.Problem(s.ToString(), null, provider);

    /// <summary>Reads text from a span without ever throwing.</summary>
    public static bool TryParse(ReadOnlySpan<char> s, out Quantity result) => TryParse(s, null, out result);

    /// <summary>Reads text from a span without ever throwing.</summary>
    public static bool TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, out Quantity result)
    {
        bool isRead = QuantityText.TryParse(s, null, provider, out double value, out QuantityKind? kind);
        result = isRead ? new Quantity(value, kind!) : default;
        return isRead;
    }

    /// <summary>Reads UTF-8 text; see <see cref="Parse(string)"/>.</summary>
    /// <exception cref="QuantityFormatException">The text is no quantity.</exception>
    public static Quantity Parse(ReadOnlySpan<byte> utf8Text, IFormatProvider? provider = null) =>
        TryParse(utf8Text, provider, out Quantity result) ? result : throw QuantityText.Problem(System.Text.Encoding.UTF8.GetString(utf8Text), null, provider);

    /// <summary>Reads UTF-8 text without ever throwing.</summary>
    public static bool TryParse(ReadOnlySpan<byte> utf8Text, IFormatProvider? provider, out Quantity result)
    {
        bool isRead = QuantityText.TryParse(utf8Text, null, provider, out double value, out QuantityKind? kind);
        result = isRead ? new Quantity(value, kind!) : default;
        return isRead;
    }

    /// <summary>Writes the text into a span; false when it does not fit.</summary>
    public bool TryFormat(Span<char> destination, out int charsWritten, ReadOnlySpan<char> format = default, IFormatProvider? provider = null) =>
        QuantityText.TryFormat(SiValue, Kind, destination, out charsWritten, format, provider);

    /// <summary>Writes the text as UTF-8 into a span; false when it does not fit.</summary>
    public bool TryFormat(Span<byte> utf8Destination, out int bytesWritten, ReadOnlySpan<char> format = default, IFormatProvider? provider = null) =>
        QuantityText.TryFormat(SiValue, Kind, utf8Destination, out bytesWritten, format, provider);
}
#endif
