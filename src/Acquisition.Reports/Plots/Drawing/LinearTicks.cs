using System;
using System.Collections.Generic;
using System.Globalization;

namespace Acquisition.Reports;

/// <summary>Ticks at 1, 2 or 5 times a power of ten, as many as their texts leave room for, all with one SI prefix; far from zero they count from an offset that the title names.</summary>
internal static class LinearTicks
{
    /// <param name="axis">The axis.</param>
    /// <param name="lower">The lower end.</param>
    /// <param name="upper">The upper end.</param>
    /// <param name="length">How long the axis is drawn.</param>
    /// <param name="isUpright">Whether it is the vertical one.</param>
    /// <param name="rounds">Whether the ends move outwards to the next tick.</param>
    internal static Scale Scale(Axis axis, double lower, double upper, double length, bool isUpright, bool rounds)
    {
        double half = (upper / 2) - (lower / 2);
        int most = (int)Math.Max(2, Math.Min(12, length / (isUpright ? 34 : 60)));
        double step = StepFor(half / most * 2);
        while (true)
        {
            // Steps beyond the resolution or the range of a double: no tick could be told from the next.
            double largest = Math.Max(Math.Abs(lower), Math.Abs(upper)) / step;
            if (!(largest < 4e15) || step > double.MaxValue) return new Scale(axis, lower, upper, Array.Empty<Tick>(), axis.Label + " from " + axis.Words(lower) + " to " + axis.Words(upper));
            (double low, double high) = rounds ? Rounded(lower, upper, step) : (lower, upper);
            List<Tick> ticks = Make(axis, low, high, step, out string title);
            if (Reports.Scale.Fits(ticks, value => Reports.Scale.Place(false, low, high, value), length, isUpright)) return new Scale(axis, low, high, ticks, title);
            // A step beyond the whole span makes nothing clearer: one text stays.
            if (step / 2 > half) return new Scale(axis, low, high, Reports.Scale.FirstAlone(ticks), title);
            step = Next(step);
        }
    }

    private static (double Low, double High) Rounded(double lower, double upper, double step)
    {
        double low = Math.Floor((lower / step) + 1e-9) * step, high = Math.Ceiling((upper / step) - 1e-9) * step;
        return (Math.Abs(low) <= double.MaxValue ? low : lower, Math.Abs(high) <= double.MaxValue ? high : upper);
    }

    private static List<Tick> Make(Axis axis, double lower, double upper, double step, out string title)
    {
        double first = Math.Ceiling((lower / step) - 1e-9), last = Math.Floor((upper / step) + 1e-9);
        double largest = Math.Max(Math.Abs(lower), Math.Abs(upper));
        // Beyond five digits a text says little of its neighbour.
        double offset = largest / step > 2e5 ? first : 0;
        bool takesPrefix = Engineering.TakesPrefix(axis.Unit);
        int thousands = takesPrefix ? Engineering.ThousandsOf(offset == 0 ? largest : (last - first + 1) * step) : 0;
        double shownStep = Engineering.Scaled(step, -thousands);
        int exponent = 0;
        if (shownStep >= 1e6 || shownStep * 100 < 1e-3)
        {
            exponent = (int)Math.Floor(Math.Log10(shownStep) + 1e-9);
            shownStep = exponent >= 0 ? shownStep / Engineering.PowerOfTen(exponent) : shownStep * Engineering.PowerOfTen(-exponent);
        }
        int decimals = Math.Min(Math.Max((int)Math.Ceiling(-Math.Log10(shownStep) - 1e-9), 0), 9);
        var ticks = new List<Tick>();
        for (double i = first; i <= last; i++)
        {
            double shown = (i - offset) * shownStep, value = i * step;
            if (!(Math.Abs(value) <= double.MaxValue)) continue;
            ticks.Add(new Tick(value, (shown == 0 ? 0 : shown).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture).Replace("-", Engineering.Minus)));
        }
        title = TitleOf(axis, thousands, exponent);
        if (offset != 0) title += " from " + Engineering.Text(first * step, axis.Unit, 15);
        return ticks;
    }

    private static string TitleOf(Axis axis, int thousands, int exponent)
    {
        string unit = Engineering.PrefixOf(thousands) + axis.Unit;
        string factor = exponent == 0 ? "" : "1e" + (exponent < 0 ? Engineering.Minus : "") + Math.Abs(exponent).ToString(CultureInfo.InvariantCulture);
        if (unit.Length == 0 && factor.Length == 0) return axis.Label;
        return axis.Label + " / " + (factor.Length == 0 ? unit : unit.Length == 0 ? factor : "(" + factor + " " + unit + ")");
    }

    /// <summary>The least step among 1, 2, 5 times a power of ten that is not below another.</summary>
    private static double StepFor(double least)
    {
        int exponent = (int)Math.Floor(Math.Log10(least) + 1e-9);
        double decade = Engineering.PowerOfTen(Math.Max(exponent, -300));
        double fraction = least / decade;
        return decade * (fraction <= 1.0001 ? 1 : fraction <= 2.0001 ? 2 : fraction <= 5.0001 ? 5 : 10);
    }

    private static double Next(double step) => StepFor(step * 1.5);
}
