using System;
using System.Collections.Generic;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Planning;

/// <summary>How far edges go beyond the levels between which they run, behind a response that passes DC. Each kind of edge is worked out once.</summary>
internal sealed class Excursions(Response response)
{
    private readonly Dictionary<(EdgeShape Shape, double Scale), (double Over, double Under)> _known = [];

    /// <summary>Beyond the final and the first level, as fractions of the height.</summary>
    internal (double Over, double Under) Of(Edge edge)
    {
        lock (_known)
        {
            if (!_known.TryGetValue((edge.Shape, edge.Scale), out (double, double) beyond))
                _known.Add((edge.Shape, edge.Scale), beyond = response.Beyond(edge));
            return beyond;
        }
    }

    /// <summary>How many times the swing between its levels a signal whose levels all settle goes from the lowest to the highest value, 1 or more.</summary>
    internal double Widening(Signal signal)
    {
        if (Plateau.TransitionsOf(signal) is not { } transitions)
        {
            (double over, double under) = Of(signal.SteepestEdge!);
            return 1 + (2 * Math.Max(over, under));
        }
        // From the first level on: where that lies changes nothing.
        double level = 0, lowest = 0, highest = 0, bottom = 0, top = 0;
        foreach (Transition transition in transitions)
        {
            (double over, double under) = Of(transition.Edge);
            double before = level, change = transition.Change;
            level += change;
            lowest = Math.Min(lowest, level);
            highest = Math.Max(highest, level);
            top = Math.Max(top, change > 0 ? level + (over * change) : before - (under * change));
            bottom = Math.Min(bottom, change > 0 ? before - (under * change) : level + (over * change));
        }
        return (top - bottom) / (highest - lowest);
    }
}
