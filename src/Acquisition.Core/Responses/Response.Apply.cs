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
    /// Harmonics are summed until the rest is below 1e-9 of the strongest; from the 16384th on, until less than 1 % of the spectrum of a jump is left, which takes 0.3 % from its foot. An ideal jump behind a single pole is then good to about
    /// 1e-7 of its swing away from the jump. A response that never falls keeps 16384 harmonics of a jump.
    /// </remarks>
    /// <exception cref="ArgumentNullException"><paramref name="signal"/> is null.</exception>
    /// <exception cref="NotSupportedException">The signal is random: take PseudoRandomBits or a BitPattern. Or more than 262 144 harmonics matter, as in rare fast pulses: take one of them alone.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A harmonic lies outside the data of a measured response that refuses to be asked there.</exception>
    public Signal Apply(Signal signal) => signal switch
    {
        null => throw new ArgumentNullException(nameof(signal)),
        RandomBitsSignal => throw new NotSupportedException($"{signal.Name} is random and has no waveform; take PseudoRandomBits or a BitPattern"),
        PulseSignal or StepSignal => new TransientSignal(signal, this),
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
