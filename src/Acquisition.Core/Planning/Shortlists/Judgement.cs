using System;
using System.Numerics;

namespace Acquisition.Core.Planning;

/// <summary>The demands that a shortlist judges, in the order in which they are listed.</summary>
internal enum Demand
{
    Fit,
    Reference,
    Rating,
    RatingToEarth,
    Channels,
    Range,
    Offset,
    Amplitude,
    Edge,
    Pulse,
    SampleRate,
    FoldedContent,
    Detail,
    Timing,
    Count,
}

/// <summary>Numbers only: what each demand needs, what a candidate gives, and the margin. NaN where a demand is not made; a margin of minus infinity is a plain no.</summary>
internal struct Judgement
{
    internal readonly double[] Needed, Offered, Margin;
    internal NotStated NotStated;
    internal InputRange? Range;

    internal Judgement(int count)
    {
        Needed = new double[count];
        Offered = new double[count];
        Margin = new double[count];
        for (int i = 0; i < count; i++)
            Margin[i] = double.NaN;
        NotStated = NotStated.Nothing;
        Range = null;
    }

    internal static Judgement Of(Screen screen, ScreenedProbe probe, ScreenedInput input, Complex[] workspace)
    {
        var judged = new Judgement((int)Demand.Count);
        Requirement wanted = screen.Requirement;
        CatalogueInstrument instrument = input.Entry;
        judged.Set(Demand.Fit, probe.Entry.Into.SiValue, input.Termination.Resistance.SiValue, Math.Abs((input.Termination.Resistance.SiValue / probe.Entry.Into.SiValue) - 1) <= 0.05 ? 0 : double.NegativeInfinity);
        judged.Rate(screen, probe.Entry, input.Termination);
        judged.RateToEarth(screen, probe.Entry, input);
        judged.AtLeast(Demand.Channels, wanted.Channels, instrument.Channels);
        double attenuation = probe.Entry.AttenuationFactor;
        judged.ChooseRange(screen, instrument, attenuation);
        judged.Amplitude(screen, probe.Gains, input.Gains);
        double slowness = judged.Edges(screen, probe.Gains, input.Gains, workspace);
        ChannelMode? mode = instrument.ModeFor(wanted.Channels);
        double rate = mode is null ? 0 : wanted.Window is { } window ? Math.Min(mode.MaximumRate.SiValue, mode.Memory.SiValue / window.SiValue) : mode.MaximumRate.SiValue;
        if (screen.NeededRate > 0)
            judged.AtLeast(Demand.SampleRate, screen.NeededRate, rate);
        judged.Folded(screen, probe.Gains, input.Gains, rate);
        judged.Pulse(screen, probe.Gains, input.Gains);
        judged.Noise(screen, probe.Entry, input, attenuation, slowness);
        return judged;
    }

    /// <summary>The margin of one demand on the chain alone, for two stages that need not be in the catalogue.</summary>
    internal static double OfChain(Screen screen, StageGains probe, StageGains input, Complex[] workspace, Demand demand)
    {
        var judged = new Judgement((int)Demand.Count);
        switch (demand)
        {
            case Demand.Amplitude: judged.Amplitude(screen, probe, input); break;
            case Demand.Edge: judged.Edges(screen, probe, input, workspace); break;
            default: judged.Pulse(screen, probe, input); break;
        }
        return judged.Margin[(int)demand];
    }

    private void Set(Demand demand, double needed, double offered, double margin)
    {
        Needed[(int)demand] = needed;
        Offered[(int)demand] = offered;
        Margin[(int)demand] = margin;
    }

    private void AtLeast(Demand demand, double needed, double offered) => Set(demand, needed, offered, Snap((offered / needed) - 1));

    private void AtMost(Demand demand, double allowed, double offered) =>
        Set(demand, allowed, offered, offered <= 0 ? 1e6 : Snap(Math.Min(1e6, (allowed / offered) - 1)));

    // Exactly enough is enough, whatever the last bits say.
    private static double Snap(double margin) => Math.Abs(margin) < 1e-9 ? 0 : margin;

