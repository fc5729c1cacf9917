using System;
using System.Collections.Generic;

namespace Acquisition.Core;

/// <summary>
/// The usual cautions where a voltage can hurt someone (handbook 12.6). They are reminders, not advice: local codes, the manuals of the equipment and licensed
/// practice decide.
/// </summary>
public static class VoltageCautions
{
    /// <summary>Peak and DC voltages above which a live part is commonly called hazardous in normal condition: 42.4 V peak, 60 V DC (IEC 61010-1, from memory). The lower one is used for both.</summary>
    private const double HazardousPeakVolts = 42.4;

    internal const string Decides = "local codes, the equipment's manuals and licensed practice decide; work of this kind belongs to qualified persons";

    /// <summary>The cautions for a peak voltage.</summary>
    /// <param name="peak">The peak voltage at the tip, DC included.</param>
    public static IReadOnlyList<Finding> For(PeakVoltage peak)
    {
        if (peak.SiValue <= HazardousPeakVolts)
            return Array.Empty<Finding>();
        return new[]
        {
            new Finding(
                "hazardous-voltage",
                Severity.Safety,
                $"a peak of {Voltage.FromSi(peak.SiValue, nameof(peak)).InWords(3)} can hurt or kill. The lowest rating and category of instrument, probe, cable and accessory holds, DC plus peak AC, and falls with frequency; "
                + "a reference lead of an earthed input on a live node makes a fault current",
                "probe and input rated for the place, differential or isolated where no point is earth; " + Decides,
                "handbook 7.10, 12.6; IEC 61010-1, IEC 61010-2-030 (from memory)"),
        };
    }

    /// <summary>The cautions for a signal and, where it floats, for its common-mode voltage.</summary>
    internal static IReadOnlyList<Finding> Against(PeakVoltage peak, Voltage? commonMode)
    {
        var all = new List<Finding>(For(PeakVoltage.FromSi(peak.SiValue + Math.Abs(commonMode?.SiValue ?? 0), nameof(peak))));
        if (commonMode is not null)
            all.AddRange(Floating());
        return all;
    }

    /// <summary>The cautions for a measurement on the mains: the measurement category bounds the transients of the place (IEC 61010-2-030).</summary>
    public static IReadOnlyList<Finding> OnMains() => new[]
    {
        new Finding(
            "mains",
            Severity.Safety,
            "mains carry transients far above their voltage: probe, instrument and accessories need the measurement category (CAT II, III or IV) of the place. The reference lead of an earthed input is protective earth",
            "a differential probe or isolated input rated for the category; never lift the earth; " + Decides,
            "IEC 61010-2-030; handbook 12.6"),
    };

    /// <summary>The cautions for a measurement between two points of which neither is earth.</summary>
    public static IReadOnlyList<Finding> Floating() => new[]
    {
        new Finding(
            "floating",
            Severity.Safety,
            "the reference lead of an earthed input is protective earth: on a live node it makes a fault current, and two earth points make a loop",
            "a differential probe or isolated channels rated for the voltage to earth; never lift the instrument's earth; " + Decides,
            "handbook 12.6"),
    };
}
