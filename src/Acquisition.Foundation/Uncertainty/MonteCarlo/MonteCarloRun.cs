using System;
using System.Collections.Generic;
using System.Globalization;
using System.Runtime.ExceptionServices;
using System.Threading;
using System.Threading.Tasks;

namespace Acquisition.Core.Uncertainty;

/// <summary>Propagates distributions by trials (JCGM 101 clause 7), a fixed number of them or by the adaptive procedure of 7.9.</summary>
internal sealed class MonteCarloRun
{
    private readonly InputSampler _sampler;
    private readonly MonteCarloKernel _kernel;
    private readonly MonteCarloOptions _options;
    private readonly LongCall? _call;

    internal MonteCarloRun(IReadOnlyList<UncertainQuantity> inputs, MonteCarloKernel kernel, MonteCarloOptions options, LongCall? call)
    {
        _sampler = new InputSampler(inputs);
        _kernel = kernel;
        _options = options;
        _call = call;
    }

    internal MonteCarloResult Evaluate(QuantityKind kind) => _options.SignificantDigits == 0 ? Fixed(kind) : Adaptive(kind);

    private bool IsParallel => _options.MaximumThreads != 1 && Environment.ProcessorCount > 1;

    private MonteCarloResult Fixed(QuantityKind kind)
    {
        int trials = _options.Trials;
        var values = new double[trials];
        BlockStatistics statistics = Fill(values, 0, trials, 0, _call);
        List<Finding> findings = InputFindings();
        double wanted = 1e4 / (1 - _options.SiProbability);
        if (trials < wanted * (1 - 1e-12))
        {
            findings.Add(new Finding(
                "few-trials", Severity.Warning, Text($"{trials} trials are few for a coverage probability of {ProbabilityText.Of(_options.CoverageProbability)}"),
                Text($"make at least {Math.Ceiling(wanted * (1 - 1e-12)):0} trials, or stop adaptively"), "JCGM 101 7.2.2"));
        }
        return new MonteCarloResult(kind, values, statistics, _options, true, findings);
    }

    /// <summary>Blocks of results until twice the standard deviation of the average of each of the four watched figures is below the numerical tolerance of u (7.9.4).</summary>
    private MonteCarloResult Adaptive(QuantityKind kind)
    {
        // Whole sampling blocks: the standard's number is a least one.
        int blockTrials = (NumericalTolerance.BlockTrials(_options.SiProbability) + InputSampler.BlockTrials - 1) / InputSampler.BlockTrials * InputSampler.BlockTrials;
        int mostBlocks = Math.Max(2, _options.Trials / blockTrials);
        int tail = blockTrials - NumericalTolerance.CoveredCount(_options.SiProbability, blockTrials);
        int batch = Math.Max(2, Math.Min(mostBlocks, 8));
        var values = new double[batch * blockTrials];
        var total = default(BlockStatistics);
        var watched = new[] { new BlockStatistics(), new BlockStatistics(), new BlockStatistics(), new BlockStatistics() };
        int filled = 0, used = 0;
        double wanted = mostBlocks;
        bool stable = false;
        while (!stable && used < mostBlocks)
        {
            if (used == filled)
            {
                int next = Math.Min(mostBlocks, filled + Math.Max(batch, filled / 2));
                Array.Resize(ref values, next * blockTrials);
                Fill(values, filled * blockTrials, (next - filled) * blockTrials, filled * (blockTrials / InputSampler.BlockTrials), _call?.Part((double)used / Math.Max(next, wanted), (double)next / Math.Max(next, wanted)));
                filled = next;
            }
            BlockStatistics block = BlockStatistics.Of(values, used * blockTrials, blockTrials);
            (double low, double high) = Tails.Of(values, used * blockTrials, blockTrials, tail, false).Symmetric();
            total = Joined(total, block);
            watched[0] = Joined(watched[0], One(block.Mean));
            watched[1] = Joined(watched[1], One(block.StandardDeviation));
            watched[2] = Joined(watched[2], One(low));
            watched[3] = Joined(watched[3], One(high));
            used++;
            if (used < 2) continue;
            double tolerance = NumericalTolerance.Of(total.StandardDeviation, _options.SignificantDigits);
            // The spread of the averages shrinks with the root of the blocks, so what it is now tells how many will do.
            double spread = 0;
            foreach (BlockStatistics figure in watched) spread = Math.Max(spread, 2 * figure.StandardDeviation);
            wanted = Math.Min(mostBlocks, spread / tolerance * (spread / tolerance));
            stable = spread / Math.Sqrt(used) < tolerance || total.StandardDeviation == 0;
        }
        if (used < filled) Array.Resize(ref values, used * blockTrials);
        List<Finding> findings = InputFindings();
        if (!stable)
        {
            findings.Add(new Finding(
                "not-stabilized", Severity.Warning,
                Text($"after {used * (long)blockTrials} trials the results are not yet stable to {_options.SignificantDigits} digits of the standard uncertainty"),
                "allow more trials, or ask for fewer digits", "JCGM 101 7.9.4"));
        }
        return new MonteCarloResult(kind, values, total, _options, stable, findings);
    }