    private void Rate(Screen screen, CatalogueProbe probe, InputTermination termination)
    {
        double stands = probe.MaximumVoltage?.SiValue ?? double.PositiveInfinity;
        if (termination.MaximumVoltage is { } input)
            stands = Math.Min(stands, input.SiValue * probe.AttenuationFactor);
        if (double.IsPositiveInfinity(stands))
            NotStated |= NotStated.Rating;
        else
            AtLeast(Demand.Rating, screen.Peak, stands);
    }

    // Behind a differential probe nothing stands against earth; into an isolated input the probe does as well, with its reference lead.
    private void RateToEarth(Screen screen, CatalogueProbe probe, ScreenedInput input)
    {
        bool floats = screen.Requirement.CommonMode is not null, mayFloat = probe.IsDifferential || input.Entry.HasIsolatedInputs;
        if (floats)
            Set(Demand.Reference, 1, mayFloat ? 1 : 0, mayFloat ? 0 : double.NegativeInfinity);
        if (!mayFloat)
            return;
        double? ofProbe = probe.MaximumToEarth?.SiValue, ofInput = input.Termination.MaximumToEarth?.SiValue;
        double stands = Math.Min(ofProbe ?? double.PositiveInfinity, probe.IsDifferential ? double.PositiveInfinity : ofInput ?? double.PositiveInfinity);
        if (floats && (ofProbe is null || (ofInput is null && !probe.IsDifferential)))
            NotStated |= NotStated.RatingToEarth;
        if (!double.IsPositiveInfinity(stands))
            AtLeast(Demand.RatingToEarth, screen.ToEarth, stands);
    }

    private void ChooseRange(Screen screen, CatalogueInstrument instrument, double attenuation)
    {
        Range = instrument.RangeFor(screen.Requirement.Signals, attenuation);
        double full = Range.FullScale.SiValue * attenuation, offset = 0;
        AtLeast(Demand.Range, screen.Swing, full);
        foreach (Signal signal in screen.Requirement.Signals)
            offset = Math.Max(offset, InputRange.OffsetFor(signal, full));
        if (Range.MaximumOffset is { } most && offset > 0)
            AtLeast(Demand.Offset, offset, most.SiValue * attenuation);
        else if (offset > full * InputRange.UsualOffset * (1 + 1e-9))
            NotStated |= NotStated.Offset;
    }

    private void Amplitude(Screen screen, StageGains probe, StageGains input)
    {
        if (!screen.JudgesAmplitude)
            return;
        double worst = 0;
        // A gain above 1 (a ringing lead) is as wrong as one below.
        for (int i = 0; i < screen.Signals.Length; i++)
            worst = Math.Max(worst, Math.Abs(1 - (probe.Top[i] * input.Top[i])));
        AtMost(Demand.Amplitude, screen.AmplitudeTolerance, worst);
    }

    // The answer is how long the slowest edge takes for a volt of its swing, s/V: what noise makes of its time.
    private double Edges(Screen screen, StageGains probe, StageGains input, Complex[] workspace)
    {
        double worst = double.NaN, slowness = 0;
        for (int i = 0; i < screen.Signals.Length; i++)
        {
            Signal signal = screen.Signals[i].Signal;
            double swing = 0.8 * signal.PeakToPeak.SiValue;
            if (screen.Signals[i].Edge is not { } edge)
            {
                slowness = Math.Max(slowness, signal.RiseTime.SiValue / swing);
                continue;
            }
            double rise = edge.RiseTime.SiValue, shown = EdgeThrough.RootSumSquare(rise, EdgeThrough.RootSumSquare(probe.Rise, input.Rise));
            if (shown < 1.9 * rise && screen.Signals[i].Spectrum!.RiseTime(probe.Edges[i]!, input.Edges[i]!, workspace) is var exact && !double.IsNaN(exact))
                shown = exact;
            slowness = Math.Max(slowness, shown / swing);
            double error = (shown / rise) - 1;
            worst = double.IsNaN(worst) ? error : Math.Max(worst, error);
        }
        if (!double.IsNaN(worst))
            AtMost(Demand.Edge, screen.Requirement.EdgeTolerance!.Value.SiValue, worst);
        return slowness;
    }

