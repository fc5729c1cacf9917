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
        foreach (double f in hertz)
        {
            if (!(f >= 0 && f <= double.MaxValue))
                throw Refuse.OutOfRange(f, Frequency.Kind, nameof(hertz), "at least 0 Hz and finite");
        }
        FillGains(hertz, gains, 0, hertz.Length);
    }

    private protected virtual void FillGains(double[] hertz, Complex[] gains, int from, int count)
    {
        for (int i = from; i < from + count; i++)
            gains[i] = ComplexGain(hertz[i]);
    }
}
