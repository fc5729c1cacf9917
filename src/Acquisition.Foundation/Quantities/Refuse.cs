using System;

namespace Acquisition.Core;

/// <summary>The texts of refusals, in one place: each names the argument, its value with unit and the allowed range.</summary>
internal static class Refuse
{
    internal static ArgumentOutOfRangeException NotFinite(double value, QuantityKind kind, string argument) =>
        OutOfRange(value, kind, argument, "a finite " + kind.Name);

    internal static ArgumentOutOfRangeException NegativeOrNotFinite(double value, QuantityKind kind, string argument) =>
        OutOfRange(value, kind, argument, AtLeastZero(kind));

    /// <summary>A refusal of operands that are fine by themselves: <c>the result must be a finite ratio; was NaN</c>.</summary>
    internal static ArgumentOutOfRangeException NotFiniteResult(double value, QuantityKind kind, string operand) => Result(value, kind, operand, "a finite " + kind.Name);

    internal static ArgumentOutOfRangeException NegativeOrNotFiniteResult(double value, QuantityKind kind, string operand) => Result(value, kind, operand, AtLeastZero(kind));

    internal static ArgumentOutOfRangeException Result(double value, QuantityKind kind, string operand, string allowed) =>
        new(operand, $"the result must be {allowed}; was {QuantityText.Format(value, kind, null, null)}" + (double.IsNaN(value) ? ", as of 0 divided by 0" : ""));

    /// <summary>The same refusal of what an operation gave, where the check that every value passes has named an argument.</summary>
    internal static ArgumentOutOfRangeException OfResult(ArgumentOutOfRangeException refusal, string operand) => new(operand, "the result" + ReasonIn(refusal));

    /// <summary>The sentence without the name of the argument that it begins with, and that the framework appends once more: <c> must be above 0 Hz; was -20 MHz</c>.</summary>
    internal static string ReasonIn(ArgumentOutOfRangeException refusal)
    {
        string message = refusal.Message;
        int end = message.IndexOf(" (Parameter", StringComparison.Ordinal);
        if (end < 0) end = message.IndexOfAny(LineEnds);
        int start = Math.Max(0, message.IndexOf(" must be ", StringComparison.Ordinal));
        return end < 0 ? message.Substring(start) : message.Substring(start, end - start);
    }

    private static readonly char[] LineEnds = { '\r', '\n' };

    private static string AtLeastZero(QuantityKind kind) => $"a finite {kind.Name} of at least {QuantityText.Format(0, kind, null, null)}";

    /// <summary>A refusal such as <c>bandwidth must be above 0 Hz; was -20 MHz</c>.</summary>
    /// <param name="value">The value in the unit of its kind.</param>
    /// <param name="kind">The kind.</param>
    /// <param name="argument">The name of the argument.</param>
    /// <param name="allowed">What must hold, to be read after "must be".</param>
    /// <param name="remedy">What would cure it, a sentence without full stop, where there is one.</param>
    internal static ArgumentOutOfRangeException OutOfRange(double value, QuantityKind kind, string argument, string allowed, string? remedy = null) =>
        new(argument, $"{argument} must be {allowed}; was {QuantityText.Format(value, kind, null, null)}" + (remedy is null ? "" : "; " + remedy));

    /// <summary>The value itself, when it is above zero.</summary>
    internal static double UnlessAboveZero(double value, QuantityKind kind, string argument, string? remedy = null) =>
        value > 0 && value <= double.MaxValue ? value : throw OutOfRange(value, kind, argument, "above " + QuantityText.Format(0, kind, null, null), remedy);

    internal static ArgumentException Incomparable(QuantityKind kind, object other, string argument) =>
        new($"a {kind.Name} cannot be compared with a {other.GetType().Name}", argument);
}
