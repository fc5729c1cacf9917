using System;
using System.Collections.Generic;

namespace Acquisition.Core.Records;

/// <summary>
/// The noise of one state, from stretches in which the signal rests there. Each is cut into windows of 4, 8, 16 ... samples, a straight line is fitted to every window, and the median of the residual variances
/// is taken: settling, tilt and drift are nearly straight within a window, ringing and spikes are in less than half of them. Longer windows see slower noise: where they see no more than the ones before, it is all there is.
/// </summary>
internal sealed class StretchNoise
{
    /// <summary>Samples of the shortest window: a line through fewer leaves nothing to tell noise by.</summary>
    private const int Shortest = 4;

    /// <summary>Windows of 4 to 4096 samples.</summary>
    private const int Lengths = 11;

    /// <summary>A stretch of fewer samples is an edge on its way, or shows too little of its state.</summary>
    private const int LeastSamples = 8;

    /// <summary>Fewer windows have no median worth the name.</summary>
    private const int LeastWindows = 4;

    /// <summary>Longer windows that see so many times the variance see slower noise. Of noise behind a single pole, 4 % of the variance is missed where the doubled window adds 5 %.</summary>
    private const double Grows = 1.05;

    /// <summary>Windows of so many samples meet codes often enough, also where more of them than this part are alike.</summary>
    private const int Long = 128;

    private const double MostAlike = 0.02;

    /// <summary>Fewer samples level off by chance, so that a second sign is asked for.</summary>
    private const int Plenty = 2048;

    private readonly double _level;
    private readonly List<double>[] _variances = new List<double>[Lengths];
    private readonly WindowSums[] _waiting = new WindowSums[Lengths];
    private RunningMoments _early, _late, _lateMeans;

    internal StretchNoise(double level)
    {
        _level = level;
        for (int k = 0; k < Lengths; k++)
            _variances[k] = new List<double>();
    }

    /// <summary>How many samples lie in windows.</summary>
    internal long Samples => (long)Shortest * _variances[0].Count;

    /// <summary>Adds a stretch of samples that are all in the state. An eighth at either end is left out: edges begin and end there.</summary>
    internal void Add(double[] block, int from, int to)
    {
        if (to - from < LeastSamples)
            return;
        int trim = Math.Max(1, (to - from) / 8);
        from += trim;
        to -= trim;
        int longest = Math.Max(2 * Shortest, (to - from) / 4), middle = from + (to - from) / 2;
        Array.Clear(_waiting, 0, Lengths);
        var late = default(RunningMoments);
        for (; from + Shortest <= to; from += Shortest)
        {
            WindowSums window = WindowSums.Of(block, from, Shortest, _level);
            if (from >= middle)
                late.Add(window.Moments);
            else
                _early.Add(window.Moments);
            for (int k = 0; k < Lengths && window.Length <= longest; k++)
            {
                _variances[k].Add(window.ResidualVariance);
                if (_waiting[k].Length == 0)
                {
                    _waiting[k] = window;
                    break;
                }
                window = _waiting[k].Followed(window);
                _waiting[k] = default;
            }
        }
        _late.Add(late);
        if (late.Count > 0)
            _lateMeans.Add(late.Mean);
    }

    /// <summary>The noise; null where the state was met in no stretch that is long enough.</summary>
    internal StateNoise? Estimate()
    {
        if (_variances[0].Count < LeastWindows)
            return null;
        double slack = Grows + 3 * Math.Sqrt(2.0 / Samples), before = Variance(0, out bool few);
        int length = Shortest;
        for (int k = 1; k < Lengths && _variances[k].Count >= LeastWindows; k++)
        {
            length *= 2;
            double variance = Variance(k, out bool fewNow);
            if (variance <= slack * before && (!(few || fewNow) || length >= Long) && (Samples >= Plenty || IsConfirmed(k, slack * variance)))
                return new StateNoise(Math.Sqrt(variance), true, length, null);
            (before, few) = (variance, fewNow);
        }
        return NotLevelled(before, length);
    }

    /// <summary>Whether the next windows see no more either, or the second halves of the stretches not much more where there are none.</summary>
    private bool IsConfirmed(int k, double most) => k + 1 < Lengths && _variances[k + 1].Count >= LeastWindows ? Variance(k + 1, out _) <= most : Square(_late) <= 2 * most;

    /// <summary>
    /// All that the second halves of the stretches scatter by, in which settling and ringing have died away. It is slow noise where the shortest windows see less of it, the first halves scatter no more, and
    /// stretches differ from each other.
    /// </summary>
    private StateNoise NotLevelled(double variance, int length)
    {
        double all = Math.Max(variance, Square(_late)), fast = 0;
        foreach (double one in _variances[0])
            fast += one / _variances[0].Count;
        bool slow = all > 1.5 * fast && Square(_early) < 4 * all && (_lateMeans.Count < 3 || Square(_lateMeans) > 0.05 * all);
        return new StateNoise(Math.Sqrt(all), false, length, slow ? Math.Sqrt(fast) : null);
    }

    private static double Square(RunningMoments moments) => moments.Count > 1 ? moments.StandardDeviation * moments.StandardDeviation : 0;

    /// <summary>The variance that windows of a length see: their median over that of chi squared per degree of freedom, (1 - 2/(9n))^3 (Wilson and Hilferty 1931).</summary>
    /// <param name="k">Which length.</param>
    /// <param name="few">Whether many windows are alike, as they are on a few codes of a converter: a median of such says little.</param>
    private double Variance(int k, out bool few)
    {
        double[] sorted = _variances[k].ToArray();
        Array.Sort(sorted);
        double median = 0.5 * (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]), part = 1 - 2 / (9.0 * ((Shortest << k) - 2));
        int alike = 0;
        foreach (double variance in sorted)
            alike += Math.Abs(variance - median) <= 1e-9 * median ? 1 : 0;
        few = alike > Math.Max(1, MostAlike * sorted.Length);
        return median / (part * part * part);
    }
}
