using System;
using System.Collections.Generic;
using System.Linq;
using System.Numerics;

namespace Acquisition.Core.Planning;

/// <summary>What a requirement asks, prepared so that fifty thousand candidates can be judged: per signal the lines, the edge and the frequency that must be shown.</summary>
internal sealed class Screen
{
    internal Screen(Requirement requirement)
    {
        Requirement = requirement;
        Signals = requirement.Signals.Select(signal => new ScreenedSignal(requirement, signal)).ToArray();
        Source = requirement.SourceResistance is { } resistance ? SourceImpedance.Resistive(resistance) : SourceImpedance.None;
        Swing = requirement.Signals.Max(signal => signal.PeakToPeak.SiValue);
        Peak = requirement.Signals.Max(signal => signal.Peak.SiValue);
        ToEarth = requirement.Signals.Max(signal => Specifier.AgainstEarth(requirement.CommonMode, signal.Peak));
        JudgesAmplitude = requirement.LargestAmplitudeError is not null;
        AmplitudeTolerance = requirement.LargestAmplitudeError ?? 0;
        FoldTolerance = requirement.AmplitudeTolerance?.SiValue ?? requirement.EdgeTolerance?.SiValue ?? 0.1;
        NeededRate = Signals.Max(signal => signal.NeededRate);
        if (requirement.NarrowestPulse is { } pulse)
            NeededRate = Math.Max(NeededRate, 2 / pulse.SiValue);
        HighestTone = requirement.Signals.Max(signal => signal.Tone);
        Specification = requirement.Specify();
    }

    internal Requirement Requirement { get; }

    internal ScreenedSignal[] Signals { get; }

    internal SourceImpedance Source { get; }

    internal double Swing { get; }

    internal double Peak { get; }

    /// <summary>The largest voltage of either measured point against earth, V.</summary>
    internal double ToEarth { get; }

    internal bool JudgesAmplitude { get; }

    internal double AmplitudeTolerance { get; }

    internal double FoldTolerance { get; }

    /// <summary>The lowest sample rate that the requirement itself asks for; what folds is judged for each candidate.</summary>
    internal double NeededRate { get; }

    /// <summary>The highest frequency at which effective bits are asked for, Hz; 0 where no signal has lines.</summary>
    internal double HighestTone { get; }

    internal Specification Specification { get; }
}

/// <summary>One signal of a requirement, prepared.</summary>
internal sealed class ScreenedSignal
{
    private const int OneByOne = 64;

    internal ScreenedSignal(Requirement requirement, Signal signal)
    {
        Signal = signal;
        TopHarmonic = Specifier.HighestHarmonic(requirement, signal);
        Fundamental = signal.Tone;
        Top = TopHarmonic * Fundamental;
        double rise = signal.SteepestEdge?.RiseTime.SiValue ?? 0;
        if (requirement.EdgeTolerance is { } tolerance && rise > 0)
        {
            Edge = signal.SteepestEdge;
            Spectrum = new EdgeSpectrum(signal.SteepestEdge!);
            NeededRate = Specifier.PointsPerEdge(tolerance.SiValue) / rise;
        }
        bool shown = requirement.LargestAmplitudeError is not null || requirement.EdgeTolerance is not null;
        if (shown && Top > 0)
            NeededRate = Math.Max(NeededRate, 2.5 * Top);
        if (signal.SteepestEdge is null || signal.Fundamental is null || !shown)
            return;
        // Lines enough to reach four times the band that matters, or far beyond any chain where the edges are ideal; what lies above is small.
        double reach = Math.Max(8, rise > 0 ? 4 * Math.Max(Top, 1 / rise) / Fundamental : 1000 * TopHarmonic);
        int single = (int)Math.Min(OneByOne, Math.Ceiling(reach));
        var hertz = new List<double>();
        var powers = new List<double>();
        for (int number = 1; number <= single; number++)
            Add(number * Fundamental, Power(number));
        foreach (HarmonicBlock block in HarmonicBlock.From(single + 1, reach))
            Add(0.5 * ((double)block.First + block.Last) * Fundamental, block.Representatives().Sum(Power) * block.Weight);
        LineHertz = hertz.ToArray();
        LinePowers = powers.ToArray();

        double Power(int number)
        {
            double peak = signal.Harmonic(number).PeakVolts;
            return peak * peak / 2;
        }

        void Add(double frequency, double power)
        {
            hertz.Add(frequency);
            powers.Add(power);
        }
    }

    internal Signal Signal { get; }

    internal int TopHarmonic { get; }

    /// <summary>What must be shown for the signal to be seen at all, Hz; 0 where it has no lines.</summary>
    internal double Fundamental { get; }

    /// <summary>The highest frequency that must be shown, Hz; 0 where the signal does not repeat.</summary>
    internal double Top { get; }

    internal Edge? Edge { get; }

