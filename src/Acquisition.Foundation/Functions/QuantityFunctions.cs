using System;
using System.Collections.Generic;

namespace Acquisition.Core.Functions;

/// <summary>The functions over quantities alone: periods, decibels, levels and how amplitudes are stated.</summary>
internal static class QuantityFunctions
{
    private static readonly double PerDecibel = Math.Log(10) / 10;

    /// <summary>The names that <see cref="All"/> declares.</summary>
    internal const string Names =
        "period frequency angular_frequency nyquist_frequency voltage_ratio power_ratio voltage_decibels power_decibels decibels power power_level " +
        "rms_voltage voltage_level power_sum sine_rms sine_peak sine_peak_to_peak as_rms as_peak as_peak_to_peak";

    internal static IEnumerable<FunctionDefinition> All()
    {
        yield return FunctionDefinition.Named("period", "The time of one cycle of a frequency.", "handbook 4.1")
            .Takes("frequency", QuantityKind.Frequency)
            .Returns(QuantityKind.Duration, f => (1.0 / Frequency.FromHertz(Refuse.UnlessAboveZero(f, QuantityKind.Frequency, "frequency"))).SiValue, f => -1 / (f * f))
            .Example("period(24 MHz)", "41.667 ns");

        yield return FunctionDefinition.Named("frequency", "The frequency whose cycle takes a time.", "handbook 4.1")
            .Takes("period", QuantityKind.Duration)
            .Returns(QuantityKind.Frequency, t => 1 / Refuse.UnlessAboveZero(t, QuantityKind.Duration, "period"), t => -1 / (t * t))
            .Example("frequency(40 ns)", "25 MHz");

        yield return FunctionDefinition.Named("angular_frequency", "2π times a frequency.", "handbook 13.8")
            .Takes("frequency", QuantityKind.Frequency)
            .Returns(QuantityKind.AngularFrequency, f => 2 * Math.PI * f, _ => 2 * Math.PI)
            .Example("angular_frequency(1 kHz)", "6.2832 krad/s");

        yield return FunctionDefinition.Named("nyquist_frequency", "Half the sample rate: the highest frequency that sampling can tell apart.", "handbook 5.1")
            .Takes("sample_rate", QuantityKind.SampleRate)
            .Returns(QuantityKind.Frequency, rate => rate / 2, _ => 0.5)
            .Example("nyquist_frequency(2 GSa/s)", "1 GHz");

        foreach (FunctionDefinition function in Decibels()) yield return function;
        foreach (FunctionDefinition function in Levels()) yield return function;
        foreach (FunctionDefinition function in Amplitudes()) yield return function;
    }

