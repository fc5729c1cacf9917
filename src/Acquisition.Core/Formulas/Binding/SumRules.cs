using Acquisition.Core.Formulas.Execution;

namespace Acquisition.Core.Formulas.Binding;

/// <summary>Which kinds can be added, subtracted and compared (handbook 1.4, 13.8; docs/notation.md).</summary>
internal static class SumRules
{
    internal static KindRule Add(QuantityKind left, QuantityKind right)
    {
        bool isGain = IsGain(right);
        if (left.IsLogarithmic && right.IsLogarithmic)
        {
            if (IsGain(left) && (isGain || IsStated(right))) return KindRule.Gives(right, Operation.Add);
            if (IsStated(left) && isGain) return KindRule.Gives(left, Operation.Add);
            if (left == right && left.Nature == QuantityNature.DecibelSlope) return KindRule.Gives(left, Operation.Add);
            if (IsStated(left) && IsStated(right))
                return KindRule.Refused(left.Nature == QuantityNature.Level ? "decibels (levels do not add; add the powers: see power_sum)" : "decibels (two values re a reference do not add)");
            return KindRule.Refused(left.Nature == QuantityNature.DecibelSlope ? Name(left) : "decibels");
        }
        if (left.Nature == QuantityNature.Point || right.Nature == QuantityNature.Point) return AddPoint(left, right);
        return left == right ? KindRule.Gives(left, Operation.Add) : KindRule.Refused(Expected(left));
    }

    internal static KindRule Subtract(QuantityKind left, QuantityKind right)
    {
        if (left.IsLogarithmic && right.IsLogarithmic)
        {
            if (IsGain(right) && (IsGain(left) || IsStated(left))) return KindRule.Gives(left, Operation.Subtract);
            if (left == right) return KindRule.Gives(IsStated(left) ? QuantityKind.DecibelRatio : left, Operation.Subtract);
            return KindRule.Refused(IsStated(left) ? $"decibels or {Name(left)}" : "decibels");
        }
        if (left.Nature == QuantityNature.Point && left.Dimension == right.Dimension)
        {
            return right.Nature == QuantityNature.Point
                ? KindRule.Gives(QuantityKind.Of(left.Dimension), Operation.Subtract)
                : KindRule.Gives(left, Operation.Subtract);
        }
        return left == right ? KindRule.Gives(left, Operation.Subtract) : KindRule.Refused(Expected(left));
    }

    /// <summary>Whether the two can be compared, and agree as the branches of a choice: only what is the same kind.</summary>
    internal static bool AreAlike(QuantityKind left, QuantityKind right) => left == right;

    /// <summary>What must stand beside a value of a kind, with the reason where one is not obvious.</summary>
    internal static string Expected(QuantityKind left) => left.Nature switch
    {
        QuantityNature.Peak or QuantityNature.PeakToPeak or QuantityNature.Rms => Name(left) + " (amplitudes stated differently do not meet)",
        _ => Name(left),
    };

    internal static string Name(QuantityKind kind) => ProblemText.Article(kind.Name);

    private static KindRule AddPoint(QuantityKind left, QuantityKind right)
    {
        if (left.Dimension != right.Dimension) return KindRule.Refused(left.Nature == QuantityNature.Point ? "a temperature difference" : Name(left));
        if (left.Nature == right.Nature) return KindRule.Refused("a temperature difference (two points on a scale do not add)");
        return KindRule.Gives(left.Nature == QuantityNature.Point ? left : right, Operation.Add);
    }

    /// <summary>Decibels without a reference.</summary>
    private static bool IsGain(QuantityKind kind) => kind.Nature == QuantityNature.DecibelRatio && kind.Reference == LevelReference.None;

    /// <summary>Decibels re something: levels, dBc, dBFS and their densities.</summary>
    private static bool IsStated(QuantityKind kind) => kind.Reference != LevelReference.None && kind.IsLogarithmic;
}
