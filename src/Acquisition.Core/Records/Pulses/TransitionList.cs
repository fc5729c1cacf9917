using System;
using System.Collections;
using System.Collections.Generic;

namespace Acquisition.Core.Records;

/// <summary>
/// The transitions of a record, each measured again when it is asked for: only the sample at which it passes the middle level is kept. A hundred thousand objects would cost
/// more than finding the edges.
/// </summary>
internal sealed class TransitionList : IReadOnlyList<PulseTransition>
{
    private readonly PulseMeasurement _measurement;
    private readonly EdgeScan? _scan;
    private readonly int _most;
    private readonly GrowingArray<int> _crossings = new();
    private bool _firstRises;

    /// <param name="measurement">What they are of.</param>
    /// <param name="scan">What measures them again; null where there are none.</param>
    internal TransitionList(PulseMeasurement measurement, EdgeScan? scan)
    {
        _measurement = measurement;
        _scan = scan;
        _most = measurement.Settings.MostListed;
    }

    public int Count => Math.Min(_crossings.Count, _most);

    public PulseTransition this[int index]
    {
        get
        {
            if (index < 0 || index >= Count)
                throw new ArgumentOutOfRangeException(nameof(index), FormattableString.Invariant($"index must be from 0 to {Count - 1}; was {index}"));
            TransitionPlaces places = Places(index);
            int previous = index == 0 ? 0 : Places(index - 1).FirstBeyond, end = index + 1 == _crossings.Count ? _measurement.Record.Length : Places(index + 1).FirstOf;
            return new PulseTransition(_measurement, places, _scan!.Around(places, previous, end), end);
        }
    }

    public IEnumerator<PulseTransition> GetEnumerator()
    {
        for (int i = 0; i < Count; i++)
            yield return this[i];
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>Adds the next transition. One more than are listed is kept: it ends the state that the last one reaches.</summary>
    internal void Add(in TransitionPlaces transition)
    {
        if (_crossings.Count == 0)
            _firstRises = transition.IsRising;
        if (_crossings.Count <= _most)
            _crossings.Add(transition.Crossing);
    }

    private TransitionPlaces Places(int index) => _scan!.Again(_crossings[index], index == 0 ? 0 : _crossings[index - 1], _firstRises == (index % 2 == 0));
}
