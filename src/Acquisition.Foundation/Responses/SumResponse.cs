using System;
using System.Collections.Generic;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>Parallel branches that each have factors: a direct path and its echo, a split and recombined path. Cascading multiplies out, so that the form is kept.</summary>
internal sealed class SumResponse : Response
{
    private const double Faint = 1e-4;

    /// <summary>So many points are looked at, and so many gains of branches; 32 points to an echo are two turns of equal ones.</summary>
    private const int MostPoints = 100_000, MostGains = 6_400_000;

    private readonly Factors[] _branches;
    private double[]? _grid;

    internal SumResponse(string name, Factors[] branches)
        : base(name)
    {
        _branches = branches;
        double scale = double.PositiveInfinity;
        foreach (Factors branch in branches)
            scale = Math.Min(scale, new FactoredResponse(name, branch).FrequencyScale);
        FrequencyScale = scale;
    }

    internal override double FrequencyScale { get; }

    internal override IReadOnlyList<Factors> Branches => _branches;

    internal override IReadOnlyList<Way> Ways(Func<double, double> rest) => Array.ConvertAll(_branches, branch => new Way(new FactoredResponse(Name, branch.WithoutDelay()), branch.Delay));

    internal override Complex ComplexGain(double hertz)
    {
        Complex sum = Complex.Zero;
        foreach (Factors branch in _branches)
            sum += branch.At(2 * Math.PI * hertz);
        return sum;
    }

    internal override double StepDelay => 0;

    internal override IReadOnlyList<double> Arrivals => Array.ConvertAll(_branches, branch => branch.Delay);

    private protected override StepResponse MakeStep() =>
        new SumStep(Array.ConvertAll(_branches, FactoredResponse.StepOf), Array.ConvertAll(_branches, branch => branch.Delay));

    private protected override IReadOnlyList<double> SearchGrid() => _grid ??= MakeGrid();

    private protected override double? PowerIntegral()
    {
        IReadOnlyList<double> grid = SearchGrid();
        double last = grid[grid.Count - 1];
        return Magnitude(last) > 1e-3 * ReferenceMagnitude ? null : AdaptiveIntegral.Of(PowerGain, grid, 1e-11);
    }

    private double[] MakeGrid()
    {
        double[] grid = FrequencyGrid.Of(_branches);
        // Branches of different delay beat: 16 points to a turn of phase between them, as far as both are strong.
        double first = double.PositiveInfinity, last = 0, loudest = 0;
        foreach (Factors branch in _branches)
            loudest = Math.Max(loudest, Math.Abs(branch.DcGain));
        foreach (Factors branch in _branches)
        {
            // Of echoes that die away the last do not shape the beat.
            if (Math.Abs(branch.DcGain) < Faint * loudest)
                continue;
            first = Math.Min(first, branch.Delay);
            last = Math.Max(last, branch.Delay);
        }
        if (!(last > first))
            return grid;
        double step = 1 / (16 * (last - first)), top = grid[grid.Length - 1];
        var all = new List<double>(grid);
        double strongest = 0;
        foreach (double f in grid)
            strongest = Math.Max(strongest, Magnitude(f));
        int quiet = 0, most = Math.Min(MostPoints, Math.Max(32 * _branches.Length, MostGains / _branches.Length));
        for (int i = 1; i < most && i * step < top && quiet < 32; i++)
        {
            all.Add(i * step);
            quiet = Magnitude(i * step) < 1e-3 * strongest ? quiet + 1 : 0;
        }
        if (grid.Length == 2)
            all.RemoveAll(f => f == top);
        all.Sort();
        return all.ToArray();
    }
}
