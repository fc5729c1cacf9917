using System.Collections.Generic;

namespace Acquisition.Core;

/// <summary>
/// Every unit that text may name. The table is closed: which prefix goes with which unit is data, and a test proves that no two readings of any string
/// coincide. Sources: SI Brochure 9th edition; IEC 80000-13 (bit, byte, binary prefixes); IEC 60027-3 (decibel, neper); handbook 1.3 and 13.2.
/// </summary>
internal static class UnitTable
{
    internal static readonly List<Unit> All = new(64);

    private const int Slots = 256;
    private static readonly long[] KeyAt = new long[Slots];
    private static readonly Unit?[] UnitAt = new Unit?[Slots];

    // Statements rather than one array: a first text waits for them, and they are compiled in half the time.
    static UnitTable()
    {
        Add("Hz", QuantityKind.Frequency, UnitPrefixes.Decimal);
        Add("s", QuantityKind.Duration, UnitPrefixes.Decimal);
        Add(new Unit("min", QuantityKind.Duration, UnitPrefixes.None, new(6, 1, 1, 0, 0)));
        Add(new Unit("h", QuantityKind.Duration, UnitPrefixes.None, new(36, 1, 2, 0, 0)));

        Add("Sa", QuantityKind.PointCount, UnitPrefixes.DecimalAndBinary);
        Add("pts", QuantityKind.PointCount, UnitPrefixes.Multiples);
        Add("pt", QuantityKind.PointCount, UnitPrefixes.Multiples);
        Add("bit", QuantityKind.BitDepth, UnitPrefixes.DecimalAndBinary);
        Add(new Unit("B", QuantityKind.BitDepth, UnitPrefixes.Multiples, new(1, 1, 0, 3, 0)));
        Add("Bd", QuantityKind.SymbolRate, UnitPrefixes.Decimal);
        Add("symbol", QuantityKind.Symbols);
        Add("UI", QuantityKind.UnitIntervals, UnitPrefixes.Decimal);
        Add("div", QuantityKind.Divisions);
        Add("octave", QuantityKind.Octaves);
        Add("oct", QuantityKind.Octaves);
        Add("decade", QuantityKind.Decades);
        Add("dec", QuantityKind.Decades);

        Add("V", QuantityKind.Voltage, UnitPrefixes.Decimal);
        Add("Vpk", QuantityKind.PeakVoltage, UnitPrefixes.Decimal);
        Add("Vp", QuantityKind.PeakVoltage, UnitPrefixes.Decimal);
        Add("Vpp", QuantityKind.PeakToPeakVoltage, UnitPrefixes.Decimal);
        Add("Vrms", QuantityKind.RmsVoltage, UnitPrefixes.Decimal);
        Add("A", QuantityKind.Current, UnitPrefixes.Decimal);
        Add("Apk", QuantityKind.PeakCurrent, UnitPrefixes.Decimal);
        Add("Ap", QuantityKind.PeakCurrent, UnitPrefixes.Decimal);
        Add("App", QuantityKind.PeakToPeakCurrent, UnitPrefixes.Decimal);
        Add("Arms", QuantityKind.RmsCurrent, UnitPrefixes.Decimal);
        Add("Ω", QuantityKind.Resistance, UnitPrefixes.Decimal);
        Add("Ohm", QuantityKind.Resistance, UnitPrefixes.Decimal);
        Add("ohm", QuantityKind.Resistance, UnitPrefixes.Decimal);
        Add("S", QuantityKind.Conductance, UnitPrefixes.Decimal);
        Add("F", QuantityKind.Capacitance, UnitPrefixes.Decimal);
        Add("H", QuantityKind.Inductance, UnitPrefixes.Decimal);
        Add("W", QuantityKind.Power, UnitPrefixes.Decimal);
        Add("J", QuantityKind.Energy, UnitPrefixes.Decimal);
        Add(new Unit("g", QuantityKind.Mass, UnitPrefixes.Decimal, UnitScale.Ten(-3)));

        Add("K", QuantityKind.Temperature, UnitPrefixes.Decimal);
        Add(new Unit("°C", QuantityKind.Temperature, 27315, UnitConstant.None));
        Add(new Unit("degC", QuantityKind.Temperature, 27315, UnitConstant.None));
        Add("m", QuantityKind.Length, UnitPrefixes.Decimal);
        Add(new Unit("in", QuantityKind.Length, UnitPrefixes.None, new(254, 1, -4, 0, 0)));
        Add("rad", QuantityKind.Angle, UnitPrefixes.Decimal);
        Add(new Unit("°", QuantityKind.Angle, UnitPrefixes.None, new(1, 18, -1, 0, 1)));
        Add(new Unit("deg", QuantityKind.Angle, UnitPrefixes.None, new(1, 18, -1, 0, 1)));
        Add(new Unit("%", QuantityKind.Ratio, UnitPrefixes.None, UnitScale.Ten(-2)));
        Add(new Unit("ppm", QuantityKind.Ratio, UnitPrefixes.None, UnitScale.Ten(-6)));
        Add(new Unit("ppb", QuantityKind.Ratio, UnitPrefixes.None, UnitScale.Ten(-9)));

        Add("dB", QuantityKind.DecibelRatio);
        Add(new Unit("Np", QuantityKind.DecibelRatio, 0, UnitConstant.DecibelsPerNeper));
        Add("dBc", QuantityKind.CarrierRatio);
        Add("dBFS", QuantityKind.FullScaleRatio);
        Add("dBm", QuantityKind.PowerLevel);
        Add(new Unit("dBW", QuantityKind.PowerLevel, 3000, UnitConstant.None));
        Add("dBV", QuantityKind.VoltageLevel);
        Add(new Unit("dBmV", QuantityKind.VoltageLevel, -6000, UnitConstant.None));
        Add(new Unit("dBµV", QuantityKind.VoltageLevel, -12000, UnitConstant.None));
        Add(new Unit("dBu", QuantityKind.VoltageLevel, 0, UnitConstant.ZeroDecibelU));
    }

