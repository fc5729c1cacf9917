using System;
using System.Globalization;

namespace Acquisition.Core;

/// <summary>Reads and writes quantities as text; the rules are in docs/notation.md.</summary>
internal static class QuantityText
{
    internal static string Format(double value, QuantityKind kind, string? format, IFormatProvider? provider)
    {
#if NET8_0_OR_GREATER
        CharBuffer buffer = stackalloc char[QuantityWriter.BufferLength];
#else
        CharBuffer buffer = new char[QuantityWriter.BufferLength];
#endif
        return ToText(buffer, Write(buffer, value, kind, format ?? "", provider));
    }

    private static int Write(CharBuffer buffer, double value, QuantityKind kind, Chars format, IFormatProvider? provider)
    {
        FormatText.Split(format, out NumberStyle number, out int unit);
        return QuantityWriter.Write(buffer, value, kind, new WritingOptions { Number = number, Unit = format, UnitStart = unit, DecimalMark = DecimalMark(provider) });
    }

    internal static string ToText(CharBuffer buffer, int length) =>
#if NET8_0_OR_GREATER
        new(buffer[..length]);
#else
        new(buffer, 0, length);
#endif

    internal static double Parse(string text, QuantityKind kind, IFormatProvider? provider) =>
        TryRead(text ?? throw new ArgumentNullException(nameof(text)), kind, provider, out double value) ? value : throw Problem(text, kind, provider);

    internal static bool TryParse(string? text, QuantityKind kind, IFormatProvider? provider, out double value)
    {
        value = 0;
        return text is not null && TryRead(text, kind, provider, out value);
    }

    private static bool TryRead(Chars text, QuantityKind kind, IFormatProvider? provider, out double value) =>
        (provider is null && PlainQuantity.TryRead(text, kind, out value)) || TryReadAny(text, kind, provider, out value);

    private static bool TryReadAny(Chars text, QuantityKind kind, IFormatProvider? provider, out double value)
    {
        bool isRead = QuantityReader.TryRead(text, kind, DecimalMark(provider), out QuantityReading reading, out _);
        value = isRead ? reading.SiValue : 0;
        return isRead;
    }

    internal static bool TryParse(string? text, QuantityKind? kind, IFormatProvider? provider, out double value, out QuantityKind? found)
    {
        QuantityReading reading = default;
        bool isRead = text is not null && QuantityReader.TryRead(text, kind, DecimalMark(provider), out reading, out _);
        value = isRead ? reading.SiValue : 0;
        found = isRead ? kind ?? reading.Kind : null;
        return isRead;
    }

    /// <summary>The exception for a text that cannot be read.</summary>
    internal static QuantityFormatException Problem(string text, QuantityKind? kind, IFormatProvider? provider)
    {
        char mark = DecimalMark(provider);
        QuantityReader.TryRead(text, kind, mark, out _, out TextProblem problem);
        return ProblemText.ToException(text, problem, kind, mark);
    }

    /// <summary>The exception for a text that is read, but whose value the strong type refuses.</summary>
    internal static QuantityFormatException NotAllowed(ArgumentOutOfRangeException refusal) =>
        // The name of the argument means nothing to whoever wrote the text.
        new("column 1: value" + Refuse.ReasonIn(refusal), refusal);

    /// <summary>The separator of a culture that was asked for; a point for text, whatever the culture of the thread.</summary>
    internal static char DecimalMark(IFormatProvider? provider)
    {
        if (provider is null || ReferenceEquals(provider, CultureInfo.InvariantCulture)) return '.';
        string separator = NumberFormatInfo.GetInstance(provider).NumberDecimalSeparator;
        return separator.Length == 1 ? separator[0] : '.';
    }

#if NET8_0_OR_GREATER
    internal static double Parse(ReadOnlySpan<char> text, QuantityKind kind, IFormatProvider? provider) =>
        TryRead(text, kind, provider, out double value) ? value : throw Problem(text.ToString(), kind, provider);

    internal static bool TryParse(ReadOnlySpan<char> text, QuantityKind kind, IFormatProvider? provider, out double value) => TryRead(text, kind, provider, out value);

    internal static bool TryParse(ReadOnlySpan<char> text, QuantityKind? kind, IFormatProvider? provider, out double value, out QuantityKind? found)
    {
        bool isRead = QuantityReader.TryRead(text, kind, DecimalMark(provider), out QuantityReading reading, out _);
        value = isRead ? reading.SiValue : 0;
        found = isRead ? kind ?? reading.Kind : null;
        return isRead;
    }

    internal static double Parse(ReadOnlySpan<byte> text, QuantityKind kind, IFormatProvider? provider) =>
        TryParse(text, kind, provider, out double value) ? value : throw Problem(System.Text.Encoding.UTF8.GetString(text), kind, provider);

    internal static bool TryParse(ReadOnlySpan<byte> text, QuantityKind kind, IFormatProvider? provider, out double value)
    {
        value = 0;
        Span<char> characters = stackalloc char[Math.Min(text.Length, QuantityReader.MaximumLength)];
        return TryDecode(text, characters, out int length) && TryParse(characters[..length], kind, provider, out value);
    }

    internal static bool TryParse(ReadOnlySpan<byte> text, QuantityKind? kind, IFormatProvider? provider, out double value, out QuantityKind? found)
    {
        value = 0;
        found = null;
        Span<char> characters = stackalloc char[Math.Min(text.Length, QuantityReader.MaximumLength)];
        return TryDecode(text, characters, out int length) && TryParse(characters[..length], kind, provider, out value, out found);
    }

    private static bool TryDecode(ReadOnlySpan<byte> text, Span<char> characters, out int length) =>
        System.Text.Unicode.Utf8.ToUtf16(text, characters, out _, out length, replaceInvalidSequences: false) == System.Buffers.OperationStatus.Done;

    internal static bool TryFormat(double value, QuantityKind kind, Span<char> destination, out int written, ReadOnlySpan<char> format, IFormatProvider? provider)
    {
        CharBuffer buffer = stackalloc char[QuantityWriter.BufferLength];
        int length = Write(buffer, value, kind, format, provider);
        bool fits = buffer[..length].TryCopyTo(destination);
        written = fits ? length : 0;
        return fits;
    }

    internal static bool TryFormat(double value, QuantityKind kind, Span<byte> destination, out int written, ReadOnlySpan<char> format, IFormatProvider? provider)
    {
        CharBuffer buffer = stackalloc char[QuantityWriter.BufferLength];
        int length = Write(buffer, value, kind, format, provider);
        return System.Text.Encoding.UTF8.TryGetBytes(buffer[..length], destination, out written);
    }
#endif
}
