using Acquisition.Core.Planning;

namespace Acquisition.Core;

// What the display shows beyond the levels of the signal (handbook 2.2, 2.6).
public sealed partial class Outlook
{
    /// <summary>By how much an ideal step overshoots behind the chain, as a fraction of its height; null where the chain blocks DC. What becomes of the signal's own edge is <see cref="DisplayedOvershoot"/>.</summary>
    public Ratio? ChainOvershoot => Response.PassesDc ? Response.Overshoot : null;

    /// <summary>By how much the signal's steepest edge overshoots on the display because of the chain, as a fraction of its height: the slower the edge, the less; null for a signal without edges, or where the chain blocks DC.</summary>
    public Ratio? DisplayedOvershoot => Response.PassesDc && Signal.SteepestEdge is { } edge ? Ratio.FromSi(_beyond.Value.Of(edge).Over, "overshoot") : null;

    /// <summary>From the lowest to the highest value on the display, re the source: <see cref="DisplayedAmplitude"/> and, where the levels of the signal settle, what its edges pre- and overshoot beyond them. A range must hold that.</summary>
    public PeakToPeakVoltage DisplayedExtremes
    {
        get
        {
            double swing = DisplayedAmplitude.Value.SiValue;
            // Where levels do not settle, the swing is told between the extremes; behind an AC coupling no edge ends at a level.
            if (!Response.PassesDc || !LevelsSettle || Signal.SteepestEdge is null)
                return DisplayedAmplitude.Value;
            return PeakToPeakVoltage.FromSi(swing * _beyond.Value.Widening(Signal), "extremes");
        }
    }
}
