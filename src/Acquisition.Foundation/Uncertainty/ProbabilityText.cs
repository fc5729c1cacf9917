using System;
using System.Globalization;

namespace Acquisition.Core;

/// <summary>Probabilities in words: in percent, and never rounded to a certainty.</summary>
public static class ProbabilityText
{
    /// <summary>The probability to two decimals of a percent, such as <c>97.72 %</c>. What would be rounded to 0 or 100 % without being so is <c>&lt; 0.01 %</c> or <c>&gt; 99.99 %</c>.</summary>
    /// <param name="probability">The probability, from 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not from 0 to 1.</exception>
    public static string Of(Ratio probability)
    {
        double p = probability.SiValue;
        return p >= 0 && p <= 1 ? Beside(p, 2).TrimStart('=', ' ') : throw Refuse.OutOfRange(p, QuantityKind.Ratio, nameof(probability), "from 0 to 1");
    }

    /// <summary>As in <c>p = 95.45 %</c>, from the sign on.</summary>
    internal static string Beside(double probability, int decimals)
    {
        decimal steps = decimals == 4 ? 10_000 : 100, all = 100 * steps;
        // Rounded once, in steps of the last decimal: runtimes do not agree on how their formats round.
        decimal count = (decimal)Math.Round(probability * (double)all);
        if (probability < 1 && count == all) return "> " + Percent(all - 1);
        if (probability > 0 && count == 0) return "< " + Percent(1);
        return "= " + Percent(count);

        string Percent(decimal number) => (number / steps).ToString("0.####", CultureInfo.InvariantCulture) + " %";
    }
}
