namespace Acquisition.Core;

/// <summary>What leads from one kind of quantity to another that the same unit does not: named in messages, because the number changes.</summary>
internal static class KindConversions
{
    /// <summary>The functions of the formula language by which a value becomes one of the wanted kind; null where none does.</summary>
    internal static string? Hint(QuantityKind found, QuantityKind wanted)
    {
        if (found == QuantityKind.Power && wanted == QuantityKind.PowerLevel) return "power_level converts it";
        if (found == QuantityKind.PowerLevel && wanted == QuantityKind.Power) return "power converts it";
        if (found == QuantityKind.RmsVoltage && wanted == QuantityKind.VoltageLevel) return "voltage_level converts it";
        if (found == QuantityKind.VoltageLevel && wanted == QuantityKind.RmsVoltage) return "rms_voltage converts it";
        if (found == QuantityKind.RmsVoltage && wanted == QuantityKind.PowerLevel) return "power_level converts it, given the resistance";
        if (found == QuantityKind.PowerLevel && wanted == QuantityKind.RmsVoltage) return "rms_voltage converts it, given the resistance";
        if (found == QuantityKind.PowerLevel && wanted == QuantityKind.VoltageLevel) return "a power has a voltage only across a resistance: voltage_level(rms_voltage(level, resistance))";
        if (found == QuantityKind.VoltageLevel && wanted == QuantityKind.PowerLevel) return "a voltage has a power only across a resistance: power_level(rms_voltage(level), resistance)";
        if (found == QuantityKind.PowerLevel && IsVoltage(wanted)) return "a power has a voltage only across a resistance: rms_voltage(level, resistance), in Vrms";
        if (found == QuantityKind.VoltageLevel && IsVoltage(wanted)) return "rms_voltage converts it, in Vrms";
        return OfASine(found, wanted) is { } functions ? $"for a sine, {functions} converts it" : null;
    }

    private static bool IsVoltage(QuantityKind kind) => kind == QuantityKind.Voltage || kind == QuantityKind.PeakVoltage || kind == QuantityKind.PeakToPeakVoltage;

    /// <summary>Peak, peak-to-peak and rms values go together by the waveform alone; the functions are those of a sine (handbook 1.5).</summary>
    private static string? OfASine(QuantityKind found, QuantityKind wanted)
    {
        bool isPeak = found == QuantityKind.PeakVoltage, isSwing = found == QuantityKind.PeakToPeakVoltage, isRms = found == QuantityKind.RmsVoltage;
        if (wanted == QuantityKind.RmsVoltage) return isPeak || isSwing ? "sine_rms" : null;
        if (wanted == QuantityKind.PeakVoltage) return isRms ? "sine_peak" : isSwing ? "sine_peak(sine_rms(...))" : null;
        if (wanted == QuantityKind.PeakToPeakVoltage) return isRms ? "sine_peak_to_peak" : isPeak ? "sine_peak_to_peak(sine_rms(...))" : null;
        return null;
    }
}
