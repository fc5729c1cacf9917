using System;
using System.Collections.Generic;
using System.Numerics;

namespace Acquisition.Core;

// What the signal is made of: lines where it repeats, a density where it does not.
public abstract partial class Signal
{
    /// <summary>The coefficient c(n) of exp(j 2π n f0 t), V, for a periodic signal; n at least 0.</summary>
    internal abstract Complex Coefficient(int number);

    private const int MostLines = 1 << 22;

    /// <summary>
    /// Every line above DC up to a frequency in hertz, in rising order, those of zero amplitude included; lazily, so that a caller may ask for all there are and stop where it has
    /// seen enough. Empty for a signal without lines.
    /// </summary>
    internal virtual IEnumerable<SpectralLine> Lines(double hertz)
    {
        if (Fundamental is not { } fundamental)
            yield break;
        double carrier = 2 * Complex.Abs(Coefficient(1));
        for (int n = 1; n < int.MaxValue && n * fundamental.SiValue <= hertz * (1 + 1e-12); n++)
            yield return new SpectralLine(n, n * fundamental.SiValue, Coefficient(n), carrier);
    }

    /// <summary>A harmonic, exactly (handbook 4.1): 1 is the fundamental, 0 is DC.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="number"/> is negative.</exception>
    /// <exception cref="InvalidOperationException">The signal does not repeat, so that it has no harmonics.</exception>
    public SpectralLine Harmonic(int number)
    {
        if (number < 0)
            throw new ArgumentOutOfRangeException(nameof(number), $"number must be at least 0; was {number}");
        double hertz = RequireFundamental();
        return new SpectralLine(number, number * hertz, number == 0 ? Mean : Coefficient(number), 2 * Complex.Abs(Coefficient(1)));
    }

    /// <summary>The first harmonics: the fundamental and those above it.</summary>
    /// <param name="count">How many, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="count"/> is below 1.</exception>
    /// <exception cref="InvalidOperationException">The signal does not repeat.</exception>
    public IReadOnlyList<SpectralLine> Harmonics(int count)
    {
        if (count < 1)
            throw new ArgumentOutOfRangeException(nameof(count), $"count must be at least 1; was {count}");
        var harmonics = new SpectralLine[count];
        for (int i = 0; i < count; i++)
            harmonics[i] = Harmonic(i + 1);
        return harmonics;
    }

    /// <summary>The share of the AC power in the harmonics up to a number (handbook 4.3).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="number"/> is below 1.</exception>
    /// <exception cref="InvalidOperationException">The signal does not repeat.</exception>
    public Ratio PowerUpToHarmonic(int number)
    {
        if (number < 1)
            throw new ArgumentOutOfRangeException(nameof(number), $"number must be at least 1; was {number}");
        RequireFundamental();
        double sum = 0;
        for (int n = number; n >= 1; n--)
            sum += Squared(Coefficient(n));
        return Ratio.FromSi(2 * sum / AcPower, nameof(number));
    }

    /// <summary>The rms of what is missing when the harmonics above a number are, relative to the AC rms: √(1 - P) (handbook 4.3).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="number"/> is below 1.</exception>
    /// <exception cref="InvalidOperationException">The signal does not repeat.</exception>
    public Ratio RmsErrorBeyondHarmonic(int number) => Ratio.FromSi(Math.Sqrt(Math.Max(0, 1 - PowerUpToHarmonic(number).SiValue)), nameof(number));

    /// <summary>The share of the AC power between two frequencies, both included: line by line, until what is left above is below 1e-12 of it.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="from"/> is negative, or <paramref name="to"/> lies below it, or so high that more than 4 194 304 lines lie below it and still matter: a signal that jumps has no last one.</exception>
    public Ratio PowerWithin(Frequency from, Frequency to)
    {
        if (!(from.SiValue >= 0))
            throw Refuse.OutOfRange(from.SiValue, Frequency.Kind, nameof(from), "at least 0 Hz");
        if (!(to.SiValue >= from.SiValue))
            throw Refuse.OutOfRange(to.SiValue, Frequency.Kind, nameof(to), $"at least {from}");
        return Ratio.FromSi(PowerShare(from.SiValue, to.SiValue), nameof(to));
    }

    private protected virtual double PowerShare(double from, double to)
    {
        const double seen = 1e-12;
        double sum = 0, all = 0;
        int count = 0, quiet = 0;
        foreach (SpectralLine line in Lines(to))
        {
            if (count == MostLines)
                throw Refuse.OutOfRange(to, Acquisition.Core.Frequency.Kind, nameof(to), $"below {line.Frequency}", $"{Name} has {MostLines} lines below that, and still more that matter");
            double power = 2 * Squared(line.Coefficient);
            all += power;
            if (line.Frequency.SiValue >= from * (1 - 1e-12))
                sum += power;
            // The n-th line has about n followers that matter together.
            count++;
            quiet = power * count < seen * AcPower ? quiet + 1 : 0;
            if (all >= (1 - seen) * AcPower || (quiet >= 64 && all > 0.5 * AcPower))
                break;
        }
        return sum / AcPower;
    }

    /// <summary>The spectrum of a signal that happens once: the Fourier transform of the voltage, in volt-seconds (V/Hz).</summary>
    /// <returns>The transform ∫ v(t) exp(-j 2π f t) dt; its magnitude at 0 Hz is the area of the pulse.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative.</exception>
    /// <exception cref="InvalidOperationException">The signal goes on for ever: it has lines, or a power density, instead.</exception>
    public Complex SpectrumAt(Frequency frequency)
    {
        if (!(frequency.SiValue >= 0))
            throw Refuse.OutOfRange(frequency.SiValue, Frequency.Kind, nameof(frequency), "at least 0 Hz");
        return VoltSeconds(frequency.SiValue);
    }

    private protected virtual Complex VoltSeconds(double hertz) => throw new InvalidOperationException($"{Name} goes on for ever: ask for its harmonics or its share of power within a band instead");

    private protected static double Squared(Complex value) => value.Real * value.Real + value.Imaginary * value.Imaginary;

    private double RequireFundamental() =>
        Fundamental is { } fundamental ? fundamental.SiValue : throw new InvalidOperationException($"{Name} does not repeat, so that it has no harmonics");
}
