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
        TryParse(text, kind, provider, out double value) ? value : throw new QuantityFormatException($"'{text}' is not a {kind.Name}");

    internal static bool TryParse(string? text, QuantityKind kind, IFormatProvider? provider, out double value)
    {
        string number = (text ?? "").Replace(kind.Symbol, "").Trim();
        return double.TryParse(number, NumberStyles.Float, provider ?? CultureInfo.InvariantCulture, out value);
    }

#if NET8_0_OR_GREATER
    internal static double Parse(ReadOnlySpan<char> text, QuantityKind kind, IFormatProvider? provider) => Parse(text.ToString(), kind, provider);

    internal static bool TryParse(ReadOnlySpan<char> text, QuantityKind kind, IFormatProvider? provider, out double value) => TryParse(text.ToString(), kind, provider, out value);

    internal static double Parse(ReadOnlySpan<byte> text, QuantityKind kind, IFormatProvider? provider) => Parse(System.Text.Encoding.UTF8.GetString(text), kind, provider);

    internal static bool TryParse(ReadOnlySpan<byte> text, QuantityKind kind, IFormatProvider? provider, out double value) =>
        TryParse(System.Text.Encoding.UTF8.GetString(text), kind, provider, out value);

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
