using System;

namespace Acquisition.Core.Responses;

/// <summary>A resonance that goes on ringing after a step when everything else, and the patience of a scan, has ended.</summary>
internal sealed class Ringing
{
    /// <param name="omega">The angular frequency at which it rings, rad/s.</param>
    /// <param name="decay">The rate at which it decays, 1/s.</param>
    /// <param name="until">When the scan ends that shows each of its periods, s.</param>
    /// <param name="alone">From when on nothing else moves, s; infinite where several resonances ring on.</param>
    internal Ringing(double omega, double decay, double until, double alone)
    {
        Omega = omega;
        Decay = decay;
        Until = until;
        Alone = alone;
    }

    internal double Omega { get; }

    internal double Decay { get; }

    internal double Until { get; }

    internal double Alone { get; }

    internal double Quality => Omega / (2 * Decay);

    internal double Hertz => Omega / (2 * Math.PI);

    /// <summary>In words, after the name of what rings: <c>Q = 330000 at 325 MHz</c>.</summary>
    internal string Sharpness =>
        (Quality <= 1e12 ? FormattableString.Invariant($"Q = {Quality:G3}") : "undamped") + " at " + Frequency.FromSi(Hertz, "frequency").InWords();

    /// <summary>The same, a delay later.</summary>
    internal Ringing Later(double delay) => new(Omega, Decay, Until + delay, Alone + delay);

    /// <summary>The amplitude at a time when nothing else moves, from the deviation and its slope there.</summary>
    internal double Amplitude(double deviation, double slope)
    {
        double quadrature = (slope + Decay * deviation) / Omega;
        return Math.Sqrt(deviation * deviation + quadrature * quadrature);
    }
}
