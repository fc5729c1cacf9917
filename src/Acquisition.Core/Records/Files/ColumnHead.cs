using System;
using System.Collections.Generic;

namespace Acquisition.Core.Records;

/// <summary>The head of a column: its name and unit, as <c>time/s</c>, <c>ch1 (mV)</c>, <c>ch1 [V]</c>, <c>time_us</c> or a unit alone.</summary>
internal sealed class ColumnHead
{
    private static readonly (string Symbol, QuantityKind Kind)[] Units =
    {
        ("s", QuantityKind.Duration), ("sec", QuantityKind.Duration), ("V", QuantityKind.Voltage),
        ("A", QuantityKind.Current), ("W", QuantityKind.Power), ("K", QuantityKind.Temperature), ("Ω", QuantityKind.Resistance), ("Ohm", QuantityKind.Resistance),
        ("Hz", QuantityKind.Frequency), ("m", QuantityKind.Length), ("rad", QuantityKind.Angle), ("dBm", QuantityKind.PowerLevel), ("dBV", QuantityKind.VoltageLevel), ("dB", QuantityKind.DecibelRatio),
    };

    /// <summary>Longer words in brackets are remarks.</summary>
    private const int LongestUnit = 8;

    private static readonly Dictionary<char, int> Prefixes = new()
    {
        ['f'] = -15, ['p'] = -12, ['n'] = -9, ['u'] = -6, ['\u00B5'] = -6, ['\u03BC'] = -6, ['m'] = -3, ['k'] = 3, ['M'] = 6, ['G'] = 9,
    };

    private static readonly Dictionary<string, QuantityKind> Words = new(StringComparer.OrdinalIgnoreCase)
    {
        ["second"] = QuantityKind.Duration, ["seconds"] = QuantityKind.Duration, ["volt"] = QuantityKind.Voltage, ["volts"] = QuantityKind.Voltage, ["ampere"] = QuantityKind.Current,
        ["amperes"] = QuantityKind.Current, ["amp"] = QuantityKind.Current, ["amps"] = QuantityKind.Current, ["watt"] = QuantityKind.Power, ["watts"] = QuantityKind.Power, ["hertz"] = QuantityKind.Frequency,
        ["ohm"] = QuantityKind.Resistance, ["ohms"] = QuantityKind.Resistance, ["kelvin"] = QuantityKind.Temperature, ["metre"] = QuantityKind.Length, ["meter"] = QuantityKind.Length,
    };

    /// <summary>Units that no record has here, and that nobody would take for the name of a signal.</summary>
    private static readonly HashSet<string> OtherUnits = new(StringComparer.Ordinal)
    {
        "\u00B0C", "\u00B0F", "\u00B0", "%", "\u2030", "degC", "degF", "deg", "kPa", "hPa", "MPa", "mbar", "psi", "rpm", "ppm", "pct", "dBu", "dBc", "dB\u00B5V", "dBuV", "VA", "lx", "m/s", "m/s^2", "m/s\u00B2",
    };

    /// <summary>Units that are names or indices too: meant as units only where they stand below a stroke.</summary>
    private static readonly HashSet<string> UnitsBelowStroke = new(StringComparer.Ordinal) { "C", "F", "N", "T", "H", "J", "g", "kg", "Pa", "bar", "min", "h", "mH", "uH", "nF", "pF", "uF", "mT", "kN" };

    private ColumnHead(string name, QuantityKind? kind, int powerOfTen, string? unknownUnit = null)
    {
        UnknownUnit = unknownUnit;
        Name = name;
        Kind = kind;
        PowerOfTen = powerOfTen;
    }

    internal string Name { get; }

    /// <summary>Null where no unit is written.</summary>
    internal QuantityKind? Kind { get; }

    /// <summary>The unit that is written and not known here; null where none is, or one that is known.</summary>
    internal string? UnknownUnit { get; }

    /// <summary>The prefix of the unit: -3 for millivolts.</summary>
    internal int PowerOfTen { get; }

    internal bool IsTime => Kind is null ? Name.ToUpperInvariant() is "TIME" or "T" or "TIMES" : ReferenceEquals(Kind, QuantityKind.Duration);

    internal bool IsIndex => Kind is null && Name.ToUpperInvariant() is "INDEX" or "SAMPLE" or "POINT" or "N" or "NO" or "#" or "I";

    internal static ColumnHead Parse(string text, string? unitBelow = null)
    {
        string head = text.Trim();
        if (unitBelow is not null && TryUnit(unitBelow.Trim().Trim('(', ')', '[', ']'), out QuantityKind? below, out int power))
            return new ColumnHead(head, below, power);
        int open = Math.Max(head.LastIndexOf('('), head.LastIndexOf('['));
        if (open >= 0 && head.Length > 0 && head[head.Length - 1] is ')' or ']' && TryUnit(head.Substring(open + 1, head.Length - open - 2).Trim(), out QuantityKind? kind, out power))
            return new ColumnHead(head.Substring(0, open).Trim(), kind, power);
        int cut = Math.Max(head.LastIndexOf('/'), head.LastIndexOf('_'));
        if (cut > 0 && TryUnit(head.Substring(cut + 1).Trim(), out kind, out power))
            return new ColumnHead(head.Substring(0, cut).Trim(), kind, power);
        return head.Length > 0 && (!char.IsLower(head[0]) || Words.ContainsKey(head)) && TryUnit(head, out kind, out power) ? new ColumnHead("", kind, power)
            : head is "s" or "ms" or "us" or "ns" or "ps" or "mV" or "uV" or "mA" && TryUnit(head, out kind, out power) ? new ColumnHead("", kind, power)
            : new ColumnHead(head, null, 0, Unknown(head, open, cut));
    }

    /// <summary>What stands where a unit does and is none that is known: in brackets a single short word, else only what is known as a unit elsewhere, because names have strokes and underscores too.</summary>
    private static string? Unknown(string head, int open, int cut)
    {
        if (open > 0 && head[head.Length - 1] is ')' or ']')
        {
            string inBrackets = head.Substring(open + 1, head.Length - open - 2).Trim();
            return inBrackets.Length is > 0 and <= LongestUnit && inBrackets.IndexOf(' ') < 0 ? inBrackets : null;
        }
        if (OtherUnits.Contains(head))
            return head;
        string after = cut > 0 ? head.Substring(cut + 1).Trim() : "";
        return OtherUnits.Contains(after) || cut > 0 && head[cut] == '/' && UnitsBelowStroke.Contains(after) ? after : null;
    }

    internal static bool TryUnit(string text, out QuantityKind? kind, out int powerOfTen)
    {
        powerOfTen = 0;
        if (Words.TryGetValue(text, out kind))
            return true;
        foreach ((string symbol, QuantityKind candidate) in Units)
        {
            if (!text.EndsWith(symbol, StringComparison.Ordinal))
                continue;
            powerOfTen = 0;
            if (text.Length == symbol.Length || text.Length == symbol.Length + 1 && candidate.Nature == QuantityNature.Linear && Prefixes.TryGetValue(text[0], out powerOfTen))
            {
                kind = candidate;
                return true;
            }
        }
        kind = null;
        powerOfTen = 0;
        return false;
    }
}
