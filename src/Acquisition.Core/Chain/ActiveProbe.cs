using System;
using System.Collections.Generic;

namespace Acquisition.Core.Chain;

/// <summary>An amplifier at the tip: nothing behind it loads the node, and its output resistance of 50 Ω wants a 50 Ω input.</summary>
internal sealed class ActiveProbe : Probe
{
    private const double OutputOhms = 50;

    internal ActiveProbe(double factor, Resistance resistance, Capacitance capacitance, Response own)
        : base(FormattableString.Invariant($"active probe {factor}:1"), factor, resistance, capacitance, own)
    {
    }

    internal override Resistance? MadeFor => Resistance.FromOhms(OutputOhms);

    // Open-circuit twice the stated gain, so that a 50 Ω load gets it.
    internal override ChainStage Stage(FrontEnd frontEnd) => new(Lead, LumpedBranch.Shunt(InputResistance.SiValue, InputCapacitance.SiValue))
    {
        Own = OwnResponse,
        IsBuffer = true,
        BufferGain = 2 / AttenuationFactor,
        OutputOhms = OutputOhms,
    };

    internal override IEnumerable<Finding> Examine(FrontEnd frontEnd, Resistance load)
    {
        if (frontEnd.InputResistance.SiValue > 1.05 * OutputOhms)
        {
            yield return new Finding(
                "probe-needs-50-ohm",
                Severity.Failure,
                $"{Name} drives 50 Ω; on the {frontEnd.InputResistance} of {frontEnd.Name} it reads {(2 * frontEnd.InputResistance.SiValue / (frontEnd.InputResistance.SiValue + OutputOhms)).ToString("0.###", System.Globalization.CultureInfo.InvariantCulture)} times as much",
                "the 50 Ω input of the instrument, or a 50 Ω feed-through",
                "handbook 7.5");
        }
    }
}
