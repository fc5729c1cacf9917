using Acquisition.Core.Formulas.Execution;

namespace Acquisition.Core.Formulas.Binding;

/// <summary>What products, quotients and powers of kinds are (handbook 13.8; docs/notation.md).</summary>
internal static class ProductRules
{
    private const string LeaveTheLogarithm = " (leave the logarithm by name: voltage_ratio, power_ratio, power, voltage)";

    internal static KindRule Multiply(QuantityKind left, QuantityKind right)
    {
        if (left.IsLogarithmic) return MultiplyLogarithm(left, right, isSwapped: false);
        if (right.IsLogarithmic) return MultiplyLogarithm(right, left, isSwapped: true);
        if (IsNumber(left) && right.Nature != QuantityNature.Point) return KindRule.Gives(right, Operation.Multiply);
        if (IsNumber(right) && left.Nature != QuantityNature.Point) return KindRule.Gives(left, Operation.Multiply);
        if (IsNumber(left) || IsNumber(right)) return ScaledPoint;
        if (IsAmplitude(left) && IsAmplitude(right))
        {
            if (IsUnlikeRms(left)) return NotRms(left, isLeft: true);
            if (left.Nature != right.Nature) return right.Nature == QuantityNature.Rms ? NotRms(left, isLeft: true) : NotRms(right, isLeft: false);
        }
        return Dimension.TryMultiply(left.Dimension, right.Dimension, out Dimension product)
            ? KindRule.Gives(QuantityKind.Of(product, TagAcrossResistance(left, right, product)), Operation.Multiply)
            : TooHigh;
    }

    internal static KindRule Divide(QuantityKind left, QuantityKind right)
    {
        if (right.IsLogarithmic) return KindRule.Refused("a quantity that is no logarithm" + LeaveTheLogarithm);
        if (left.IsLogarithmic) return DivideLogarithm(left, right);
        if (IsNumber(right)) return left.Nature == QuantityNature.Point ? ScaledPoint : KindRule.Gives(left, Operation.Divide);
        if (IsTagged(left) && IsTagged(right) && left.Nature != right.Nature && left.Dimension != right.Dimension) return KindRule.Refused("an amplitude stated as the one before '/' is (peak, peak-to-peak and rms do not meet)");
        return right.Dimension.TryPower(-2, out Dimension inverse) && Dimension.TryMultiply(left.Dimension, inverse, out Dimension quotient)
            ? KindRule.Gives(QuantityKind.Of(quotient, TagAcrossResistance(left, right, quotient)), Operation.Divide)
            : TooHigh;
    }

    /// <summary>The kind of a power with a known exponent.</summary>
    internal static KindRule Power(QuantityKind left, double exponent)
    {
        if (left.IsLogarithmic) return KindRule.Refused("a quantity that is no logarithm" + LeaveTheLogarithm);
        if (left.Dimension.IsNone) return KindRule.Gives(left, Operation.Power);
        if (exponent == 1) return KindRule.Gives(left, Operation.Copy);
        if (IsAmplitude(left) && IsUnlikeRms(left)) return NotRms(left, isLeft: true);
        double halves = 2 * exponent;
        if (System.Math.Abs(halves) > 126 || halves != System.Math.Round(halves)) return KindRule.Refused("an exponent that is a whole number of halves");
        return left.Dimension.TryPower((int)halves, out Dimension power) ? KindRule.Gives(QuantityKind.Of(power), Operation.Power) : KindRule.Refused("an exponent that leaves half powers of " + left.Symbol);
    }

    private static readonly KindRule ScaledPoint = KindRule.Refused("a temperature difference (a temperature is a point on a scale and cannot be scaled)");

    private static readonly KindRule TooHigh = KindRule.Refused("powers of units up to 63");

    internal static bool IsNumber(QuantityKind kind) => kind.Dimension.IsNone && kind.Nature == QuantityNature.Linear;

