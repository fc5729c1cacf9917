using System;
using System.Text;
using System.Collections.Generic;

namespace Acquisition.Core;

/// <summary>What was probably meant by a word that is no unit: offered in the message, never accepted.</summary>
internal static class UnitSuggestions
{
    private const int MostOffered = 3;

    /// <summary>What one wrong letter counts; more than all letters in the wrong case.</summary>
    private const int LetterDistance = 100;

    /// <summary>Spellings that other worlds use for units of the table.</summary>
    private static readonly (string Word, string Symbol)[] OtherSpellings =
    [
        ("sps", "Sa/s"), ("ksps", "kSa/s"), ("msps", "MSa/s"), ("gsps", "GSa/s"), ("bps", "bit/s"), ("kbps", "kbit/s"), ("mbps", "Mbit/s"), ("gbps", "Gbit/s"),
        ("points", "pts"), ("point", "pt"), ("samples", "Sa"), ("sample", "Sa"), ("sec", "s"), ("hours", "h"), ("bits", "bit"), ("bytes", "B"), ("baud", "Bd"), ("volt", "V"), ("volts", "V"),
        ("ohms", "Ω"), ("amp", "A"), ("amps", "A"), ("hertz", "Hz"), ("inch", "in"), ("degrees", "deg"), ("percent", "%"), ("kelvin", "K"), ("watt", "W"), ("watts", "W"), ("divs", "div"),
    ];

    /// <summary>The units that differ from a word by case, by a look-alike or by one letter, nearest first, joined by "or"; null where nothing is near.</summary>
    /// <param name="text">The whole text.</param>
    /// <param name="start">Where the word begins.</param>
    /// <param name="length">The length of the word.</param>
    /// <param name="wanted">The kind the text must have; suggestions that would not give it are left out.</param>
    /// <param name="decimalMark">The decimal separator of the text.</param>
    internal static string? Near(string text, int start, int length, QuantityKind? wanted, char decimalMark)
    {
        if (length > SymbolKey.MaximumLength) return null;
        string word = text.Substring(start, length);
        if (Array.Exists(UnitPrefix.All, prefix => prefix.Symbol == word))
            return wanted is { Symbol.Length: > 0 } && Fits(text, start, length, word + wanted.Symbol, wanted, decimalMark) ? word + wanted.Symbol : null;
        if (PowerOf(word) is string power) return power;
        var found = new List<(string Symbol, int Distance)>();
        foreach ((string other, string symbol) in OtherSpellings)
        {
            if (string.Equals(word, other, StringComparison.OrdinalIgnoreCase)) found.Add((symbol, 0));
        }
        foreach (Unit unit in UnitTable.All)
        {
            Consider(unit.Symbol);
            foreach (UnitPrefix prefix in UnitPrefix.All)
            {
                if (prefix.IsIn(unit.Prefixes)) Consider(prefix.Symbol + unit.Symbol);
            }
        }
        found.RemoveAll(candidate => !Fits(text, start, length, candidate.Symbol, wanted, decimalMark));
        if (found.Count == 0) return null;
        found.Sort((one, other) => one.Distance.CompareTo(other.Distance));
        int kind = found[0].Distance / LetterDistance;
        found.RemoveAll(candidate => candidate.Distance / LetterDistance > kind);
        if (found.Count > MostOffered) found.RemoveRange(MostOffered, found.Count - MostOffered);
        return string.Join(" or ", found.ConvertAll(candidate => candidate.Symbol));

        void Consider(string symbol)
        {
            int distance = Distance(word, symbol);
            if (distance < 2 * LetterDistance) found.Add((symbol, distance));
        }
    }

    /// <summary><c>mVrms</c> for <c>mV rms</c>: how an amplitude was stated belongs to its unit. Null where the word says nothing of the kind, or stands behind something else.</summary>
    internal static string? AmplitudeOf(string text, int start, int length)
    {
        string? tag = text.Substring(start, length).ToUpperInvariant() switch
        {
            "RMS" => "rms",
            "PP" or "P-P" or "PK-PK" or "PKPK" => "pp",
            "P" or "PK" or "PEAK" => "pk",
            _ => null,
        };
        int end = start;
        while (end > 0 && NumberReader.IsSpace(text[end - 1])) end--;
        int from = end;
        while (from > 0 && SymbolKey.Code(text[from - 1]) != 0) from--;
        if (tag is null || end == from || text[end - 1] is not ('V' or 'A')) return null;
        string unit = new StringBuilder(text, from, end - from, 16).Append(tag).ToString();
        return UnitReader.IsUnit(unit) ? unit : null;
    }

