using System;
using System.Runtime.CompilerServices;

namespace Acquisition.Core.Formulas.Execution;

/// <summary>The scalar meaning of every operation that needs registers only. Folding, scalar evaluation and column evaluation share it.</summary>
internal static class Arithmetic
{
    internal static double Apply(Operation operation, double a, double b) => operation switch
    {
        Operation.Copy => a,
        Operation.Negate => -a,
        Operation.Add => a + b,
        Operation.Subtract => a - b,
        Operation.Multiply => a * b,
        Operation.Divide => Divide(a, b),
        Operation.Power => Power(a, b),
        Operation.Square => a * a,
        Operation.SquareRoot => Math.Sqrt(a),
        Operation.Absolute => Math.Abs(a),
        Operation.Minimum => Minimum(a, b),
        Operation.Maximum => Maximum(a, b),
        Operation.LevelInBandwidth => a + 10 * Math.Log10(b),
        Operation.LevelPerBandwidth => a - 10 * Math.Log10(b),
        Operation.Less => Less(a, b),
        Operation.LessOrEqual => LessOrEqual(a, b),
        Operation.Equal => Equal(a, b),
        Operation.NotEqual => 1 - Equal(a, b),
        Operation.And => a * b,
        Operation.Or => Or(a, b),
        Operation.Not => 1 - a,
        _ => double.NaN,
    };

    /// <summary>A quotient; by zero or by infinity it does not exist, so that neither can vanish in what follows.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static double Divide(double a, double b) => b != 0 && b - b == 0 ? a / b : double.NaN;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static double Power(double a, double b)
    {
        if (a == 0 && b < 0) return double.NaN;
        return a - a == 0 && b - b == 0 ? Math.Pow(a, b) : double.NaN;
    }

    internal static double Minimum(double a, double b) => AreFinite(a, b) ? Math.Min(a, b) : double.NaN;

    internal static double Maximum(double a, double b) => AreFinite(a, b) ? Math.Max(a, b) : double.NaN;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static double Less(double a, double b) => AreFinite(a, b) ? (a < b ? 1 : 0) : double.NaN;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static double LessOrEqual(double a, double b) => AreFinite(a, b) ? (a <= b ? 1 : 0) : double.NaN;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static double Equal(double a, double b) => AreFinite(a, b) ? (a == b ? 1 : 0) : double.NaN;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static double Or(double a, double b) => a + b - a * b;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static double Select(double condition, double whenTrue, double whenFalse) =>
        condition == 1 ? whenTrue : condition == 0 ? whenFalse : double.NaN;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static bool IsFinite(double value) => Math.Abs(value) <= double.MaxValue;

    private static bool AreFinite(double a, double b) => IsFinite(a) && IsFinite(b);
}
