using System;

namespace Acquisition.Core.Records;

/// <summary>Mean and spread of values as they come (Welford 1962): one pass, no cancellation, no list.</summary>
internal struct RunningMoments
{
    private double _mean, _sumOfSquares;

    internal RunningMoments(long count, double mean, double sumOfSquares, double minimum, double maximum)
    {
        Count = count;
        _mean = mean;
        _sumOfSquares = sumOfSquares;
        Minimum = minimum;
        Maximum = maximum;
    }

    internal long Count { get; private set; }

    internal double Minimum { get; private set; }

    internal double Maximum { get; private set; }

    internal readonly double Mean => _mean;

    /// <summary>Divisor n - 1.</summary>
    internal readonly double StandardDeviation => Math.Sqrt(_sumOfSquares / (Count - 1));

    /// <summary>Divisor n.</summary>
    internal readonly double PopulationDeviation => Math.Sqrt(_sumOfSquares / Count);

    internal void Add(double value)
    {
        Minimum = Count == 0 || value < Minimum ? value : Minimum;
        Maximum = Count == 0 || value > Maximum ? value : Maximum;
        Count++;
        double off = value - _mean;
        _mean += off / Count;
        _sumOfSquares += off * (value - _mean);
    }

    /// <summary>Adds a value that occurs many times.</summary>
    internal void Add(double value, long times)
    {
        if (times == 0)
            return;
        Minimum = Count == 0 || value < Minimum ? value : Minimum;
        Maximum = Count == 0 || value > Maximum ? value : Maximum;
        long total = Count + times;
        double off = value - _mean;
        _mean += off * ((double)times / total);
        _sumOfSquares += off * off * ((double)Count / total) * times;
        Count = total;
    }

    /// <summary>Adds the moments of other values.</summary>
    internal void Add(in RunningMoments other)
    {
        if (other.Count == 0)
            return;
        if (Count == 0)
        {
            this = other;
            return;
        }
        long total = Count + other.Count;
        double off = other._mean - _mean;
        _sumOfSquares += other._sumOfSquares + off * off * ((double)Count / total) * other.Count;
        _mean += off * ((double)other.Count / total);
        Minimum = Math.Min(Minimum, other.Minimum);
        Maximum = Math.Max(Maximum, other.Maximum);
        Count = total;
    }

    internal readonly Measured<Statistics<T>> As<T>(Func<double, T> quantity, Finding absent)
        where T : struct, IQuantity
    {
        if (Count == 0)
            return new Measured<Statistics<T>>(absent);
        Measured<T> deviation = Count > 1
            ? new Measured<T>(quantity(StandardDeviation))
            : new Measured<T>(new Finding("single-value", Severity.Note, "one value has no spread"));
        return new Measured<Statistics<T>>(new Statistics<T>(Count, quantity(Mean), deviation, quantity(Minimum), quantity(Maximum)));
    }
}
