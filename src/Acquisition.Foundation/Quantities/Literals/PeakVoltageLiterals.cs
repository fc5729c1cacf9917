namespace Acquisition.Core.Literals;

/// <summary>Peak voltage literals: <c>2.Vpk()</c>.</summary>
public static class PeakVoltageLiterals
{
    /// <summary>A peak voltage in volts, peak.</summary>
    public static PeakVoltage Vpk(this double value) => PeakVoltage.FromVolts(value);

    /// <summary>A peak voltage in volts, peak.</summary>
    public static PeakVoltage Vpk(this int value) => PeakVoltage.FromVolts(value);

    /// <summary>A peak voltage in millivolts, peak.</summary>
    public static PeakVoltage mVpk(this double value) => PeakVoltage.FromMillivolts(value);

    /// <summary>A peak voltage in millivolts, peak.</summary>
    public static PeakVoltage mVpk(this int value) => PeakVoltage.FromMillivolts(value);

    /// <summary>A peak voltage in microvolts, peak.</summary>
    public static PeakVoltage uVpk(this double value) => PeakVoltage.FromMicrovolts(value);

    /// <summary>A peak voltage in microvolts, peak.</summary>
    public static PeakVoltage uVpk(this int value) => PeakVoltage.FromMicrovolts(value);
}
