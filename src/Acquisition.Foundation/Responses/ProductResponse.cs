using System;
using System.Collections.Generic;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>Stages one after the other, of which at least one is known only by its gain at each frequency.</summary>
internal sealed class ProductResponse : GeneralResponse
{
    /// <summary>More ways than this are not followed one by one.</summary>
    private const int MostWays = 256;

    private readonly Response[] _stages;
    private readonly double[] _breaks, _ripples;

    internal ProductResponse(string name, Response first, Response second)
        : base(name)
    {
        var stages = new List<Response>();
        Add(first, stages);
        Add(second, stages);
        _stages = stages.ToArray();
        List<double> breaks = new(), ripples = new();
        FrequencyScale = HighestFrequency = double.PositiveInfinity;
        foreach (Response stage in _stages)
        {
            // A stage that only scales has no frequency of its own.
            if (!(stage.Branches is { Count: 1 } only && only[0].Order == 0 && only[0].Variance == 0 && only[0].Delay == 0))
                FrequencyScale = Math.Min(FrequencyScale, stage.FrequencyScale);
            if (stage is GeneralResponse general)
            {
                if (general.HighestFrequency < HighestFrequency)
                    (HighestFrequency, EndsInRefusal) = (general.HighestFrequency, general.EndsInRefusal);
                LowestFrequency = Math.Max(LowestFrequency, general.LowestFrequency);
                breaks.AddRange(general.Breaks);
                ripples.AddRange(general.Ripples);
            }
        }
        breaks.Sort();
        _breaks = breaks.ToArray();
        _ripples = ripples.ToArray();
    }

    internal override double FrequencyScale { get; }

    internal override double HighestFrequency { get; }

    internal override bool EndsInRefusal { get; }

    internal override double LowestFrequency { get; }

    internal override double? FarDelay
    {
        get
        {
            double? sum = 0;
            foreach (Response stage in _stages)
                sum += stage is GeneralResponse general ? general.FarDelay : stage.StepDelay;
            return sum;
        }
    }

    internal override IReadOnlyList<double> Breaks => _breaks;

    internal override IReadOnlyList<double> Ripples => _ripples;

    /// <summary>Every way through each stage with every one through the others.</summary>
    internal override IReadOnlyList<Way> Ways(Func<double, double> rest)
    {
        var ofStages = new IReadOnlyList<Way>[_stages.Length];
        long count = 1;
        for (int i = 0; i < _stages.Length; i++)
        {
            Response stage = _stages[i];
            ofStages[i] = stage.Ways(hertz => rest(hertz) * PassedBeside(stage, hertz));
            count = Math.Min(MostWays + 1L, count * ofStages[i].Count);
        }
        if (count == 1 || count > MostWays)
            return base.Ways(rest);
        IReadOnlyList<Way> ways = ofStages[0];
        for (int i = 1; i < ofStages.Length; i++)
        {
            var longer = new List<Way>();
            foreach (Way way in ways)
            {
                foreach (Way next in ofStages[i])
                    longer.Add(way.Then(next));
            }
            ways = longer;
        }
        return ways;
    }

    public override IReadOnlyList<Finding> Findings
    {
        get
        {
            var findings = new List<Finding>();
            foreach (Response stage in _stages)
                findings.AddRange(stage.Findings);
            return findings;
        }
    }

    internal override Complex ComplexGain(double hertz)
    {
        Complex product = Complex.One;
        foreach (Response stage in _stages)
            product *= stage.ComplexGain(hertz);
        return product;
    }

    internal override double PowerGain(double hertz)
    {
        double product = 1;
        foreach (Response stage in _stages)
            product *= stage.PowerGain(hertz);
        return product;
    }

    internal override double PhaseRadians(double hertz)
    {
        double sum = 0;
        foreach (Response stage in _stages)
            sum += stage.PhaseRadians(hertz);
        return sum;
    }

    internal override double GroupDelaySeconds(double hertz)
    {
        double sum = 0;
        foreach (Response stage in _stages)
            sum += stage.GroupDelaySeconds(hertz);
        return sum;
    }

    /// <summary>What the stages but one pass at a frequency, re the reference of each.</summary>
    private double PassedBeside(Response one, double hertz)
    {
        if (hertz > HighestFrequency)
            return 0;
        double passed = 1;
        foreach (Response stage in _stages)
        {
            if (!ReferenceEquals(stage, one))
                passed *= stage.Magnitude(Math.Max(hertz, LowestFrequency)) / stage.ReferenceMagnitude;
        }
        return passed;
    }

    private static void Add(Response response, List<Response> stages)
    {
        if (response is ProductResponse product)
            stages.AddRange(product._stages);
        else
            stages.Add(response);
    }
}
