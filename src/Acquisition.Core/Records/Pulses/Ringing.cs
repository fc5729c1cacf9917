using System;
using System.Collections.Generic;

namespace Acquisition.Core.Records;

/// <summary>Whether most edges are followed by ringing: the signal goes beyond the state it reaches and comes back across it, both clearly more than noise and the step of the converter.</summary>
internal static class Ringing
{
    /// <summary>So many edges are asked at most, evenly from the list.</summary>
    private const int MostAsked = 64;

    /// <summary>Parts of the amplitude: less is not worth a word.</summary>
    private const double LeastOver = 0.02, LeastBack = 0.01;

    internal static Finding? Find(PulseMeasurement pulses)
    {
        StateLevels states = pulses.States.Value;
        double unsure = (6 * states.NoiseSi + 1.01 * (pulses.Record.ResolutionSi ?? 0)) / states.AmplitudeSi, over = 0, back = 0;
        IReadOnlyList<PulseTransition> transitions = pulses.Transitions;
        int asked = 0, rings = 0;
        // An odd stride meets transitions of both directions.
        for (int k = 0, stride = Math.Max(1, transitions.Count / MostAsked) | 1; k < transitions.Count; k += stride)
        {
            if (transitions[k] is not { Overshoot.HasValue: true, Undershoot.HasValue: true } edge)
                continue;
            asked++;
            double beyond = edge.Overshoot.Value.SiValue, behind = edge.Undershoot.Value.SiValue;
            if (beyond < Math.Max(LeastOver, unsure) || behind < Math.Max(LeastBack, unsure))
                continue;
            rings++;
            over += beyond;
            back += behind;
        }
        return 2 * rings > asked ? PulseFindings.Rings(over / rings, back / rings, states.AmplitudeSi, pulses.Record.Kind) : null;
    }
}