    /// <summary>The unit alone, of a word that is a prefix and a unit which do not go together.</summary>
    internal static string? WithoutPrefix(string word)
    {
        long key = SymbolKey.Of(word);
        UnitTable.Find(key, word.Length, out Unit? unit, out _);
        return unit?.Symbol;
    }

    /// <summary>The same number with the unit of the wanted kind, for the mix-ups of the trade: Hz for Sa/s, V for Vpp. Never Vpp for Vpk: who says how an amplitude is stated means it, and the number would change.</summary>
    internal static string? OfKind(string text, int start, QuantityKind wanted, char decimalMark)
    {
        if (!QuantityReader.TryRead(text, null, decimalMark, out QuantityReading reading, out _) || !reading.Unit.IsDecimal) return null;
        if (!NumberReader.TryRead(text, start, decimalMark, embedded: false, out DecimalNumber number, out _)) return null;
        bool areRates = IsRate(reading.Kind) && IsRate(wanted);
        bool areAmplitudes = reading.Unit.Dimension == wanted.Dimension && reading.Unit.Nature == QuantityNature.Linear && wanted.Nature <= QuantityNature.Rms;
        int power = reading.Unit.Scale.PowerOfTen;
        if (!(areRates || areAmplitudes) || wanted.Prefix != WrittenPrefix.Engineering || power % 3 != 0 || Math.Abs(power) > 30) return null;
        return text.Substring(start, number.End - start) + " " + UnitPrefix.Engineering(power) + wanted.Symbol;
    }

    private static bool IsRate(QuantityKind kind) =>
        kind == QuantityKind.Frequency || kind == QuantityKind.SampleRate || kind == QuantityKind.BitRate || kind == QuantityKind.SymbolRate || kind.Symbol == "S/s";

    private static bool Fits(string text, int start, int length, string symbol, QuantityKind? wanted, char decimalMark)
    {
        if (wanted is null) return true;
        string changed = text.Remove(start, length).Insert(start, symbol);
        return QuantityReader.TryRead(changed, wanted, decimalMark, out _, out _);
    }

    /// <summary>How many letters differ in case or as look-alikes; <see cref="LetterDistance"/> more for one letter too many, missing or other; large where more differ.</summary>
    private static int Distance(string word, string symbol)
    {
        const int Far = 10 * LetterDistance;
        if (Math.Abs(word.Length - symbol.Length) > 1) return Far;
        int prefix = 0, suffix = 0, different = 0;
        for (; prefix < word.Length && prefix < symbol.Length && AreAlike(word[prefix], symbol[prefix]); prefix++) different += word[prefix] == symbol[prefix] ? 0 : 1;
        int rest = Math.Min(word.Length, symbol.Length) - prefix;
        for (; suffix < rest && AreAlike(word[word.Length - 1 - suffix], symbol[symbol.Length - 1 - suffix]); suffix++)
            different += word[word.Length - 1 - suffix] == symbol[symbol.Length - 1 - suffix] ? 0 : 1;
        int changed = Math.Max(word.Length, symbol.Length) - prefix - suffix;
        if (changed == 0) return different;
        return changed == 1 && Math.Min(word.Length, symbol.Length) >= 2 ? LetterDistance + different : Far;
    }

    /// <summary><c>m^2</c> for <c>m2</c>.</summary>
    private static string? PowerOf(string word)
    {
        int letters = 0;
        while (letters < word.Length && SymbolKey.Code(word[letters]) != 0) letters++;
        if (letters == 0 || letters != word.Length - 1 || word[letters] is < '2' or > '9') return null;
        string symbol = word.Substring(0, letters);
        return UnitReader.IsUnit(symbol) ? symbol + "^" + word[letters] : null;
    }

    private static bool AreAlike(char a, char b) => char.ToLowerInvariant(Fold(a)) == char.ToLowerInvariant(Fold(b));

    private static char Fold(char c) => c switch { 'µ' or 'μ' => 'u', '\u2126' => 'Ω', '\u212A' => 'K', _ => c };
}
