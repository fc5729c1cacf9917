using Acquisition.Core.Signals;

namespace Acquisition.Core.Uncertainty;

/// <summary>The probability distribution of the deviation of an input from its estimate, in the unit that the input is held in (JCGM 101 6.4).</summary>
internal abstract class Distribution
{
    /// <summary>The name in the trade, such as <c>rectangular</c>.</summary>
    internal abstract string Name { get; }

    /// <summary>The standard uncertainty for a budget (JCGM 100 4.3): for a t-distribution its scale, which goes with <see cref="DegreesOfFreedom"/>.</summary>
    internal abstract double StandardUncertainty { get; }

    /// <summary>The standard deviation of the distribution (JCGM 101 6.4); infinite where it has none.</summary>
    internal virtual double StandardDeviation => StandardUncertainty;

    /// <summary>The degrees of freedom of <see cref="StandardUncertainty"/>; infinite where it is taken as known.</summary>
    internal virtual double DegreesOfFreedom => double.PositiveInfinity;

    /// <summary>Whether coverage factors of the normal or t-distribution fit a result that this input dominates.</summary>
    internal virtual bool IsBellShaped => false;

    /// <summary>The limits that the deviation cannot pass, as they were stated (JCGM 100 4.3.7); infinite where there are none.</summary>
    internal virtual double HalfWidth => double.PositiveInfinity;

    /// <summary>The probability that the deviation is at most <paramref name="deviation"/>.</summary>
    internal abstract double Cumulative(double deviation);

    /// <summary>The deviation that is not exceeded with <paramref name="probability"/>, above 0 and below 1.</summary>
    internal abstract double Quantile(double probability);

    /// <summary>Fills the start of <paramref name="column"/> with independent draws.</summary>
    internal abstract void Fill(ref RandomStream stream, double[] column, int count);

    /// <summary>A quantile of a continuous distribution by bisection between two deviations that enclose it.</summary>
    private protected double Bisect(double probability, double low, double high)
    {
        for (int step = 0; step < 200; step++)
        {
            double middle = low + (high - low) / 2;
            if (middle <= low || middle >= high) break;
            if (Cumulative(middle) < probability) low = middle;
            else high = middle;
        }
        return high;
    }
}
