namespace Acquisition.Core.Literals;

/// <summary>Resistance literals: <c>2.Ohm()</c>.</summary>
// MOhm and mOhm differ only in case, as the SI wants it; languages that fold case use the factories.
[System.CLSCompliant(false)]
public static class ResistanceLiterals
{
    /// <summary>A resistance in ohms.</summary>
    public static Resistance Ohm(this double value) => Resistance.FromOhms(value);

    /// <summary>A resistance in ohms.</summary>
    public static Resistance Ohm(this int value) => Resistance.FromOhms(value);

    /// <summary>A resistance in milliohms.</summary>
    public static Resistance mOhm(this double value) => Resistance.FromMilliohms(value);

    /// <summary>A resistance in milliohms.</summary>
    public static Resistance mOhm(this int value) => Resistance.FromMilliohms(value);

    /// <summary>A resistance in kiloohms.</summary>
    public static Resistance kOhm(this double value) => Resistance.FromKiloohms(value);

    /// <summary>A resistance in kiloohms.</summary>
    public static Resistance kOhm(this int value) => Resistance.FromKiloohms(value);

    /// <summary>A resistance in megaohms.</summary>
    public static Resistance MOhm(this double value) => Resistance.FromMegaohms(value);

    /// <summary>A resistance in megaohms.</summary>
    public static Resistance MOhm(this int value) => Resistance.FromMegaohms(value);
}
