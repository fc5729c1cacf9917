using System;
using System.Collections;
using System.Collections.Generic;

namespace Acquisition.Core.Records;

/// <summary>What is kept of a transition while a record is measured.</summary>
internal readonly struct MeasuredTransition
{
    internal MeasuredTransition(in TransitionPlaces places, in Aberrations aberrations, int endOfState)
    {
        Places = places;
        Aberrations = aberrations;
        EndOfState = endOfState;
    }

    internal TransitionPlaces Places { get; }

    internal Aberrations Aberrations { get; }

    /// <summary>The sample at which the next transition begins, or the end of the record.</summary>
    internal int EndOfState { get; }
}

/// <summary>The transitions of a record, each made when it is asked for: a hundred thousand objects would cost more than finding the edges.</summary>
internal sealed class TransitionList : IReadOnlyList<PulseTransition>
{
    private readonly PulseMeasurement _measurement;
    private readonly List<MeasuredTransition> _transitions = new();

    internal TransitionList(PulseMeasurement measurement) => _measurement = measurement;

    public int Count => _transitions.Count;

    public PulseTransition this[int index] => index >= 0 && index < _transitions.Count
        ? new PulseTransition(_measurement, _transitions[index])
        : throw new ArgumentOutOfRangeException(nameof(index), FormattableString.Invariant($"index must be from 0 to {_transitions.Count - 1}; was {index}"));

    public IEnumerator<PulseTransition> GetEnumerator()
    {
        foreach (MeasuredTransition transition in _transitions)
            yield return new PulseTransition(_measurement, transition);
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    internal void Add(in MeasuredTransition transition) => _transitions.Add(transition);
}
