using System;
using System.Text;

namespace Acquisition.Core;

/// <summary>How a unit is written: the symbol of a dimension that has no name in the trade, and the ASCII spelling of any symbol.</summary>
internal static class UnitSpelling
{
    /// <summary>The units that may head a derived symbol, in the order of preference.</summary>
    private static (string Symbol, Dimension Dimension)[] Heads() =>
    [
        ("V", QuantityKind.Voltage.Dimension), ("A", QuantityKind.Current.Dimension), ("W", QuantityKind.Power.Dimension), ("Ω", QuantityKind.Resistance.Dimension),
        ("J", QuantityKind.Energy.Dimension), ("F", QuantityKind.Capacitance.Dimension), ("H", QuantityKind.Inductance.Dimension), ("S", QuantityKind.Conductance.Dimension),
    ];

    /// <summary>A symbol that reads back to the kind, where text can name it at all.</summary>
    internal static string Of(Dimension dimension, QuantityNature nature, LevelReference reference)
    {
        string linear = Linear(dimension);
        return nature switch
        {
            QuantityNature.Linear or QuantityNature.Point => linear,
            QuantityNature.Peak => linear + " (peak)",
            QuantityNature.PeakToPeak => linear + " (peak to peak)",
            QuantityNature.Rms => linear + " (rms)",
            _ => "dB (" + linear + ", re " + reference + ")",
        };
    }

    /// <summary>Whether a value in the unit may carry a prefix in front of the symbol: not before a power or a root.</summary>
    internal static bool StartsWithPlainSymbol(string symbol)
    {
        int letters = 0;
        while (letters < symbol.Length && SymbolKey.Code(symbol[letters]) != 0) letters++;
        if (letters == 0 || (letters < symbol.Length && symbol[letters] is not ('/' or '·'))) return false;
        return UnitTable.Find(SymbolKey.Of(symbol.Substring(0, letters)), letters, out Unit? unit, out UnitPrefix prefix) == UnitMatch.Found
            && prefix.PowerOfTen == 0 && !prefix.IsBinary && unit!.Prefixes is UnitPrefixes.Decimal or UnitPrefixes.DecimalAndBinary;
    }

    /// <summary>The symbol in ASCII: u, Ohm, deg, sqrt(Hz), ^2, *.</summary>
    internal static string ToAscii(string symbol)
    {
        StringBuilder? text = null;
        for (int i = 0; i < symbol.Length; i++)
        {
            char c = symbol[i];
            if (c < 128)
            {
                text?.Append(c);
                continue;
            }
            text ??= new StringBuilder(symbol, 0, i, symbol.Length + 8);
            int digit = UnitFactor.SuperscriptDigit(c);
            bool continuesPower = i > 0 && (symbol[i - 1] == '⁻' || UnitFactor.SuperscriptDigit(symbol[i - 1]) >= 0);
            if (c == '√')
            {
                int end = i + 1;
                while (end < symbol.Length && SymbolKey.Code(symbol[end]) != 0) end++;
                text.Append("sqrt(").Append(ToAscii(symbol.Substring(i + 1, end - i - 1))).Append(')');
                i = end - 1;
            }
            else if (c == '⁻') text.Append("^-");
            else if (digit >= 0) text.Append(continuesPower ? "" : "^").Append((char)('0' + digit));
            else text.Append(c switch { 'µ' or 'μ' => "u", 'Ω' or '\u2126' => "Ohm", '°' => "deg", '\u2103' => "degC", '\u212A' => "K", '·' or '⋅' => "*", _ => "?" });
        }
        return text?.ToString() ?? symbol;
    }

    private static string Linear(Dimension dimension)
    {
        if (dimension.IsNone) return "";
        string best = Join("", 0, dimension);
        int bestCost = Cost("", 0, dimension);
        foreach ((string symbol, Dimension head) in Heads())
        {
            foreach (int halves in new[] { 2, -2, 1, -1, 4, -4 })
            {
                if (!head.TryPower(-halves, out Dimension inverse) || !Dimension.TryMultiply(dimension, inverse, out Dimension rest)) continue;
                int cost = Cost(symbol, halves, rest);
                if (cost >= bestCost) continue;
                best = Join(symbol, halves, rest);
                bestCost = cost;
            }
        }
        return best;
    }

    /// <summary>Fewer symbols are better, then those above the slash, then smaller powers; roots and a symbol with nothing above the slash are a last resort.</summary>
    private static int Cost(string head, int headHalves, Dimension rest)
    {
        int cost = 0;
        bool hasAbove = false;
        if (head.Length > 0) Add(headHalves);
        for (int i = 0; i < Dimension.BaseSymbols.Length; i++)
        {
            if (rest.Halves(i) != 0) Add(rest.Halves(i));
        }
        return hasAbove ? cost : cost + 30;

        void Add(int halves)
        {
            cost += 20 + 4 * Math.Abs(Math.Abs(halves) - 2) + (halves < 0 ? 1 : 0) + (halves % 2 != 0 ? 30 : 0);
            hasAbove |= halves > 0;
        }
    }

    private static string Join(string head, int headHalves, Dimension rest)
    {
        string above = "", below = "", inverse = "";
        int countBelow = 0;
        Add(head, headHalves);
        for (int i = 0; i < Dimension.BaseSymbols.Length; i++) Add(Dimension.BaseSymbols[i], rest.Halves(i));
        if (countBelow == 0) return above;
        if (above.Length == 0) return inverse;
        return countBelow == 1 ? above + "/" + below : above + "/(" + below + ")";

        void Add(string symbol, int halves)
        {
            if (halves == 0 || symbol.Length == 0) return;
            if (halves > 0)
            {
                above += (above.Length == 0 ? "" : "·") + Power(symbol, halves);
                return;
            }
            below += (countBelow++ == 0 ? "" : "·") + Power(symbol, -halves);
            inverse += (inverse.Length == 0 ? "" : "·") + Power(symbol, halves);
        }
    }

    private static string Power(string symbol, int halves)
    {
        if (halves == 2) return symbol;
        if (halves == 1) return "√" + symbol;
        if (halves % 2 != 0) return symbol + "^" + (halves < 0 ? "-" : "") + (Math.Abs(halves) / 2).ToString(System.Globalization.CultureInfo.InvariantCulture) + ".5";
        string digits = "";
        foreach (char c in Math.Abs(halves / 2).ToString(System.Globalization.CultureInfo.InvariantCulture)) digits += "⁰¹²³⁴⁵⁶⁷⁸⁹"[c - '0'];
        return symbol + (halves < 0 ? "⁻" : "") + digits;
    }
}