    private static IEnumerable<FunctionDefinition> Decibels()
    {
        yield return FunctionDefinition.Named("voltage_ratio", "The ratio of voltages or currents that decibels mean: 10^(dB/20).", "handbook 1.1")
            .Takes("gain", QuantityKind.DecibelRatio)
            .Returns(ValueKind.Number, gain => DecibelRatio.FromDecibels(gain).ToAmplitudeRatio().Fraction, gain => Math.Pow(10, gain / 20) * PerDecibel / 2)
            .Example("voltage_ratio(20 dB)", "10");

        yield return FunctionDefinition.Named("power_ratio", "The ratio of powers that decibels mean: 10^(dB/10).", "handbook 1.1")
            .Takes("gain", QuantityKind.DecibelRatio)
            .Returns(ValueKind.Number, gain => DecibelRatio.FromDecibels(gain).ToPowerRatio().Fraction, gain => Math.Pow(10, gain / 10) * PerDecibel)
            .Example("power_ratio(20 dB)", "100");

        yield return FunctionDefinition.Named("voltage_decibels", "The decibels of a ratio of voltages or currents: 20 lg.", "handbook 1.1")
            .Takes("ratio", ValueKind.Number)
            .Returns(QuantityKind.DecibelRatio, ratio => Ratio.FromFraction(ratio).ToDecibelsAsAmplitudes().Decibels, ratio => 2 / (PerDecibel * ratio))
            .Example("voltage_decibels(10:1)", "20 dB");

        yield return FunctionDefinition.Named("power_decibels", "The decibels of a ratio of powers: 10 lg.", "handbook 1.1")
            .Takes("ratio", ValueKind.Number)
            .Returns(QuantityKind.DecibelRatio, ratio => Ratio.FromFraction(ratio).ToDecibelsAsPowers().Decibels, ratio => 1 / (PerDecibel * ratio))
            .Example("power_decibels(2)", "3.0103 dB");

        foreach (QuantityKind kind in new[] { QuantityKind.Voltage, QuantityKind.PeakVoltage, QuantityKind.PeakToPeakVoltage, QuantityKind.RmsVoltage, QuantityKind.Current, QuantityKind.RmsCurrent })
        {
            string symbol = kind.Symbol;
            yield return FunctionDefinition.Named("decibels", "By how many decibels one " + kind.Name + " exceeds another: 20 lg of their ratio.", "handbook 1.1")
                .Takes("value", kind)
                .Takes("reference", kind)
                .Returns(
                    QuantityKind.DecibelRatio,
                    (value, reference) => 20 * Math.Log10(Refuse.UnlessAboveZero(value, kind, "value") / Refuse.UnlessAboveZero(reference, kind, "reference")),
                    (value, _) => 2 / (PerDecibel * value),
                    (_, reference) => -2 / (PerDecibel * reference))
                .Example($"decibels(2 {symbol}, 1 {symbol})", "6.0206 dB");
        }

        yield return FunctionDefinition.Named("decibels", "By how many decibels one power exceeds another: 10 lg of their ratio.", "handbook 1.1")
            .Takes("value", QuantityKind.Power)
            .Takes("reference", QuantityKind.Power)
            .Returns(
                QuantityKind.DecibelRatio,
                (value, reference) => 10 * Math.Log10(Refuse.UnlessAboveZero(value, QuantityKind.Power, "value") / Refuse.UnlessAboveZero(reference, QuantityKind.Power, "reference")),
                (value, _) => 1 / (PerDecibel * value),
                (_, reference) => -1 / (PerDecibel * reference))
            .Example("decibels(2 W, 1 W)", "3.0103 dB");
    }

    private static IEnumerable<FunctionDefinition> Levels()
    {
        yield return FunctionDefinition.Named("power", "The power that a level in dBm means.", "handbook 1.3")
            .Takes("level", QuantityKind.PowerLevel)
            .Returns(QuantityKind.Power, level => PowerLevel.FromDecibelMilliwatts(level).ToPower().SiValue, level => Math.Pow(10, level / 10) / 1000 * PerDecibel)
            .Example("power(-30 dBm)", "1 µW");

        yield return FunctionDefinition.Named("power_level", "A power as a level in dBm.", "handbook 1.3")
            .Takes("power", QuantityKind.Power)
            .Returns(QuantityKind.PowerLevel, power => Power.FromWatts(power).ToLevel().SiValue, power => 1 / (PerDecibel * power))
            .Example("power_level(20 mW)", "13.01 dBm");

        yield return FunctionDefinition.Named("power_level", "An rms voltage across a resistance as a level in dBm.", "handbook 1.3")
            .Takes("voltage", QuantityKind.RmsVoltage)
            .Takes("resistance", QuantityKind.Resistance)
            .Returns(
                QuantityKind.PowerLevel,
                (voltage, resistance) => RmsVoltage.FromVolts(voltage).ToPowerLevel(Resistance.FromOhms(resistance)).SiValue,
                (voltage, _) => 2 / (PerDecibel * voltage),
                (_, resistance) => -1 / (PerDecibel * resistance))
            .Example("power_level(1 Vrms, 50 Ω)", "13.01 dBm");

        yield return FunctionDefinition.Named("rms_voltage", "The rms voltage that a level in dBm means across a resistance.", "handbook 1.3")
            .Takes("level", QuantityKind.PowerLevel)
            .Takes("resistance", QuantityKind.Resistance)
            .Returns(
                QuantityKind.RmsVoltage,
                (level, resistance) => PowerLevel.FromDecibelMilliwatts(level).ToRmsVoltage(Resistance.FromOhms(resistance)).SiValue,
                (level, resistance) => Math.Sqrt(Math.Pow(10, level / 10) / 1000 * resistance) * PerDecibel / 2,
                (level, resistance) => Math.Sqrt(Math.Pow(10, level / 10) / 1000 / resistance) / 2)
            .Example("rms_voltage(0 dBm, 50 Ω)", "223.61 mVrms");

        yield return FunctionDefinition.Named("rms_voltage", "The rms voltage that a level in dBV means.", "handbook 1.3")
            .Takes("level", QuantityKind.VoltageLevel)
            .Returns(QuantityKind.RmsVoltage, level => VoltageLevel.FromDecibelVolts(level).ToRmsVoltage().SiValue, level => Math.Pow(10, level / 20) * PerDecibel / 2)
            .Example("rms_voltage(-20 dBV)", "100 mVrms");

        yield return FunctionDefinition.Named("voltage_level", "An rms voltage as a level in dBV.", "handbook 1.3")
            .Takes("voltage", QuantityKind.RmsVoltage)
            .Returns(QuantityKind.VoltageLevel, voltage => RmsVoltage.FromVolts(voltage).ToLevel().SiValue, voltage => 2 / (PerDecibel * voltage))
            .Example("voltage_level(100 mVrms)", "-20 dBV");

        yield return FunctionDefinition.Named("power_sum", "The level of uncorrelated powers together.", "handbook 1.4")
            .TakesMany("levels", QuantityKind.PowerLevel)
            .ReturnsFromAll(QuantityKind.PowerLevel, SumOfPowers)
            .Example("power_sum(-20 dBm, -20 dBm)", "-16.99 dBm");
    }

