using System;
using System.Globalization;

namespace Acquisition.Core;

/// <summary>Reads and writes quantities as text; the rules are in docs/notation.md.</summary>
internal static class QuantityText
{
    private const string Prefixes = "qryzafpnum kMGTPEZYRQ";

    internal static string Format(double value, QuantityKind kind, string? format, IFormatProvider? provider)
    {
        _ = format;
        if (kind.Nature >= QuantityNature.Point || kind.Symbol.Length == 0 || value == 0 || Math.Abs(value) > double.MaxValue || double.IsNaN(value))
            return Join(value.ToString("R", provider ?? CultureInfo.InvariantCulture), "", kind);
        int step = Math.Min(10, Math.Max(-10, (int)Math.Floor(Math.Log10(Math.Abs(value)) / 3 + 1e-12)));
        double mantissa = step >= 0 ? value / Math.Pow(10, 3 * step) : value * Math.Pow(10, -3 * step);
        return Join(mantissa.ToString("G15", provider ?? CultureInfo.InvariantCulture), step == 0 ? "" : Prefixes[step + 10].ToString(), kind);
    }

    private static string Join(string number, string prefix, QuantityKind kind) =>
        kind.Symbol.Length == 0 ? number : number + " " + prefix + kind.Symbol;

    internal static double Parse(string text, QuantityKind kind, IFormatProvider? provider) =>
        TryParse(text ?? throw new ArgumentNullException(nameof(text)), kind, provider, out double value) ? value : throw Problem(text, kind, provider);

    internal static bool TryParse(string? text, QuantityKind? kind, IFormatProvider? provider, out double value) => TryParse(text, kind, provider, out value, out _);

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

    /// <summary>The separator of a culture that was asked for; a point for text, whatever the culture of the thread.</summary>
    private static char DecimalMark(IFormatProvider? provider)
    {
        if (provider is null || ReferenceEquals(provider, CultureInfo.InvariantCulture)) return '.';
        string separator = NumberFormatInfo.GetInstance(provider).NumberDecimalSeparator;
        return separator.Length == 1 ? separator[0] : '.';
    }

#if NET8_0_OR_GREATER
    internal static double Parse(ReadOnlySpan<char> text, QuantityKind kind, IFormatProvider? provider) =>
        TryParse(text, kind, provider, out double value) ? value : throw Problem(text.ToString(), kind, provider);

    internal static bool TryParse(ReadOnlySpan<char> text, QuantityKind? kind, IFormatProvider? provider, out double value)
    {
        bool isRead = QuantityReader.TryRead(text, kind, DecimalMark(provider), out QuantityReading reading, out _);
        value = isRead ? reading.SiValue : 0;
        return isRead;
    }

    internal static double Parse(ReadOnlySpan<byte> text, QuantityKind kind, IFormatProvider? provider) =>
        TryParse(text, kind, provider, out double value) ? value : throw Problem(System.Text.Encoding.UTF8.GetString(text), kind, provider);

    internal static bool TryParse(ReadOnlySpan<byte> text, QuantityKind? kind, IFormatProvider? provider, out double value)
    {
        value = 0;
        // A text that is too long in bytes is too long in characters, or at least three quarters of it are non-ASCII: no quantity either way.
        if (text.Length > QuantityReader.MaximumLength) return false;
        Span<char> characters = stackalloc char[text.Length];
        return System.Text.Unicode.Utf8.ToUtf16(text, characters, out _, out int length, replaceInvalidSequences: false) == System.Buffers.OperationStatus.Done
            && TryParse(characters[..length], kind, provider, out value);
    }

    internal static bool TryFormat(double value, QuantityKind kind, Span<char> destination, out int written, ReadOnlySpan<char> format, IFormatProvider? provider)
    {
        string text = Format(value, kind, format.ToString(), provider);
        written = text.AsSpan().TryCopyTo(destination) ? text.Length : 0;
        return written == text.Length;
    }

    internal static bool TryFormat(double value, QuantityKind kind, Span<byte> destination, out int written, ReadOnlySpan<char> format, IFormatProvider? provider) =>
        System.Text.Encoding.UTF8.TryGetBytes(Format(value, kind, format.ToString(), provider), destination, out written);
#endif
}
