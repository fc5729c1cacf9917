using System;
using System.Collections.Generic;

namespace Acquisition.Reports;

/// <summary>A mark along an axis; without text it is a minor one.</summary>
internal readonly struct Tick
{
    internal Tick(double value, string text)
    {
        Value = value;
        Text = text;
    }

    internal double Value { get; }

    internal string Text { get; }

    internal bool IsMajor => Text.Length > 0;
}

/// <summary>An <see cref="Axis"/> with its range and its length on the picture: places values along it, and knows its ticks and their texts.</summary>
internal sealed class Scale
{
    internal const double FontSize = 13;

    private const double Smallest = 1e-290;

    private readonly bool _isLogarithmic;
    private readonly double _lower;
    private readonly double _upper;

    internal Scale(Axis axis, double lower, double upper, IReadOnlyList<Tick> ticks, string title)
    {
        _isLogarithmic = axis.IsLogarithmic;
        _lower = lower;
        _upper = upper;
        Ticks = ticks;
        Title = title;
    }

    /// <summary>The ticks by rising value.</summary>
    internal IReadOnlyList<Tick> Ticks { get; }

    /// <summary>What to write along the axis: quantity and unit, as ISO 80000-1 writes the quotient.</summary>
    internal string Title { get; }

    internal double Lower => _lower;

    internal double Upper => _upper;

    /// <summary>Where a value lies: 0 at the lower end, 1 at the upper one.</summary>
    internal double PlaceOf(double value) => Place(_isLogarithmic, _lower, _upper, value);

    internal static double Place(bool isLogarithmic, double lower, double upper, double value) => isLogarithmic
        ? (Math.Log10(value) - Math.Log10(lower)) / (Math.Log10(upper) - Math.Log10(lower))
        // Halved, since the span of two finite values may not be finite.
        : ((value / 2) - (lower / 2)) / ((upper / 2) - (lower / 2));

    internal static Scale Between(Axis axis, double lower, double upper, double length, bool isUpright) =>
        axis.IsLogarithmic ? LogarithmicTicks.Scale(axis, lower, upper, length, isUpright) : LinearTicks.Scale(axis, lower, upper, length, isUpright, false);

    internal static Scale Around(Axis axis, double lower, double upper, double length, bool isUpright)
    {
        if (axis.IsLogarithmic)
        {
            if (axis.IsTight && upper > lower * 1.01) return LogarithmicTicks.Scale(axis, lower, upper, length, isUpright);
            double low = RoundedDown(lower), high = RoundedUp(upper);
            if (high <= low) (low, high) = low > double.MaxValue / 100 ? (low / 10, low) : (low, low * 10);
            return LogarithmicTicks.Scale(axis, low, high, length, isUpright);
        }
        // Beside 1e-290 nothing is left of a step; such spans are drawn as one value.
        bool isSpread = (upper / 2) - (lower / 2) > Math.Max(Smallest, 1e-13 * Math.Max(Math.Abs(lower / 2), Math.Abs(upper / 2)));
        if (!isSpread)
        {
            double margin = Math.Abs(lower) < Smallest ? 1 : Math.Abs(lower) * 0.1;
            lower = Math.Max(lower - margin, -double.MaxValue);
            upper = Math.Min(upper + margin, double.MaxValue);
        }
        return LinearTicks.Scale(axis, lower, upper, length, isUpright, !(isSpread && axis.IsTight));
    }

    /// <summary>Whether texts at places along the axis leave a gap between each other.</summary>
    internal static bool Fits(IReadOnlyList<Tick> ticks, Func<double, double> placeOf, double length, bool isUpright)
    {
        double last = double.NegativeInfinity;
        foreach (Tick tick in ticks)
        {
            if (!tick.IsMajor) continue;
            double at = placeOf(tick.Value) * length, half = isUpright ? FontSize * 0.75 : TextExtent.Width(tick.Text, FontSize) / 2;
            if (at - half < last + (isUpright ? 4 : 10)) return false;
            last = at + half;
        }
        return true;
    }

    /// <summary>The same ticks, of which the first alone keeps its text.</summary>
    internal static IReadOnlyList<Tick> FirstAlone(IReadOnlyList<Tick> ticks)
    {
        var thinned = new Tick[ticks.Count];
        for (int i = 0; i < thinned.Length; i++) thinned[i] = i == 0 ? ticks[0] : new Tick(ticks[i].Value, "");
        return thinned;
    }

    private static double RoundedDown(double value)
    {
        double decade = Engineering.PowerOfTen((int)Math.Floor(Math.Log10(value) + 1e-9));
        // Among subnormal numbers a decade may be no number at all.
        return decade > 0 ? decade : value;
    }

    private static double RoundedUp(double value)
    {
        int exponent = (int)Math.Ceiling(Math.Log10(value) - 1e-9);
        return exponent > 308 ? double.MaxValue : Engineering.PowerOfTen(exponent);
    }
}
