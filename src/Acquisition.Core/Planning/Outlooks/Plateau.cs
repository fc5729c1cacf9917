using System;
using System.Collections.Generic;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Planning;

/// <summary>Whether the levels of a signal come to rest behind a response before the next edge disturbs them.</summary>
internal static class Plateau
{
    internal const double SettledWithin = 1e-3;

    /// <summary>The transitions of one period, or of all time; null for a signal that has none, or random ones.</summary>
    internal static IReadOnlyList<Transition>? TransitionsOf(Signal signal) => signal switch
    {
        LevelSignal levels => levels.Transitions,
        PulseSignal pulse => pulse.Transitions,
        StepSignal step => step.Transitions,
        _ => null,
    };

    /// <summary>
    /// How long a level must last behind a response so that it shows, s: from where the answer to the next edge begins to where that to the last one has settled. Models such as
    /// the Gaussian begin before the edge itself. Infinite where the response blocks DC or rings on.
    /// </summary>
    internal static double Needed(Response response) =>
        response.PassesDc && response.TransitionSpan(SettledWithin) is { } span ? span : double.PositiveInfinity;

    /// <summary>The shortest time between the end of one transition and the begin of the next, s; infinite where there is no next.</summary>
    internal static double Shortest(Signal signal)
    {
        if (signal is RandomBitsSignal random)
            return random.ShortestPlateau;
        double shortest = double.PositiveInfinity, period = signal.Period?.SiValue ?? double.PositiveInfinity;
        if (TransitionsOf(signal) is not { } transitions)
            return shortest;
        for (int i = 0; i < transitions.Count; i++)
        {
            double next = i + 1 < transitions.Count ? transitions[i + 1].Time : transitions[0].Time + period;
            Edge following = transitions[(i + 1) % transitions.Count].Edge;
            shortest = Math.Min(shortest, next - following.Before - transitions[i].Time - transitions[i].Edge.After);
        }
        return shortest;
    }
}
