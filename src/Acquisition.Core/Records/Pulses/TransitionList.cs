using System;
using System.Collections;
using System.Collections.Generic;

namespace Acquisition.Core.Records;

/// <summary>
/// The transitions of a record, each measured again when it is asked for: only the sample at which it passes the middle level is kept, in blocks that are never copied. A hundred
/// thousand objects would cost more than finding the edges.
/// </summary>
internal sealed class TransitionList : IReadOnlyList<PulseTransition>
{
    /// <summary>So many instants of one direction are asked for at most.</summary>
    internal const int MostInstants = 1_000_000;

    private const int BlockLength = 1 << 14;

    private readonly PulseMeasurement _measurement;
    private readonly EdgeScan? _scan;
    private readonly int _most;
    private readonly List<int[]> _crossings = new();
    private bool _firstRises;
    private int _kept;

    /// <param name="measurement">What they are of.</param>
    /// <param name="scan">What measures them again; null where there are none.</param>
    internal TransitionList(PulseMeasurement measurement, EdgeScan? scan)
    {
        _measurement = measurement;
        _scan = scan;
        _most = measurement.Settings.MostListed;
    }

    public int Count => Math.Min(_kept, _most);

    public PulseTransition this[int index]
    {
        get
        {
            if (index < 0 || index >= Count)
                throw new ArgumentOutOfRangeException(nameof(index), FormattableString.Invariant($"index must be from 0 to {Count - 1}; was {index}"));
            TransitionPlaces places = Places(index);
            int previous = index == 0 ? 0 : Places(index - 1).FirstBeyond, end = index + 1 == _kept ? _measurement.Record.Length : Places(index + 1).FirstOf;
            return new PulseTransition(_measurement, places, _scan!.Around(places, previous, end, out _), end);
        }
    }

    public IEnumerator<PulseTransition> GetEnumerator()
    {
        for (int i = 0; i < Count; i++)
            yield return this[i];
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>When the rising ones pass the middle level, from the first sample on, s; the first <see cref="MostInstants"/> of them.</summary>
    internal double[] RisingInstants()
    {
        int first = _firstRises ? 0 : 1;
        var instants = new double[Math.Min(MostInstants, Math.Max(0, (_kept - first + 1) / 2))];
        for (int k = 0; k < instants.Length; k++)
            instants[k] = _measurement.Record.Span(_scan!.MiddleOf(Crossing(first + 2 * k)));
        return instants;
    }

    /// <summary>Adds the next transition. One more than are listed is kept: it ends the state that the last one reaches.</summary>
    internal void Add(TransitionPlaces transition)
    {
        if (_kept == 0)
            _firstRises = transition.IsRising;
        if (_kept > _most && _kept >= 2 * MostInstants)
            return;
        if (_kept % BlockLength == 0)
            _crossings.Add(new int[BlockLength]);
        _crossings[_crossings.Count - 1][_kept++ % BlockLength] = transition.Crossing;
    }

    private int Crossing(int index) => _crossings[index / BlockLength][index % BlockLength];

    private TransitionPlaces Places(int index) => _scan!.Again(Crossing(index), index == 0 ? 0 : Crossing(index - 1), _firstRises == (index % 2 == 0));
}
