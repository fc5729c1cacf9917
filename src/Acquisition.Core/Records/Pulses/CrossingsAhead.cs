using System;

namespace Acquisition.Core.Records;

/// <summary>
/// The crossings of the middle level, either way, in order. They are found many ahead of the transitions that are made of them: where the next transition is then does not wait for where
/// the last one ended, and the processor measures several at once.
/// </summary>
internal sealed class CrossingsAhead<TView>
    where TView : struct, ISampleView
{
    /// <summary>Few enough that what was looked at is still at hand when the transitions are.</summary>
    private const int Most = 192;

    private readonly TView _samples;
    private readonly Level _middle;
#if NET8_0_OR_GREATER
    private readonly EdgeLevels? _rising, _falling;
#endif
    private int _looked = 1;

    internal CrossingsAhead(TView samples, in Level middle)
    {
        _samples = samples;
        _middle = middle;
    }

#if NET8_0_OR_GREATER
    /// <summary>Those whose surroundings are compared with levels that lie between codes.</summary>
    internal CrossingsAhead(TView samples, in Level middle, EdgeLevels rising, EdgeLevels falling)
        : this(samples, middle)
    {
        _rising = rising;
        _falling = falling;
    }
#endif

    /// <summary>Where they are: those from <see cref="Next"/> to before <see cref="Count"/> have not been taken.</summary>
    internal int[] Places { get; } = new int[Most];

#if NET8_0_OR_GREATER
    /// <summary>The samples around them, compared with the levels of transitions that are made of them, where these lie between codes.</summary>
    internal EdgeBits[] Bits { get; } = new EdgeBits[Most];
#endif

    internal int Next { get; set; }

    internal int Count { get; private set; }

    /// <summary>Looks for more where all have been taken; false where there are none.</summary>
    internal bool Look(LongCall? call)
    {
        int to = _samples.Length;
        while (Next == Count)
        {
            if (_looked >= to)
                return false;
            call?.Reached(_looked, to);
            _looked = _samples.Crossings(_middle, _looked, call is null ? to : _looked + Math.Min(SampleStore.SamplesPerLook, to - _looked), Places, out int count);
            Count = count;
            Next = 0;
#if NET8_0_OR_GREATER
            // Directions alternate.
            if (count > 0 && _rising is not null && _samples.IsAtOrAbove(Places[0], _middle) is var rises)
                _samples.Compare(Places, count, rises ? _rising : _falling!, rises ? _falling! : _rising, Bits);
#endif
        }
        return true;
    }
}
