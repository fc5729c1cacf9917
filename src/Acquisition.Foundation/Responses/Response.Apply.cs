using System;
using System.Collections.Generic;
using Acquisition.Core.Responses;
using Acquisition.Core.Signals;

namespace Acquisition.Core;

public abstract partial class Response
{
    /// <summary>
    /// The signal that comes out: of a periodic one the steady state, each harmonic with its own gain and phase; of a single pulse or step the transient.
    /// Its swing, crest factor, rms and value at a time are what an ideal instrument behind this response would show.
    /// </summary>
    /// <param name="signal">What goes in.</param>
    /// <remarks>
    /// A signal of levels that would need more than 16384 harmonics is the sum of what its edges do, each until it has settled, to about 1e-9 of the swing; times far from 0 carry the
    /// rounding of the time itself. Anything else is summed over its harmonics until the rest is below 1e-9 of the strongest; from the 16384th on, until less than 1 % of the spectrum
    /// of a jump is left. Behind measured data whose tail is too lively to be followed, edges are added only where harmonics do not serve, each until less than 1e-4 of it is left.
    /// </remarks>
    /// <exception cref="ArgumentNullException"><paramref name="signal"/> is null.</exception>
    /// <exception cref="NotSupportedException">The signal is random: take PseudoRandomBits or a BitPattern. Or more than 262 144 harmonics matter and edges cannot be added up: rare bursts, or a gain that ends abruptly and rings for ever.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A harmonic lies outside the data of a measured response that refuses to be asked there.</exception>
    public Signal Apply(Signal signal) => signal switch
    {
        null => throw new ArgumentNullException(nameof(signal)),
        RandomBitsSignal => throw new NotSupportedException($"{signal.Name} is random and has no waveform; take PseudoRandomBits or a BitPattern"),
        PulseSignal or StepSignal => new TransientSignal(signal, this),
        SuperposedSignal earlier => earlier.Then(this),
        LevelSignal levels when SuperposedSignal.Of(levels, this) is { } superposed => superposed,
        _ => new FilteredSignal(signal, this),
    };

    /// <summary>The times at which the output of an edge is worth looking at, after the edge's 50 % point at the input.</summary>
    internal List<double> EdgeTimes(Edge edge)
    {
        StepResponse output = EdgeStep(edge, out double shift);
        double delay = StepDelay - shift;
        return output.Times.ConvertAll(time => time + delay);
    }

    /// <summary>The output delayed step or edge at a time after the edge's 50 % point at the input.</summary>
    internal Func<double, double> EdgeOutput(Edge edge)
    {
        StepResponse output = EdgeStep(edge, out double shift);
        double delay = StepDelay - shift;
        return seconds => output.Value(seconds - delay);
    }
}