    private static BlockStatistics One(double value) => new() { Count = 1, Mean = value };

    private static BlockStatistics Joined(BlockStatistics total, BlockStatistics next)
    {
        if (total.Count == 0) return next;
        total.Join(next);
        return total;
    }

    private BlockStatistics Fill(double[] values, int start, int trials, int firstBlock, LongCall? call)
    {
        int blocks = (trials + InputSampler.BlockTrials - 1) / InputSampler.BlockTrials;
        var statistics = new BlockStatistics[blocks];
        int done = 0;
        if (!IsParallel)
        {
            var buffers = new InputSampler.Buffers(_sampler);
            for (int block = 0; block < blocks; block++) FillBlock(block, buffers);
        }
        else
        {
            int threads = _options.MaximumThreads == 0 ? Environment.ProcessorCount : _options.MaximumThreads;
            try
            {
                Parallel.For(
                    0, blocks, new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = call?.Cancellation ?? default },
                    () => new InputSampler.Buffers(_sampler),
                    (block, _, buffers) =>
                    {
                        FillBlock(block, buffers);
                        return buffers;
                    },
                    _ => { });
            }
            catch (AggregateException exception)
            {
                // The model's own refusal is what the caller should see.
                ExceptionDispatchInfo.Capture(exception.InnerExceptions[0]).Throw();
            }
        }
        BlockStatistics total = statistics[0];
        for (int block = 1; block < blocks; block++) total.Join(statistics[block]);
        if (double.IsNaN(total.Squares) || double.IsInfinity(total.Squares)) RefuseValuesThatAreNone(values, start, trials);
        return total;

        void FillBlock(int block, InputSampler.Buffers buffers)
        {
            int offset = block * InputSampler.BlockTrials, count = Math.Min(InputSampler.BlockTrials, trials - offset);
            _sampler.Draw(_options.Seed, firstBlock + block, count, buffers);
            _kernel(buffers.Inputs, buffers.Result, count);
            Array.Copy(buffers.Result, 0, values, start + offset, count);
            statistics[block] = BlockStatistics.Of(buffers.Result, 0, count);
            call?.Reached(Interlocked.Increment(ref done), blocks);
        }
    }

    private static void RefuseValuesThatAreNone(double[] values, int start, int trials)
    {
        int none = 0;
        for (int i = start; i < start + trials; i++)
        {
            if (double.IsNaN(values[i]) || double.IsInfinity(values[i])) none++;
        }
        throw new InvalidOperationException(none == 0
            ? "the results of the trials are too large for their variance to be a number; scale the model"
            : Text($"{none} of {trials} trials had no value: the inputs reach where the model is not defined (a division by zero, a root or logarithm of a negative number); narrow the distribution of the input that does, or restate the model"));
    }

    private List<Finding> InputFindings()
    {
        var findings = new List<Finding>();
        foreach (UncertaintySource source in _sampler.Sources)
        {
            if (source.Set is null && double.IsPositiveInfinity(source.Distribution.StandardDeviation))
            {
                findings.Add(new Finding(
                    "no-standard-deviation", Severity.Warning,
                    Text($"{source.Name} has {source.DegreesOfFreedom:0.#} degrees of freedom; a t-distribution with no more than 2 has no standard deviation, so the standard uncertainty of the result never settles"),
                    "use the coverage interval, or take more readings", "JCGM 101 6.4.9.4"));
            }
            if (source.Set is not null && !source.Distribution.IsBellShaped)
            {
                findings.Add(new Finding(
                    "correlated-drawn-normal", Severity.Warning,
                    $"{source.Name} ({source.Distribution.Name}) is correlated with another input and was drawn as normal with its standard uncertainty: a correlation coefficient alone does not fix a joint distribution of another shape",
                    "express the correlation by the source that the inputs share", "JCGM 101 6.4.8"));
            }
        }
        return findings;
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
