using System;
using System.Collections.Generic;
using System.Numerics;
using Acquisition.Core.Chain;

namespace Acquisition.Core;

/// <summary>
/// A probe: it loads the node, divides the voltage and has a response of its own. What it does to a signal depends on the source and on the front end, which
/// is why it is part of a network and not a number of decibels (handbook 7.1 to 7.4).
/// </summary>
/// <remarks>
/// Immutable and thread-safe: each <c>With</c> method returns a changed copy. The own response is the one without the loading of the source. Data sheets usually
/// state a bandwidth on 25 Ω (common practice): that contains the loading on 25 Ω, which then counts twice; on low impedances the difference is small.
/// </remarks>
public abstract class Probe : ChainElement
{
    private protected Probe(string name, double attenuationFactor, Resistance resistance, Capacitance capacitance, Response own)
        : base(name)
    {
        if (!(attenuationFactor >= 1 && attenuationFactor <= 1e6))
            throw new ArgumentOutOfRangeException(nameof(attenuationFactor), FormattableString.Invariant($"attenuationFactor must be from 1 (1:1) to 1e6; was {attenuationFactor}"));
        AttenuationFactor = attenuationFactor;
        Refuse.UnlessAboveZero(resistance.SiValue, Resistance.Kind, nameof(resistance));
        InputResistance = resistance;
        InputCapacitance = capacitance;
        OwnResponse = own ?? throw new ArgumentNullException(nameof(own));
        Compensation = Ratio.FromFraction(1);
    }

    /// <summary>A passive probe for a high-impedance input: 10:1, 10 MΩ beside 10 pF.</summary>
    /// <param name="attenuationFactor">10 for a 10:1 probe; 1 for a straight one.</param>
    /// <param name="inputResistance">The resistance at the tip with the probe on the input it is made for.</param>
    /// <param name="inputCapacitance">The capacitance at the tip, compensated, on that input.</param>
    /// <param name="own">Its own response.</param>
    /// <exception cref="ArgumentNullException"><paramref name="own"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="attenuationFactor"/> is not 1 to 1e6, or <paramref name="inputResistance"/> is 0 Ω.</exception>
    public static Probe Passive(double attenuationFactor, Resistance inputResistance, Capacitance inputCapacitance, Response own) =>
        new PassiveProbe(attenuationFactor, inputResistance, inputCapacitance, own);

    /// <summary>A passive probe whose own response is taken as Gaussian.</summary>
    /// <inheritdoc cref="Passive(double, Resistance, Capacitance, Response)"/>
    public static Probe Passive(double attenuationFactor, Resistance inputResistance, Capacitance inputCapacitance, Frequency bandwidth) =>
        Passive(attenuationFactor, inputResistance, inputCapacitance, Response.Gaussian(bandwidth));

    /// <summary>An active or differential probe: an amplifier at the tip that drives 50 Ω. The attenuation holds on a 50 Ω input.</summary>
    /// <param name="attenuationFactor">10 for a 10:1 probe.</param>
    /// <param name="inputResistance">The resistance at the tip.</param>
    /// <param name="inputCapacitance">The capacitance at the tip.</param>
    /// <param name="own">Its own response.</param>
    /// <exception cref="ArgumentNullException"><paramref name="own"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="attenuationFactor"/> is not 1 to 1e6, or <paramref name="inputResistance"/> is 0 Ω.</exception>
    public static Probe Active(double attenuationFactor, Resistance inputResistance, Capacitance inputCapacitance, Response own) =>
        new ActiveProbe(attenuationFactor, inputResistance, inputCapacitance, own);

