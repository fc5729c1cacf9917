using System;
using System.Collections.Generic;

namespace Acquisition.Core.Functions;

/// <summary>What a value in a formula is: a quantity of some kind, a truth value, a text, or a model such as a signal, a response or a record.</summary>
/// <remarks>Immutable. Two value kinds are equal when a value of one can stand for a value of the other.</remarks>
public sealed class ValueKind : IEquatable<ValueKind>
{
    private enum Sort
    {
        Quantity,
        AnyQuantity,
        Truth,
        Text,
        Model,
    }

    private readonly Sort _sort;
    private readonly Type? _modelType;
    private readonly Func<object, bool>? _isModel;

    private readonly string? _name;

    private ValueKind(Sort sort, string? name, QuantityKind? quantity = null, Type? modelType = null, Func<object, bool>? isModel = null, IReadOnlyList<string>? choices = null)
    {
        _sort = sort;
        _modelType = modelType;
        _isModel = isModel;
        _name = name;
        Quantity = quantity;
        Choices = (choices ?? Array.Empty<string>()).Frozen();
    }

    /// <summary>True or false.</summary>
    public static ValueKind Truth { get; } = new(Sort.Truth, "truth value");

    /// <summary>Any text.</summary>
    public static ValueKind Text { get; } = new(Sort.Text, "text");

    /// <summary>A quantity of any kind: for functions that are generic in dimension, such as an absolute value. Parameters of this kind must all agree with the first.</summary>
    public static ValueKind AnyQuantity { get; } = new(Sort.AnyQuantity, "quantity");

    /// <summary>A plain number or ratio.</summary>
    public static ValueKind Number { get; } = Of(QuantityKind.Ratio);

    /// <summary>A quantity of one kind, held in its SI unit (logarithmic kinds in their own unit: dB, dBm, dBV).</summary>
    /// <exception cref="ArgumentNullException"><paramref name="kind"/> is null.</exception>
    public static ValueKind Of(QuantityKind kind) => new(Sort.Quantity, null, kind ?? throw new ArgumentNullException(nameof(kind)));

    /// <summary>A text that must be one of a few words, such as the name of an interpolation.</summary>
    /// <param name="name">What is chosen, such as <c>interpolation</c>.</param>
    /// <param name="choices">The words, as they are written between quotes in a formula.</param>
    /// <exception cref="ArgumentException">There are no choices.</exception>
    public static ValueKind Choice(string name, params string[] choices)
    {
        if (choices is null || choices.Length == 0) throw new ArgumentException("a choice needs at least one word", nameof(choices));
        return new(Sort.Text, name ?? throw new ArgumentNullException(nameof(name)), choices: (string[])choices.Clone());
    }

    /// <summary>An object of the library that formulas carry about without looking inside, such as a response.</summary>
    /// <typeparam name="T">The type of the object.</typeparam>
    /// <param name="name">The word for it in messages, such as <c>response</c>.</param>
    public static ValueKind Model<T>(string name)
        where T : class =>
        new(Sort.Model, name ?? throw new ArgumentNullException(nameof(name)), modelType: typeof(T), isModel: static value => value is T);

    /// <summary>The word for it in messages, without an article.</summary>
    public string Name => _name ?? Quantity!.Name;

    /// <summary>The kind of the quantity; null for anything that is no quantity, and for <see cref="AnyQuantity"/>.</summary>
    public QuantityKind? Quantity { get; }

    /// <summary>The words a <see cref="Choice"/> admits; empty otherwise.</summary>
    public IReadOnlyList<string> Choices { get; }

    /// <summary>Whether values of this kind are quantities, held as one double.</summary>
    public bool IsQuantity => _sort is Sort.Quantity or Sort.AnyQuantity;

    /// <summary>Whether this is <see cref="Truth"/>.</summary>
    public bool IsTruth => _sort == Sort.Truth;

    /// <summary>Whether this is <see cref="Text"/> or a <see cref="Choice"/>.</summary>
    public bool IsText => _sort == Sort.Text;

    /// <summary>Whether values of this kind are objects of the library.</summary>
    public bool IsModel => _sort == Sort.Model;

    internal bool IsAnyQuantity => _sort == Sort.AnyQuantity;

    /// <summary>Truth values (1 and 0) and quantities live in number registers, texts and models in object registers.</summary>
    internal bool IsHeldAsNumber => _sort is Sort.Quantity or Sort.AnyQuantity or Sort.Truth;

    /// <summary>Whether an object is a value of this kind; for models and texts only.</summary>
    internal bool Admits(object? value) => _sort switch
    {
        Sort.Model => value is not null && _isModel!(value),
        Sort.Text => value is string,
        _ => false,
    };

    /// <inheritdoc/>
    public bool Equals(ValueKind? other) =>
        other is not null && _sort == other._sort
        && (_sort != Sort.Quantity || Quantity!.Equals(other.Quantity))
        && (_sort != Sort.Model || _modelType == other._modelType);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as ValueKind);

    /// <inheritdoc/>
    public override int GetHashCode() => _sort switch
    {
        Sort.Quantity => Quantity!.GetHashCode(),
        Sort.Model => _modelType!.GetHashCode(),
        _ => (int)_sort,
    };

    /// <summary>The word for it in messages.</summary>
    public override string ToString() => Name;

    /// <summary>A quantity kind as a value kind.</summary>
    public static implicit operator ValueKind(QuantityKind kind) => ReferenceEquals(kind, QuantityKind.Ratio) ? Number : Of(kind);
}
