using System;

namespace Acquisition.Core.Formulas.Execution;

/// <summary>
/// How far rounding may have moved the result of an operation: what it has moved the operands by, carried on, and the last place of the result itself (running error analysis: N. J. Higham, Accuracy
/// and Stability of Numerical Algorithms, 3.3; from memory).
/// </summary>
internal static class Rounding
{
    /// <summary>One unit in the last place, relative: twice what rounding to nearest loses at most.</summary>
    internal const double LastPlace = 2.220446049250313e-16;

    /// <summary>What a function computes, it computes in several steps.</summary>
    internal const double OfFunctions = 8 * LastPlace;

    /// <summary>An operand is moved by so many of its rounding errors, because by one of them it would move by less than its own last place.</summary>
    internal const double Magnified = 1 << 20;

    internal static double Of(Operation operation, double a, double roundingOfA, double b, double roundingOfB)
    {
        double value = Arithmetic.Apply(operation, a, b);
        return Carried(value, Arithmetic.Apply(operation, a + Magnified * Least(a, roundingOfA), b))
            + Carried(value, Arithmetic.Apply(operation, a, b + Magnified * Least(b, roundingOfB)))
            + LastPlace * Math.Abs(value);
    }

    /// <summary>A number is never known better than to its last place: 0.1 is no binary fraction.</summary>
    internal static double Least(double value, double rounding) => Math.Max(rounding, LastPlace * Math.Abs(value));

    /// <summary>The part of the rounding of a result that one operand brings, from the result with that operand moved.</summary>
    internal static double Carried(double value, double moved) => Arithmetic.IsFinite(moved) ? Math.Abs(moved - value) / Magnified : 0;
}
