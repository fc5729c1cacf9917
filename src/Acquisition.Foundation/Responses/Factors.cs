using System;
using System.Collections.Generic;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>
/// A response taken apart: gain · product of sections · exp(s² v / 2) · exp(-s delay), where v is the variance of a Gaussian impulse response. Every
/// analogue model of the library has this form, and a cascade of them keeps it, so that its bandwidth and step are computed from what it is made of.
/// </summary>
internal sealed partial class Factors
{
    internal static readonly Factors Unity = new(1, Array.Empty<Section>(), 0, 0);

    private readonly Section[] _sections;
    private readonly bool _allPole;

    internal Factors(double gain, Section[] sections, double variance, double delay)
    {
        Gain = gain;
        _sections = sections;
        Variance = variance;
        Delay = delay;
        bool allPole = true;
        foreach (Section section in sections)
            allPole &= section.C1 == 0 && section.C2 == 0 && section.C0 == 1;
        _allPole = allPole;
    }

    /// <summary>The plain factor in front.</summary>
    internal double Gain { get; }

    /// <summary>The variance of the Gaussian factor's impulse response, s²; 0 where there is none.</summary>
    internal double Variance { get; }

    /// <summary>The pure delay, s.</summary>
    internal double Delay { get; }

    internal IReadOnlyList<Section> Sections => _sections;

    /// <summary>The number of poles.</summary>
    internal int Order
    {
        get
        {
            int order = 0;
            foreach (Section section in _sections)
                order += section.Order;
            return order;
        }
    }

    /// <summary>By how many the poles outnumber the zeros: the order of the roll-off far above the corners, the Gaussian apart.</summary>
    internal int RollOffOrder
    {
        get
        {
            int order = 0;
            foreach (Section section in _sections)
                order += section.Order - (section.C2 != 0 ? 2 : section.C1 != 0 ? 1 : 0);
            return order;
        }
    }

    internal double DcGain
    {
        get
        {
            double gain = Gain;
            foreach (Section section in _sections)
                gain *= section.C0;
            return gain;
        }
    }

    internal Factors Then(Factors next)
    {
        var sections = new Section[_sections.Length + next._sections.Length];
        _sections.CopyTo(sections, 0);
        next._sections.CopyTo(sections, _sections.Length);
        return new Factors(Gain * next.Gain, sections, Variance + next.Variance, Delay + next.Delay);
    }

    internal Factors WithoutDelay() => Delay == 0 ? this : new Factors(Gain, _sections, Variance, 0);

    internal Factors WithoutGaussian() => Variance == 0 ? this : new Factors(Gain, _sections, 0, Delay);

    internal Complex[] Poles()
    {
        var poles = new Complex[Order];
        int count = 0;
        foreach (Section section in _sections)
        {
            section.Poles(out Complex first, out Complex second);
            if (section.Order > 0)
                poles[count++] = first;
            if (section.Order > 1)
                poles[count++] = second;
        }
        return poles;
    }

    /// <summary>The complex gain at j·omega.</summary>
    internal Complex At(double omega)
    {
        Rational(omega, out double real, out double imaginary);
        double scale = Variance == 0 ? Gain : Gain * Math.Exp(omega * omega * (-0.5 * Variance));
        real *= scale;
        imaginary *= scale;
        if (Delay == 0)
            return new Complex(real, imaginary);
        double angle = omega * Delay;
        double cosine = Math.Cos(angle), sine = Math.Sin(angle);
        return new Complex(real * cosine + imaginary * sine, imaginary * cosine - real * sine);
    }

    /// <summary>The squared magnitude at j·omega.</summary>
    internal double PowerAt(double omega)
    {
        double square = omega * omega, numerator = Gain * Gain, denominator = 1;
        foreach (Section section in _sections)
        {
            double real = 1 - section.D2 * square, imaginary = section.D1;
            denominator *= real * real + imaginary * imaginary * square;
            if (!_allPole)
            {
                double top = section.C0 - section.C2 * square;
                numerator *= top * top + section.C1 * section.C1 * square;
            }
        }
        if (Variance != 0)
            numerator *= Math.Exp(-Variance * square);
        return denominator <= double.MaxValue && numerator <= double.MaxValue ? numerator / denominator : PowerBySections(omega);
    }

    /// <summary>The continuous phase in radians: the sum of the factors' own, so that it never jumps by a turn.</summary>
    internal double PhaseAt(double omega)
    {
        double phase = Gain < 0 ? Math.PI : 0, square = omega * omega;
        foreach (Section section in _sections)
        {
            phase -= Math.Atan2(section.D1 * omega, 1 - section.D2 * square);
            if (!_allPole)
                phase += Math.Atan2(section.C1 * omega, section.C0 - section.C2 * square);
        }
        return phase - omega * Delay;
    }

    /// <summary>The group delay -dφ/dω in seconds.</summary>
    internal double GroupDelayAt(double omega)
    {
        double delay = Delay;
        foreach (Section section in _sections)
        {
            delay += SlopeOfAngle(1, section.D1, section.D2, omega);
            if (!_allPole)
                delay -= SlopeOfAngle(section.C0, section.C1, section.C2, omega);
        }
        return delay;
    }

    /// <summary>d/dω of the angle of a - c ω² + j b ω.</summary>
    private static double SlopeOfAngle(double a, double b, double c, double omega)
    {
        double square = omega * omega, real = a - c * square, magnitude = real * real + b * b * square;
        if (magnitude == 0 && a == 0)
            return 0;
        return b * (a + c * square) / magnitude;
    }

    private void Rational(double omega, out double real, out double imaginary)
    {
        double square = omega * omega, dr = 1, di = 0, nr = 1, ni = 0;
        Section[] sections = _sections;
        for (int i = 0; i < sections.Length; i++)
        {
            double r = 1 - sections[i].D2 * square, m = sections[i].D1 * omega, product = dr * r - di * m;
            di = dr * m + di * r;
            dr = product;
        }
        if (!_allPole)
        {
            for (int i = 0; i < sections.Length; i++)
            {
                double r = sections[i].C0 - sections[i].C2 * square, m = sections[i].C1 * omega, product = nr * r - ni * m;
                ni = nr * m + ni * r;
                nr = product;
            }
        }
        double power = dr * dr + di * di;
        if (power <= double.MaxValue && nr <= double.MaxValue && ni <= double.MaxValue)
        {
            real = (nr * dr + ni * di) / power;
            imaginary = (ni * dr - nr * di) / power;
            return;
        }
        // Far above the corners the products overflow although the ratio is small: one section at a time.
        Complex ratio = RationalBySections(omega);
        real = ratio.Real;
        imaginary = ratio.Imaginary;
    }

    private Complex RationalBySections(double omega)
    {
        Complex ratio = Complex.One;
        double square = omega * omega;
        foreach (Section section in _sections)
            ratio *= new Complex(section.C0 - section.C2 * square, section.C1 * omega) / new Complex(1 - section.D2 * square, section.D1 * omega);
        return ratio;
    }

    private double PowerBySections(double omega)
    {
        Complex ratio = RationalBySections(omega);
        double magnitude = Complex.Abs(ratio) * Gain * Math.Exp(omega * omega * (-0.5 * Variance));
        return magnitude * magnitude;
    }
}
