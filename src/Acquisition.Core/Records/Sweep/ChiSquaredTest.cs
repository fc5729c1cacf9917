using MathNet.Numerics;

namespace Acquisition.Core.Records;

/// <summary>How likely residuals as large as these are by chance.</summary>
internal static class ChiSquaredTest
{
    /// <summary>The probability that chi-squared exceeds a value: 1 - P(k/2, x/2), P the regularised incomplete gamma function.</summary>
    internal static double UpperTail(double chiSquared, int degreesOfFreedom) =>
        degreesOfFreedom <= 0 || chiSquared <= 0 ? 1 : SpecialFunctions.GammaUpperRegularized(degreesOfFreedom / 2.0, chiSquared / 2);
}
