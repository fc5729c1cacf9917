using Acquisition.Core.Signals;

namespace Acquisition.Core.Uncertainty;

/// <summary>A normal distribution (JCGM 101 6.4.7).</summary>
internal sealed class NormalDistribution : Distribution
{
    internal NormalDistribution(double standardUncertainty, double degreesOfFreedom = double.PositiveInfinity)
    {
        StandardUncertainty = standardUncertainty;
        DegreesOfFreedom = degreesOfFreedom;
    }

    internal override string Name => "normal";

    internal override double StandardUncertainty { get; }

    internal override double DegreesOfFreedom { get; }

    internal override bool IsBellShaped => true;

    internal override double Cumulative(double deviation) => Normal.Cumulative(deviation / StandardUncertainty);

    internal override double Quantile(double probability) => StandardUncertainty * Normal.Quantile(probability);

    internal override void Fill(ref RandomStream stream, double[] column, int count) => NormalSampler.Fill(ref stream, column, count, StandardUncertainty);
}
