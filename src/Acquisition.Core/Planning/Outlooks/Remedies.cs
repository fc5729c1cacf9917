using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core.Planning;

/// <summary>The changes to a set-up that may cure what is wrong with its display, from the cheapest on. Each is made and the outlook computed anew, so that no remedy is guessed.</summary>
internal sealed partial class Remedies(Outlook outlook)
{
    private AppliedSignal Applied => outlook.Setup.Applied;

    /// <summary>The first change that cures; null where none of the known ones does.</summary>
    internal string? For(Func<Outlook, bool> isCured) => Sampler(isCured) ?? Compensation(isCured) ?? Input(isCured) ?? Termination(isCured) ?? Lead(isCured);

    /// <summary>The least bandwidth of a Gaussian chain that cures, from a start on, Hz; null where none does.</summary>
    internal double? Bandwidth(double start, Func<Outlook, bool> isCured)
    {
        double hertz = FewDigits.RoundUp(start);
        for (int i = 0; i < 40; i++, hertz = FewDigits.RoundUp(1.1 * hertz))
        {
            if (isCured(Behind(Response.Gaussian(Frequency.FromSi(hertz, "bandwidth")))))
                return hertz;
        }
        return null;
    }

    private string? Sampler(Func<Outlook, bool> isCured)
    {
        SampledSignal setup = outlook.Setup;
        if (setup.Mode != AcquisitionMode.HighResolution || !isCured(With(setup.WithOrdinarySamples())))
            return null;
        int fits = 1, many = setup.Combined;
        while (many - fits > 1)
        {
            int middle = fits + ((many - fits) / 2);
            if (isCured(With(setup.WithHighResolution(middle))))
                fits = middle;
            else
                many = middle;
        }
        return fits == 1 ? "ordinary samples, not the mean of several" : FormattableString.Invariant($"the mean of at most {fits} samples for each stored point, or ordinary samples");
    }

    private string? Compensation(Func<Outlook, bool> isCured)
    {
        foreach ((int index, Probe probe) in Probes())
        {
            if (!probe.IsCompensated && isCured(Replaced(index, probe.Compensated())))
                return $"adjust the compensation of {probe.Name} on this input";
        }
        return null;
    }

    private string? Input(Func<Outlook, bool> isCured)
    {
        foreach ((_, Probe probe) in Probes())
        {
            if (probe.MadeFor is { } ohms && ohms.SiValue != Applied.Chain!.FrontEnd.InputResistance.SiValue && isCured(Behind(Applied.Chain.Elements, Applied.Chain.FrontEnd.WithInputResistance(ohms))))
                return $"the input that {probe.Name} is made for, {ohms.InWords()}";
        }
        return null;
    }

    private string? Termination(Func<Outlook, bool> isCured)
    {
        if (Applied.Chain is not { } chain)
            return null;
        List<string> ways = chain.Terminations(Applied.Signal.Peak, MeasurementChain.RmsOf(Applied.Signal))
            .Where(way => isCured(Behind(way.Chain))).Select(way => $"{way.Words} ({chain.Then(way.Chain, Applied.Signal.SteepestEdge)})").ToList();
        return ways.Count > 0 ? "terminate the cable: " + string.Join("; or ", ways) : null;
    }

    private string? Lead(Func<Outlook, bool> isCured)
    {
        foreach ((int index, Probe probe) in Probes())
        {
            if (probe.LeadInductance.SiValue <= 0 || !isCured(Replaced(index, probe.WithGroundLead(default(Inductance)))))
                continue;
            bool Cures(double henries) => isCured(Replaced(index, probe.WithGroundLead(Inductance.FromSi(henries, "lead"))));
            double fits = 0, much = probe.LeadInductance.SiValue;
            while (much - fits > 0.002 * much && much > 1e-3 * GroundLead.Shortest.SiValue)
            {
                double middle = 0.5 * (fits + much);
                if (Cures(middle))
                    fits = middle;
                else
                    much = middle;
            }
            fits = FewDigits.RoundDown(fits);
            string damped = Damping(index, probe, isCured) is { } ohms ? $"a resistor of {FewDigits.Of(ohms, Resistance.Kind)} at the tip" : "";
            if (fits >= GroundLead.Shortest.SiValue && Cures(fits))
                return $"a ground lead of at most {FewDigits.Of(fits, Inductance.Kind)}, about {FewDigits.Of(1e6 * fits, Length.Kind)}" + (damped.Length > 0 ? ", or " + damped : "");
            return damped.Length > 0 ? damped : $"a probe with less capacitance than {probe.InputCapacitance.InWords()}: no lead is short enough for this one";
        }
        return null;
    }

    // The least of the usual values about the impedance of the loop.
    private double? Damping(int index, Probe probe, Func<Outlook, bool> isCured)
    {
        double loop = Math.Sqrt(probe.LeadInductance.SiValue / probe.InputCapacitance.SiValue);
        if (double.IsNaN(loop) || double.IsInfinity(loop))
            return null;
        foreach (double part in new[] { 0.5, 0.7, 1, 1.4, 2 })
        {
            Resistance ohms = PreferredValues.E12.Nearest(Resistance.FromSi(part * loop, "damping"));
            if (ohms > probe.Damping && isCured(Replaced(index, probe.WithDamping(ohms))))
                return ohms.SiValue;
        }
        return null;
    }

    private IEnumerable<(int Index, Probe Probe)> Probes()
    {
        IReadOnlyList<ChainElement> elements = Applied.Chain?.Elements ?? [];
        for (int i = 0; i < elements.Count; i++)
        {
            if (elements[i] is Probe probe)
                yield return (i, probe);
        }
    }

    private Outlook Replaced(int index, ChainElement element)
    {
        ChainElement[] elements = Applied.Chain!.Elements.ToArray();
        elements[index] = element;
        return Behind(elements, Applied.Chain.FrontEnd);
    }

    private Outlook Behind(IReadOnlyList<ChainElement> elements, FrontEnd input) => Behind(new MeasurementChain(Applied.Chain!.Source, elements.ToArray(), input));

    private Outlook Behind(MeasurementChain chain) => With(outlook.Setup.Behind(new AppliedSignal(Applied.Signal, chain, null)));

    private Outlook Behind(Response response) => With(outlook.Setup.Behind(new AppliedSignal(Applied.Signal, null, response)));

    private Outlook With(SampledSignal setup) => new(setup, outlook.Timebase, outlook.Wanted);
}
