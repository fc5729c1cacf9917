using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core;

// What stands against earth. The reference lead of an input is protective earth unless a differential probe or the isolation of the input keeps it apart.
public sealed partial class MeasurementChain
{
    /// <summary>Whether it may lie between two points neither of which is earth: behind a differential probe, or into an isolated input.</summary>
    public bool MayFloat => FrontEnd.IsIsolated || _elements.Any(IsDifferential);

    private static bool IsDifferential(ChainElement element) => element is Probe { IsDifferential: true };

    // Each of the two points is at most the common-mode voltage and the signal away from earth (Kirchhoff's voltage law).
    private void AddAgainstEarth(List<Finding> findings, PeakVoltage peak, Voltage? commonMode)
    {
        double against = Math.Abs(commonMode?.SiValue ?? 0), volts = against + (peak.SiValue * Source.Scale);
        findings.AddRange(VoltageCautions.Against(PeakVoltage.FromSi(peak.SiValue * Source.Scale, nameof(peak)), commonMode));
        if (commonMode is not null && !MayFloat)
        {
            findings.Add(new Finding(
                "input-is-earthed",
                Severity.Safety,
                $"the signal floats, {Voltage.FromVolts(against).InWords(3)} from earth, and the reference lead into {FrontEnd.Name} is protective earth: a fault current flows through lead, instrument and circuit",
                $"do not connect: a differential probe or isolated inputs, rated for {Voltage.FromVolts(volts).InWords(3)} against earth; never lift the instrument's earth; {VoltageCautions.Decides}",
                "handbook 12.6"));
            return;
        }
        // Behind a differential probe nothing stands against earth; into an isolated input everything does, with its reference lead.
        List<Probe> probes = _elements.OfType<Probe>().ToList();
        if (probes.FirstOrDefault(IsDifferential) is { } differential)
        {
            AddRatingToEarth(findings, differential.Name, differential.MaximumToEarth, volts, commonMode is not null);
            return;
        }
        foreach (Probe probe in probes)
            AddRatingToEarth(findings, probe.Name, probe.MaximumToEarth, volts, commonMode is not null);
        if (FrontEnd.IsIsolated)
            AddRatingToEarth(findings, FrontEnd.Name, FrontEnd.MaximumToEarth, volts, commonMode is not null);
    }

    private static void AddRatingToEarth(List<Finding> findings, string name, Voltage? maximum, double volts, bool floats)
    {
        string against = Voltage.FromVolts(volts).InWords(3);
        if (maximum is null && floats)
        {
            findings.Add(new Finding(
                "rating-to-earth-unknown", Severity.Safety, $"up to {against} lie between {name} and earth; what it stands against earth is not stated",
                $"do not connect before its manual says so: probe, input and accessories rated for {against} against earth, in the measurement category of the place; {VoltageCautions.Decides}", "handbook 7.10, 12.6"));
        }
        else if (maximum is { } known && volts > known.SiValue)
        {
            findings.Add(new Finding(
                "above-rating", Severity.Safety, $"{against} between {name} and earth, of which it stands {known.InWords(3)}",
                "do not connect: equipment rated for it against earth. The manual, local codes and licensed practice decide", "handbook 7.10, 12.6"));
        }
    }
}
