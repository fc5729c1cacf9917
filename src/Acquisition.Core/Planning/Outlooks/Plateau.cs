using System;
using System.Collections.Generic;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Planning;

/// <summary>The height that a signal with levels reaches on the display.</summary>
internal static class Plateau
{
    private const double SettledWithin = 1e-3;

    /// <summary>Peak to peak in volts, and how it was found.</summary>
    internal static (double Volts, string Method) Displayed(Signal signal, Response response)
    {
        double swing = signal.PeakToPeak.SiValue;
        if (response.PassesDc && signal is LevelSignal levels)
        {
            double settling = response.SettlingTime(Ratio.FromFraction(SettledWithin)).SiValue, shortest = ShortestPlateau(levels);
            if (shortest >= settling)
                return (swing * Math.Abs(response.DcGain), "levels settle to 0.1 % within " + PlainText.Short(settling, Duration.Kind) + ", their plateaus last " + PlainText.Short(shortest, Duration.Kind));
        }
        if (signal.Fundamental is null)
            return (swing * Math.Abs(response.StepReference), "gain of the chain for a long pulse");
        (double low, double high) = new DisplayedWaveform(signal, response).Extremes();
        return (high - low, "lowest to highest value of the computed waveform: its levels do not settle");
    }

    /// <summary>The shortest time between the end of one transition and the begin of the next, s.</summary>
    private static double ShortestPlateau(LevelSignal signal)
    {
        IReadOnlyList<Transition> transitions = signal.Transitions;
        double shortest = double.PositiveInfinity, period = signal.Period?.SiValue ?? double.PositiveInfinity;
        for (int i = 0; i < transitions.Count; i++)
        {
            double next = i + 1 < transitions.Count ? transitions[i + 1].Time : transitions[0].Time + period;
            Edge following = transitions[(i + 1) % transitions.Count].Edge;
            shortest = Math.Min(shortest, next - following.Before - transitions[i].Time - transitions[i].Edge.After);
        }
        return shortest;
    }
}
