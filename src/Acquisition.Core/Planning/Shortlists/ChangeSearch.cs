using System;
using System.Numerics;

namespace Acquisition.Core.Planning;

/// <summary>For a demand that a candidate fails, the smallest change that would meet it, with its number.</summary>
internal sealed class ChangeSearch(Screen screen, ScreenedProbe probe, ScreenedInput input, Judgement judgement)
{
    private const double MostFactor = 64;

    private CatalogueProbe Entry => probe.Entry;

    /// <summary>What a change says of a bandwidth limit that is switched in: it was tried without.</summary>
    private string WithoutLimit => input.Limit is null ? "" : ", and the bandwidth limit off";

    internal string For(Demand demand) => demand switch
    {
        Demand.Fit => $"an input of {Entry.Into.InWords()}, or a probe for {input.Termination.Resistance.InWords()}",
        Demand.Reference => $"a differential probe, or isolated inputs, rated for {FewDigits.Of(screen.ToEarth, Voltage.Kind)} against earth; never lift the instrument's earth",
        Demand.Rating => $"a probe and input that stand {FewDigits.Of(screen.Peak, Voltage.Kind)}",
        Demand.RatingToEarth => $"a probe and input that stand {FewDigits.Of(screen.ToEarth, Voltage.Kind)} against earth",
        Demand.Channels => FormattableString.Invariant($"{screen.Requirement.Channels} channels"),
        Demand.Range => $"a probe that divides by {FewDigits.Number(Math.Ceiling(screen.Swing / judgement.Range!.FullScale.SiValue))} or more",
        Demand.Offset => $"an offset of {FewDigits.Of(judgement.Needed[(int)Demand.Offset], Voltage.Kind)} in the range of {FewDigits.Of(judgement.Range!.FullScale.SiValue * Entry.AttenuationFactor, PeakToPeakVoltage.Kind)}, or AC coupling where the level does not matter",
        Demand.Amplitude or Demand.Edge or Demand.Pulse => Chain(demand),
        Demand.SampleRate => Rate(),
        Demand.FoldedContent => $"a higher sample rate or a bandwidth limit: {FewDigits.Of(judgement.Offered[(int)Demand.FoldedContent], Ratio.Kind)} folds down",
        Demand.Detail => $"{FewDigits.Number(1 + Math.Floor(Math.Log(1 / (1 + judgement.Margin[(int)Demand.Detail])) / Math.Log(2)))} bits more, averaging, or a range nearer to the signal",
        _ => $"noise and jitter {FewDigits.Number(1 / (1 + judgement.Margin[(int)Demand.Timing]))} times smaller",
    };

    private string Rate()
    {
        double needed = screen.NeededRate;
        if (input.Entry.ModeFor(screen.Requirement.Channels) is { } mode && mode.MaximumRate.SiValue >= needed && screen.Requirement.Window is { } window)
            return $"a window of at most {FewDigits.Of(FewDigits.RoundDown(mode.Memory.SiValue / needed), Duration.Kind)}, or {FewDigits.Of(FewDigits.RoundUp(needed * window.SiValue), PointCount.Kind)} of memory";
        return $"a sample rate of {FewDigits.Of(FewDigits.RoundUp(needed), SampleRate.Kind)}";
    }