    private void Folded(Screen screen, StageGains probe, StageGains input, double rate)
    {
        double worst = double.NaN;
        for (int i = 0; i < screen.Signals.Length; i++)
        {
            ScreenedSignal signal = screen.Signals[i];
            double[] hertz = signal.LineHertz, powers = signal.LinePowers, first = probe.Lines[i], second = input.Lines[i];
            double folded = 0, all = 0;
            for (int line = 0; line < hertz.Length; line++)
            {
                double power = powers[line] * first[line] * second[line];
                all += power;
                folded += hertz[line] < rate / 2 ? 0 : power;
            }
            if (!(all > 0))
                continue;
            double share = Math.Sqrt(folded / all);
            worst = double.IsNaN(worst) ? share : Math.Max(worst, share);
        }
        if (!double.IsNaN(worst))
            AtMost(Demand.FoldedContent, screen.FoldTolerance, worst);
    }

    private void Pulse(Screen screen, StageGains probe, StageGains input)
    {
        if (screen.Requirement.NarrowestPulse is not { } width)
            return;
        // A Gaussian of the combined rise time stands for the chain; a pulse of width w reaches erf(w / (2 √2 σ)) of its height.
        double sigma = EdgeThrough.RootSumSquare(probe.Rise, input.Rise) / Edge.GaussianRisePerSigma, height = 1 - (2 * ErrorFunction.NormalBelow(-width.SiValue / (2 * sigma)));
        AtMost(Demand.Pulse, screen.Requirement.AmplitudeTolerance?.SiValue ?? 0.1, 1 - height);
    }

    private void Noise(Screen screen, CatalogueProbe probe, ScreenedInput input, double attenuation, double slowness)
    {
        Requirement wanted = screen.Requirement;
        if (wanted.SmallestDetail is null && wanted.TimingTolerance is null)
            return;
        double code = Range!.FullScale.SiValue * attenuation / Math.Pow(2, input.Entry.Bits.SiValue), variance = code * code / 12;
        if (Range.Noise is { } noise)
        {
            double volts = noise.Value.SiValue * input.NoiseFactor * attenuation;
            variance += volts * volts;
        }
        else
        {
            NotStated |= NotStated.Noise;
        }
        if (probe.Noise is { } own)
            variance += own.Value.SiValue * own.Value.SiValue;
        double sigma = Math.Sqrt(variance);
        if (wanted.SmallestDetail is { } detail)
            AtMost(Demand.Detail, detail.SiValue, Math.Max(code, 2 * Math.Max(sigma, Stated(screen, input.Entry, Range.FullScale.SiValue * attenuation))));
        if (wanted.TimingTolerance is not { } timing)
            return;
        double byNoise = sigma * slowness, jitter = input.Entry.Jitter?.Value.SiValue ?? 0;
        double span = wanted.Window is { } window && input.Entry.TimebaseAccuracy is { } accuracy ? accuracy.Value.SiValue * window.SiValue / Math.Sqrt(3) : 0;
        if (input.Entry.Jitter is null)
            NotStated |= NotStated.Jitter;
        if (wanted.Window is not null && input.Entry.TimebaseAccuracy is null)
            NotStated |= NotStated.TimebaseAccuracy;
        AtMost(Demand.Timing, timing.SiValue, Math.Sqrt((2 * byNoise * byNoise) + (2 * jitter * jitter) + (span * span)));
    }

    // Noise and distortion by the stated effective bits at the highest tone, V rms; 0 where none are stated, as an outlook takes them.
    private static double Stated(Screen screen, CatalogueInstrument instrument, double range) => instrument.EffectiveBits.Count > 0 && screen.HighestTone > 0
        ? EffectiveBitsPoint.NoiseAndDistortion(EffectiveBitsPoint.At(instrument.EffectiveBits, screen.HighestTone), range)
        : 0;
}
