using System;
using System.Numerics;

namespace Acquisition.Core;

// Many frequencies at once: the same arithmetic as one at a time, several lanes wide where the machine has them.
public abstract partial class Response
{
    /// <summary>The complex gain at many frequencies.</summary>
    /// <param name="hertz">The frequencies in Hz, each at least 0 and finite; in any order, not modified.</param>
    /// <param name="gains">Receives the gains: as long as <paramref name="hertz"/>.</param>
    /// <remarks>Equal to <see cref="ComplexGain(Frequency)"/> to about 1e-14. Allocates nothing.</remarks>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The arrays differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A frequency is negative or not finite, or outside the data of a measured response; the gains before it may have been written.</exception>
    public void ComplexGains(double[] hertz, Complex[] gains)
    {
        _ = hertz ?? throw new ArgumentNullException(nameof(hertz));
        _ = gains ?? throw new ArgumentNullException(nameof(gains));
        if (hertz.Length != gains.Length)
            throw new ArgumentException($"gains must be as long as hertz, {hertz.Length}; was {gains.Length}", nameof(gains));
        int unusable = FirstUnusable(hertz);
        if (unusable < hertz.Length)
            throw Refuse.OutOfRange(hertz[unusable], Frequency.Kind, nameof(hertz), "at least 0 Hz and finite");
        FillGains(hertz, gains, 0, hertz.Length);
    }

    private protected virtual void FillGains(double[] hertz, Complex[] gains, int from, int count)
    {
        for (int i = from; i < from + count; i++)
            gains[i] = ComplexGain(hertz[i]);
    }

    /// <summary>The place of the first entry that is no frequency; the length where all are.</summary>
    private static int FirstUnusable(double[] hertz)
    {
        int i = 0;
#if NET8_0_OR_GREATER
        Vector<double> largest = new(double.MaxValue);
        for (; i + Vector<double>.Count <= hertz.Length; i += Vector<double>.Count)
        {
            var f = new Vector<double>(hertz, i);
            if (!Vector.GreaterThanOrEqualAll(f, Vector<double>.Zero) || !Vector.LessThanOrEqualAll(f, largest))
                break;
        }
#endif
        while (i < hertz.Length && hertz[i] >= 0 && hertz[i] <= double.MaxValue)
            i++;
        return i;
    }
}
