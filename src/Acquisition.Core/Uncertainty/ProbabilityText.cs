using System.Globalization;

namespace Acquisition.Core;

/// <summary>Probabilities in words: in percent, and never rounded to a certainty.</summary>
public static class ProbabilityText
{
    /// <summary>The probability to two decimals of a percent, such as <c>97.72 %</c>. What would be rounded to 0 or 100 % without being so is <c>&lt; 0.01 %</c> or <c>&gt; 99.99 %</c>.</summary>
    /// <param name="probability">The probability, from 0 to 1.</param>
    public static string Of(Ratio probability) => Beside(probability.SiValue, 2).TrimStart('=', ' ');

    /// <summary>As in <c>p = 95.45 %</c>, from the sign on.</summary>
    internal static string Beside(double probability, int decimals)
    {
        string percent = Percent(probability, decimals);
        if (probability < 1 && percent == "100") return "> " + Percent(1 - Step(decimals), decimals) + " %";
        if (probability > 0 && percent == "0") return "< " + Percent(Step(decimals), decimals) + " %";
        return "= " + percent + " %";
    }

    private static double Step(int decimals) => decimals == 4 ? 1e-6 : 1e-4;

    private static string Percent(double probability, int decimals) => (probability * 100).ToString(decimals == 4 ? "0.####" : "0.##", CultureInfo.InvariantCulture);
}
