using System;
using System.Collections.Generic;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>Parallel branches of which at least one is known only by its gain at each frequency.</summary>
internal sealed class ParallelResponse : GeneralResponse
{
    private readonly Response[] _branches;
    private readonly double[] _breaks;

    internal ParallelResponse(string name, Response[] branches)
        : base(name)
    {
        _branches = branches;
        var breaks = new List<double>();
        double scale = double.PositiveInfinity, highest = 0, lowest = 0;
        foreach (Response branch in branches)
        {
            scale = Math.Min(scale, branch.FrequencyScale);
            var general = branch as GeneralResponse;
            highest = Math.Max(highest, general?.HighestFrequency ?? double.PositiveInfinity);
            lowest = Math.Max(lowest, general?.LowestFrequency ?? 0);
            if (general is null)
                continue;
            breaks.AddRange(general.Breaks);
            if (general.HighestFrequency <= double.MaxValue)
                breaks.Add(general.HighestFrequency);
        }
        breaks.Sort();
        _breaks = breaks.ToArray();
        (FrequencyScale, HighestFrequency, LowestFrequency) = (scale, highest, lowest);
    }

    internal override double FrequencyScale { get; }

    internal override double HighestFrequency { get; }

    internal override double LowestFrequency { get; }

    internal override IReadOnlyList<double> Breaks => _breaks;

    internal override Complex ComplexGain(double hertz)
    {
        Complex sum = Complex.Zero;
        foreach (Response branch in _branches)
            sum += branch.ComplexGain(hertz);
        return sum;
    }
}
