using System;
using System.Collections.Generic;

namespace Acquisition.Core.Chain;

/// <summary>A series resistor before a terminated line.</summary>
internal sealed class LowImpedanceProbe : Probe
{
    private const double LineOhms = 50;

    internal LowImpedanceProbe(double factor, Capacitance capacitance, Response own)
        : base(FormattableString.Invariant($"low-impedance probe {factor}:1"), factor, Resistance.FromOhms(LineOhms * factor), capacitance, own)
    {
    }

    internal override Resistance? MadeFor => Resistance.FromOhms(LineOhms);

    internal override ChainStage Stage(FrontEnd frontEnd) => new(
        Lead,
        LumpedBranch.Shunt(double.PositiveInfinity, InputCapacitance.SiValue),
        LumpedBranch.Series(LineOhms * (AttenuationFactor - 1)))
    {
        Own = OwnResponse,
    };

    internal override IEnumerable<Finding> Examine(FrontEnd frontEnd, Resistance load)
    {
        if (Math.Abs(frontEnd.InputResistance.SiValue - LineOhms) > 0.05 * LineOhms)
        {
            yield return new Finding(
                "probe-needs-50-ohm",
                Severity.Failure,
                $"{Name} divides against 50 Ω; {frontEnd.Name} has {frontEnd.InputResistance}",
                "the 50 Ω input of the instrument, or a 50 Ω feed-through",
                "handbook 7.5");
        }
    }
}