    /// <summary>A low-impedance (resistive divider, "Z0") probe: a series resistor before a 50 Ω line and input; 10:1 is 450 Ω, so 500 Ω at the tip.</summary>
    /// <param name="attenuationFactor">10 or 20; above 1.</param>
    /// <param name="inputCapacitance">The capacitance at the tip.</param>
    /// <param name="own">Its own response.</param>
    /// <exception cref="ArgumentNullException"><paramref name="own"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="attenuationFactor"/> is not 1 to 1e6.</exception>
    public static Probe LowImpedance(double attenuationFactor, Capacitance inputCapacitance, Response own) => new LowImpedanceProbe(attenuationFactor, inputCapacitance, own);

    /// <summary>By how much it divides: 10 for a 10:1 probe.</summary>
    public double AttenuationFactor { get; }

    /// <summary>The resistance at the tip.</summary>
    public Resistance InputResistance { get; }

    /// <summary>The capacitance at the tip.</summary>
    public Capacitance InputCapacitance { get; }

    /// <summary>Its own response, without the loading of the source.</summary>
    public Response OwnResponse { get; }

    /// <summary>The inductance of the loop through tip and ground lead; 0 H where it does not count.</summary>
    public Inductance LeadInductance { get; private set; }

    /// <summary>A resistor at the tip that damps the resonance of that loop.</summary>
    public Resistance Damping { get; private set; }

    /// <summary>The trimmer at the tip relative to the right value: 1 is compensated, above it overshoots, below it rounds (handbook 7.3).</summary>
    public Ratio Compensation { get; private protected set; }

    /// <summary>The input capacitance on which the probe was compensated; null where it was on the front end of the chain.</summary>
    public Capacitance? CompensatedOn { get; private protected set; }

    /// <summary>Its noise at the tip in its full bandwidth; null where it is not known or adds none.</summary>
    public RmsVoltage? Noise { get; private set; }

    /// <summary>What the tip stands; null where it is not known.</summary>
    public VoltageRating? Rating { get; private set; }

    /// <summary>Whether it measures between two points neither of which need be earth.</summary>
    public bool IsDifferential { get; private set; }

    /// <summary>The largest voltage that either of its two points stands against earth, DC plus peak AC; null where it is not known.</summary>
    public Voltage? MaximumToEarth { get; private set; }

    /// <summary>How much less a voltage that both of its points have in common shows than one between them, as positive decibels; null where it is not known.</summary>
    public DecibelRatio? CommonModeRejection { get; private set; }

    /// <summary>The same with a name.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    public Probe WithName(string name) => Copy(copy => copy.Name = RequireName(name));

    /// <summary>The same with the inductance of the loop through its ground lead: about 1 nH for each millimetre (common practice; <see cref="GroundLead"/>).</summary>
    public Probe WithGroundLead(Inductance inductance) => Copy(copy => copy.LeadInductance = inductance);

    /// <summary>The same with a ground lead of a length, at 1 nH for each millimetre (common practice).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="length"/> is negative.</exception>
    public Probe WithGroundLead(Length length) => WithGroundLead(GroundLead.InductanceOf(length));

    /// <summary>The same with a damping resistor in series at the tip.</summary>
    public Probe WithDamping(Resistance resistance) => Copy(copy => copy.Damping = resistance);

    /// <summary>The same with its trimmer off by a ratio: 1.1 is 10 % too much capacitance across the tip resistor, so overcompensated.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="trimmerOverRight"/> is not above 0 and at most 10.</exception>
    /// <exception cref="InvalidOperationException">The probe has no trimmer.</exception>
    public Probe WithCompensation(Ratio trimmerOverRight)
    {
        RequireTrimmer();
        if (!(trimmerOverRight.SiValue > 0 && trimmerOverRight.SiValue <= 10))
            throw Refuse.OutOfRange(trimmerOverRight.SiValue, Ratio.Kind, nameof(trimmerOverRight), "above 0 and at most 10");
        return Copy(copy => copy.Compensation = trimmerOverRight);
    }

    /// <summary>The same, but compensated on another input: moved to the front end of the chain as it is.</summary>
    /// <param name="inputCapacitance">The capacitance of the input on which it was trimmed.</param>
    /// <exception cref="InvalidOperationException">The probe has no trimmer.</exception>
    public Probe WithCompensationOn(Capacitance inputCapacitance)
    {
        RequireTrimmer();
        return Copy(copy => copy.CompensatedOn = inputCapacitance);
    }

