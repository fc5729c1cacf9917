using System;
using System.Collections.Generic;
using Acquisition.Core.Explanations.Json;

namespace Acquisition.Core.Planning;

/// <summary>The form of source, probe and input in JSON.</summary>
internal static class ChainDocument
{
    private enum ProbeKind
    {
        Passive,
        Active,
        LowImpedance,
    }

    private static readonly IReadOnlyDictionary<string, ProbeKind> ProbeKinds = new Dictionary<string, ProbeKind>
    {
        ["passive"] = ProbeKind.Passive,
        ["active"] = ProbeKind.Active,
        ["low impedance"] = ProbeKind.LowImpedance,
    };

    private static readonly IReadOnlyDictionary<string, string> DigitizerMembers = new Dictionary<string, string> { ["maximumRate"] = "rate", ["resolution"] = "bits", ["channelsInUse"] = "inUse" };

    /// <summary>The source, and the voltage of its reference point against earth; null where that is earth.</summary>
    internal static SourceImpedance? Source(DocumentObject? source, out Voltage? commonMode)
    {
        commonMode = source?.OptionalQuantity("commonMode", Voltage.Parse);
        if (source is null)
            return SourceImpedance.None;
        Resistance resistance = source.Quantity("resistance", Resistance.Parse);
        Capacitance? capacitance = source.OptionalQuantity("capacitance", Capacitance.Parse);
        Resistance? into = source.OptionalQuantity("amplitudeStatedInto", Resistance.Parse);
        source.RefuseOthers();
        return source.Build(() =>
        {
            SourceImpedance made = capacitance is { } c ? SourceImpedance.ResistiveCapacitive(resistance, c) : SourceImpedance.Resistive(resistance);
            return into is { } load ? made.WithAmplitudeStatedInto(load) : made;
        }, null, new Dictionary<string, string> { ["load"] = "amplitudeStatedInto" });
    }

    /// <summary>A probe of the catalogue, with the lead and damping that the file gives it.</summary>
    internal static Probe? Probe(DocumentObject probe, CatalogueProbe? entry, SourceImpedance source)
    {
        Inductance? lead = probe.OptionalQuantity("leadInductance", Inductance.Parse);
        Length? length = probe.OptionalQuantity("leadLength", Length.Parse);
        if (lead is not null && length is not null)
            probe.Report("leadLength", "leadInductance is given too; give one of them");
        Resistance? damping = probe.OptionalQuantity("damping", Resistance.Parse);
        probe.RefuseOthers();
        return entry is null ? null : probe.Build(() =>
        {
            Probe made = CatalogueChain.Probe(entry, source);
            made = lead is { } inductance ? made.WithGroundLead(inductance) : length is { } metres ? made.WithGroundLead(metres) : made;
            return damping is { } ohms ? made.WithDamping(ohms) : made;
        }, null, new Dictionary<string, string> { ["length"] = "leadLength", ["inductance"] = "leadInductance" });
    }

    internal static Probe? Probe(DocumentObject probe)
    {
        probe.Known(BenchDocument.Reference);
        string name = probe.OptionalText("name") ?? "probe";
        ProbeKind kind = probe.Choice("kind", ProbeKinds, ProbeKind.Passive);
        double attenuation = probe.Number("attenuation", 1, 1e6);
        Resistance? resistance = kind == ProbeKind.LowImpedance ? null : probe.Quantity("resistance", Resistance.Parse);
        Capacitance capacitance = probe.Quantity("capacitance", Capacitance.Parse);
        Frequency bandwidth = probe.Quantity("bandwidth", Frequency.Parse);
        ResponseShape shape = probe.Has("response") ? CatalogueDocument.Shape(probe, "response") : ResponseShape.Gaussian;
        probe.Known("response");
        Inductance? lead = probe.OptionalQuantity("leadInductance", Inductance.Parse);
        Length? length = probe.OptionalQuantity("leadLength", Length.Parse);
        if (lead is not null && length is not null)
            probe.Report("leadLength", "leadInductance is given too; give one of them");
        Resistance? damping = probe.OptionalQuantity("damping", Resistance.Parse);
        Voltage? maximum = probe.OptionalQuantity("maximumVoltage", Voltage.Parse), toEarth = probe.OptionalQuantity("maximumToEarth", Voltage.Parse);
        bool differential = probe.Truth("differential", otherwise: false);
        DecibelRatio? rejection = probe.OptionalQuantity("commonModeRejection", DecibelRatio.Parse);
        RmsVoltage? noise = probe.OptionalQuantity("noise", RmsVoltage.Parse);
        probe.RefuseOthers();
        return probe.Build(() =>
        {
            Response own = shape.At(bandwidth);
            Probe made = kind switch
            {
                ProbeKind.Active => Core.Probe.Active(attenuation, resistance!.Value, capacitance, own),
                ProbeKind.LowImpedance => Core.Probe.LowImpedance(attenuation, capacitance, own),
                _ => Core.Probe.Passive(attenuation, resistance!.Value, capacitance, own),
            };
            made = made.WithName(name);
            made = lead is { } inductance ? made.WithGroundLead(inductance) : length is { } metres ? made.WithGroundLead(metres) : made;
            made = damping is { } ohms ? made.WithDamping(ohms) : made;
            made = maximum is { } volts ? made.WithRating(VoltageRating.Constant(volts)) : made;
            made = toEarth is { } against ? made.WithMaximumToEarth(against) : made;
            made = differential ? made.WithDifferentialInputs() : made;
            made = rejection is { } decibels ? made.WithCommonModeRejection(decibels) : made;
            return noise is { } rms ? made.WithNoise(rms) : made;
        }, null, new Dictionary<string, string> { ["length"] = "leadLength", ["inductance"] = "leadInductance", ["maximum"] = "maximumVoltage", ["rejection"] = "commonModeRejection" });
    }

