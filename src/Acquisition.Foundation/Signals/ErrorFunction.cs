using System;
using MathNet.Numerics;

namespace Acquisition.Core;

/// <summary>The normal distribution function and its inverse.</summary>
internal static class ErrorFunction
{
    private static readonly double Sqrt2 = Math.Sqrt(2);

    /// <summary>The probability that a standard normal value lies below x.</summary>
    internal static double NormalBelow(double x) => 0.5 * SpecialFunctions.Erfc(-x / Sqrt2);

    /// <summary>The x below which a standard normal value lies with a probability between 0 and 1.</summary>
    internal static double NormalQuantile(double probability) => -Sqrt2 * SpecialFunctions.ErfcInv(2 * probability);

    /// <summary>1 minus the error function.</summary>
    internal static double Complement(double x) => SpecialFunctions.Erfc(x);
}