    /// <summary>The same with its noise stated, as rms at the tip in its full bandwidth.</summary>
    public Probe WithNoise(RmsVoltage noise) => Copy(copy => copy.Noise = noise);

    /// <summary>The same with what the tip stands.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="rating"/> is null.</exception>
    public Probe WithRating(VoltageRating rating) => Copy(copy => copy.Rating = rating ?? throw new ArgumentNullException(nameof(rating)));

    /// <summary>The same measuring between two points neither of which need be earth.</summary>
    public Probe WithDifferentialInputs() => Copy(copy => copy.IsDifferential = true);

    /// <summary>The same with the largest voltage that either of its two points (tip and reference lead, or the two inputs of a differential probe) stands against earth, DC plus peak AC.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="maximumToEarth"/> is not above 0 V.</exception>
    public Probe WithMaximumToEarth(Voltage maximumToEarth)
    {
        Refuse.UnlessAboveZero(maximumToEarth.SiValue, Voltage.Kind, nameof(maximumToEarth));
        return Copy(copy => copy.MaximumToEarth = maximumToEarth);
    }

    /// <summary>The same with its common-mode rejection: how much less a voltage that both points have in common shows than one between them.</summary>
    /// <param name="rejection">The common-mode rejection ratio, at the frequencies at which the common mode moves: it falls with frequency, and the one at DC says nothing of a switching node.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rejection"/> is not above 0 dB.</exception>
    public Probe WithCommonModeRejection(DecibelRatio rejection)
    {
        Refuse.UnlessAboveZero(rejection.Decibels, DecibelRatio.Kind, nameof(rejection));
        return Copy(copy => copy.CommonModeRejection = rejection);
    }

    /// <summary>The complex input impedance at a frequency, in ohms: resistance beside capacitance, behind lead and damping.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative.</exception>
    public Complex InputOhmsAt(Frequency frequency) =>
        Impedance.OfParallel(InputResistance.SiValue, InputCapacitance.SiValue, frequency) + new Complex(Damping.SiValue, 2 * Math.PI * frequency.SiValue * LeadInductance.SiValue);

    /// <summary>Where lead and input capacitance ring: 1/(2π√(LC)); null without either.</summary>
    public Frequency? LeadResonance => LeadInductance.SiValue > 0 && InputCapacitance.SiValue > 0 ? GroundLead.Resonance(LeadInductance, InputCapacitance) : null;

    internal override double NominalFactor => AttenuationFactor;

    /// <summary>Whether its trimmer is where it belongs, on the input of the chain.</summary>
    internal bool IsCompensated => Compensation.SiValue == 1 && CompensatedOn is null;

    /// <summary>The same, compensated on the input of the chain.</summary>
    internal Probe Compensated() => Copy(copy => (copy.Compensation, copy.CompensatedOn) = (Ratio.FromFraction(1), null));

    /// <summary>The input resistance on which its ratio holds; null where it holds on any.</summary>
    internal abstract Resistance? MadeFor { get; }

    private protected bool HasTrimmer => this is PassiveProbe && AttenuationFactor > 1;

    private protected LumpedBranch Lead => LumpedBranch.Series(Damping.SiValue, LeadInductance.SiValue);

    internal override ChainElement Ideal => new IdealProbe(this);

    internal override IEnumerable<Finding> Examine(FrontEnd frontEnd, Resistance load) => Array.Empty<Finding>();

    private void RequireTrimmer()
    {
        if (!HasTrimmer)
            throw new InvalidOperationException($"{Name} has no compensation trimmer: only passive dividing probes have");
    }

    private Probe Copy(Action<Probe> change)
    {
        var copy = (Probe)MemberwiseClone();
        change(copy);
        return copy;
    }
}
