using System;
using Acquisition.Core.Functions;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core.Formulas;

/// <summary>A value that goes into a formula or comes out of it: a quantity, a truth value, a text or a model.</summary>
/// <remarks>Immutable. The default value is the plain number 0.</remarks>
public readonly struct FormulaValue : IEquatable<FormulaValue>
{
    private readonly ValueKind? _kind;
    private readonly string? _unit;

    private readonly double _unitFactor;

    internal FormulaValue(ValueKind kind, double number, object? value, string? unit = null, double unitFactor = 0, LinearCombination? combination = null)
    {
        Combination = combination;
        _unitFactor = unitFactor;
        _kind = kind;
        Number = number;
        Object = value;
        _unit = unit;
    }

    /// <summary>A quantity.</summary>
    public static FormulaValue Of(Quantity quantity) => new(ValueKind.Of(quantity.Kind), quantity.SiValue, null);

    /// <summary>A quantity of one of the strong types.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="quantity"/> is null.</exception>
    public static FormulaValue Of(IQuantity quantity) => Of((quantity ?? throw new ArgumentNullException(nameof(quantity))).ToQuantity());

    /// <summary>True or false.</summary>
    public static FormulaValue Of(bool truth) => new(ValueKind.Truth, truth ? 1 : 0, null);

    /// <summary>A text.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    public static FormulaValue Of(string text) => new(ValueKind.Text, 0, text ?? throw new ArgumentNullException(nameof(text)));

    /// <summary>A model.</summary>
    /// <param name="kind">Its kind, as the functions that take it declare it.</param>
    /// <param name="model">The model.</param>
    /// <exception cref="ArgumentException"><paramref name="model"/> is no model of that kind.</exception>
    public static FormulaValue Of(ValueKind kind, object model)
    {
        if (kind is null) throw new ArgumentNullException(nameof(kind));
        return kind.IsModel && kind.Admits(model) ? new(kind, 0, model) : throw new ArgumentException($"found a {model?.GetType().Name ?? "null"}, expected a {kind.Name}", nameof(model));
    }

    /// <summary>What it is.</summary>
    public ValueKind Kind => _kind ?? ValueKind.Number;

    /// <summary>The quantity.</summary>
    /// <exception cref="InvalidOperationException">It is no quantity.</exception>
    public Quantity Quantity => Kind.Quantity is { } kind ? new Quantity(Number, kind) : throw Mismatch("a quantity");

    /// <summary>The value of a quantity in the unit its kind is held in (SI; logarithmic kinds in their own unit).</summary>
    /// <exception cref="InvalidOperationException">It is no quantity.</exception>
    public double SiValue => Kind.IsQuantity ? Number : throw Mismatch("a quantity");

    /// <summary>Whether it is true.</summary>
    /// <exception cref="InvalidOperationException">It is no truth value.</exception>
    public bool IsTrue => Kind.IsTruth ? Number != 0 : throw Mismatch("a truth value");

    /// <summary>The text.</summary>
    /// <exception cref="InvalidOperationException">It is no text.</exception>
    public string Text => Kind.IsText ? (string)Object! : throw Mismatch("a text");

    /// <summary>The model.</summary>
    /// <typeparam name="T">Its type.</typeparam>
    /// <exception cref="InvalidOperationException">It is no model of that type.</exception>
    public T Model<T>()
        where T : class => Object as T ?? throw Mismatch("a " + typeof(T).Name);

    /// <summary>The unit after <c>in</c> in the formula that gave it; null where there is none.</summary>
    public string? Unit => _unit;

    internal double Number { get; }

    internal object? Object { get; }

    /// <summary>What the value is known by where something it was computed from carries ±, for templates; null where it is exact, or a host has given it.</summary>
    internal LinearCombination? Combination { get; }

    internal FormulaValue Carrying(UncertaintyBudget budget) => new(Kind, Number, Object, _unit, _unitFactor, budget.Combination());

    /// <inheritdoc/>
    public bool Equals(FormulaValue other) => Kind.Equals(other.Kind) && Number.Equals(other.Number) && Equals(Object, other.Object);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is FormulaValue other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => Number.GetHashCode() ^ (Object?.GetHashCode() ?? 0);

    /// <summary>Whether kind and value are the same.</summary>
    public static bool operator ==(FormulaValue left, FormulaValue right) => left.Equals(right);

    /// <summary>Whether kind or value differ.</summary>
    public static bool operator !=(FormulaValue left, FormulaValue right) => !left.Equals(right);

    /// <summary>A quantity as a value.</summary>
    public static implicit operator FormulaValue(Quantity quantity) => Of(quantity);

    /// <summary>A truth value as a value.</summary>
    public static implicit operator FormulaValue(bool truth) => Of(truth);

    /// <summary>A text as a value.</summary>
    public static implicit operator FormulaValue(string text) => Of(text);

    /// <summary>The value as text, in the unit after <c>in</c> where the formula has one.</summary>
    public override string ToString() => ToString(null);

    /// <summary>The value as text, quantities in a chosen format (docs/notation.md).</summary>
    /// <param name="format">
    /// Such as <c>G4 MHz</c>; null for at most fifteen digits, all that a decimal number keeps through a double, in the unit after <c>in</c> where the formula has one. <c>R</c> writes the shortest text that
    /// reads back to the same bits.
    /// </param>
    /// <exception cref="FormatException">The format is not known, or its unit is of another kind.</exception>
    public string ToString(string? format)
    {
        if (Kind.IsTruth) return Number != 0 ? "true" : "false";
        if (!Kind.IsQuantity) return Object?.ToString() ?? "";
        return ResultFormat.Write(Quantity, format, _unit, _unitFactor);
    }

    /// <summary>The value with its expanded uncertainty, in the unit after <c>in</c> where the formula has one.</summary>
    internal string ToString(string? format, UncertaintyBudget budget) =>
        ResultFormat.Write(Quantity, budget.SiExpandedUncertainty, budget.CoverageFactor, format, _unit, _unitFactor);

    private InvalidOperationException Mismatch(string expected) => new($"found a {Kind.Name}, expected {expected}");
}
