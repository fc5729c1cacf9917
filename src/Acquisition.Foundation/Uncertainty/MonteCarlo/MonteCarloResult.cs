using System;
using System.Collections.Generic;
using System.Globalization;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core;

/// <summary>What a Monte Carlo evaluation found: estimate, standard uncertainty and coverage intervals of the result's distribution (JCGM 101 7.5 to 7.7).</summary>
/// <remarks>Thread-safe; intervals and quantiles are worked out when they are asked for.</remarks>
#if NET8_0_OR_GREATER
[System.Text.Json.Serialization.JsonConverter(typeof(ResultJsonConverter))]
#endif
public sealed class MonteCarloResult
{
    private readonly QuantityKind _kind;
    private readonly double[] _values;
    private readonly MonteCarloOptions _options;
    private readonly object _gate = new();
    private Tails? _tails;
    private double[]? _sorted;

    internal MonteCarloResult(QuantityKind kind, double[] values, BlockStatistics statistics, MonteCarloOptions options, bool isStabilized, IReadOnlyList<Finding> findings)
    {
        _kind = kind;
        _values = values;
        _options = options;
        SiEstimate = statistics.Mean;
        SiStandardUncertainty = statistics.StandardDeviation;
        IsStabilized = isStabilized;
        Findings = findings.Frozen();
    }

    internal double SiEstimate { get; }

    internal double SiStandardUncertainty { get; }

    /// <summary>The estimate: the mean of the trials' results. For a nonlinear model it differs from the model's value at the estimates.</summary>
    public Quantity Estimate => new(SiEstimate, _kind);

    /// <summary>The standard uncertainty: the standard deviation of the trials' results.</summary>
    public Quantity StandardUncertainty => new(SiStandardUncertainty, UncertaintyKind.Of(_kind));

    /// <summary>The number of trials.</summary>
    public int Trials => _values.Length;

    /// <summary>The seed that the trials were drawn with.</summary>
    public long Seed => _options.Seed;

    /// <summary>Whether adaptive stopping ended because the results were stable; true where the number of trials was fixed.</summary>
    public bool IsStabilized { get; }

    /// <summary>What limits the trust in the result.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>The probabilistically symmetric interval at the coverage probability of the options.</summary>
    public CoverageInterval SymmetricInterval() => SymmetricInterval(_options.CoverageProbability);

    /// <summary>The probabilistically symmetric interval: as much probability below it as above.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not above 0 and below 1.</exception>
    public CoverageInterval SymmetricInterval(Ratio probability)
    {
        (double low, double high) = TailsFor(probability).Symmetric();
        return new CoverageInterval(new Quantity(low, _kind), new Quantity(high, _kind), probability, false);
    }

    /// <summary>The shortest interval at the coverage probability of the options.</summary>
    public CoverageInterval ShortestInterval() => ShortestInterval(_options.CoverageProbability);

    /// <summary>The shortest interval with this probability; for a lopsided distribution it lies elsewhere than the symmetric one.</summary>
    /// <remarks>Where the density is flat its location is ill-determined, though its length is not (handbook 11.6).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not above 0 and below 1.</exception>
    public CoverageInterval ShortestInterval(Ratio probability)
    {
        (double low, double high) = TailsFor(probability).Shortest();
        return new CoverageInterval(new Quantity(low, _kind), new Quantity(high, _kind), probability, true);
    }

    /// <summary>The value that a part of the trials' results does not exceed.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not above 0 and below 1.</exception>
    public Quantity Quantile(Ratio probability)
    {
        double p = Coverage.RequireProbability(probability.SiValue, nameof(probability));
        double[] sorted = Sorted();
        return new Quantity(sorted[Math.Max(0, Math.Min(sorted.Length - 1, (int)Math.Ceiling(p * sorted.Length) - 1))], _kind);
    }

    /// <summary>The part of the trials whose result is from <paramref name="low"/> to <paramref name="high"/>, such as the probability of conformity with limits.</summary>
    /// <exception cref="ArgumentException">An end is not of the result's kind.</exception>
    public Ratio PartBetween(Quantity low, Quantity high)
    {
        double from = low.Require(_kind, nameof(low)), to = high.Require(_kind, nameof(high));
        int inside = 0;
        foreach (double value in _values)
        {
            if (value >= from && value <= to) inside++;
        }
        return Ratio.FromSi((double)inside / _values.Length, nameof(low));
    }

    /// <summary>The results of the trials in ascending order, in SI units; a copy.</summary>
    public double[] SortedResultsInSi() => (double[])Sorted().Clone();

    /// <summary>Estimate, standard uncertainty, interval, trials and seed in one line.</summary>
    public override string ToString() =>
        $"{ResultText.Concise(Estimate, SiStandardUncertainty, 2)}, {SymmetricInterval()}, {Trials.ToString(CultureInfo.InvariantCulture)} trials, seed {Seed.ToString(CultureInfo.InvariantCulture)}";

    private Tails TailsFor(Ratio probability)
    {
        double p = Coverage.RequireProbability(probability.SiValue, nameof(probability));
        int count = _values.Length - NumericalTolerance.CoveredCount(p, _values.Length);
        lock (_gate)
        {
            if (_tails?.Count != count) _tails = Tails.Of(_values, 0, _values.Length, count, _options.MaximumThreads != 1);
            return _tails;
        }
    }

    private double[] Sorted()
    {
        lock (_gate)
        {
            if (_sorted is null)
            {
                _sorted = (double[])_values.Clone();
                Array.Sort(_sorted);
            }
            return _sorted;
        }
    }
}