    private static void Add(string symbol, QuantityKind kind, UnitPrefixes prefixes = UnitPrefixes.None) => Add(new Unit(symbol, kind, prefixes));

    private static void Add(Unit unit)
    {
        All.Add(unit);
        long key = SymbolKey.Of(unit.Symbol);
        int slot = FirstSlot(key);
        while (KeyAt[slot] != 0) slot = (slot + 1) % Slots;
        KeyAt[slot] = key;
        UnitAt[slot] = unit;
    }

    /// <summary>Finds a symbol with its prefix by the key of its letters (see <see cref="SymbolKey"/>).</summary>
    internal static UnitMatch Find(long key, int length, out Unit? unit, out UnitPrefix prefix)
    {
        prefix = UnitPrefix.None;
        unit = Find(key);
        if (unit is not null) return UnitMatch.Found;
        UnitMatch match = UnitMatch.Unknown;
        if (length >= 2 && UnitPrefix.TryFind(SymbolKey.Letter(key, length, 0), out UnitPrefix one))
            match = Try(Find(SymbolKey.Rest(key, length, 1)), one, ref unit, ref prefix);
        if (match != UnitMatch.Found && length >= 3 && UnitPrefix.TryFind(SymbolKey.Letter(key, length, 0), SymbolKey.Letter(key, length, 1), out UnitPrefix two))
        {
            UnitMatch second = Try(Find(SymbolKey.Rest(key, length, 2)), two, ref unit, ref prefix);
            if (second != UnitMatch.Unknown) match = second;
        }
        return match;
    }

    private static UnitMatch Try(Unit? candidate, in UnitPrefix candidatePrefix, ref Unit? unit, ref UnitPrefix prefix)
    {
        if (candidate is null) return UnitMatch.Unknown;
        unit = candidate;
        prefix = candidatePrefix;
        return candidatePrefix.IsIn(candidate.Prefixes) ? UnitMatch.Found : UnitMatch.PrefixRefused;
    }

    private static Unit? Find(long key)
    {
        for (int slot = FirstSlot(key); KeyAt[slot] != 0; slot = (slot + 1) % Slots)
        {
            if (KeyAt[slot] == key) return UnitAt[slot];
        }
        return null;
    }

    private static int FirstSlot(long key) => (int)((ulong)(key * -7046029254386353131L) >> 56);
}

/// <summary>How a symbol fares in the table.</summary>
internal enum UnitMatch
{
    /// <summary>It is no unit.</summary>
    Unknown,

    /// <summary>It is a unit, or a prefix and a unit that go together.</summary>
    Found,

    /// <summary>It is a prefix and a unit that do not go together, such as <c>mmin</c>.</summary>
    PrefixRefused,
}
