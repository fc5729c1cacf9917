using System;

namespace Acquisition.Core.Planning;

/// <summary>From entries of a catalogue to the parts of a chain.</summary>
internal static class CatalogueChain
{
    /// <summary>The probe. On an ideal source, which is what a requirement without a source resistance means, its lead would ring forever, so there it is left out.</summary>
    internal static Probe Probe(CatalogueProbe entry, SourceImpedance source)
    {
        Response own = entry.Shape.At(entry.Bandwidth.Value);
        // Into a terminated input a probe is either a resistive divider, whose resistance is the line's times its ratio, or it has an amplifier.
        bool terminated = entry.Into.SiValue <= 1000, resistive = entry.Resistance.SiValue <= 1.2 * entry.AttenuationFactor * entry.Into.SiValue;
        Probe made = !terminated || entry.AttenuationFactor == 1 ? Core.Probe.Passive(entry.AttenuationFactor, entry.Resistance, entry.Capacitance, own)
            : resistive ? Core.Probe.LowImpedance(entry.AttenuationFactor, entry.Capacitance, own)
            : Core.Probe.Active(entry.AttenuationFactor, entry.Resistance, entry.Capacitance, own);
        made = made.WithName(entry.Name);
        made = entry.LeadInductance is { } lead && !source.IsIdeal ? made.WithGroundLead(lead) : made;
        made = entry.MaximumVoltage is { } maximum ? made.WithRating(VoltageRating.Constant(maximum)) : made;
        made = entry.IsDifferential ? made.WithDifferentialInputs() : made;
        made = entry.CommonModeRejection is { } rejection ? made.WithCommonModeRejection(rejection) : made;
        made = entry.MaximumToEarth is { } toEarth ? made.WithMaximumToEarth(toEarth) : made;
        return entry.Noise is { } noise ? made.WithNoise(noise.Value) : made;
    }

    internal static FrontEnd Input(CatalogueInstrument entry, InputTermination termination, Frequency? limit, InputRange? range)
    {
        FrontEnd made = FrontEnd.HighImpedance(termination.Resistance, termination.Capacitance, entry.Shape.At(entry.Bandwidth.Value)).WithName(entry.Name);
        made = limit is { } hertz ? made.WithBandwidthLimit(Response.SinglePole(hertz)) : made;
        made = range?.Noise is { } noise ? made.WithNoise(RmsVoltage.FromSi(noise.Value.SiValue * NoiseFactor(entry, limit), "noise")) : made;
        made = entry.HasIsolatedInputs ? made.WithIsolation() : made;
        made = termination.MaximumToEarth is { } toEarth ? made.WithMaximumToEarth(toEarth) : made;
        return termination.MaximumVoltage is { } maximum ? made.WithRating(VoltageRating.Constant(maximum)) : made;
    }

    /// <summary>What a bandwidth limit leaves of noise stated for the full bandwidth: the root of the ratio of the two bandwidths, white noise taken for granted (handbook 6.6, 12.1).</summary>
    internal static double NoiseFactor(CatalogueInstrument entry, Frequency? limit) =>
        limit is { } hertz ? Math.Sqrt(Math.Min(1, Math.PI / 2 * hertz.SiValue / entry.Bandwidth.Value.SiValue)) : 1;

    internal static Digitizer Digitizer(CatalogueInstrument entry)
    {
        ChannelMode first = entry.ChannelModes[0];
        Digitizer made = new Digitizer(first.MaximumRate, first.Memory, entry.Bits).WithName(entry.Name);
        for (int i = 1; i < entry.ChannelModes.Count; i++)
        {
            // A mode holds for as many channels as it says and for fewer, down to the mode before it.
            int from = entry.ChannelModes[i - 1].ChannelsInUse + 1;
            if (from <= Core.Digitizer.MostChannels)
                made = made.WithChannelsInUse(from, entry.ChannelModes[i].MaximumRate, entry.ChannelModes[i].Memory);
        }
        // The last mode is stated up to its own number, not only from where it begins.
        int stated = Math.Min(entry.ChannelModes[entry.ChannelModes.Count - 1].ChannelsInUse, Core.Digitizer.MostChannels);
        if (stated > 1 && entry.ModeFor(stated) is { } last)
            made = made.WithChannelsInUse(stated, last.MaximumRate, last.Memory);
        var ranges = new PeakToPeakVoltage[entry.Ranges.Count];
        for (int i = 0; i < ranges.Length; i++)
            ranges[i] = entry.Ranges[i].FullScale;
        made = made.WithFullScaleRanges(ranges);
        return entry.Divisions is { } divisions ? made.WithDivisions(divisions.Up, divisions.Across) : made;
    }

    /// <summary>One signal of a requirement, set up.</summary>
    internal static SampledSignal Setup(Screen screen, Signal signal, CatalogueInstrument entry, CatalogueProbe probe, InputTermination termination, Frequency? limit, InputRange? range)
    {
        Requirement wanted = screen.Requirement;
        AppliedSignal applied = signal.Through(MeasurementChain.From(screen.Source).Probe(Probe(probe, screen.Source)).Into(Input(entry, termination, limit, range)));
        applied = wanted.CommonMode is { } commonMode ? applied.WithCommonMode(commonMode) : applied;
        SampledSignal made = Set(applied.SampledBy(Digitizer(entry)).WithChannelsInUse(wanted.Channels), entry, range, probe.AttenuationFactor);
        return wanted.NarrowestPulse is { } pulse ? made.WatchingFor(pulse) : made;
    }

    /// <summary>A set-up with what the catalogue states of the instrument, in a range behind an attenuation.</summary>
    internal static SampledSignal Set(SampledSignal setup, CatalogueInstrument entry, InputRange? range, double attenuation)
    {
        SampledSignal made = setup.WithEffectiveBits(entry.EffectiveBits).WithAccuracy(entry.TimebaseAccuracy?.Value, entry.GainAccuracy?.Value);
        made = range is null ? made : made.WithFullScale(PeakToPeakVoltage.FromSi(range.FullScale.SiValue * attenuation, "range"));
        made = range?.MaximumOffset is { } offset ? made.WithMaximumOffset(offset * attenuation) : made;
        made = entry.Jitter is { } jitter ? made.WithJitter(jitter.Value) : made;
        made = entry.RecordRate is { } records ? made.WithRecordRateAtBest(records) : made;
        bool draws = entry.Interpolations.Count == 0;
        foreach (Reconstruction way in entry.Interpolations)
            draws |= way == Reconstruction.Sinc;
        return draws ? made : made.WithInterpolation(Reconstruction.Linear);
    }
}