    private static KindRule MultiplyLogarithm(QuantityKind logarithm, QuantityKind factor, bool isSwapped)
    {
        bool isUnreferenced = logarithm.Reference == LevelReference.None;
        if (IsNumber(factor) && isUnreferenced) return KindRule.Gives(logarithm, Operation.Multiply);
        if (factor.Nature == QuantityNature.Linear && Dimension.TryMultiply(logarithm.Dimension, factor.Dimension, out Dimension product))
        {
            if (logarithm.Nature == QuantityNature.DecibelSlope && product.IsNone) return KindRule.Gives(QuantityKind.DecibelRatio, Operation.Multiply);
            if (logarithm.Nature == QuantityNature.LevelDensity && factor == QuantityKind.Frequency)
                return KindRule.Gives(QuantityKind.Of(product, product.IsNone ? QuantityNature.DecibelRatio : QuantityNature.Level, logarithm.Reference), Operation.LevelInBandwidth, isSwapped);
        }
        return KindRule.Refused(logarithm.Nature switch
        {
            QuantityNature.DecibelSlope => "a plain number or what " + logarithm.Symbol + " is per",
            QuantityNature.LevelDensity => "a frequency, the bandwidth",
            QuantityNature.DecibelRatio when isUnreferenced => "a plain number" + LeaveTheLogarithm,
            _ => "decibels with + or -" + LeaveTheLogarithm,
        });
    }

    private static KindRule DivideLogarithm(QuantityKind logarithm, QuantityKind divisor)
    {
        bool isUnreferenced = logarithm.Reference == LevelReference.None;
        if (IsNumber(divisor) && isUnreferenced) return KindRule.Gives(logarithm, Operation.Divide);
        if (logarithm == QuantityKind.DecibelRatio && (divisor == QuantityKind.Length || divisor == QuantityKind.Octaves || divisor == QuantityKind.Decades))
            return KindRule.Gives(QuantityKind.Of(Dimension.None / divisor.Dimension, QuantityNature.DecibelSlope), Operation.Divide);
        bool hasPower = logarithm.Reference is LevelReference.Milliwatt or LevelReference.Carrier or LevelReference.FullScale && logarithm.Nature != QuantityNature.LevelDensity;
        if (hasPower && divisor == QuantityKind.Frequency)
            return KindRule.Gives(QuantityKind.Of(logarithm.Dimension / divisor.Dimension, QuantityNature.LevelDensity, logarithm.Reference), Operation.LevelPerBandwidth);
        return KindRule.Refused(isUnreferenced ? "a plain number" + LeaveTheLogarithm : "decibels with + or -" + LeaveTheLogarithm);
    }

    /// <summary>How an amplitude was stated survives Ohm's law; in any other product the result is a quantity of its own.</summary>
    private static QuantityNature TagAcrossResistance(QuantityKind left, QuantityKind right, Dimension result)
    {
        QuantityKind? tagged = IsTagged(left) ? left : IsTagged(right) ? right : null;
        return tagged is not null && IsOhmsLaw(left, right, result) ? tagged.Nature : QuantityNature.Linear;
    }

    private static bool IsOhmsLaw(QuantityKind left, QuantityKind right, Dimension result)
    {
        bool hasResistance = left == QuantityKind.Resistance || right == QuantityKind.Resistance || left == QuantityKind.Conductance || right == QuantityKind.Conductance;
        bool isAmplitude = result == QuantityKind.Voltage.Dimension || result == QuantityKind.Current.Dimension;
        return hasResistance && isAmplitude;
    }

    /// <summary>Only rms times rms is a mean power, or the square of a voltage that makes one (handbook 1.5): of peak and peak-to-peak values the crest factor must be known, and the text does not say it.</summary>
    private static KindRule NotRms(QuantityKind found, bool isLeft) => KindRule.Refused(found.Nature switch
    {
        QuantityNature.Peak => "an rms value, as only rms times rms is a mean power; convert to rms: divided by the crest factor, for a sine Vpk/√2",
        QuantityNature.PeakToPeak => "an rms value, as only rms times rms is a mean power; convert to rms: half of it divided by the crest factor, for a sine Vpp/(2√2)",
        _ => "an rms value, as only rms times rms is a mean power; state both as rms, or neither",
    } + (found == QuantityKind.PeakVoltage || found == QuantityKind.PeakToPeakVoltage ? ", by sine_rms" : ""), isLeft);

    private static bool IsAmplitude(QuantityKind kind) => kind.Dimension == QuantityKind.Voltage.Dimension || kind.Dimension == QuantityKind.Current.Dimension;

    private static bool IsUnlikeRms(QuantityKind kind) => kind.Nature is QuantityNature.Peak or QuantityNature.PeakToPeak;

    private static bool IsTagged(QuantityKind kind) => kind.Nature is QuantityNature.Peak or QuantityNature.PeakToPeak or QuantityNature.Rms;
}
