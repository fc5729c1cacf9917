namespace Acquisition.Core.Literals;

/// <summary>Voltage literals: <c>2.V()</c>.</summary>
public static class VoltageLiterals
{
    /// <summary>A voltage in volts.</summary>
    public static Voltage V(this double value) => Voltage.FromVolts(value);

    /// <summary>A voltage in volts.</summary>
    public static Voltage V(this int value) => Voltage.FromVolts(value);

    /// <summary>A voltage in millivolts.</summary>
    public static Voltage mV(this double value) => Voltage.FromMillivolts(value);

    /// <summary>A voltage in millivolts.</summary>
    public static Voltage mV(this int value) => Voltage.FromMillivolts(value);

    /// <summary>A voltage in microvolts.</summary>
    public static Voltage uV(this double value) => Voltage.FromMicrovolts(value);

    /// <summary>A voltage in microvolts.</summary>
    public static Voltage uV(this int value) => Voltage.FromMicrovolts(value);

    /// <summary>A voltage in nanovolts.</summary>
    public static Voltage nV(this double value) => Voltage.FromNanovolts(value);

    /// <summary>A voltage in nanovolts.</summary>
    public static Voltage nV(this int value) => Voltage.FromNanovolts(value);

    /// <summary>A voltage in kilovolts.</summary>
    public static Voltage kV(this double value) => Voltage.FromKilovolts(value);

    /// <summary>A voltage in kilovolts.</summary>
    public static Voltage kV(this int value) => Voltage.FromKilovolts(value);
}
