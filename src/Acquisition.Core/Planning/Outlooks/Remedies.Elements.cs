using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core.Planning;

// The element that spoils a reading most, found by making each ideal in turn, and how good it must be instead.
internal sealed partial class Remedies
{
    /// <summary>No more than this is asked of a better element: a thousandth of the flaw of the present one.</summary>
    private const double Least = 1e-3;

    /// <summary>So often is what is asked for halved, on a logarithmic scale: to two thousandths, behind cables to a tenth.</summary>
    private const int Halvings = 12;

    /// <summary>How good the worst element must be so that the reading is cured; null where no single one cures it.</summary>
    /// <param name="isCured">Whether a reading is cured.</param>
    /// <param name="error">What is wrong with it, the less the better.</param>
    internal string? Element(Func<Outlook, bool> isCured, Func<Outlook, double> error)
    {
        if (Applied.Chain is not { } chain)
            return null;
        double hertz = Math.Max(Applied.Signal.Tone, Applied.Signal.SteepestEdge is { RiseTime.SiValue: > 0 and var rise } ? 0.5 / rise : 0);
        foreach ((int place, string name, Outlook without) in WithoutEach(error))
        {
            if (!isCured(without))
                break;
            foreach (Improvement better in Improvement.Of(chain, place, hertz))
            {
                if (PartThatCures(better, isCured) is { } left)
                    return $"{better.Words(left)}; most of it comes from {name}";
            }
        }
        return null;
    }

    /// <summary>The element without which the reading would be best; null where none matters, or there is none.</summary>
    internal string? Worst(Func<Outlook, double> error)
    {
        if (Applied.Chain is null)
            return null;
        (_, string name, Outlook without) = WithoutEach(error).First();
        return error(without) < error(outlook) * (1 - 1e-3) ? name : null;
    }

    private IEnumerable<(int Place, string Name, Outlook Without)> WithoutEach(Func<Outlook, double> error) =>
        Applied.WithoutEach().Select((without, place) => (Place: place, Name: without.Key, Without: Behind(without.Value))).OrderBy(one => error(one.Without));

    // The largest part of the flaw that may be left, such that the figure it is printed as still cures.
    private double? PartThatCures(Improvement better, Func<Outlook, bool> isCured)
    {
        bool Cures(double part) => isCured(Behind(better.Leaving(part)));
        double fits = Least, much = 1;
        if (!Cures(fits))
            return null;
        // A step through a cable is dear.
        int halvings = Applied.Chain!.Elements.Any(element => element is Cable) ? Halvings / 2 : Halvings;
        for (int i = 0; i < halvings; i++)
        {
            double middle = Math.Sqrt(fits * much);
            if (Cures(middle))
                fits = middle;
            else
                much = middle;
        }
        return fits;
    }
}
