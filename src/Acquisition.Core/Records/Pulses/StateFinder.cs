using System;

namespace Acquisition.Core.Records;

/// <summary>Finds the two states of a record, or says why there are none (handbook 8.2, 8.7 steps 1 to 3).</summary>
internal static class StateFinder
{
    /// <summary>A state must hold this many samples for each one between the states. A sine holds 0.35, a ramp 0.13, exponential edges that have settled to 1 % about 0.6.</summary>
    private const double LeastPlateau = 0.6;

    /// <summary>A state is this part of the amplitude around its level when samples are counted.</summary>
    private const double Band = 0.1;

    /// <summary>Where fewer samples than this part lie beyond the fullest code of both states, there is no noise to see: others near it are on their way there. It is at most 0.2 steps rms then.</summary>
    private const double PartOfNoise = 0.005;

    /// <summary>Slow noise below this part of the amplitude is not worth a word.</summary>
    private const double LeastSlow = 0.001;

    internal static StateLevels? Find(Record record, PulseSettings settings, LongCall? call, out AmplitudeDistribution? distribution, out Finding? reason)
    {
        distribution = null;
        if (record.Samples.FirstNotFinite(call?.Part(0, 0.2)) is >= 0 and var index)
        {
            reason = PulseFindings.NotFinite(index);
            return null;
        }
        if (record.Length < 3)
        {
            reason = PulseFindings.TooShort(record.Length);
            return null;
        }
        int bins = settings.Bins ?? (record.Length < 10_000 ? 100 : 256);
        distribution = AmplitudeDistribution.Of(record.Samples, bins, call?.Part(0.2, 0.9));
        // A bin for each code where they are few: narrower bins would stay empty.
        if (settings.Bins is null && record.Samples is CodeSamples)
            bins = Math.Max(2, Math.Min(bins, distribution.Counts.Length));
        double step = record.ResolutionSi ?? 0;
        (double low, double high)? levels = settings.GivenLevels(record.Kind) ?? Levels(record, distribution, settings.Method, bins);
        if (levels is not var (low, high) || !(high > low))
        {
            reason = levels is null ? PulseFindings.Constant(distribution.Minimum, record.Kind) : PulseFindings.NotSeparated(0, 0, step, record.Kind);
            return null;
        }
        double amplitude = high - low;
        RunningMoments nearLow = Near(distribution, low, amplitude, step, -1), nearHigh = Near(distribution, high, amplitude, step, 1);
        double spread = Math.Max(Spread(nearLow), Spread(nearHigh));
        StateNoise noise = Noise(record.Samples, low, high, Math.Max(Reach(distribution, low, amplitude, step, -1), Reach(distribution, high, amplitude, step, 1)), nearLow, nearHigh, call?.Part(0.9, 1));
        bool given = settings.Method == StateLevelMethod.Given;
        bool quiet = step > 0 && distribution.PartBeyondFullest(low, 1.5 * step, -1) < PartOfNoise && distribution.PartBeyondFullest(high, 1.5 * step, 1) < PartOfNoise;
        var states = new StateLevels(low, high, noise.Rms, step, given ? 0 : Uncertainty(nearLow, low, step), given ? 0 : Uncertainty(nearHigh, high, step), settings.Method, settings.Method is StateLevelMethod.HistogramMode or StateLevelMethod.HistogramBinCenter ? bins : null, record.Kind, quiet) { OfNoise = noise, SlowNoise = Slow(noise, amplitude, step, record) };
        reason = null;
        if (given)
            return states;
        if (record.ResolutionSi is null && GridNoise.Step(record.Samples, distribution, 0.5 * (low + high)) is { } grid)
            step = grid;
        if (amplitude < 6 * spread || amplitude < 4 * step)
        {
            reason = PulseFindings.NotSeparated(amplitude, spread, step, record.Kind);
            return null;
        }
        double between = distribution.CountBetween(low + Band * amplitude, high - Band * amplitude);
        double share = Math.Min(
            distribution.CountBetween(low - Band * amplitude, low + Band * amplitude),
            distribution.CountBetween(high - Band * amplitude, high + Band * amplitude)) / between;
        if (share < LeastPlateau)
        {
            reason = PulseFindings.NoPlateau(share);
            return null;
        }
        return states;
    }

