#if NET8_0_OR_GREATER
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;
#endif

namespace Acquisition.Core.Records;

/// <summary>Where to look for what surrounds a transition: from a sample up to the last one before the proximal level, and from the first after the distal level to before another.</summary>
internal readonly struct EdgeRegions
{
    internal readonly int From, Before, After, To;

    private EdgeRegions(int from, int before, int after, int to)
    {
        From = from;
        Before = before;
        After = after;
        To = to;
    }

    /// <summary>The whole parts of four places.</summary>
    internal static EdgeRegions Of(FourNumbers places)
    {
#if NET8_0_OR_GREATER
        if (Avx.IsSupported)
        {
            // Four integers in a row are what the structure is.
            Vector128<int> whole = Avx.ConvertToVector128Int32WithTruncation(places.Vector);
            return Unsafe.As<Vector128<int>, EdgeRegions>(ref whole);
        }
#endif
        return new EdgeRegions((int)places.First, (int)places.Second, (int)places.Third, (int)places.Fourth);
    }
}
