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

    /// <summary>Whether there are as many samples around a crossing.</summary>
    internal static bool Fit(int crossing, int length) => crossing >= Before && crossing <= length - Samples - 1 + Before;

    private readonly uint _proximal, _distal, _far, _onward;

    /// <param name="proximal">Beyond the proximal level.</param>
    /// <param name="distal">Beyond the distal level.</param>
    /// <param name="far">Beyond the far end of the hysteresis.</param>
    /// <param name="onward">Followed by a sample that does not go back.</param>
    internal EdgeBits(uint proximal, uint distal, uint far, uint onward)
    {
        _proximal = proximal;
        _distal = distal;
        _far = far;
        _onward = onward;
    }

    /// <summary>
    /// Where the transition lies, counted from the crossing: the last sample before the proximal level, the first beyond the distal one, and the first beyond the hysteresis. False where
    /// these samples do not tell: for a slow edge, a runt, and one that goes back on its way by ever so little. One that does not cannot turn, nor cross the middle level again.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal bool TryMeasure(out int last, out int first, out int outside)
    {
        uint ends = _distal >> Before, begins = ~_proximal << (Samples - Before), far = _far >> Before;
        last = -1 - BitOperations.LeadingZeroCount(begins);
        first = BitOperations.TrailingZeroCount(ends);
        outside = BitOperations.TrailingZeroCount(far);
        // From the last sample before the edge to the one before it is beyond both.
        uint edge = (1u << (Before + (first > outside ? first : outside))) - (1u << (Before + last));
        return ends != 0 && begins != 0 && far != 0 && (~_onward & edge) == 0;
    }
}
#endif
