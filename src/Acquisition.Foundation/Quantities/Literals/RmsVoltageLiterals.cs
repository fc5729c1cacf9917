namespace Acquisition.Core.Literals;

/// <summary>Rms voltage literals: <c>2.Vrms()</c>.</summary>
public static class RmsVoltageLiterals
{
    /// <summary>A rms voltage in volts, rms.</summary>
    public static RmsVoltage Vrms(this double value) => RmsVoltage.FromVolts(value);

    /// <summary>A rms voltage in volts, rms.</summary>
    public static RmsVoltage Vrms(this int value) => RmsVoltage.FromVolts(value);

    /// <summary>A rms voltage in millivolts, rms.</summary>
    public static RmsVoltage mVrms(this double value) => RmsVoltage.FromMillivolts(value);

    /// <summary>A rms voltage in millivolts, rms.</summary>
    public static RmsVoltage mVrms(this int value) => RmsVoltage.FromMillivolts(value);

    /// <summary>A rms voltage in microvolts, rms.</summary>
    public static RmsVoltage uVrms(this double value) => RmsVoltage.FromMicrovolts(value);

    /// <summary>A rms voltage in microvolts, rms.</summary>
    public static RmsVoltage uVrms(this int value) => RmsVoltage.FromMicrovolts(value);

    /// <summary>A rms voltage in nanovolts, rms.</summary>
    public static RmsVoltage nVrms(this double value) => RmsVoltage.FromNanovolts(value);

    /// <summary>A rms voltage in nanovolts, rms.</summary>
    public static RmsVoltage nVrms(this int value) => RmsVoltage.FromNanovolts(value);
}
