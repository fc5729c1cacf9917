namespace Acquisition.Core.Literals;

/// <summary>Peak-to-peak voltage literals: <c>2.Vpp()</c>.</summary>
public static class PeakToPeakVoltageLiterals
{
    /// <summary>A peak-to-peak voltage in volts, peak to peak.</summary>
    public static PeakToPeakVoltage Vpp(this double value) => PeakToPeakVoltage.FromVolts(value);

    /// <summary>A peak-to-peak voltage in volts, peak to peak.</summary>
    public static PeakToPeakVoltage Vpp(this int value) => PeakToPeakVoltage.FromVolts(value);

    /// <summary>A peak-to-peak voltage in millivolts, peak to peak.</summary>
    public static PeakToPeakVoltage mVpp(this double value) => PeakToPeakVoltage.FromMillivolts(value);

    /// <summary>A peak-to-peak voltage in millivolts, peak to peak.</summary>
    public static PeakToPeakVoltage mVpp(this int value) => PeakToPeakVoltage.FromMillivolts(value);

    /// <summary>A peak-to-peak voltage in microvolts, peak to peak.</summary>
    public static PeakToPeakVoltage uVpp(this double value) => PeakToPeakVoltage.FromMicrovolts(value);

    /// <summary>A peak-to-peak voltage in microvolts, peak to peak.</summary>
    public static PeakToPeakVoltage uVpp(this int value) => PeakToPeakVoltage.FromMicrovolts(value);
}
