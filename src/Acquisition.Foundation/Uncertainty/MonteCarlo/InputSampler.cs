using System;
using System.Collections.Generic;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Uncertainty;

/// <summary>Draws the inputs of a model, block by block: each source once, so that inputs which share a source, or are correlated, move together.</summary>
internal sealed class InputSampler
{
    /// <summary>Trials per block: five columns of them fit in a second-level cache.</summary>
    internal const int BlockTrials = 2500;

    private readonly double[] _estimates;
    private readonly int[][] _places;
    private readonly double[][] _sensitivities;
    private readonly UncertaintySource[] _sources;
    private readonly CorrelatedSet?[] _setBegins;
    private readonly int[] _directInput;

    internal InputSampler(IReadOnlyList<UncertainQuantity> inputs)
    {
        var sources = new List<UncertaintySource>();
        var places = new Dictionary<UncertaintySource, int>();
        _estimates = new double[inputs.Count];
        _places = new int[inputs.Count][];
        _sensitivities = new double[inputs.Count][];
        for (int input = 0; input < inputs.Count; input++)
        {
            LinearCombination combination = inputs[input].Combination;
            _estimates[input] = inputs[input].SiEstimate;
            _sensitivities[input] = combination.Sensitivities;
            _places[input] = new int[combination.Sources.Length];
            for (int i = 0; i < combination.Sources.Length; i++)
            {
                if (!places.TryGetValue(combination.Sources[i], out int place))
                {
                    place = sources.Count;
                    places.Add(combination.Sources[i], place);
                    sources.Add(combination.Sources[i]);
                }
                _places[input][i] = place;
            }
        }
        _sources = sources.ToArray();
        _setBegins = SetBeginnings(_sources);
        _directInput = DirectInputs();
    }

    internal int InputCount => _estimates.Length;

    internal IReadOnlyList<UncertaintySource> Sources => _sources;

    /// <summary>Buffers for one thread.</summary>
    internal sealed class Buffers
    {
        internal Buffers(InputSampler sampler)
        {
            Inputs = Columns(sampler.InputCount);
            Sources = Columns(sampler._sources.Length);
            Result = new double[BlockTrials];
        }

        internal double[][] Inputs { get; }

        internal double[][] Sources { get; }

        internal double[] Result { get; }

        private static double[][] Columns(int count)
        {
            var columns = new double[count][];
            for (int i = 0; i < count; i++) columns[i] = new double[BlockTrials];
            return columns;
        }
    }

    /// <summary>Fills the input columns of one block.</summary>
    internal void Draw(long seed, int block, int count, Buffers buffers)
    {
        for (int i = 0; i < _sources.Length; i++)
        {
            UncertaintySource source = _sources[i];
            if (source.Set is null)
            {
                var stream = new RandomStream(seed, i, block);
                source.Distribution.Fill(ref stream, _directInput[i] >= 0 ? buffers.Inputs[_directInput[i]] : buffers.Sources[i], count);
            }
            else if (_setBegins[i] is { } set)
            {
                DrawSet(set, i, seed, block, count, buffers);
            }
        }
        for (int input = 0; input < _estimates.Length; input++)
        {
            double[] column = buffers.Inputs[input];
            double estimate = _estimates[input];
            int[] places = _places[input];
            if (places.Length == 1 && _directInput[places[0]] == input)
            {
                for (int t = 0; t < column.Length && t < count; t++) column[t] += estimate;
                continue;
            }
            for (int t = 0; t < count; t++) column[t] = estimate;
            for (int i = 0; i < places.Length; i++)
            {
                double[] deviation = buffers.Sources[places[i]];
                double c = _sensitivities[input][i];
                for (int t = 0; t < count; t++) column[t] += c * deviation[t];
            }
        }
    }

    /// <summary>
    /// Correlated draws: independent normal ones through the triangle of the correlation matrix (JCGM 101 C.5). Readings taken together share their degrees of freedom, and then one
    /// chi-squared draw scales them all: the multivariate t-distribution (JCGM 102 5.3.2, from memory).
    /// </summary>
    private void DrawSet(CorrelatedSet set, int first, long seed, int block, int count, Buffers buffers)
    {
        double nu = CommonDegreesOfFreedom(set);
        var stream = new RandomStream(seed, first, block);
        var draws = new double[set.Count];
        for (int t = 0; t < count; t++)
        {
            for (int k = 0; k < draws.Length; k++) draws[k] = NormalSampler.Next(ref stream);
            double scale = double.IsPositiveInfinity(nu) ? 1 : Math.Sqrt(nu / 2 / GammaSampler.Next(ref stream, nu / 2));
            for (int i = first; i < _sources.Length; i++)
            {
                UncertaintySource source = _sources[i];
                if (!ReferenceEquals(source.Set, set)) continue;
                double sum = 0;
                for (int k = 0; k <= source.Place; k++) sum += set.Triangle[source.Place, k] * draws[k];
                double u = source.Distribution is StudentTDistribution && double.IsPositiveInfinity(nu) ? source.Distribution.StandardDeviation : source.StandardUncertainty;
                buffers.Sources[i][t] = u * scale * sum;
            }
        }
    }

    /// <summary>The degrees of freedom that all members drawn here share; infinite where they share none, and then the draws are normal.</summary>
    internal double CommonDegreesOfFreedom(CorrelatedSet set)
    {
        double common = double.NaN;
        foreach (UncertaintySource source in _sources)
        {
            if (!ReferenceEquals(source.Set, set)) continue;
            double nu = source.Distribution is StudentTDistribution ? source.DegreesOfFreedom : double.PositiveInfinity;
            if (double.IsNaN(common)) common = nu;
            else if (common != nu) return double.PositiveInfinity;
        }
        return common;
    }

    private static CorrelatedSet?[] SetBeginnings(UncertaintySource[] sources)
    {
        var seen = new HashSet<CorrelatedSet>();
        var begins = new CorrelatedSet?[sources.Length];
        for (int i = 0; i < sources.Length; i++)
        {
            if (sources[i].Set is { } set && seen.Add(set)) begins[i] = set;
        }
        return begins;
    }

    /// <summary>For each source the input that is nothing but this source, and may be drawn in place; -1 where there is none.</summary>
    private int[] DirectInputs()
    {
        var uses = new int[_sources.Length];
        foreach (int[] places in _places)
        {
            foreach (int place in places) uses[place]++;
        }
        var direct = new int[_sources.Length];
        for (int i = 0; i < direct.Length; i++) direct[i] = -1;
        for (int input = 0; input < _places.Length; input++)
        {
            if (_places[input].Length != 1) continue;
            int place = _places[input][0];
            if (uses[place] == 1 && _sensitivities[input][0] == 1 && _sources[place].Set is null) direct[place] = input;
        }
        return direct;
    }
}
