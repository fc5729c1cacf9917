using System;
using System.Threading;

namespace Acquisition.Core;

/// <summary>
/// Who watches a long call: is told which part of it is done, and may cancel it. What is told never falls, is told at most about a hundred times, one at a time, and ends with the whole.
/// </summary>
/// <remarks>Thread-safe. There is none (null) where nobody watches, so that this costs nothing.</remarks>
internal sealed class LongCall
{
    private const double SmallestStep = 0.01;

    private readonly IProgress<Ratio>? _progress;
    private readonly CancellationToken _cancellation;
    private readonly LongCall? _whole;
    private readonly double _from, _to;
    private readonly object _gate = new();
    private double _told = double.NegativeInfinity;

    private LongCall(IProgress<Ratio>? progress, LongCall? whole, double from, double to, CancellationToken cancellation)
    {
        _progress = progress;
        _cancellation = cancellation;
        _whole = whole;
        _from = from;
        _to = to;
    }

    /// <summary>Null where nobody watches. A call that is cancelled before it begins does not begin.</summary>
    /// <exception cref="OperationCanceledException">It is cancelled already.</exception>
    internal static LongCall? Of(IProgress<Ratio>? progress, CancellationToken cancellation)
    {
        if (progress is null && !cancellation.CanBeCanceled)
            return null;
        var call = new LongCall(progress, null, 0, 1, cancellation);
        call.Reached(0);
        return call;
    }

    internal CancellationToken Cancellation => _cancellation;

    /// <summary>A part of the call that counts its own way from 0 to 1.</summary>
    internal LongCall Part(double from, double to) => new(null, this, from, to, _cancellation);

    /// <summary>So much of so many is done.</summary>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    internal void Reached(double done, double ofAll) => Reached(ofAll > 0 ? done / ofAll : 0);

    /// <summary>This fraction is done.</summary>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    internal void Reached(double fraction)
    {
        _cancellation.ThrowIfCancellationRequested();
        if (_whole is not null)
            _whole.Reached(_from + (_to - _from) * fraction);
        else if (_progress is not null && fraction < 1)
            Tell(fraction);
    }

    /// <summary>All is done: nothing can be cancelled any more.</summary>
    internal void Completed()
    {
        if (_progress is not null)
            Tell(1);
    }

    private void Tell(double fraction)
    {
        lock (_gate)
        {
            if (!(fraction == 1 || fraction >= _told + SmallestStep))
                return;
            _told = fraction;
            _progress!.Report(Ratio.FromFraction(fraction));
        }
    }
}
