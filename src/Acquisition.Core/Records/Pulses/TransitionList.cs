using System;
using System.Collections;
using System.Collections.Generic;
using System.Threading;

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

    /// <summary>What measured the transition that was asked for last; null while somebody measures with it.</summary>
    private EdgeBatch? _spare;

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
            EdgeBatch batch = Interlocked.Exchange(ref _spare, null) ?? new EdgeBatch(4);
            PulseTransition transition = Measured(batch, index);
            _spare = batch;
            return transition;
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

    /// <summary>Adds transitions of a batch, from one on. One more than are listed is kept: it ends the state that the last one reaches.</summary>
    internal void Add(EdgeBatch batch, int first)
    {
        if (_kept == 0)
            _firstRises = batch.IsRising(first);
        for (int k = first; k < batch.Count && (_kept <= _most || _kept < 2 * MostInstants);)
        {
            int place = _kept % BlockLength, some = Math.Min(batch.Count - k, BlockLength - place);
            if (place == 0)
                _crossings.Add(new int[BlockLength]);
            Array.Copy(batch.Crossing, k, _crossings[_crossings.Count - 1], place, some);
            k += some;
            _kept += some;
        }
    }

    private int Crossing(int index) => _crossings[index / BlockLength][index % BlockLength];

    /// <summary>Measures a transition once more, between its neighbors.</summary>
    private PulseTransition Measured(EdgeBatch batch, int index)
    {
        const int place = EdgeBatch.Carried;
        bool rising = _firstRises == (index % 2 == 0), last = index + 1 == _kept;
        batch.Clear();
        batch.EvenRises = rising;
        if (index > 0)
        {
            batch.Count--;
            Again(batch, index - 1, !rising);
        }
        Again(batch, index, rising);
        if (!last)
            Again(batch, index + 1, !rising);
        _scan!.Place(batch, index > 0 ? place - 1 : place, _measurement.Record.Length);
        _scan.Surround(batch, place, place + 1);
        return new PulseTransition(_measurement, batch, place, _scan.Levels(rising).Aberrations(batch.Extremes[place]));
    }

    private void Again(EdgeBatch batch, int index, bool rising) => _scan!.Again(batch, Crossing(index), index == 0 ? 0 : Crossing(index - 1), rising);
}
