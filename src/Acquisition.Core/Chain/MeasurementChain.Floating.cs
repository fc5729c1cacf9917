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
            if (against > 0)
                AddWhatIsLeft(findings, differential, against, peak.SiValue * Source.Scale);
            return;
        }
        foreach (Probe probe in probes)
            AddRatingToEarth(findings, probe.Name, probe.MaximumToEarth, volts, commonMode is not null);
        if (FrontEnd.IsIsolated)
            AddRatingToEarth(findings, FrontEnd.Name, FrontEnd.MaximumToEarth, volts, commonMode is not null);
    }

    // Handbook 12.6: the gain for the difference over that for what both points have in common.
    private static void AddWhatIsLeft(List<Finding> findings, Probe probe, double commonMode, double peak)
    {
        const double little = 0.02, much = 0.2;
        string common = Voltage.FromVolts(commonMode).InWords(3), asked = peak > 0 ? $"at least {DecibelRatio.FromDecibels(Math.Ceiling(20 * Math.Log10(commonMode / (little * peak)))).InWords(3)} at the frequencies of the common mode leave at most 2 %" : "";
        if (probe.CommonModeRejection is not { } rejection)
        {
            findings.Add(new Finding(
                "rejection-unknown", Severity.Warning, $"both inputs of {probe.Name} have {common} in common; how much of it shows is not stated: 40 dB would leave {Voltage.FromVolts(commonMode / 100).InWords(3)}",
                $"state its common-mode rejection at the frequencies of the common mode, where it is less than at DC{(asked.Length > 0 && commonMode > little * peak ? $"; {asked}" : "")}. With both inputs on one of the two points the display shows what is left", "handbook 12.6"));
            return;
        }
        double left = commonMode / Math.Pow(10, rejection.Decibels / 20);
        if (!(left > little * peak))
            return;
        string share = peak > 0 ? $", {Ratio.FromFraction(left / peak).InWords(3)} of the peak of the signal" : "";
        findings.Add(new Finding(
            "common-mode-shows", left > much * peak ? Severity.Failure : Severity.Warning, $"of the {common} that both inputs of {probe.Name} have in common, {rejection.InWords(3)} of rejection leave up to {Voltage.FromVolts(left).InWords(3)} beside the signal{share}",
            (asked.Length > 0 ? asked : "more rejection") + "; or a reference point that moves less", "handbook 12.6"));
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
