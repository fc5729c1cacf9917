namespace Acquisition.Core.Literals;

/// <summary>Inductance literals: <c>2.H()</c>.</summary>
public static class InductanceLiterals
{
    /// <summary>A inductance in henries.</summary>
    public static Inductance H(this double value) => Inductance.FromHenries(value);

    /// <summary>A inductance in henries.</summary>
    public static Inductance H(this int value) => Inductance.FromHenries(value);

    /// <summary>A inductance in millihenries.</summary>
    public static Inductance mH(this double value) => Inductance.FromMillihenries(value);

    /// <summary>A inductance in millihenries.</summary>
    public static Inductance mH(this int value) => Inductance.FromMillihenries(value);

    /// <summary>A inductance in microhenries.</summary>
    public static Inductance uH(this double value) => Inductance.FromMicrohenries(value);

    /// <summary>A inductance in microhenries.</summary>
    public static Inductance uH(this int value) => Inductance.FromMicrohenries(value);

    /// <summary>A inductance in nanohenries.</summary>
    public static Inductance nH(this double value) => Inductance.FromNanohenries(value);

    /// <summary>A inductance in nanohenries.</summary>
    public static Inductance nH(this int value) => Inductance.FromNanohenries(value);

    /// <summary>A inductance in picohenries.</summary>
    public static Inductance pH(this double value) => Inductance.FromPicohenries(value);

    /// <summary>A inductance in picohenries.</summary>
    public static Inductance pH(this int value) => Inductance.FromPicohenries(value);
}
