using System;
using Acquisition.Core.Signals;

namespace Acquisition.Core.Uncertainty;

/// <summary>Recorded readings, each as likely as the others: a quantity that varies as it did while it was recorded.</summary>
internal sealed class DiscreteDistribution : Distribution
{
    private readonly double[] _sorted;

    /// <param name="deviations">The readings less their mean; taken over, and sorted here.</param>
    internal DiscreteDistribution(double[] deviations)
    {
        double squares = 0;
        foreach (double deviation in deviations) squares += deviation * deviation;
        StandardUncertainty = Math.Sqrt(squares / deviations.Length);
        Array.Sort(deviations);
        _sorted = deviations;
    }

    internal override string Name => "discrete readings";

    internal override double StandardUncertainty { get; }

    internal override double Cumulative(double deviation)
    {
        int low = 0, high = _sorted.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (_sorted[middle] <= deviation) low = middle + 1;
            else high = middle;
        }
        return (double)low / _sorted.Length;
    }

    internal override double Quantile(double probability) =>
        _sorted[Math.Max(0, Math.Min(_sorted.Length - 1, (int)Math.Ceiling(probability * _sorted.Length) - 1))];

    internal override void Fill(ref RandomStream stream, double[] column, int count)
    {
        for (int i = 0; i < count; i++) column[i] = _sorted[(int)(stream.NextUnit() * _sorted.Length)];
    }
}
