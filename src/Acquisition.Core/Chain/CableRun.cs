using System;
using System.Collections.Generic;

namespace Acquisition.Core.Chain;

/// <summary>A cable, or several of one impedance in a row, between the resistances that it begins and ends at. What both ends reflect runs to and fro in it (handbook 7.7).</summary>
internal sealed class CableRun
{
    /// <summary>What ends in more than this is called open: no cable has such an impedance.</summary>
    private const double OpenOhms = 1000;

    /// <summary>An echo of less than this is below what the other parts of a chain are known to.</summary>
    private const double Unseen = 0.02;

    private CableRun(int first, int last, string name, double ohms, double seconds, double sourceOhms, double loadOhms) =>
        (First, Last, Name, Ohms, Seconds, SourceOhms, LoadOhms) = (first, last, name, ohms, seconds, sourceOhms, loadOhms);

    /// <summary>The places of its first and its last cable among the elements.</summary>
    internal int First { get; }

    internal int Last { get; }

    internal string Name { get; }

    /// <summary>The characteristic impedance.</summary>
    internal double Ohms { get; }

    /// <summary>The delay from end to end.</summary>
    internal double Seconds { get; }

    /// <summary>What it looks back into at DC; infinite behind a coupling capacitor.</summary>
    internal double SourceOhms { get; }

    /// <summary>What it ends in at DC.</summary>
    internal double LoadOhms { get; }

    internal double RoundTrip => 2 * Seconds;

    internal double SourceReflection => Reflection(SourceOhms);

    internal double LoadReflection => Reflection(LoadOhms);

    /// <summary>What is left of a wave after a round trip: below zero it rings, above zero it climbs in steps.</summary>
    internal double Echo => SourceReflection * LoadReflection;

    /// <summary>What it looks like where the round trip is short: the capacitance of its whole length.</summary>
    internal double Farads => Seconds / Ohms;

    /// <summary>Whether nothing terminates it and the echo would be seen.</summary>
    internal bool IsOpen => LoadOhms > OpenOhms && Math.Abs(Echo) > Unseen;

    internal static IEnumerable<CableRun> Of(SourceImpedance source, IReadOnlyList<ChainElement> elements, FrontEnd frontEnd)
    {
        for (int first = 0; first < elements.Count; first++)
        {
            if (elements[first] is not Cable cable)
                continue;
            int last = first;
            double seconds = cable.Delay.SiValue;
            string name = cable.Name;
            while (last + 1 < elements.Count && elements[last + 1] is Cable next && next.Impedance == cable.Impedance)
            {
                seconds += next.Delay.SiValue;
                name += " and " + next.Name;
                last++;
            }
            yield return new CableRun(first, last, name, cable.Impedance.SiValue, seconds, Before(source, elements, frontEnd, first), Behind(elements, frontEnd, last));
            first = last;
        }
    }

    private static double Before(SourceImpedance source, IReadOnlyList<ChainElement> elements, FrontEnd frontEnd, int end)
    {
        double ohms = source.Resistance.SiValue;
        for (int i = 0; i < end; i++)
        {
            ChainStage stage = elements[i].Stage(frontEnd);
            foreach (Branch branch in stage.Branches)
                ohms = Past(branch, ohms);
            if (stage.IsBuffer)
                ohms = stage.OutputOhms;
        }
        return ohms;
    }

    private static double Behind(IReadOnlyList<ChainElement> elements, FrontEnd frontEnd, int begin)
    {
        double ohms = frontEnd.InputResistance.SiValue;
        for (int i = elements.Count - 1; i > begin; i--)
        {
            ChainStage stage = elements[i].Stage(frontEnd);
            if (stage.IsBuffer)
                ohms = double.PositiveInfinity;
            for (int k = stage.Branches.Length - 1; k >= 0; k--)
                ohms = Past(stage.Branches[k], ohms);
        }
        return ohms;
    }

    // At DC; another line passes it as it is.
    private static double Past(Branch branch, double ohms)
    {
        if (branch is not LumpedBranch lumped)
            return ohms;
        double value = lumped.Numerator[0] / lumped.Denominator[0];
        return lumped.IsSeries ? ohms + value : 1 / ((1 / ohms) + value);
    }

    private double Reflection(double ohms) => double.IsInfinity(ohms) ? 1 : (ohms - Ohms) / (ohms + Ohms);
}
