using System;
using System.Numerics;
using MathNet.Numerics.Providers.FourierTransform;

namespace Acquisition.Core.Signals;

/// <summary>
/// Σ change · exp(-j 2π n t/T) of transitions that lie on an even grid, as those of a bit pattern do: it repeats after as many harmonics as there are slots, so that one
/// transform holds it for all of them.
/// </summary>
internal static class SlotSpectrum
{
    /// <param name="transitions">In a period that begins at 0 s.</param>
    /// <param name="period">The period, s.</param>
    /// <param name="slots">How many slots it has; each transition lies at the beginning of one.</param>
    internal static Complex[] Of(Transition[] transitions, double period, int slots)
    {
        var changes = new Complex[slots];
        foreach (Transition transition in transitions)
            changes[(int)Math.Round(transition.Time / period * slots) % slots] += transition.Change;
        ManagedFourierTransformProvider.Instance.Forward(changes, FourierTransformScaling.NoScaling);
        // The changes of a period add up to nothing.
        changes[0] = Complex.Zero;
        return changes;
    }
}