    private static IEnumerable<FunctionDefinition> Amplitudes()
    {
        const string Source = "handbook 1.5";
        double root2 = Math.Sqrt(2);

        yield return FunctionDefinition.Named("sine_rms", "The rms value of a sine with that peak.", Source)
            .Takes("peak", QuantityKind.PeakVoltage)
            .Returns(QuantityKind.RmsVoltage, peak => peak / root2, _ => 1 / root2)
            .Example("sine_rms(1 Vpk)", "707.107 mVrms");

        yield return FunctionDefinition.Named("sine_rms", "The rms value of a sine with that peak-to-peak value.", Source)
            .Takes("peak_to_peak", QuantityKind.PeakToPeakVoltage)
            .Returns(QuantityKind.RmsVoltage, span => span / (2 * root2), _ => 1 / (2 * root2))
            .Example("sine_rms(1 Vpp)", "353.553 mVrms");

        yield return FunctionDefinition.Named("sine_peak", "The peak of a sine with that rms value.", Source)
            .Takes("rms", QuantityKind.RmsVoltage)
            .Returns(QuantityKind.PeakVoltage, rms => rms * root2, _ => root2)
            .Example("sine_peak(1 Vrms)", "1.41421 Vpk");

        yield return FunctionDefinition.Named("sine_peak_to_peak", "The peak-to-peak value of a sine with that rms value.", Source)
            .Takes("rms", QuantityKind.RmsVoltage)
            .Returns(QuantityKind.PeakToPeakVoltage, rms => rms * 2 * root2, _ => 2 * root2)
            .Example("sine_peak_to_peak(1 Vrms)", "2.82843 Vpp");

        yield return Stated("as_rms", "A voltage, stated as root mean square.", QuantityKind.RmsVoltage);
        yield return Stated("as_peak", "A voltage, stated from mean to peak.", QuantityKind.PeakVoltage);
        yield return Stated("as_peak_to_peak", "A voltage, stated from peak to peak.", QuantityKind.PeakToPeakVoltage);
    }

    /// <summary>Says how a plain voltage is meant; its number does not change.</summary>
    private static FunctionDefinition Stated(string name, string meaning, QuantityKind kind) =>
        FunctionDefinition.Named(name, meaning, "handbook 13.8")
            .Takes("voltage", QuantityKind.Voltage)
            .Returns(kind, volts => volts >= 0 ? volts : throw Refuse.OutOfRange(volts, QuantityKind.Voltage, "voltage", "at least 0 V"), _ => 1)
            .Example(name + "(1 V)", "1 " + kind.Symbol);

    private static double SumOfPowers(FunctionArguments arguments)
    {
        Power sum = PowerLevel.FromDecibelMilliwatts(arguments.SiValue(0)).ToPower();
        for (int i = 1; i < arguments.Count; i++) sum += PowerLevel.FromDecibelMilliwatts(arguments.SiValue(i)).ToPower();
        return sum.ToLevel().SiValue;
    }
}
