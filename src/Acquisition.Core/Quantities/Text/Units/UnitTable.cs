namespace Acquisition.Core;

/// <summary>
/// Every unit that text may name. The table is closed: which prefix goes with which unit is data, and a test proves that no two readings of any string
/// coincide. Sources: SI Brochure 9th edition; IEC 80000-13 (bit, byte, binary prefixes); IEC 60027-3 (decibel, neper); handbook 1.3 and 13.2.
/// </summary>
internal static class UnitTable
{
    private static readonly QuantityKind V = QuantityKind.Voltage;

    internal static readonly Unit[] All =
    {
        new("Hz", QuantityKind.Frequency.Dimension, UnitPrefixes.Decimal),
        new("s", Dimension.Time, UnitPrefixes.Decimal),
        new("min", Dimension.Time, scale: new(6, 1, 1, 0, 0)),
        new("h", Dimension.Time, scale: new(36, 1, 2, 0, 0)),

        new("Sa", Dimension.Sample, UnitPrefixes.DecimalAndBinary),
        new("pts", Dimension.Sample, UnitPrefixes.Multiples),
        new("pt", Dimension.Sample, UnitPrefixes.Multiples),
        new("bit", Dimension.Bit, UnitPrefixes.DecimalAndBinary),
        new("B", Dimension.Bit, UnitPrefixes.Multiples, new(1, 1, 0, 3, 0)),
        new("Bd", QuantityKind.SymbolRate.Dimension, UnitPrefixes.Decimal),
        new("symbol", Dimension.Symbol),
        new("UI", Dimension.UnitInterval, UnitPrefixes.Decimal),
        new("div", Dimension.Division),
        new("octave", Dimension.Octave),
        new("oct", Dimension.Octave),
        new("decade", Dimension.Decade),
        new("dec", Dimension.Decade),

        new("V", V.Dimension, UnitPrefixes.Decimal),
        new("Vpk", V.Dimension, UnitPrefixes.Decimal, nature: QuantityNature.Peak),
        new("Vp", V.Dimension, UnitPrefixes.Decimal, nature: QuantityNature.Peak),
        new("Vpp", V.Dimension, UnitPrefixes.Decimal, nature: QuantityNature.PeakToPeak),
        new("Vrms", V.Dimension, UnitPrefixes.Decimal, nature: QuantityNature.Rms),
        new("A", Dimension.Current, UnitPrefixes.Decimal),
        new("Apk", Dimension.Current, UnitPrefixes.Decimal, nature: QuantityNature.Peak),
        new("Ap", Dimension.Current, UnitPrefixes.Decimal, nature: QuantityNature.Peak),
        new("App", Dimension.Current, UnitPrefixes.Decimal, nature: QuantityNature.PeakToPeak),
        new("Arms", Dimension.Current, UnitPrefixes.Decimal, nature: QuantityNature.Rms),
        new("Ω", QuantityKind.Resistance.Dimension, UnitPrefixes.Decimal),
        new("Ohm", QuantityKind.Resistance.Dimension, UnitPrefixes.Decimal),
        new("ohm", QuantityKind.Resistance.Dimension, UnitPrefixes.Decimal),
        new("S", QuantityKind.Conductance.Dimension, UnitPrefixes.Decimal),
        new("F", QuantityKind.Capacitance.Dimension, UnitPrefixes.Decimal),
        new("H", QuantityKind.Inductance.Dimension, UnitPrefixes.Decimal),
        new("W", QuantityKind.Power.Dimension, UnitPrefixes.Decimal),
        new("J", QuantityKind.Energy.Dimension, UnitPrefixes.Decimal),
        new("g", Dimension.Mass, UnitPrefixes.Decimal, UnitScale.Ten(-3)),

        new("K", Dimension.Temperature, UnitPrefixes.Decimal, nature: QuantityNature.Point),
        new("°C", Dimension.Temperature, nature: QuantityNature.Point, offsetInHundredths: 27315),
        new("degC", Dimension.Temperature, nature: QuantityNature.Point, offsetInHundredths: 27315),
        new("m", Dimension.Length, UnitPrefixes.Decimal),
        new("in", Dimension.Length, scale: new(254, 1, -4, 0, 0)),
        new("rad", Dimension.Angle, UnitPrefixes.Decimal),
        new("°", Dimension.Angle, scale: new(1, 18, -1, 0, 1)),
        new("deg", Dimension.Angle, scale: new(1, 18, -1, 0, 1)),
        new("%", Dimension.None, scale: UnitScale.Ten(-2)),
        new("ppm", Dimension.None, scale: UnitScale.Ten(-6)),
        new("ppb", Dimension.None, scale: UnitScale.Ten(-9)),

        new("dB", Dimension.None, nature: QuantityNature.DecibelRatio),
        new("Np", Dimension.None, nature: QuantityNature.DecibelRatio, constant: UnitConstant.DecibelsPerNeper),
        new("dBc", Dimension.None, nature: QuantityNature.DecibelRatio, reference: LevelReference.Carrier),
        new("dBFS", Dimension.None, nature: QuantityNature.DecibelRatio, reference: LevelReference.FullScale),
        new("dBm", QuantityKind.Power.Dimension, nature: QuantityNature.Level, reference: LevelReference.Milliwatt),
        new("dBW", QuantityKind.Power.Dimension, nature: QuantityNature.Level, reference: LevelReference.Milliwatt, offsetInHundredths: 3000),
        new("dBV", V.Dimension, nature: QuantityNature.Level, reference: LevelReference.Volt),
        new("dBmV", V.Dimension, nature: QuantityNature.Level, reference: LevelReference.Volt, offsetInHundredths: -6000),
        new("dBµV", V.Dimension, nature: QuantityNature.Level, reference: LevelReference.Volt, offsetInHundredths: -12000),
        new("dBu", V.Dimension, nature: QuantityNature.Level, reference: LevelReference.Volt, constant: UnitConstant.ZeroDecibelU),
    };

    private const int Slots = 256;
    private static readonly byte[] SlotOf = FillSlots();
    private static readonly long[] KeyOf = FillKeys();

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

    private static long[] FillKeys()
    {
        var keys = new long[All.Length];
        for (int i = 0; i < keys.Length; i++) keys[i] = SymbolKey.Of(All[i].Symbol);
        return keys;
    }

    private static byte[] FillSlots()
    {
        var slots = new byte[Slots];
        for (int i = 0; i < All.Length; i++)
        {
            int slot = FirstSlot(SymbolKey.Of(All[i].Symbol));
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
