using System;
using System.Collections.Generic;

namespace Acquisition.Reports;

/// <summary>One axis of a <see cref="Plot"/>: what it shows, in which unit, and how values are spread along it.</summary>
/// <remarks>Immutable. Without an explicit range the axis spans its data, rounded outwards to whole ticks.</remarks>
public sealed class Axis
{
    private Axis(string label, string unit, bool isLogarithmic, double lower, double upper, bool isTight)
    {
        Label = label ?? throw new ArgumentNullException(nameof(label));
        Unit = unit ?? throw new ArgumentNullException(nameof(unit));
        IsLogarithmic = isLogarithmic;
        Lower = lower;
        Upper = upper;
        IsTight = isTight;
    }

    /// <summary>What the axis shows, such as <c>frequency</c>.</summary>
    public string Label { get; }

    /// <summary>The unit without prefix that the data are in, such as <c>Hz</c>; empty for a plain number.</summary>
    public string Unit { get; }

    /// <summary>Whether equal lengths are equal ratios.</summary>
    public bool IsLogarithmic { get; }

    internal double Lower { get; }

    internal double Upper { get; }

    /// <summary>Whether the axis ends where the data end, not at the next tick.</summary>
    internal bool IsTight { get; }

    internal bool HasRange => !double.IsNaN(Lower);

    /// <summary>An axis on which equal lengths are equal differences.</summary>
    /// <param name="label">What the axis shows.</param>
    /// <param name="unit">The unit without prefix; the axis chooses one prefix for all its ticks.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Axis Linear(string label, string unit) => new(label, unit, false, double.NaN, double.NaN, false);

    /// <summary>An axis on which equal lengths are equal ratios.</summary>
    /// <param name="label">What the axis shows.</param>
    /// <param name="unit">The unit without prefix; each tick carries its own prefix.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Axis Logarithmic(string label, string unit) => new(label, unit, true, double.NaN, double.NaN, false);

    /// <summary>The same axis with a fixed range; what lies outside is cut off at the frame, since the range was chosen.</summary>
    /// <param name="lowerInAxisUnits">The value at the left or lower end.</param>
    /// <param name="upperInAxisUnits">The value at the right or upper end.</param>
    /// <exception cref="ArgumentOutOfRangeException">The range is empty, not finite, or on a logarithmic axis not above zero.</exception>
    public Axis WithRange(double lowerInAxisUnits, double upperInAxisUnits)
    {
        bool isFinite = Math.Abs(lowerInAxisUnits) <= double.MaxValue && Math.Abs(upperInAxisUnits) <= double.MaxValue;
        // Ends that a double barely tells apart leave no place between them.
        bool isSpread = (upperInAxisUnits / 2) - (lowerInAxisUnits / 2) > Math.Max(1e-290, 1e-13 * Math.Max(Math.Abs(lowerInAxisUnits / 2), Math.Abs(upperInAxisUnits / 2)));
        if (!isFinite || !isSpread || (IsLogarithmic && lowerInAxisUnits <= 0))
        {
            throw new ArgumentOutOfRangeException(
                nameof(upperInAxisUnits),
                FormattableString.Invariant($"the range of the axis '{Label}' must run upwards between finite values that can be told apart{(IsLogarithmic ? " above 0" : "")}; was {lowerInAxisUnits} to {upperInAxisUnits} {Unit}"));
        }
        return new Axis(Label, Unit, IsLogarithmic, lowerInAxisUnits, upperInAxisUnits, true);
    }

    /// <summary>The same axis, ending where the data end.</summary>
    internal Axis Tight() => new(Label, Unit, IsLogarithmic, Lower, Upper, true);

    /// <summary>A value with the unit of the axis, in few digits.</summary>
    internal string Words(double value) => Engineering.Text(value, Unit);

    /// <summary>Whether a value has a place on the axis.</summary>
    internal bool CanPlace(double value) => Math.Abs(value) <= double.MaxValue && (!IsLogarithmic || value > 0);

    /// <summary>The axis over its own range or, without one, over all of <paramref name="values"/>.</summary>
    /// <param name="values">Values that must lie inside.</param>
    /// <param name="length">How long the axis is drawn.</param>
    /// <param name="isUpright">Whether it is the vertical one, whose texts lie one above the other.</param>
    internal Scale Over(IEnumerable<double> values, double length, bool isUpright)
    {
        if (HasRange) return Scale.Between(this, Lower, Upper, length, isUpright);
        double lower = double.PositiveInfinity, upper = double.NegativeInfinity;
        foreach (double value in values)
        {
            lower = Math.Min(lower, value);
            upper = Math.Max(upper, value);
        }
        if (lower > upper) (lower, upper) = IsLogarithmic ? (1, 10) : (0, 1);
        return Scale.Around(this, lower, upper, length, isUpright);
    }
}
