using System;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core;

/// <summary>How a Monte Carlo evaluation runs (JCGM 101 clause 7). The results depend on seed and number of trials only, never on the number of threads.</summary>
/// <remarks>Immutable; the <c>With</c> methods give a changed copy.</remarks>
public sealed class MonteCarloOptions
{
    private MonteCarloOptions(long seed, int trials, int significantDigits, double probability, int threads)
    {
        Seed = seed;
        Trials = trials;
        SignificantDigits = significantDigits;
        SiProbability = probability;
        MaximumThreads = threads;
    }

    /// <summary>One million trials (JCGM 101 7.2.1), seed 1, 95 % coverage, as many threads as there are processors.</summary>
    public static MonteCarloOptions Default { get; } = new(1, 1_000_000, 0, 0.95, 0);

    /// <summary>The seed: it is part of the result, since the same seed gives the same result.</summary>
    public long Seed { get; }

    /// <summary>The number of trials; with adaptive stopping, the most that will be made.</summary>
    public int Trials { get; }

    /// <summary>With adaptive stopping, the significant digits of the standard uncertainty that must be stable, 1 to 4; 0 where the number of trials is fixed.</summary>
    public int SignificantDigits { get; }

    /// <summary>The coverage probability of the intervals that adaptive stopping watches.</summary>
    public Ratio CoverageProbability => Ratio.FromSi(SiProbability, "probability");

    /// <summary>The most threads to use; 0 for as many as there are processors.</summary>
    public int MaximumThreads { get; }

    internal double SiProbability { get; }

    /// <summary>Another seed.</summary>
    public MonteCarloOptions WithSeed(long seed) => new(seed, Trials, SignificantDigits, SiProbability, MaximumThreads);

    /// <summary>A fixed number of trials, from 1000 to 100 million; JCGM 101 7.2.2 asks for 10⁴/(1 - p) or more.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is out of range.</exception>
    public MonteCarloOptions WithTrials(int trials) => new(Seed, RequireTrials(trials), 0, SiProbability, MaximumThreads);

    /// <summary>As many trials as it takes until mean, standard uncertainty and both end points of the interval are stable to the digits asked for (JCGM 101 7.9).</summary>
    /// <param name="significantDigits">Digits of the standard uncertainty, 1 to 4; 2 as a rule.</param>
    /// <param name="maximumTrials">Where to give up, with a finding.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public MonteCarloOptions Adaptive(int significantDigits = 2, int maximumTrials = 20_000_000) =>
        significantDigits is >= 1 and <= 4
            ? new MonteCarloOptions(Seed, RequireTrials(maximumTrials), significantDigits, SiProbability, MaximumThreads)
            : throw new ArgumentOutOfRangeException(nameof(significantDigits), significantDigits, $"significantDigits must be from 1 to 4; was {significantDigits}");

    /// <summary>Another coverage probability.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not above 0 and below 1.</exception>
    public MonteCarloOptions WithCoverage(Ratio probability) =>
        new(Seed, Trials, SignificantDigits, Coverage.RequireProbability(probability.SiValue, nameof(probability)), MaximumThreads);

    /// <summary>At most so many threads; 0 for as many as there are processors.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is negative.</exception>
    public MonteCarloOptions WithThreads(int maximumThreads) =>
        maximumThreads >= 0
            ? new MonteCarloOptions(Seed, Trials, SignificantDigits, SiProbability, maximumThreads)
            : throw new ArgumentOutOfRangeException(nameof(maximumThreads), maximumThreads, $"maximumThreads must be at least 0; was {maximumThreads}");

    private static int RequireTrials(int trials) =>
        trials is >= 1000 and <= 100_000_000
            ? trials
            : throw new ArgumentOutOfRangeException(nameof(trials), trials, $"trials must be from 1000 to 100000000; was {trials}");
}
