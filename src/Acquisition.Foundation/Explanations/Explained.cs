using System;
using System.Collections.Generic;

namespace Acquisition.Core;

/// <summary>A computed value that explains itself: how it was computed, from what, by which source, under which assumptions, and what to know about it.</summary>
/// <typeparam name="T">The quantity type of the value.</typeparam>
/// <remarks>Immutable; converts to its value on its own, so that it can be used wherever the value can.</remarks>
public sealed class Explained<T>
    where T : struct, IQuantity
{
    /// <summary>Makes an explained value.</summary>
    /// <param name="name">What the value is, such as <c>rise time of the chain</c>.</param>
    /// <param name="value">The value.</param>
    /// <param name="method">How it was computed, in a few words or as a formula.</param>
    /// <param name="source">Standard and clause, or handbook section.</param>
    /// <param name="inputs">What it was computed from.</param>
    /// <param name="rules">Rules of thumb for the same value.</param>
    /// <param name="assumptions">What must hold for the value to be right.</param>
    /// <param name="findings">What to know about it.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/>, <paramref name="method"/> or <paramref name="source"/> is null.</exception>
    public Explained(
        string name,
        T value,
        string method,
        string source,
        IReadOnlyList<KeyValuePair<string, string>>? inputs = null,
        IReadOnlyList<RuleOfThumb<T>>? rules = null,
        IReadOnlyList<string>? assumptions = null,
        IReadOnlyList<Finding>? findings = null)
    {
        Name = name ?? throw new ArgumentNullException(nameof(name));
        Value = value;
        Method = method ?? throw new ArgumentNullException(nameof(method));
        Source = source ?? throw new ArgumentNullException(nameof(source));
        Inputs = (inputs ?? Array.Empty<KeyValuePair<string, string>>()).Frozen();
        Rules = (rules ?? Array.Empty<RuleOfThumb<T>>()).Frozen();
        Assumptions = (assumptions ?? Array.Empty<string>()).Frozen();
        Findings = (findings ?? Array.Empty<Finding>()).Frozen();
    }

    /// <summary>What the value is.</summary>
    public string Name { get; }

    /// <summary>The value.</summary>
    public T Value { get; }

    /// <summary>How it was computed.</summary>
    public string Method { get; }

    /// <summary>Standard and clause, or handbook section.</summary>
    public string Source { get; }

    /// <summary>What it was computed from: name and text of each input.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Inputs { get; }

    /// <summary>Rules of thumb for the same value, with their difference from it.</summary>
    public IReadOnlyList<RuleOfThumb<T>> Rules { get; }

    /// <summary>What must hold for the value to be right.</summary>
    public IReadOnlyList<string> Assumptions { get; }

    /// <summary>What to know about the value.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>The value alone.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="explained"/> is null.</exception>
    public static implicit operator T(Explained<T> explained) => (explained ?? throw new ArgumentNullException(nameof(explained))).Value;

    /// <summary>Name and value in one line.</summary>
    public override string ToString() => $"{Name}: {Value.InWords()}";
}