    internal EdgeSpectrum? Spectrum { get; }

    internal double NeededRate { get; }

    /// <summary>The frequencies of lines, and of blocks of many lines, Hz; empty where none are judged.</summary>
    internal double[] LineHertz { get; } = [];

    /// <summary>Mean squares of the lines and blocks.</summary>
    internal double[] LinePowers { get; } = [];
}

/// <summary>One stage (a probe on the source, or an input as it is set) at all frequencies that the screened signals need.</summary>
internal sealed class StageGains
{
    internal StageGains(Screen screen, Response stage)
    {
        Rise = RiseOf(stage);
        int signals = screen.Signals.Length;
        Top = new double[signals];
        Edges = new Complex[]?[signals];
        Lines = new double[signals][];
        for (int i = 0; i < signals; i++)
        {
            ScreenedSignal signal = screen.Signals[i];
            Top[i] = stage.Magnitude(signal.Top);
            Edges[i] = signal.Spectrum?.GainsOf(stage);
            Lines[i] = new double[signal.LineHertz.Length];
            for (int line = 0; line < Lines[i].Length; line++)
                Lines[i][line] = stage.PowerGain(signal.LineHertz[line]);
        }
    }

    /// <summary>The rise time of the stage alone, s; what the root-sum-square rule needs.</summary>
    internal double Rise { get; }

    /// <summary>Magnitude at the highest frequency that matters, per signal.</summary>
    internal double[] Top { get; }

    /// <summary>Gains at the harmonics of the edge, per signal; null where no edge is judged.</summary>
    internal Complex[]?[] Edges { get; }

    /// <summary>Power gains at the lines, per signal.</summary>
    internal double[][] Lines { get; }

    private static double RiseOf(Response stage)
    {
        try
        {
            return stage.RiseTime.SiValue;
        }
        catch (InvalidOperationException)
        {
            return double.PositiveInfinity;
        }
    }
}

/// <summary>A probe of the catalogue on the source of the requirement.</summary>
internal sealed class ScreenedProbe
{
    internal ScreenedProbe(Screen screen, CatalogueProbe entry)
    {
        Entry = entry;
        // Compensated, a probe looks the same from its tip whatever the capacitance of the input it is made for, so one ideal input stands for all.
        FrontEnd ideal = FrontEnd.HighImpedance(entry.Into, default, Response.Cascade());
        Response response = MeasurementChain.From(screen.Source).Probe(CatalogueChain.Probe(entry, screen.Source)).Into(ideal).Response;
        Gains = new StageGains(screen, response);
        DcGain = response.DcGain;
    }

    internal CatalogueProbe Entry { get; }

    internal StageGains Gains { get; }

    /// <summary>What source and probe leave at DC.</summary>
    internal double DcGain { get; }
}

/// <summary>An input of the catalogue as it is set: instrument, termination, bandwidth limit.</summary>
internal sealed class ScreenedInput
{
    internal ScreenedInput(CatalogueInstrument entry, InputTermination termination, Frequency? limit, StageGains gains)
    {
        Entry = entry;
        Termination = termination;
        Limit = limit;
        Gains = gains;
        NoiseFactor = CatalogueChain.NoiseFactor(entry, limit);
    }

    internal CatalogueInstrument Entry { get; }

    internal InputTermination Termination { get; }

    internal Frequency? Limit { get; }

    internal StageGains Gains { get; }

    internal double NoiseFactor { get; }

    /// <summary>All inputs of a catalogue. Stages alike (same shape, bandwidth and limit) are computed once.</summary>
    internal static List<ScreenedInput> All(Screen screen, Catalogue catalogue)
    {
        var known = new Dictionary<(ResponseShape, double, double), StageGains>();
        var all = new List<ScreenedInput>();
        double slowest = screen.Signals.Max(signal => signal.Top);
        foreach (CatalogueInstrument entry in catalogue.Instruments)
        {
            foreach (InputTermination termination in entry.Terminations)
            {
                all.Add(new ScreenedInput(entry, termination, null, Gains(entry, null)));
                // A limit below what must be shown need not be tried.
                foreach (Frequency limit in entry.BandwidthLimits)
                {
                    if (limit.SiValue > slowest && limit < entry.Bandwidth.Value)
                        all.Add(new ScreenedInput(entry, termination, limit, Gains(entry, limit)));
                }
            }
        }
        return all;

        StageGains Gains(CatalogueInstrument entry, Frequency? limit)
        {
            var key = (entry.Shape, entry.Bandwidth.Value.SiValue, limit?.SiValue ?? 0);
            if (!known.TryGetValue(key, out StageGains? gains))
            {
                Response own = entry.Shape.At(entry.Bandwidth.Value);
                known[key] = gains = new StageGains(screen, limit is { } hertz ? own.Then(Response.SinglePole(hertz)) : own);
            }
            return gains;
        }
    }
}
