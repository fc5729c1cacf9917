#if NET8_0_OR_GREATER
using System.Numerics;
using System.Runtime.CompilerServices;

namespace Acquisition.Core.Records;

/// <summary>
/// Which of 32 samples around a crossing are beyond the levels of a transition: a bit for each sample, that of the crossing is <see cref="Before"/>. Where a transition begins
/// and ends is then counted in bits, without a guess for each sample that is wrong once an edge.
/// </summary>
internal readonly struct EdgeBits
{
    internal const int Samples = 32;

    /// <summary>So many of them are before the crossing. One more after the last is looked at.</summary>
    internal const int Before = 16;

    private readonly uint _near, _proximal, _middle, _distal, _far, _onward;

    /// <param name="near">Beyond the near end of the hysteresis.</param>
    /// <param name="proximal">Beyond the proximal level.</param>
    /// <param name="middle">Beyond the middle level.</param>
    /// <param name="distal">Beyond the distal level.</param>
    /// <param name="far">Beyond the far end of the hysteresis.</param>
    /// <param name="onward">Followed by a sample that does not go back.</param>
    internal EdgeBits(uint near, uint proximal, uint middle, uint distal, uint far, uint onward)
    {
        _near = near;
        _proximal = proximal;
        _middle = middle;
        _distal = distal;
        _far = far;
        _onward = onward;
    }

    /// <summary>
    /// Where the transition lies, counted from the crossing: the last sample before the proximal level, the first beyond the distal one, the first outside the hysteresis, and how
    /// often the middle level is crossed on the way. False where these samples do not tell: for a slow edge, a runt, one that goes back on its way.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal bool TryMeasure(out int last, out int first, out int armed, out int turns)
    {
        uint outside = (_far | ~_near) >> Before, ends = (_distal | ~_near) >> Before, begins = ~_proximal << (Samples - Before);
        armed = BitOperations.TrailingZeroCount(outside);
        first = BitOperations.TrailingZeroCount(ends);
        last = -1 - BitOperations.LeadingZeroCount(begins);
        uint within = ((1u << armed) - 1) >> 1, edge = (1u << (Before + first)) - (1u << (Before + last));
        turns = BitOperations.PopCount(((_middle ^ (_middle >> 1)) >> Before) & within);
        return outside != 0 && ends != 0 && begins != 0 && (_far >> Before >> armed & _distal >> Before >> first & 1) != 0 && (~_onward & edge) == 0;
    }
}
#endif
