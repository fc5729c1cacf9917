using System;
using System.Collections.Generic;
using Acquisition.Core.Chain;

namespace Acquisition.Core;

/// <summary>A terminator plugged before a high-impedance input. With the input's capacitance it is no match at high frequency (handbook 7.5).</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public sealed class FeedThroughTerminator : ChainElement
{
    /// <summary>A terminator.</summary>
    /// <param name="resistance">Its resistance, such as 50 Ω.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="resistance"/> is 0 Ω.</exception>
    public FeedThroughTerminator(Resistance resistance)
        : base("feed-through " + resistance)
    {
        Refuse.UnlessAboveZero(resistance.SiValue, Resistance.Kind, nameof(resistance));
        Resistance = resistance;
    }

    /// <summary>Its resistance.</summary>
    public Resistance Resistance { get; }

    internal override ChainElement Ideal => this;

    internal override ChainStage Stage(FrontEnd frontEnd) => new(LumpedBranch.Shunt(Resistance.SiValue));

    internal override IEnumerable<Finding> Examine(FrontEnd frontEnd, Resistance load)
    {
        if (frontEnd.IsTerminated)
        {
            yield return new Finding(
                "terminated-twice",
                Severity.Failure,
                $"{Name} before the {frontEnd.InputResistance} of {frontEnd.Name}: together {Resistance.Parallel(frontEnd.InputResistance).InWords()}, so that the amplitude is wrong",
                "one termination: switch the input to high impedance, or take the feed-through off",
                "handbook 7.5");
        }
        else if (frontEnd.InputCapacitance.SiValue > 0)
        {
            // Where the return loss has fallen to 20 dB: |Γ| = ωRC/√(4 + (ωRC)²) = 0.1.
            double hertz = 0.2 / Math.Sqrt(0.99) / (2 * Math.PI * Resistance.SiValue * frontEnd.InputCapacitance.SiValue);
            yield return new Finding(
                "feed-through-mismatch",
                Severity.Warning,
                $"{Name} beside {frontEnd.InputCapacitance} is a match (return loss 20 dB) only up to {Frequency.FromHertz(hertz).InWords(3)}",
                "the instrument's own 50 Ω input",
                "handbook 7.5");
        }
    }
}
