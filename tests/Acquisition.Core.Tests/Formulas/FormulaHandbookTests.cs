using System;
using System.Collections.Generic;
using Acquisition.Core.Tests.Handbook;
using Xunit;

namespace Acquisition.Core.Tests.Formulas;

/// <summary>Worked values of the handbook, computed by formulas: what a reader would write for each of them. Source: the section named with each value.</summary>
public sealed class FormulaHandbookTests
{
    private static readonly Dictionary<string, (string Formula, string Unit)> Worked = new()
    {
        // 1.1 to 1.4: decibels and levels.
        ["DB-001"] = ("voltage_decibels(2)", "dB"),
        ["DB-002"] = ("power_decibels(2)", "dB"),
        ["DB-003"] = ("voltage_ratio(-20 dB)", ""),
        ["DB-004"] = ("power_ratio(-20 dB)", ""),
        ["DB-005"] = ("1 Np", "dB"),
        ["DB-006"] = ("1 dB", "Np"),
        ["DB-012"] = ("voltage_ratio(-3 dB)", ""),
        ["DB-020"] = ("rms_voltage(0 dBm, 50 Ω)", "Vrms"),
        ["DB-021"] = ("rms_voltage(0 dBm, 75 Ω)", "Vrms"),
        ["DB-022"] = ("rms_voltage(0 dBm, 600 Ω)", "Vrms"),
        ["DB-030"] = ("voltage_level(rms_voltage(0 dBm, 50 Ω))", "dBµV"),
        ["DB-031"] = ("voltage_level(rms_voltage(0 dBm, 75 Ω))", "dBµV"),
        ["DB-032"] = ("voltage_level(rms_voltage(0 dBm, 600 Ω))", "dBµV"),
        ["DB-040"] = ("sine_peak_to_peak(rms_voltage(10 dBm, 50 Ω))", "Vpp"),
        ["DB-041"] = ("power_level(sine_rms(1 Vpp), 50 Ω)", "dBm"),
        ["DB-042"] = ("power_level(rms_voltage(0 dBV), 50 Ω)", "dBm"),
        ["DB-043"] = ("power_level(rms_voltage(60 dBµV), 50 Ω)", "dBm"),
        ["DB-044"] = ("power_level(rms_voltage(0 dBm, 50 Ω), 75 Ω)", "dBm"),
        ["DB-045"] = ("voltage_level(1 Vrms)", "dBu"),
        ["DB-050"] = ("-6 dB + 20 dB - 3 dB", "dB"),
        ["DB-051"] = ("power_sum(0 dBm, 0 dBm)", "dBm"),
        ["DB-053"] = ("power_level(power(-90 dBm) - power(-95 dBm))", "dBm"),
        // 4.7: error of a rise-time reading.
        ["RSS-400"] = ("sqrt(1 + 1 / 1^2) - 1", ""),
        ["RSS-402"] = ("hypot(3 ns, 1 ns) / 3 ns - 1", ""),
        ["RSS-410"] = ("1 / sqrt(1.02^2 - 1)", ""),
        // 5.2 and 5.4: sampling.
        ["AL-00"] = ("abs(600 MHz - 1 GHz * round(600 MHz / 1 GHz))", "Hz"),
        ["AL-06"] = ("abs(1.7 GHz - 2.5 GHz * round(1.7 / 2.5))", "Hz"),
        ["SR-001"] = ("1 Mpts / 1 ms", "Sa/s"),
        ["SR-002"] = ("min(10 Mpts / 10 ms, 5 GSa/s)", "Sa/s"),
        ["SR-003"] = ("5 GSa/s * 2 µs", "pts"),
        ["SR-004"] = ("5 GSa/s * 1 ns / 1 Sa", ""),
        ["SR-005"] = ("2.5 GSa/s / 400 MHz / 1 Sa", ""),
        ["SR-006"] = ("(1001 pts - 1 pt) / 1 MSa/s", "s"),
        // 6.1 to 6.7: resolution and noise.
        ["QZ-001"] = ("0.8 V / 2^8", "V"),
        ["QZ-002"] = ("as_rms(0.8 V / 2^8 / sqrt(12))", "Vrms"),
        ["QZ-003"] = ("as_rms(0.8 V / 2^12 / sqrt(12))", "Vrms"),
        ["QZ-S08"] = ("voltage_decibels(2^8) + power_decibels(1.5)", "dB"),
        ["QZ-S16"] = ("voltage_decibels(2^16) + power_decibels(1.5)", "dB"),
        ["QZ-010"] = ("voltage_decibels(2)", "dB"),
        ["QZ-011"] = ("power_decibels(3 / 2)", "dB"),
        ["QZ-024"] = ("-power_decibels(power_ratio(-55 dB) + power_ratio(-60 dB))", "dB"),
        ["TH-001"] = ("sqrt(4 * 1.380649e-23 J/K * 290 K * 50 Ω * 1 GHz)", "V"),
        ["TH-003"] = ("sqrt(4 * 1.380649e-23 J/K * 300 K * 1 MΩ)", "V/√Hz"),
        ["TH-004"] = ("power_level(1.380649e-23 J/K * 290 K * 1 Hz)", "dBm"),
        ["TH-005"] = ("power_level(1.380649e-23 J/K * 290 K * 1 GHz) + 20 dB", "dBm"),
        ["TH-006"] = ("sqrt(1.380649e-23 J/K * 300 K / 1 pF)", "V"),
        ["JT-0"] = ("-voltage_decibels(2 * pi * 100 MHz * 1 ps)", "dB"),
        ["JT-3"] = ("-voltage_decibels(2 * pi * 10 GHz * 100 fs)", "dB"),
        // 7.1 to 7.9: loading, mismatch, cable.
        ["LD-001"] = ("1 / (2 * pi * 50 Ω * 10 pF)", "Hz"),
        ["LD-002"] = ("ln(9) * 50 Ω * 10 pF", "s"),
        ["LD-004"] = ("1 MΩ / (1 MΩ + 1 kΩ)", ""),
        ["LD-005"] = ("1 / (2 * pi * (1 kΩ * 10 MΩ / (1 kΩ + 10 MΩ)) * 10 pF)", "Hz"),
        ["PZ-2"] = ("10 MΩ / sqrt(1 + (2 * pi * 1 MHz * 10 MΩ * 10 pF)^2)", "Ω"),
        ["MM-G0"] = ("(75 Ω - 50 Ω) / (75 Ω + 50 Ω)", ""),
        ["MM-R0"] = ("-voltage_decibels((75 Ω - 50 Ω) / (75 Ω + 50 Ω))", "dB"),
        ["MM-L0"] = ("-power_decibels(1 - ((75 Ω - 50 Ω) / (75 Ω + 50 Ω))^2)", "dB"),
        ["MM-RL20"] = ("(1 + voltage_ratio(-20 dB)) / (1 - voltage_ratio(-20 dB))", ""),
        ["CX-001"] = ("1 / sqrt(2.25)", ""),
        ["CX-002"] = ("1 m / (0.66 * 299792458 m/s)", "s"),
        ["CX-003"] = ("100 MHz * 1 m / (0.66 * 299792458 m/s) * 360°", "°"),
        ["CL-001"] = ("2 dB * sqrt(1 GHz / 100 MHz)", "dB"),
        // 12: selecting and setting up.
        ["SE-B1"] = ("1 ns * sqrt(1.03^2 - 1)", "s"),
        ["SE-B2"] = ("bandwidth(gaussian(1 GHz)) * (rise_time(gaussian(1 GHz)) / 246.779253585061 ps)", "Hz"),
        ["SE-D1"] = ("5 Sa / 1 ns", "Sa/s"),
        ["SE-D2"] = ("5 GSa/s * 2 ms", "pts"),
        ["SE-D3"] = ("min(1 Mpts / 2 ms, 5 GSa/s)", "Sa/s"),
        ["SE-E1"] = ("lb(1 V / 1 mV)", ""),
        ["SE-AL-gaussian-4"] = ("gain(gaussian(1 GHz), 2 GHz)", "dB"),
        ["SE-AB-gaussian-4"] = ("gain(gaussian(1 GHz), 3 GHz)", "dB"),
        ["SE-AL-singlepole-5"] = ("gain(single_pole(1 GHz), 2.5 GHz)", "dB"),
        ["SE-AB-Butterworth-4-2.5"] = ("gain(butterworth(bandwidth: 1 GHz, order: 4), 1.5 GHz)", "dB"),
        ["SE-W1"] = ("1 ns * sqrt(1.05^2 - 1)", "s"),
        ["SE-W3"] = ("1 / (2 * pi * 50 Ω * 4 pF)", "Hz"),
        ["SE-W4"] = ("1 / (2 * pi * sqrt(10 nH * 1 pF))", "Hz"),
    };

    public static TheoryData<string> Ids() => new(Worked.Keys);

    [Theory]
    [MemberData(nameof(Ids))]
    public void WorkedValue_AsAFormula(string id)
    {
        (string formula, string unit) = Worked[id];
        CheckValue.All[id].Confirm(TextFormulas.EvaluateNumber(unit, formula));
    }
}
