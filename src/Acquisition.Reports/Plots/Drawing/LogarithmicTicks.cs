using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Reports;

/// <summary>Ticks at 1 to 9 times each power of ten, with texts at as many of them as there is room for: 1-2-5, whole decades, or every so many decades; each text has its own prefix and unit.</summary>
internal static class LogarithmicTicks
{
    internal static Scale Scale(Axis axis, double lower, double upper, double length, bool isUpright)
    {
        int first = (int)Math.Floor(Math.Log10(lower) + 1e-9), last = (int)Math.Floor(Math.Log10(upper) + 1e-9);
        Func<double, double> placeOf = value => Reports.Scale.Place(true, lower, upper, value);
        if (Math.Log10(upper) - Math.Log10(lower) < 0.5) return Narrow(axis, lower, upper, length, isUpright, placeOf);

        int decades = last - first + 1;
        foreach ((Func<int, bool> isText, int every) in Choices(decades))
        {
            var ticks = new List<Tick>();
            for (int exponent = first; exponent <= last; exponent++)
            {
                for (int digit = 1; digit <= (decades > 12 ? 1 : 9); digit++)
                {
                    double value = exponent >= 0 ? digit * Engineering.PowerOfTen(exponent) : digit / Engineering.PowerOfTen(-exponent);
                    if (!(value >= lower * (1 - 1e-9)) || !(value <= upper * (1 + 1e-9)) || value > double.MaxValue) continue;
                    ticks.Add(new Tick(value, isText(digit) && (digit > 1 || Modulo(exponent, every) == 0) ? axis.Words(value) : ""));
                }
            }
            if (ticks.Any(tick => tick.IsMajor) && Reports.Scale.Fits(ticks, placeOf, length, isUpright)) return new Scale(axis, lower, upper, ticks, axis.Label);
        }
        return new Scale(axis, lower, upper, Array.Empty<Tick>(), axis.Label + " from " + axis.Words(lower) + " to " + axis.Words(upper));
    }

    private static IEnumerable<(Func<int, bool> IsText, int Every)> Choices(int decades)
    {
        if (decades <= 2) yield return (_ => true, 1);
        if (decades <= 4) yield return (digit => digit is 1 or 2 or 5, 1);
        for (int every = 1; every < decades; every = every < 3 ? every + 1 : 2 * every) yield return (digit => digit == 1, every);
        yield return (digit => digit == 1, Math.Max(1, decades));
    }

    /// <summary>Less than half a decade holds too few such ticks: those of a linear axis, at their logarithmic places.</summary>
    private static Scale Narrow(Axis axis, double lower, double upper, double length, bool isUpright, Func<double, double> placeOf)
    {
        for (double part = 1; ; part /= 2)
        {
            Scale linear = LinearTicks.Scale(Axis.Linear(axis.Label, axis.Unit), lower, upper, length * part, isUpright, false);
            if (Reports.Scale.Fits(linear.Ticks, placeOf, length, isUpright)) return new Scale(axis, lower, upper, linear.Ticks, linear.Title);
            if (part < 0.05) return new Scale(axis, lower, upper, Reports.Scale.FirstAlone(linear.Ticks), linear.Title);
        }
    }

    private static int Modulo(int value, int divisor) => ((value % divisor) + divisor) % divisor;
}
