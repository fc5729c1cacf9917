using System;
using System.Collections.Generic;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Planning;

/// <summary>What one of the signals asks of the set-up, so that the one that asks most of a setting can decide it.</summary>
internal sealed class AdvisedSignal
{
    internal AdvisedSignal(Requirement wanted, Signal signal)
    {
        Signal = signal;
        Screen = new Screen(wanted.On(signal));
        NeededRate = Math.Max(Screen.NeededRate, 2.5 * signal.Tone);
        View = ViewOf(signal);
    }

    internal Signal Signal { get; }

    /// <summary>The demands on this signal alone.</summary>
    internal Screen Screen { get; }

    /// <summary>The lowest sample rate for it, Sa/s; 0 where nothing asks for one.</summary>
    internal double NeededRate { get; }

    /// <summary>How long a window shows it and its surroundings, s; 0 where nothing tells.</summary>
    internal double View { get; }

    internal double Swing => Signal.PeakToPeak.SiValue;

    // Ten periods show a signal and its regularity; what does not repeat is shown with as much before and after it, and over fifty of its edges at least.
    private static double ViewOf(Signal signal)
    {
        if (signal.Period is { } period)
            return 10 * period.SiValue;
        if (signal is RandomBitsSignal random)
            return 100 * random.BitSeconds;
        IReadOnlyList<Transition> transitions = Plateau.TransitionsOf(signal) ?? [];
        double span = transitions.Count > 1 ? transitions[transitions.Count - 1].Time - transitions[0].Time : 0;
        return Math.Max(3 * span, 50 * signal.RiseTime.SiValue);
    }
}
