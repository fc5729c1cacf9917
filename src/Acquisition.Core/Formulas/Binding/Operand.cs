using Acquisition.Core.Functions;

namespace Acquisition.Core.Formulas.Binding;

/// <summary>A part of a formula after binding: what it is, and its value where that is known already, else the register it will be in.</summary>
internal readonly struct Operand
{
    private Operand(ValueKind? kind, bool isKnown, double number, object? value, int register, bool canBeDifference, double rounding = 0)
    {
        Kind = kind;
        IsKnown = isKnown;
        Number = number;
        Object = value;
        Register = register;
        CanBeDifference = canBeDifference;
        Rounding = rounding;
    }

    /// <summary>A part with a mistake that is reported already.</summary>
    internal static Operand Unknown => default;

    internal static Operand Known(ValueKind kind, double number, bool canBeDifference = false, double rounding = 0) => new(kind, true, number, null, 0, canBeDifference, rounding);

    internal static Operand KnownObject(ValueKind kind, object value) => new(kind, true, 0, value, 0, false);

    internal static Operand In(int register, ValueKind kind) => new(kind, false, 0, null, register, false);

    /// <summary>What it is; null where a mistake is reported already.</summary>
    internal readonly ValueKind? Kind;

    internal readonly bool IsKnown;

    internal readonly double Number;

    internal readonly object? Object;

    internal readonly int Register;

    /// <summary>Whether it is a number in kelvins, which can be a temperature or a difference of two.</summary>
    internal readonly bool CanBeDifference;

    /// <summary>What a known number that was computed has lost to rounding; 0 for one that is written.</summary>
    internal readonly double Rounding;

    internal Operand As(ValueKind kind) => new(kind, IsKnown, Number, Object, Register, false, Rounding);
}
