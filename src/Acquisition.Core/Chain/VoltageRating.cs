using System;
using System.Collections.Generic;

namespace Acquisition.Core;

/// <summary>
/// The largest voltage that a probe or an input stands, DC plus peak AC, falling with frequency (handbook 7.10). A caution, not a permission: the equipment's
/// manual, local codes and licensed practice decide, and the lowest rating of instrument, probe and accessory holds.
/// </summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class VoltageRating
{
    private readonly double[] _hertz, _volts;

    private VoltageRating(double[] hertz, double[] volts)
    {
        _hertz = hertz;
        _volts = volts;
    }

    /// <summary>One voltage at every frequency.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="maximum"/> is not above 0 V.</exception>
    public static VoltageRating Constant(Voltage maximum) =>
        new(new double[] { 0 }, new[] { Refuse.UnlessAboveZero(maximum.SiValue, Voltage.Kind, nameof(maximum)) });

    /// <summary>A derating curve as data sheets print it, straight between its points on logarithmic scales.</summary>
    /// <param name="frequencies">The frequencies, above 0 Hz and rising. Below the first its voltage holds; above the last nothing is known, and nothing allowed.</param>
    /// <param name="maxima">The voltage at each of them.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The lists are empty or of different length, or the frequencies do not rise.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is not above zero.</exception>
    public static VoltageRating Derated(IReadOnlyList<Frequency> frequencies, IReadOnlyList<Voltage> maxima)
    {
        _ = frequencies ?? throw new ArgumentNullException(nameof(frequencies));
        _ = maxima ?? throw new ArgumentNullException(nameof(maxima));
        if (frequencies.Count == 0 || frequencies.Count != maxima.Count)
            throw new ArgumentException(FormattableString.Invariant($"frequencies and maxima must be as many, at least one; were {frequencies.Count} and {maxima.Count}"), nameof(maxima));
        var hertz = new double[frequencies.Count];
        var volts = new double[frequencies.Count];
        for (int i = 0; i < hertz.Length; i++)
        {
            hertz[i] = Refuse.UnlessAboveZero(frequencies[i].SiValue, Frequency.Kind, nameof(frequencies));
            volts[i] = Refuse.UnlessAboveZero(maxima[i].SiValue, Voltage.Kind, nameof(maxima));
            if (i > 0 && hertz[i] <= hertz[i - 1])
                throw new ArgumentException($"frequencies must rise; {frequencies[i]} follows {frequencies[i - 1]}", nameof(frequencies));
        }
        return new VoltageRating(hertz, volts);
    }

    /// <summary>The largest voltage at a frequency; null above the end of the curve, where nothing is known.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative.</exception>
    public Voltage? At(Frequency frequency)
    {
        double f = frequency.SiValue;
        if (!(f >= 0))
            throw Refuse.OutOfRange(f, Frequency.Kind, nameof(frequency), "at least 0 Hz");
        int last = _hertz.Length - 1;
        if (_hertz[0] == 0 || f <= _hertz[0])
            return Voltage.FromSi(_volts[0], nameof(frequency));
        if (f > _hertz[last])
            return null;
        int i = 1;
        while (_hertz[i] < f)
            i++;
        double share = Math.Log(f / _hertz[i - 1]) / Math.Log(_hertz[i] / _hertz[i - 1]);
        return Voltage.FromSi(_volts[i - 1] * Math.Pow(_volts[i] / _volts[i - 1], share), nameof(frequency));
    }
}
