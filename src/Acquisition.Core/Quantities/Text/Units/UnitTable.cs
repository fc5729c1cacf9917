namespace Acquisition.Core;

/// <summary>
/// Every unit that text may name. The table is closed: which prefix goes with which unit is data, and a test proves that no two readings of any string
/// coincide. Sources: SI Brochure 9th edition; IEC 80000-13 (bit, byte, binary prefixes); IEC 60027-3 (decibel, neper); handbook 1.3 and 13.2.
/// </summary>
internal static class UnitTable
{
    internal static readonly Unit[] All =
    {
        new("Hz", QuantityKind.Frequency, UnitPrefixes.Decimal),
        new("s", QuantityKind.Duration, UnitPrefixes.Decimal),
        new("min", QuantityKind.Duration, UnitPrefixes.None, new(6, 1, 1, 0, 0)),
        new("h", QuantityKind.Duration, UnitPrefixes.None, new(36, 1, 2, 0, 0)),

        new("Sa", QuantityKind.PointCount, UnitPrefixes.DecimalAndBinary),
        new("pts", QuantityKind.PointCount, UnitPrefixes.Multiples),
        new("pt", QuantityKind.PointCount, UnitPrefixes.Multiples),
        new("bit", QuantityKind.BitDepth, UnitPrefixes.DecimalAndBinary),
        new("B", QuantityKind.BitDepth, UnitPrefixes.Multiples, new(1, 1, 0, 3, 0)),
        new("Bd", QuantityKind.SymbolRate, UnitPrefixes.Decimal),
        new("symbol", QuantityKind.Symbols),
        new("UI", QuantityKind.UnitIntervals, UnitPrefixes.Decimal),
        new("div", QuantityKind.Divisions),
        new("octave", QuantityKind.Octaves),
        new("oct", QuantityKind.Octaves),
        new("decade", QuantityKind.Decades),
        new("dec", QuantityKind.Decades),

        new("V", QuantityKind.Voltage, UnitPrefixes.Decimal),
        new("Vpk", QuantityKind.PeakVoltage, UnitPrefixes.Decimal),
        new("Vp", QuantityKind.PeakVoltage, UnitPrefixes.Decimal),
        new("Vpp", QuantityKind.PeakToPeakVoltage, UnitPrefixes.Decimal),
        new("Vrms", QuantityKind.RmsVoltage, UnitPrefixes.Decimal),
        new("A", QuantityKind.Current, UnitPrefixes.Decimal),
        new("Apk", QuantityKind.PeakCurrent, UnitPrefixes.Decimal),
        new("Ap", QuantityKind.PeakCurrent, UnitPrefixes.Decimal),
        new("App", QuantityKind.PeakToPeakCurrent, UnitPrefixes.Decimal),
        new("Arms", QuantityKind.RmsCurrent, UnitPrefixes.Decimal),
        new("Ω", QuantityKind.Resistance, UnitPrefixes.Decimal),
        new("Ohm", QuantityKind.Resistance, UnitPrefixes.Decimal),
        new("ohm", QuantityKind.Resistance, UnitPrefixes.Decimal),
        new("S", QuantityKind.Conductance, UnitPrefixes.Decimal),
        new("F", QuantityKind.Capacitance, UnitPrefixes.Decimal),
        new("H", QuantityKind.Inductance, UnitPrefixes.Decimal),
        new("W", QuantityKind.Power, UnitPrefixes.Decimal),
        new("J", QuantityKind.Energy, UnitPrefixes.Decimal),
        new("g", QuantityKind.Mass, UnitPrefixes.Decimal, UnitScale.Ten(-3)),

        new("K", QuantityKind.Temperature, UnitPrefixes.Decimal),
        new("°C", QuantityKind.Temperature, 27315, UnitConstant.None),
        new("degC", QuantityKind.Temperature, 27315, UnitConstant.None),
        new("m", QuantityKind.Length, UnitPrefixes.Decimal),
        new("in", QuantityKind.Length, UnitPrefixes.None, new(254, 1, -4, 0, 0)),
        new("rad", QuantityKind.Angle, UnitPrefixes.Decimal),
        new("°", QuantityKind.Angle, UnitPrefixes.None, new(1, 18, -1, 0, 1)),
        new("deg", QuantityKind.Angle, UnitPrefixes.None, new(1, 18, -1, 0, 1)),
        new("%", QuantityKind.Ratio, UnitPrefixes.None, UnitScale.Ten(-2)),
        new("ppm", QuantityKind.Ratio, UnitPrefixes.None, UnitScale.Ten(-6)),
        new("ppb", QuantityKind.Ratio, UnitPrefixes.None, UnitScale.Ten(-9)),

        new("dB", QuantityKind.DecibelRatio),
        new("Np", QuantityKind.DecibelRatio, 0, UnitConstant.DecibelsPerNeper),
        new("dBc", QuantityKind.CarrierRatio),
        new("dBFS", QuantityKind.FullScaleRatio),
        new("dBm", QuantityKind.PowerLevel),
        new("dBW", QuantityKind.PowerLevel, 3000, UnitConstant.None),
        new("dBV", QuantityKind.VoltageLevel),
        new("dBmV", QuantityKind.VoltageLevel, -6000, UnitConstant.None),
        new("dBµV", QuantityKind.VoltageLevel, -12000, UnitConstant.None),
        new("dBu", QuantityKind.VoltageLevel, 0, UnitConstant.ZeroDecibelU),
    };

    private const int Slots = 256;
    private static readonly long[] KeyOf = new long[All.Length];
    private static readonly byte[] SlotOf = FillSlots();

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
        for (int slot = FirstSlot(key); SlotOf[slot] != 0; slot = (slot + 1) % Slots)
        {
            if (KeyOf[SlotOf[slot] - 1] == key) return All[SlotOf[slot] - 1];
        }
        return null;
    }

    private static int FirstSlot(long key) => (int)((ulong)(key * -7046029254386353131L) >> 56);

    private static byte[] FillSlots()
    {
        var slots = new byte[Slots];
        for (int i = 0; i < KeyOf.Length; i++)
        {
            KeyOf[i] = SymbolKey.Of(All[i].Symbol);
            int slot = FirstSlot(KeyOf[i]);
            while (slots[slot] != 0) slot = (slot + 1) % Slots;
            slots[slot] = (byte)(i + 1);
        }
        return slots;
    }
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