    // From the cheapest on: the limit off; less load, where the divider at DC alone is at fault; bandwidth of the input or of the probe, whichever is nearer, or of both; a shorter lead; less capacitance at the tip.
    private string Chain(Demand demand)
    {
        if (input.Limit is not null && Margin(demand, probe.Gains, Input(1)) >= 0)
            return "the bandwidth limit switched off";
        if (demand == Demand.Amplitude && Math.Abs(1 - probe.DcGain) > screen.AmplitudeTolerance * (1 + 1e-9))
            return Load();
        double byInput = Least(factor => Margin(demand, probe.Gains, Input(factor))), byProbe = Least(factor => Margin(demand, Probe(factor), Input(1)));
        if (!double.IsInfinity(byInput) || !double.IsInfinity(byProbe))
            return (byInput <= byProbe ? $"an input of {InputBandwidth(byInput)} with this probe" : $"a probe of {ProbeBandwidth(byProbe)} with this instrument") + WithoutLimit;
        double byBoth = Least(factor => Margin(demand, Probe(factor), Input(factor)));
        if (!double.IsInfinity(byBoth))
            return $"a probe of {ProbeBandwidth(byBoth)} and an input of {InputBandwidth(byBoth)}{WithoutLimit}";
        return Lead(demand) ?? Capacitance(demand) ?? "less load on the source, and more bandwidth of probe and input together" + WithoutLimit;
    }

    // The divider of source and tip at DC may use up the tolerance, no more (handbook 7.1).
    private string Load()
    {
        double ohms = screen.Source.Resistance.SiValue, error = screen.AmplitudeTolerance;
        string shown = $"at DC it shows {FewDigits.Of(probe.DcGain, Ratio.Kind)}";
        return probe.DcGain < 1 && ohms > 0
            ? $"a probe of at least {FewDigits.Of(FewDigits.RoundUp(ohms * (1 - error) / error), Resistance.Kind)} on this source: {shown}, which no bandwidth cures"
            : $"a ratio that is right on this input: {shown}, which no bandwidth cures";
    }

    private string? Lead(Demand demand)
    {
        if (Entry.LeadInductance is not { } lead)
            return null;
        double share = Most(part => Margin(demand, Probe(1, part), Input(1)));
        return share > 0 ? $"a lead of at most {FewDigits.Of(FewDigits.RoundDown(share * lead.SiValue), Inductance.Kind)} on this probe{WithoutLimit}" : null;
    }

    private string? Capacitance(Demand demand)
    {
        double share = Most(part => Margin(demand, Probe(1, 1, part), Input(1)));
        return share > 0 ? $"a probe of at most {FewDigits.Of(FewDigits.RoundDown(share * Entry.Capacitance.SiValue), Core.Capacitance.Kind)} at the tip{WithoutLimit}" : null;
    }

    private string InputBandwidth(double factor) => FewDigits.Of(FewDigits.RoundUp(factor * input.Entry.Bandwidth.Value.SiValue), Frequency.Kind);

    private string ProbeBandwidth(double factor) => FewDigits.Of(FewDigits.RoundUp(factor * Entry.Bandwidth.Value.SiValue), Frequency.Kind);

    private StageGains Input(double factor) => new(screen, input.Entry.Shape.At(input.Entry.Bandwidth.Value * factor));

    private StageGains Probe(double bandwidth, double lead = 1, double capacitance = 1)
    {
        var other = new CatalogueProbe(Entry.Name, Entry.AttenuationFactor, Stated.Claimed(Entry.Bandwidth.Value * bandwidth), Entry.Shape, Entry.Resistance, Entry.Capacitance * capacitance, Entry.Into);
        return new ScreenedProbe(screen, Entry.LeadInductance is { } henries && lead > 0 ? other.WithLeadInductance(henries * lead) : other).Gains;
    }

    private double Margin(Demand demand, StageGains first, StageGains second) =>
        Judgement.OfChain(screen, first, second, new Complex[EdgeSpectrum.LineCount], demand);

    // The least factor above 1 that leaves no margin missing; infinite where not even the largest does.
    private static double Least(Func<double, double> margin)
    {
        if (margin(MostFactor) < 0)
            return double.PositiveInfinity;
        double low = 1, high = MostFactor;
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

    // The largest share below 1 that leaves none missing, down to a sixty-fourth; 0 where not even that does.
    private static double Most(Func<double, double> margin)
    {
        double inverse = Least(factor => margin(1 / factor));
        return double.IsInfinity(inverse) ? 0 : 1 / inverse;
    }
}
