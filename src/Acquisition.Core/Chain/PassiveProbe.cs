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

    internal override Resistance? MadeFor => AttenuationFactor == 1 ? null : Resistance.FromOhms(InputResistance.SiValue / AttenuationFactor);

    internal override ChainStage Stage(FrontEnd frontEnd)
    {
        double k = AttenuationFactor, c = InputCapacitance.SiValue, own = FarCapacitance(frontEnd);
        var far = LumpedBranch.Shunt(double.PositiveInfinity, Math.Max(0, own));
        if (k == 1)
            return new ChainStage(Lead, far) { Own = OwnResponse };
        double r1 = InputResistance.SiValue * (1 - 1 / k), c1 = c * k / (k - 1) * Compensation.SiValue;
        return new ChainStage(Lead, LumpedBranch.SeriesParallel(r1, c1), far) { Own = OwnResponse };
    }

    internal override IEnumerable<Finding> Examine(FrontEnd frontEnd, Resistance load)
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
        else if (!IsCompensated && Math.Abs(Miscompensation(frontEnd)) > 0.01)
        {
            double error = Miscompensation(frontEnd);
            yield return new Finding(
                "probe-not-compensated",
                Severity.Warning,
                $"{Name} is {(error > 0 ? "over" : "under")}compensated: a step begins {Percent(error)} % too {(error > 0 ? "high" : "low")}, and so much is every amplitude well above {Frequency.FromHertz(1 / (2 * Math.PI * Divider(frontEnd).TimeConstant.SiValue)).InWords(3)} off",
                "adjust the compensation on this input, with a square wave that shows flat",
                "handbook 7.3");
        }
    }

    private static string Percent(double error) => Ratio.FromFraction(Math.Abs(error)).Percent.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>By how much a step begins too high on this input: the division by the capacitances over that by the resistances, less 1.</summary>
    private double Miscompensation(FrontEnd frontEnd) => Divider(frontEnd).InitialOvershoot.SiValue;

    private CompensatedDivider Divider(FrontEnd frontEnd)
    {
        double k = AttenuationFactor;
        return new CompensatedDivider(
            Resistance.FromOhms(InputResistance.SiValue * (1 - 1 / k)),
            Capacitance.FromFarads(InputCapacitance.SiValue * k / (k - 1) * Compensation.SiValue),
            Resistance.FromOhms(InputResistance.SiValue / k),
            Capacitance.FromFarads(FarCapacitance(frontEnd) + frontEnd.InputCapacitance.SiValue));
    }

    /// <summary>What cable and trimmer put across the instrument's input, F.</summary>
    private double FarCapacitance(FrontEnd frontEnd) => AttenuationFactor * InputCapacitance.SiValue - (CompensatedOn ?? frontEnd.InputCapacitance).SiValue;
}
