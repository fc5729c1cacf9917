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

    private ColumnHead(string name, QuantityKind? kind, int powerOfTen)
    {
        Name = name;
        Kind = kind;
        PowerOfTen = powerOfTen;
    }

    internal string Name { get; }

    /// <summary>Null where no unit is written.</summary>
    internal QuantityKind? Kind { get; }

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
            : new ColumnHead(head, null, 0);
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