    internal static FrontEnd? Input(DocumentObject input)
    {
        string name = input.OptionalText("name") ?? "input";
        Resistance resistance = input.Quantity("resistance", Resistance.Parse);
        Capacitance capacitance = input.OptionalQuantity("capacitance", Capacitance.Parse) ?? default;
        Frequency bandwidth = input.Quantity("bandwidth", Frequency.Parse);
        ResponseShape shape = CatalogueDocument.Shape(input, "response");
        Frequency? limit = input.OptionalQuantity("bandwidthLimit", Frequency.Parse);
        RmsVoltage? noise = input.OptionalQuantity("noise", RmsVoltage.Parse);
        Voltage? maximum = input.OptionalQuantity("maximumVoltage", Voltage.Parse), toEarth = input.OptionalQuantity("maximumToEarth", Voltage.Parse);
        bool isolated = input.Truth("isolated", otherwise: false);
        input.RefuseOthers();
        return input.Build(() =>
        {
            FrontEnd made = FrontEnd.HighImpedance(resistance, capacitance, shape.At(bandwidth)).WithName(name);
            made = limit is { } hertz ? made.WithBandwidthLimit(Response.SinglePole(hertz)) : made;
            made = noise is { } rms ? made.WithNoise(rms) : made;
            made = isolated ? made.WithIsolation() : made;
            made = toEarth is { } against ? made.WithMaximumToEarth(against) : made;
            return maximum is { } volts ? made.WithRating(VoltageRating.Constant(volts)) : made;
        }, null, new Dictionary<string, string> { ["maximum"] = "maximumVoltage" });
    }

    internal static Digitizer? Digitizer(DocumentObject document)
    {
        string name = document.OptionalText("name") ?? "digitizer";
        SampleRate rate = document.Quantity("rate", SampleRate.Parse);
        PointCount memory = document.Quantity("memory", PointCount.Parse);
        BitDepth bits = document.Quantity("bits", BitDepth.Parse);
        var shared = new List<ChannelMode>();
        foreach (DocumentObject entry in document.Objects("shared"))
        {
            int inUse = entry.Integer("inUse", 2, 64);
            SampleRate sharedRate = entry.Quantity("rate", SampleRate.Parse);
            PointCount sharedMemory = entry.Quantity("memory", PointCount.Parse);
            entry.RefuseOthers();
            if (entry.Build(() => new ChannelMode(inUse, sharedRate, sharedMemory), null, DigitizerMembers) is { } mode)
                shared.Add(mode);
        }
        IReadOnlyList<PeakToPeakVoltage> ranges = document.Quantities("ranges", PeakToPeakVoltage.Parse);
        ScreenDivisions? divisions = document.OptionalObject("divisions") is { } screen ? CatalogueDocument.Divisions(screen) : null;
        document.RefuseOthers();
        return document.Build(() =>
        {
            Digitizer made = new Digitizer(rate, memory, bits).WithName(name);
            foreach (ChannelMode mode in shared)
                made = made.WithChannelsInUse(mode.ChannelsInUse, mode.MaximumRate, mode.Memory);
            if (ranges.Count > 0)
            {
                var all = new PeakToPeakVoltage[ranges.Count];
                for (int i = 0; i < all.Length; i++)
                    all[i] = ranges[i];
                made = made.WithFullScaleRanges(all);
            }
            return divisions is null ? made : made.WithDivisions(divisions.Up, divisions.Across);
        }, null, DigitizerMembers);
    }
}
