namespace Acquisition.Core.Literals;

/// <summary>Capacitance literals: <c>2.F()</c>.</summary>
public static class CapacitanceLiterals
{
    /// <summary>A capacitance in farads.</summary>
    public static Capacitance F(this double value) => Capacitance.FromFarads(value);

    /// <summary>A capacitance in farads.</summary>
    public static Capacitance F(this int value) => Capacitance.FromFarads(value);

    /// <summary>A capacitance in microfarads.</summary>
    public static Capacitance uF(this double value) => Capacitance.FromMicrofarads(value);

    /// <summary>A capacitance in microfarads.</summary>
    public static Capacitance uF(this int value) => Capacitance.FromMicrofarads(value);

    /// <summary>A capacitance in nanofarads.</summary>
    public static Capacitance nF(this double value) => Capacitance.FromNanofarads(value);

    /// <summary>A capacitance in nanofarads.</summary>
    public static Capacitance nF(this int value) => Capacitance.FromNanofarads(value);

    /// <summary>A capacitance in picofarads.</summary>
    public static Capacitance pF(this double value) => Capacitance.FromPicofarads(value);

    /// <summary>A capacitance in picofarads.</summary>
    public static Capacitance pF(this int value) => Capacitance.FromPicofarads(value);

    /// <summary>A capacitance in femtofarads.</summary>
    public static Capacitance fF(this double value) => Capacitance.FromFemtofarads(value);

    /// <summary>A capacitance in femtofarads.</summary>
    public static Capacitance fF(this int value) => Capacitance.FromFemtofarads(value);
}
