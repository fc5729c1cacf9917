using System;
#if NET8_0_OR_GREATER
using System.Runtime.CompilerServices;
#endif

namespace Acquisition.Core.Records;

/// <summary>
/// The crossings of the middle level, either way, in order. They are found many ahead of the transitions that are made of them: where the next transition is then does not wait for where
/// the last one ended, and the processor measures several at once.
/// </summary>
internal sealed class CrossingsAhead<TView>
    where TView : struct, ISampleView
{
    private const int Most = 256;

    private readonly TView _samples;
    private readonly Level _middle;
    private readonly int[] _places = new int[Most];
    private int _next, _count, _looked = 1;

    internal CrossingsAhead(TView samples, in Level middle)
    {
        _samples = samples;
        _middle = middle;
    }

    /// <summary>The first crossing after a sample; the length of the record where there is none. What lies before it is not asked for again.</summary>
#if NET8_0_OR_GREATER
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
#endif
    internal int After(int position, LongCall? call)
    {
        while (true)
        {
            while (_next < _count)
            {
                int place = _places[_next++];
                if (place > position)
                    return place;
            }
            if (!Look(call))
                return _samples.Length;
        }
    }

    private bool Look(LongCall? call)
    {
        int to = _samples.Length;
        if (_looked >= to)
            return false;
        call?.Reached(_looked, to);
        _looked = _samples.Crossings(_middle, _looked, call is null ? to : _looked + Math.Min(SampleStore.SamplesPerLook, to - _looked), _places, out _count);
        _next = 0;
        return true;
    }
}
