using System;
using System.Collections.Generic;

namespace Acquisition.Core.Chain;

/// <summary>
/// R1 beside C1 in the tip, and at the other end cable and trimmer across the instrument's own input. From ratio k, tip resistance R and tip capacitance C follow
/// R1 = R (1 - 1/k), C1 = C k/(k - 1) and, at the far end together with the instrument, R2 = R/k and C2 = k C (handbook 7.3).
/// </summary>
internal sealed class PassiveProbe : Probe
{
    internal PassiveProbe(double factor, Resistance resistance, Capacitance capacitance, Response own)
        : base(FormattableString.Invariant($"passive probe {factor}:1"), factor, resistance, capacitance, own)
    {
    }

    internal override ChainStage Stage(FrontEnd frontEnd)
    {
        double k = AttenuationFactor, c = InputCapacitance.SiValue, own = FarCapacitance(frontEnd);
        var far = LumpedBranch.Shunt(double.PositiveInfinity, Math.Max(0, own));
        if (k == 1)
            return new ChainStage(Lead, far) { Own = OwnResponse };
        double r1 = InputResistance.SiValue * (1 - 1 / k), c1 = c * k / (k - 1) * Compensation.SiValue;
        return new ChainStage(Lead, LumpedBranch.SeriesParallel(r1, c1), far) { Own = OwnResponse };
    }

    internal override IEnumerable<Finding> Examine(FrontEnd frontEnd)
    {
        double right = AttenuationFactor == 1 ? frontEnd.InputResistance.SiValue : InputResistance.SiValue / AttenuationFactor, found = frontEnd.InputResistance.SiValue;
        if (Math.Abs(found - right) > 0.02 * right)
        {
            yield return new Finding(
                "probe-needs-another-input",
                Severity.Failure,
                $"{Name} divides by {AttenuationFactor.ToString(System.Globalization.CultureInfo.InvariantCulture)} on an input of {Resistance.FromOhms(right)}; {frontEnd.Name} has {frontEnd.InputResistance}",
                $"an input of {Resistance.FromOhms(right)}, or a probe made for {frontEnd.InputResistance}",
                "handbook 7.3");
        }
        if (FarCapacitance(frontEnd) < 0)
        {
            yield return new Finding(
                "cannot-compensate",
                Severity.Failure,
                $"{Name} can be compensated on inputs of up to {Capacitance.FromFarads(AttenuationFactor * InputCapacitance.SiValue)}; {frontEnd.Name} has {CompensatedOn ?? frontEnd.InputCapacitance}",
                "a probe for a larger input capacitance",
                "handbook 7.3");
        }
    }

    /// <summary>What cable and trimmer put across the instrument's input, F.</summary>
    private double FarCapacitance(FrontEnd frontEnd) => AttenuationFactor * InputCapacitance.SiValue - (CompensatedOn ?? frontEnd.InputCapacitance).SiValue;
}
