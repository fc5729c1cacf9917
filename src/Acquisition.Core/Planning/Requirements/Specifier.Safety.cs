using System;
using System.Linq;

namespace Acquisition.Core.Planning;

// What can hurt someone is said of the demand itself, before anything is chosen (handbook 12.6).
internal sealed partial class Specifier
{
    private Explained<Voltage>? VoltageToEarth()
    {
        PeakVoltage peak = _requirement.Signals.Max(signal => signal.Peak);
        _findings.AddRange(VoltageCautions.Against(peak, _requirement.CommonMode));
        return _requirement.CommonMode is not { } commonMode ? null : new Explained<Voltage>(
            "voltage to earth", Voltage.FromSi(AgainstEarth(commonMode, peak), "voltage"), "common-mode voltage and peak of the signal; by a differential probe, or by isolated inputs with their probes", "handbook 7.10, 12.6",
            [new("common-mode voltage", commonMode.InWords()), new("peak of the signal", peak.InWords())]);
    }

    /// <summary>The largest voltage of either measured point against earth, V: the common-mode voltage and the signal may add up (Kirchhoff's voltage law).</summary>
    internal static double AgainstEarth(Voltage? commonMode, PeakVoltage peak) => Math.Abs(commonMode?.SiValue ?? 0) + peak.SiValue;
}
