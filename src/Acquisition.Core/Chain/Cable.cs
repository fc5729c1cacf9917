using System;
using System.Collections.Generic;
using Acquisition.Core.Chain;

namespace Acquisition.Core;

/// <summary>A cable: delay, loss, and echoes wherever an end does not match its impedance (handbook 7.6, 7.7, 7.9).</summary>
/// <remarks>
/// Immutable and thread-safe. The characteristic impedance is taken as real and constant. The loss comes with the phase that belongs to it, so that the step
/// through it has the slow tail of a real cable.
/// </remarks>
public sealed class Cable : ChainElement
{
    /// <summary>The speed of light in vacuum, exact (SI).</summary>
    internal const double LightMetersPerSecond = 299_792_458;

    private const double DecibelsPerNeper = 8.6858896380650365530225783783321;

    private CableLoss _loss = CableLoss.None;

    /// <summary>A cable without loss.</summary>
    /// <param name="impedance">The characteristic impedance, such as 50 Ω.</param>
    /// <param name="length">The length.</param>
    /// <param name="velocityFactor">The speed in it over that of light: 0.66 for solid polyethylene.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not above zero, or the velocity factor is above 1.</exception>
    public Cable(Resistance impedance, Length length, double velocityFactor)
        : base("cable")
    {
        Refuse.UnlessAboveZero(impedance.SiValue, Resistance.Kind, nameof(impedance));
        Refuse.UnlessAboveZero(length.SiValue, Length.Kind, nameof(length));
        if (!(velocityFactor > 0 && velocityFactor <= 1))
            throw new ArgumentOutOfRangeException(nameof(velocityFactor), FormattableString.Invariant($"velocityFactor must be above 0 and at most 1; was {velocityFactor}"));
        Impedance = impedance;
        Length = length;
        VelocityFactor = velocityFactor;
    }

    /// <summary>The velocity factor of a dielectric: 1/√εr.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="relativePermittivityRatio"/> is below 1.</exception>
    public static double VelocityFactorOf(double relativePermittivityRatio) => relativePermittivityRatio >= 1
        ? 1 / Math.Sqrt(relativePermittivityRatio)
        : throw new ArgumentOutOfRangeException(nameof(relativePermittivityRatio), FormattableString.Invariant($"relativePermittivityRatio must be at least 1; was {relativePermittivityRatio}"));

    /// <summary>The characteristic impedance.</summary>
    public Resistance Impedance { get; }

    /// <summary>The length.</summary>
    public Length Length { get; }

    /// <summary>The speed in it over that of light.</summary>
    public double VelocityFactor { get; }

    /// <summary>The loss of the whole cable.</summary>
    public CableLoss Loss => _loss;

    /// <summary>The delay from end to end: l / (VF c).</summary>
    public Duration Delay => Duration.FromSi(Length.SiValue / (VelocityFactor * LightMetersPerSecond), "length");

    /// <summary>The phase by which it delays a frequency, 360° f t; lagging, given positive.</summary>
    public Angle DelayAngle(Frequency frequency) => Angle.FromSi(2 * Math.PI * frequency.SiValue * Delay.SiValue, nameof(frequency));

    /// <summary>The same with a name.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    public Cable WithName(string name) => Copy(copy => copy.Name = RequireName(name));

    /// <summary>The same with the loss of the whole cable.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="loss"/> is null.</exception>
    public Cable WithLoss(CableLoss loss) => Copy(copy => copy._loss = loss ?? throw new ArgumentNullException(nameof(loss)));

    /// <summary>The same with a loss stated for another length, as in "per 100 m".</summary>
    /// <exception cref="ArgumentNullException"><paramref name="loss"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="statedLength"/> is not above 0 m.</exception>
    public Cable WithLossPer(Length statedLength, CableLoss loss)
    {
        _ = loss ?? throw new ArgumentNullException(nameof(loss));
        return WithLoss(loss.Times(Ratio.FromSi(Length.SiValue / Refuse.UnlessAboveZero(statedLength.SiValue, Length.Kind, nameof(statedLength)), nameof(statedLength))));
    }

    internal override ChainElement? Ideal => null;

    internal override ChainStage Stage(FrontEnd frontEnd) => new(new Line(
        Impedance.SiValue, Delay.SiValue, _loss.Skin / DecibelsPerNeper, _loss.Dielectric / DecibelsPerNeper, _loss.Reference));

    internal override IEnumerable<Finding> Examine(FrontEnd frontEnd, Resistance load)
    {
        // With a terminated input a feed-through before it is the mistake, and said as such.
        Resistance end = frontEnd.IsTerminated ? frontEnd.InputResistance : load;
        if (end.SiValue <= 1000 && Math.Abs(end.SiValue - Impedance.SiValue) > 0.02 * Impedance.SiValue)
        {
            DecibelRatio returnLoss = Mismatch.ReturnLoss(Impedance, end);
            yield return new Finding(
                "cable-mismatch",
                Severity.Warning,
                $"{Name} of {Impedance} ends in {end.InWords(3)}: return loss {returnLoss.InWords(3)}; an echo follows after {(Delay * 2).InWords()}, where the other end reflects too",
                $"a termination of {Impedance}",
                "handbook 7.7");
        }
    }

    private Cable Copy(Action<Cable> change)
    {
        var copy = (Cable)MemberwiseClone();
        change(copy);
        return copy;
    }
}
