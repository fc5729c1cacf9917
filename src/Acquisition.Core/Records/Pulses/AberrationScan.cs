using System;

namespace Acquisition.Core.Records;

/// <summary>Looks at the regions before and after a transition (handbook 8.3, 8.7 step 7).</summary>
internal static class AberrationScan
{
    /// <param name="samples">The samples.</param>
    /// <param name="states">The states.</param>
    /// <param name="factor">The length of a region in transition durations.</param>
    /// <param name="t">The transition.</param>
    /// <param name="previous">The first sample after the crossing of the transition before, or 0.</param>
    /// <param name="next">The first sample beyond the crossing of the next transition, or the end.</param>
    internal static Aberrations Of(SampleStore samples, StateLevels states, double factor, in TransitionPlaces t, int previous, int next)
    {
        if (double.IsNaN(t.Duration))
            return Aberrations.None;
        double length = Math.Max(3, factor * Math.Max(t.Duration, 1));
        int before = (int)Math.Floor(t.Proximal), from = (int)Math.Max(previous, Math.Ceiling(t.Proximal - length));
        int after = (int)Math.Ceiling(t.Distal), to = (int)Math.Min(next, Math.Floor(t.Distal + length) + 1);
        int cut = (t.Proximal - length < previous ? 1 : 0) + (t.Distal + length > next ? 1 : 0);
        double amplitude = states.AmplitudeSi, left = t.IsRising ? states.LowSi : states.HighSi, reached = t.IsRising ? states.HighSi : states.LowSi;
        double over = double.NaN, under = double.NaN, pre = double.NaN;
        if (before >= from)
        {
            samples.Extremes(from, before + 1, out double low, out double high);
            pre = Math.Max(0, (t.IsRising ? left - low : high - left) / amplitude);
        }
        if (after < to)
        {
            samples.Extremes(after, to, out double low, out double high);
            over = Math.Max(0, (t.IsRising ? high - reached : reached - low) / amplitude);
            // What is short of the state before it has been reached belongs to the transition.
            int arrival = t.IsRising ? samples.NextAtOrAbove(reached, after, to) : samples.NextBelow(Math.Max(reached, low), after, to);
            under = 0;
            if (arrival < to)
            {
                samples.Extremes(arrival, to, out low, out high);
                under = Math.Max(0, (t.IsRising ? reached - low : high - reached) / amplitude);
            }
        }
        return new Aberrations(over, under, pre, cut);
    }
}
