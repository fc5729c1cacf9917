using System;
using System.Collections.Generic;

namespace Acquisition.Core.Responses;

/// <summary>A response known by its complex gain at each frequency only.</summary>
internal abstract class GeneralResponse : Response
{
    private double[]? _grid;
    private IReadOnlyList<Way>? _ways;

    private protected GeneralResponse(string name)
        : base(name)
    {
    }

    /// <summary>The frequency above which the gain is zero, Hz; infinite where there is none.</summary>
    internal virtual double HighestFrequency => double.PositiveInfinity;

    /// <summary>Whether asking above <see cref="HighestFrequency"/> is an error and not a zero.</summary>
    internal virtual bool EndsInRefusal => false;

    /// <summary>Frequencies in Hz, rising, at which the gain is not smooth: the points of a table.</summary>
    internal virtual IReadOnlyList<double> Breaks => Array.Empty<double>();

    /// <summary>Frequencies in Hz, rising, between which the gain may ripple although it is smooth: looked at in the search for crossings.</summary>
    internal virtual IReadOnlyList<double> Ripples => Array.Empty<double>();

    /// <summary>The delay that is left at the highest frequencies, s, where the model says so: a jump or a corner of the step is then at exactly that time.</summary>
    internal virtual double? FarDelay => null;

    /// <summary>Points per decade at which crossings are looked for.</summary>
    private protected virtual int GridDensity => 48;

    internal override double StepDelay => 0;

    /// <summary>The ways through, nothing else before or behind.</summary>
    internal IReadOnlyList<Way> OwnWays => _ways ??= Ways(_ => 1);

    internal override IReadOnlyList<double> Arrivals
    {
        get
        {
            IReadOnlyList<Way> ways = OwnWays;
            var arrivals = new double[ways.Count];
            for (int i = 0; i < arrivals.Length; i++)
                arrivals[i] = ways[i].Seconds + ways[i].Response.StepDelay;
            return arrivals;
        }
    }

    /// <summary>Where several ways lead through, the sum of their steps, each about its own arrival; together they ripple over frequency as fast as the last of them is late.</summary>
    private protected override StepResponse MakeStep()
    {
        RequireEnd("step response");
        IReadOnlyList<Way> ways = OwnWays;
        if (ways.Count == 1)
            return new PanelStep(this);
        var steps = new StepResponse[ways.Count];
        var delays = new double[ways.Count];
        double reference = ReferenceMagnitude, edge = PanelStep.EdgeOf(this);
        for (int i = 0; i < steps.Length; i++)
        {
            Response way = ways[i].Response;
            steps[i] = way is GeneralResponse general ? new PanelStep(general, reference, edge) : way.StepResponse;
            delays[i] = ways[i].Seconds + way.StepDelay;
        }
        return new EchoStep(steps, delays, 1 / edge, PanelStep.TableTolerance * reference);
    }

    private protected override double GainEnds => EndsInRefusal ? double.PositiveInfinity : HighestFrequency;

    private protected override IReadOnlyList<double> SearchGrid() => _grid ??= MakeGrid();

    private protected override double? PowerIntegral()
    {
        IReadOnlyList<double> grid = SearchGrid();
        double last = grid[grid.Count - 1], top = HighestFrequency;
        RequireEnd("noise bandwidth");
        if (last < top && Magnitude(last) > 1e-3 * ReferenceMagnitude)
            return null;
        return AdaptiveIntegral.Of(PowerGain, grid, 1e-11);
    }

    /// <summary>
    /// The pure delay, about: the middle of the group delays within the band where the gain ends soon after it, and far above the band where it does not, because
    /// there the delay of the poles themselves has died away.
    /// </summary>
    internal double DelayNear(double edge)
    {
        if (FarDelay is { } far && Math.Abs(far - MiddleDelay(0.1 * edge)) * edge < 4)
            return far;
        double from = HighestFrequency <= 8 * edge ? 0.1 * edge : Math.Min(30 * edge, 0.5 * HighestFrequency);
        double delay = MiddleDelay(from);
        // What is less than a hundredth of a cycle at the edge is rounding, or the last of the poles' own.
        return Math.Abs(delay) * edge > 1e-2 && Math.Abs(delay) <= double.MaxValue ? delay : 0;
    }

    private double MiddleDelay(double from)
    {
        var delays = new double[5];
        for (int i = 0; i < delays.Length; i++)
            delays[i] = GroupDelaySeconds(from * (1 + 0.2 * i));
        Array.Sort(delays);
        return delays[delays.Length / 2];
    }

    /// <summary>Refuses what needs the whole spectrum when the data end where the gain has not fallen.</summary>
    internal void RequireEnd(string what)
    {
        double top = HighestFrequency;
        if (EndsInRefusal && Magnitude(top) > 0.01 * ReferenceMagnitude)
        {
            throw new InvalidOperationException(
                $"the data of {Name} end at {Acquisition.Core.Frequency.FromSi(top, "top")}, where the gain is still {Gain(Acquisition.Core.Frequency.FromSi(top, "top"))}: the {what} depends on what lies above; choose what holds there (Hold, ExtendSlope or Zero)");
        }
    }

    private double[] MakeGrid()
    {
        var points = new List<double>();
        double top = Math.Min(HighestFrequency, FrequencyScale * 1e6), bottom = Math.Min(FrequencyScale * 1e-6, top * 1e-6);
        double ratio = Math.Pow(10, 1.0 / GridDensity);
        for (double f = Math.Max(bottom, LowestFrequency); f < top; f *= ratio)
            points.Add(f);
        foreach (double f in Breaks)
        {
            if (f > LowestFrequency && f < top)
                points.Add(f);
        }
        foreach (double f in Ripples)
        {
            if (f > LowestFrequency && f < top)
                points.Add(f);
        }
        points.Add(top);
        points.Sort();
        return points.ToArray();
    }
}
