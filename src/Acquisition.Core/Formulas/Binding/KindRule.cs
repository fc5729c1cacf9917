using Acquisition.Core.Formulas.Execution;

namespace Acquisition.Core.Formulas.Binding;

/// <summary>What an operator makes of two kinds: the kind of its result and the operation that computes it, or why there is none.</summary>
internal readonly struct KindRule
{
    private KindRule(QuantityKind? result, Operation operation, bool isSwapped, string? refusal, bool isAboutLeft = false)
    {
        Result = result;
        Operation = operation;
        IsSwapped = isSwapped;
        Refusal = refusal;
        IsAboutLeft = isAboutLeft;
    }

    internal readonly QuantityKind? Result;

    internal readonly Operation Operation;

    /// <summary>Whether the operation wants the right operand first.</summary>
    internal readonly bool IsSwapped;

    /// <summary>What was expected instead; null where the rule holds.</summary>
    internal readonly string? Refusal;

    /// <summary>Whether it is the left operand that is refused.</summary>
    internal readonly bool IsAboutLeft;

    internal static KindRule Gives(QuantityKind result, Operation operation, bool isSwapped = false) => new(result, operation, isSwapped, null);

    internal static KindRule Refused(string expected, bool isAboutLeft = false) => new(null, default, false, expected, isAboutLeft);
}
