using System;
using System.Collections.Generic;

namespace Acquisition.Reports;

/// <summary>One axis of a <see cref="Plot"/>: what it shows, in which unit, and how values are spread along it.</summary>
/// <remarks>Immutable. Without an explicit range the axis spans its data, rounded outwards to whole ticks.</remarks>
public sealed class Axis
{
    private Axis(string label, string unit, bool isLogarithmic, double lower, double upper)
    {
        Label = label ?? throw new ArgumentNullException(nameof(label));
        Unit = unit ?? throw new ArgumentNullException(nameof(unit));
        IsLogarithmic = isLogarithmic;
        Lower = lower;
        Upper = upper;
    }

    /// <summary>What the axis shows, such as <c>frequency</c>.</summary>
    public string Label { get; }

    /// <summary>The unit without prefix that the data are in, such as <c>Hz</c>; empty for a plain number.</summary>
    public string Unit { get; }

    /// <summary>Whether equal lengths are equal ratios.</summary>
    public bool IsLogarithmic { get; }

    internal double Lower { get; }

    internal double Upper { get; }

    internal bool HasRange => !double.IsNaN(Lower);

    /// <summary>An axis on which equal lengths are equal differences.</summary>
    /// <param name="label">What the axis shows.</param>
    /// <param name="unit">The unit without prefix; the axis chooses one prefix for all its ticks.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Axis Linear(string label, string unit) => new(label, unit, false, double.NaN, double.NaN);

    /// <summary>An axis on which equal lengths are equal ratios.</summary>
    /// <param name="label">What the axis shows.</param>
    /// <param name="unit">The unit without prefix; each tick carries its own prefix.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Axis Logarithmic(string label, string unit) => new(label, unit, true, double.NaN, double.NaN);

    /// <summary>The same axis with a fixed range; what lies outside is clipped at the frame, as the finding of a reader who chose the range.</summary>
    /// <param name="lowerInAxisUnits">The value at the left or lower end.</param>
    /// <param name="upperInAxisUnits">The value at the right or upper end.</param>
    /// <exception cref="ArgumentOutOfRangeException">The range is empty, not finite, or on a logarithmic axis not above zero.</exception>
    public Axis WithRange(double lowerInAxisUnits, double upperInAxisUnits)
    {
        bool isFinite = Math.Abs(lowerInAxisUnits) <= double.MaxValue && Math.Abs(upperInAxisUnits) <= double.MaxValue;
        if (!isFinite || lowerInAxisUnits >= upperInAxisUnits || (IsLogarithmic && lowerInAxisUnits <= 0))
        {
            throw new ArgumentOutOfRangeException(
                nameof(upperInAxisUnits),
                FormattableString.Invariant($"the range of the axis '{Label}' must run upwards between finite values{(IsLogarithmic ? " above 0" : "")}; was {lowerInAxisUnits} to {upperInAxisUnits} {Unit}"));
        }
        return new Axis(Label, Unit, IsLogarithmic, lowerInAxisUnits, upperInAxisUnits);
    }

    /// <summary>The axis with a range: its own, or the one that holds all of <paramref name="values"/>.</summary>
    internal Scale Over(IEnumerable<double> values)
    {
        if (HasRange) return Scale.Between(this, Lower, Upper);
        double lower = double.PositiveInfinity, upper = double.NegativeInfinity;
        foreach (double value in values)
        {
            lower = Math.Min(lower, value);
            upper = Math.Max(upper, value);
        }
        if (lower > upper) (lower, upper) = IsLogarithmic ? (1, 10) : (0, 1);
        return Scale.Around(this, lower, upper);
    }
}