    private static (double Low, double High)? Levels(Record record, AmplitudeDistribution distribution, StateLevelMethod method, int bins)
    {
        if (distribution.Minimum == distribution.Maximum)
            return null;
        if (method is StateLevelMethod.ShorthMean or StateLevelMethod.ShorthMidpoint)
        {
            (ShortestHalf lower, ShortestHalf upper) = Halves(record, distribution);
            return method == StateLevelMethod.ShorthMean ? (lower.Mean, upper.Mean) : (lower.Midpoint, upper.Midpoint);
        }
        AmplitudeHistogram histogram = AmplitudeHistogram.Of(distribution, bins, record.Kind, record.Findings);
        int low = histogram.Mode(0, bins / 2), high = histogram.Mode(bins / 2, bins);
        return method == StateLevelMethod.HistogramMode ? (histogram.MeanOf(low), histogram.MeanOf(high)) : (histogram.CenterOf(low), histogram.CenterOf(high));
    }

    /// <summary>The shortest halves below and above the middle of the range: of codes from their counts, of numbers by sorting a copy of them.</summary>
    private static (ShortestHalf Lower, ShortestHalf Upper) Halves(Record record, AmplitudeDistribution distribution)
    {
        double middle = 0.5 * (distribution.Minimum + distribution.Maximum);
        int split = 0;
        if (record.Samples is CodeSamples)
        {
            while (distribution.Counts[split] == 0 || distribution.MeanOf(split) < middle)
                split++;
            return (ShortestHalf.OfCodes(distribution, 0, split), ShortestHalf.OfCodes(distribution, split, distribution.Counts.Length));
        }
        double[] sorted = record.ToSiValues();
        Array.Sort(sorted);
        while (sorted[split] < middle)
            split++;
        return (ShortestHalf.OfSorted(sorted, 0, split), ShortestHalf.OfSorted(sorted, split, sorted.Length));
    }

    /// <summary>The samples near a state.</summary>
    private static RunningMoments Near(AmplitudeDistribution distribution, double level, double amplitude, double step, int outwards)
    {
        double reach = Reach(distribution, level, amplitude, step, outwards);
        return distribution.Between(level - reach, level + reach);
    }

    /// <summary>How near samples are that belong to a state is decided by those on the far side, where no transition disturbs.</summary>
    private static double Reach(AmplitudeDistribution distribution, double level, double amplitude, double step, int outwards) =>
        Math.Min(0.4 * amplitude, Math.Max(1.5 * step, 4 * 1.4826 * distribution.MedianBeyond(level, outwards)));

    /// <summary>All that the samples near a state scatter by, settling and drift included.</summary>
    private static double Spread(RunningMoments near) => near.Count > 1 ? near.StandardDeviation : 0;

    /// <summary>The noise of the noisier state. Where a state is met in no stretch that tells noise from settling, all that its samples scatter by is taken.</summary>
    private static StateNoise Noise(SampleStore samples, double low, double high, double reach, RunningMoments nearLow, RunningMoments nearHigh, LongCall? call)
    {
        var stretches = new StretchFinder(samples, low, high, Math.Min(0.4 * (high - low), Math.Max(Band * (high - low), 1.25 * reach)));
        stretches.Read(call);
        StateNoise ofLow = NoMoreThan(Spread(nearLow), stretches.Low.Estimate()), ofHigh = NoMoreThan(Spread(nearHigh), stretches.High.Estimate());
        return ofLow.Rms > ofHigh.Rms ? ofLow : ofHigh;
    }

    private static StateNoise NoMoreThan(double spread, StateNoise? noise) =>
        noise is null || (!noise.IsLevelled && noise.Rms > spread) ? new StateNoise(spread, false, noise?.Window ?? 0, noise?.Fast) : noise;

    /// <summary>Noise that is slow for the states, where it is large enough to be more than the last digit of a display.</summary>
    private static Finding? Slow(StateNoise noise, double amplitude, double step, Record record) =>
        noise.Fast is { } fast && noise.Rms > Math.Max(LeastSlow * amplitude, 0.4 * step) ? PulseFindings.NoiseIsSlow(fast, noise.Rms, record.Span(noise.Window), record.Kind) : null;

    /// <summary>Of a level (handbook 6.1, 8.2): quantisation, the noise of the mean, and how far the mean of all samples near it is. That distance is mostly the error of the method itself.</summary>
    private static double Uncertainty(RunningMoments near, double level, double step)
    {
        double ofMean = near.Count > 1 ? near.StandardDeviation / Math.Sqrt(near.Count) : 0, off = near.Count > 0 ? near.Mean - level : 0;
        return Math.Sqrt(step * step / 12 + ofMean * ofMean + off * off);
    }
}
