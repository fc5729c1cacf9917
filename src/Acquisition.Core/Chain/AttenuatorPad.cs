using System;
using System.Collections.Generic;
using Acquisition.Core.Chain;

namespace Acquisition.Core;

/// <summary>A resistive attenuator between lines: pi, tee or minimum-loss (handbook 7.8). Its resistors are what the chain is solved with, so that a mismatch on either side shows.</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class AttenuatorPad : ChainElement
{
    private readonly bool _isPi;

    private AttenuatorPad(string name, bool isPi, Resistance input, Resistance through, Resistance output, Resistance source, Resistance load)
        : base(name)
    {
        _isPi = isPi;
        First = input;
        Middle = through;
        Last = output;
        SourceImpedance = source;
        LoadImpedance = load;
    }

    /// <summary>A pi pad: shunt Z(K+1)/(K-1), series Z(K²-1)/(2K), shunt; K = 10^(dB/20).</summary>
    /// <param name="attenuation">The loss between matched lines, above 0 dB and at most 100 dB.</param>
    /// <param name="impedance">The impedance of both lines.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static AttenuatorPad Pi(DecibelRatio attenuation, Resistance impedance)
    {
        double k = Factor(attenuation), z = Refuse.UnlessAboveZero(impedance.SiValue, Resistance.Kind, nameof(impedance));
        Resistance shunt = Ohms(z * (k + 1) / (k - 1));
        return new AttenuatorPad($"pi pad {attenuation}", true, shunt, Ohms(z * (k * k - 1) / (2 * k)), shunt, impedance, impedance);
    }

    /// <summary>A tee pad: series Z(K-1)/(K+1), shunt 2ZK/(K²-1), series.</summary>
    /// <param name="attenuation">The loss between matched lines, above 0 dB and at most 100 dB.</param>
    /// <param name="impedance">The impedance of both lines.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static AttenuatorPad Tee(DecibelRatio attenuation, Resistance impedance)
    {
        double k = Factor(attenuation), z = Refuse.UnlessAboveZero(impedance.SiValue, Resistance.Kind, nameof(impedance));
        Resistance series = Ohms(z * (k - 1) / (k + 1));
        return new AttenuatorPad($"tee pad {attenuation}", false, series, Ohms(2 * z * k / (k * k - 1)), series, impedance, impedance);
    }

    /// <summary>The pad that matches two impedances with the least loss: a series resistor at the higher, a shunt at the lower one.</summary>
    /// <param name="source">The impedance it is fed from.</param>
    /// <param name="load">The impedance it feeds; the other way round where it is the higher one.</param>
    /// <exception cref="ArgumentOutOfRangeException">An impedance is 0 Ω, or both are equal, where no pad is needed.</exception>
    public static AttenuatorPad MinimumLoss(Resistance source, Resistance load)
    {
        double zs = Refuse.UnlessAboveZero(source.SiValue, Resistance.Kind, nameof(source)), zl = Refuse.UnlessAboveZero(load.SiValue, Resistance.Kind, nameof(load));
        if (zs == zl)
            throw Refuse.OutOfRange(zl, Resistance.Kind, nameof(load), $"other than {source}", "equal impedances need no pad");
        double high = Math.Max(zs, zl), low = Math.Min(zs, zl), series = Math.Sqrt(high * (high - low)), shunt = low * Math.Sqrt(high / (high - low));
        string name = $"minimum-loss pad {source} to {load}";
        // As a tee with a resistor on the higher side only.
        return zs > zl
            ? new AttenuatorPad(name, false, Ohms(series), Ohms(shunt), default, source, load)
            : new AttenuatorPad(name, false, default, Ohms(shunt), Ohms(series), source, load);
    }

    /// <summary>The resistor at the input: across in a pi, in the path in a tee; 0 Ω where there is none.</summary>
    public Resistance First { get; }

    /// <summary>The resistor in the middle: in the path in a pi, across in a tee.</summary>
    public Resistance Middle { get; }

    /// <summary>The resistor at the output, as the first one.</summary>
    public Resistance Last { get; }

    /// <summary>The impedance it is made to be fed from.</summary>
    public Resistance SourceImpedance { get; }

    /// <summary>The impedance it is made to feed.</summary>
    public Resistance LoadImpedance { get; }

    /// <summary>The power lost between the impedances it is made for, of what the source has to give: from its resistors.</summary>
    public DecibelRatio Loss
    {
        get
        {
            double v = VoltageFactor, zs = SourceImpedance.SiValue, zl = LoadImpedance.SiValue;
            return DecibelRatio.FromSi(10 * Math.Log10(zl / (4 * zs)) + 20 * Math.Log10(v), "loss");
        }
    }

    /// <summary>The same pad with the nearest resistors of a preferred series.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="series"/> is null.</exception>
    public AttenuatorPad WithNearest(PreferredValues series)
    {
        _ = series ?? throw new ArgumentNullException(nameof(series));
        return new AttenuatorPad($"{Name}, {series}", _isPi, Nearest(First), Nearest(Middle), Nearest(Last), SourceImpedance, LoadImpedance);

        Resistance Nearest(Resistance value) => value.SiValue == 0 ? value : series.Nearest(value);
    }

    /// <summary>By how much the pad divides between its impedances: the voltage at the load without it, over that with it.</summary>
    internal override double NominalFactor => VoltageFactor * LoadImpedance.SiValue / (SourceImpedance.SiValue + LoadImpedance.SiValue);

    internal override ChainElement Ideal => this;

    internal override ChainStage Stage(FrontEnd frontEnd) => new(Branches());

    internal override IEnumerable<Finding> Examine(FrontEnd frontEnd, Resistance load)
    {
        if (Math.Abs(load.SiValue - LoadImpedance.SiValue) > 0.05 * LoadImpedance.SiValue && !frontEnd.IsTerminated)
        {
            yield return new Finding(
                "pad-not-terminated",
                Severity.Warning,
                $"{Name} is made for {LoadImpedance} and ends in {load.InWords()}, so that its ratio is another",
                $"a termination of {LoadImpedance}",
                "handbook 7.8");
        }
    }

    /// <summary>Open-circuit voltage of the source over the voltage at the load.</summary>
    private double VoltageFactor => 1 / new LadderSection(
        LumpedBranch.Series(SourceImpedance.SiValue),
        new List<Branch>(Branches()) { LumpedBranch.Shunt(LoadImpedance.SiValue) }).Transfer(System.Numerics.Complex.Zero).Real;

    private Branch[] Branches() => _isPi
        ? new Branch[] { LumpedBranch.Shunt(First.SiValue), LumpedBranch.Series(Middle.SiValue), LumpedBranch.Shunt(Last.SiValue) }
        : new Branch[] { LumpedBranch.Series(First.SiValue), LumpedBranch.Shunt(Middle.SiValue), LumpedBranch.Series(Last.SiValue) };

    private static double Factor(DecibelRatio attenuation) => attenuation.SiValue > 0 && attenuation.SiValue <= 100
        ? Math.Pow(10, attenuation.SiValue / 20)
        : throw Refuse.OutOfRange(attenuation.SiValue, DecibelRatio.Kind, nameof(attenuation), "above 0 dB and at most 100 dB");

    private static Resistance Ohms(double value) => Resistance.FromSi(value, "resistance");
}
