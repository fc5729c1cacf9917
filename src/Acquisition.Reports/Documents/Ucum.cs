using System;
using System.Collections.Generic;
using System.Text;

namespace Acquisition.Reports;

/// <summary>The codes of the Unified Code for Units of Measure (UCUM, case sensitive) for the unit symbols of the library.</summary>
/// <remarks>
/// Peak, peak-to-peak and rms are annotations in braces, which UCUM allows and readers of it ignore. Samples, points, symbols, unit intervals, divisions, octaves, decades, dBc, dBFS, dBm
/// and anything with a root (V/√Hz) have no code there. Codes from UCUM 2.1, tables 1 to 24 (from memory).
/// </remarks>
internal static class Ucum
{
    private static readonly char[] Superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹".ToCharArray();

    private static readonly Dictionary<string, string> Codes = new()
    {
        ["Hz"] = "Hz", ["s"] = "s", ["V"] = "V", ["A"] = "A", ["W"] = "W", ["Ω"] = "Ohm", ["J"] = "J", ["F"] = "F", ["H"] = "H", ["S"] = "S", ["K"] = "K",
        ["kg"] = "kg", ["m"] = "m", ["rad"] = "rad", ["bit"] = "bit", ["Bd"] = "Bd", ["dB"] = "dB", ["dBV"] = "dB[V]",
        ["Vpk"] = "V{peak}", ["Vpp"] = "V{peak-to-peak}", ["Vrms"] = "V{rms}", ["Apk"] = "A{peak}", ["App"] = "A{peak-to-peak}", ["Arms"] = "A{rms}",
    };

    /// <summary>The code of a symbol; null where UCUM has none.</summary>
    internal static string? Of(string symbol)
    {
        if (symbol.Length == 0) return "1";
        int slash = symbol.IndexOf('/');
        if (slash < 0) return Product(symbol);
        string below = symbol.Substring(slash + 1);
        bool isGroup = below.Length > 2 && below[0] == '(' && below[below.Length - 1] == ')';
        string? numerator = Product(symbol.Substring(0, slash)), denominator = Product(isGroup ? below.Substring(1, below.Length - 2) : below);
        if (numerator is null || denominator is null) return null;
        return numerator + (isGroup ? "/(" + denominator + ")" : "/" + denominator);
    }

    private static string? Product(string symbol)
    {
        var code = new StringBuilder();
        foreach (string factor in symbol.Split('·'))
        {
            int end = factor.Length;
            while (end > 0 && (factor[end - 1] == '⁻' || Array.IndexOf(Superscripts, factor[end - 1]) >= 0)) end--;
            if (!Codes.TryGetValue(factor.Substring(0, end), out string? unit)) return null;
            if (code.Length > 0) code.Append('.');
            code.Append(unit);
            for (int i = end; i < factor.Length; i++) code.Append(factor[i] == '⁻' ? '-' : (char)('0' + Array.IndexOf(Superscripts, factor[i])));
        }
        return code.ToString();
    }
}
