using System;
using System.Collections.Generic;
using System.Numerics;

namespace Acquisition.Core.Planning;

/// <summary>For each demand that a candidate fails, the smallest change that would meet it, with its number.</summary>
internal sealed class SmallestChange(Screen screen, ScreenedProbe probe, ScreenedInput input, Judgement judgement)
{
    internal IReadOnlyList<string> All()
    {
        var all = new List<string>();
        Add(all, Demand.Fit, () => $"an input of {probe.Entry.Into.InWords()}, or a probe for {input.Termination.Resistance.InWords()}");
        Add(all, Demand.Rating, () => $"a probe and input that stand {FewDigits.Of(screen.Peak, Voltage.Kind)}");
        Add(all, Demand.Reference, () => $"a differential probe, or isolated inputs, rated for {FewDigits.Of(screen.ToEarth, Voltage.Kind)} against earth; never lift the instrument's earth");
        Add(all, Demand.RatingToEarth, () => $"a probe and input that stand {FewDigits.Of(screen.ToEarth, Voltage.Kind)} against earth");
        Add(all, Demand.Channels, () => FormattableString.Invariant($"{screen.Requirement.Channels} channels"));
        Add(all, Demand.Range, () => $"a probe that divides by {FewDigits.Number(Math.Ceiling(screen.Swing / judgement.Range!.FullScale.SiValue))} or more");
        Add(all, Demand.Amplitude, () => Bandwidth(Demand.Amplitude));
        Add(all, Demand.Edge, () => Bandwidth(Demand.Edge));
        Add(all, Demand.Pulse, () => Bandwidth(Demand.Pulse));
        Add(all, Demand.SampleRate, Rate);
        Add(all, Demand.FoldedContent, () => $"a higher sample rate or a bandwidth limit: {FewDigits.Of(judgement.Offered[(int)Demand.FoldedContent], Ratio.Kind)} folds down");
        Add(all, Demand.Detail, () => $"{FewDigits.Number(1 + Math.Floor(Math.Log(1 / (1 + judgement.Margin[(int)Demand.Detail])) / Math.Log(2)))} bits more, averaging, or a range nearer to the signal");
        Add(all, Demand.Timing, () => $"noise and jitter {FewDigits.Number(1 / (1 + judgement.Margin[(int)Demand.Timing]))} times smaller");
        return all;
    }

    private void Add(List<string> all, Demand demand, Func<string> text)
    {
        if (judgement.Margin[(int)demand] < 0)
            all.Add(text());
    }

    private string Rate()
    {
        double needed = screen.NeededRate;
        if (input.Entry.ModeFor(screen.Requirement.Channels) is { } mode && mode.MaximumRate.SiValue >= needed && screen.Requirement.Window is { } window)
            return $"a window of at most {FewDigits.Of(mode.Memory.SiValue / needed, Duration.Kind)}, or {FewDigits.Of(needed * window.SiValue, PointCount.Kind)} of memory";
        return $"a sample rate of {FewDigits.Of(needed, SampleRate.Kind)}";
    }

    // Taking out the limit, or the smaller of two factors: on the bandwidth of the input, or on that of the probe (with its lead and loading as they are).
    private string Bandwidth(Demand demand)
    {
        if (input.Limit is not null && Margin(demand, probe.Gains, Input(1)) >= 0)
            return "the bandwidth limit switched off";
        double byInput = Factor(factor => Margin(demand, probe.Gains, Input(factor))), byProbe = Factor(factor => Margin(demand, Probe(factor), Input(1)));
        if (double.IsInfinity(byInput) && double.IsInfinity(byProbe))
            return "more bandwidth of probe and input together, or less load on the source";
        return byInput <= byProbe
            ? $"an input of {FewDigits.Of(byInput * input.Entry.Bandwidth.Value.SiValue, Frequency.Kind)} with this probe"
            : $"a probe of {FewDigits.Of(byProbe * probe.Entry.Bandwidth.Value.SiValue, Frequency.Kind)} with this instrument";
    }

    private StageGains Input(double factor) => new(screen, input.Entry.Shape.At(input.Entry.Bandwidth.Value * factor));

    private StageGains Probe(double factor)
    {
        CatalogueProbe entry = probe.Entry;
        var faster = new CatalogueProbe(entry.Name, entry.AttenuationFactor, Stated.Claimed(entry.Bandwidth.Value * factor), entry.Shape, entry.Resistance, entry.Capacitance, entry.Into);
        return new ScreenedProbe(screen, entry.LeadInductance is { } lead ? faster.WithLeadInductance(lead) : faster).Gains;
    }

    private double Margin(Demand demand, StageGains first, StageGains second) =>
        Judgement.OfChain(screen, first, second, new Complex[EdgeSpectrum.LineCount], demand);

    private static double Factor(Func<double, double> margin)
    {
        const double most = 64;
        if (margin(most) < 0)
            return double.PositiveInfinity;
        double low = 1, high = most;
        while (high > low * 1.005)
        {
            double middle = Math.Sqrt(low * high);
            if (margin(middle) < 0)
                low = middle;
            else
                high = middle;
        }
        return high;
    }
}
