using System;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Uncertainty;

/// <summary>A scaled and shifted t-distribution: what a few readings, or an expanded uncertainty with its degrees of freedom, tell (JCGM 101 6.4.9).</summary>
internal sealed class StudentTDistribution : Distribution
{
    internal StudentTDistribution(double scale, double degreesOfFreedom)
    {
        StandardUncertainty = scale;
        DegreesOfFreedom = degreesOfFreedom;
    }

    internal override string Name => "t";

    internal override double StandardUncertainty { get; }

    /// <summary>Larger than the scale, and infinite up to two degrees of freedom (JCGM 101 6.4.9.4).</summary>
    internal override double StandardDeviation =>
        DegreesOfFreedom > 2 ? StandardUncertainty * Math.Sqrt(DegreesOfFreedom / (DegreesOfFreedom - 2)) : double.PositiveInfinity;

    internal override double DegreesOfFreedom { get; }

    internal override bool IsBellShaped => true;

    internal override double Cumulative(double deviation) => StudentT.Cumulative(deviation / StandardUncertainty, DegreesOfFreedom);

    internal override double Quantile(double probability) => StandardUncertainty * StudentT.Quantile(probability, DegreesOfFreedom);

    /// <summary>A normal draw over the root of a chi-squared draw.</summary>
    internal override void Fill(ref RandomStream stream, double[] column, int count)
    {
        double half = DegreesOfFreedom / 2;
        for (int i = 0; i < count; i++)
            column[i] = StandardUncertainty * NormalSampler.Next(ref stream) * Math.Sqrt(half / GammaSampler.Next(ref stream, half));
    }
}
