namespace Acquisition.Core.Literals;

/// <summary>Voltage level literals: <c>-6.dBV()</c>.</summary>
public static class VoltageLevelLiterals
{
    /// <summary>A value in dBV.</summary>
    public static VoltageLevel dBV(this double value) => VoltageLevel.FromDecibelVolts(value);

    /// <summary>A value in dBV.</summary>
    public static VoltageLevel dBV(this int value) => VoltageLevel.FromDecibelVolts(value);

    /// <summary>A value in dBmV.</summary>
    public static VoltageLevel dBmV(this double value) => VoltageLevel.FromDecibelMillivolts(value);

    /// <summary>A value in dBmV.</summary>
    public static VoltageLevel dBmV(this int value) => VoltageLevel.FromDecibelMillivolts(value);

    /// <summary>A value in dBuV.</summary>
    public static VoltageLevel dBuV(this double value) => VoltageLevel.FromDecibelMicrovolts(value);

    /// <summary>A value in dBuV.</summary>
    public static VoltageLevel dBuV(this int value) => VoltageLevel.FromDecibelMicrovolts(value);
}
