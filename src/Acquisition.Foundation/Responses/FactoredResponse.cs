using System;
using System.Collections.Generic;
using System.Numerics;

namespace Acquisition.Core.Responses;

/// <summary>An analogue model, or a cascade of them, held by its <see cref="Factors"/>.</summary>
internal sealed class FactoredResponse : Response
{
    private readonly Factors _factors;
    private readonly double _scale;
    private readonly double _bandwidth;
    private double[]? _grid;

    internal FactoredResponse(string name, Factors factors, double bandwidth = double.NaN)
        : base(name)
    {
        _factors = factors;
        _bandwidth = bandwidth;
        double slowest = double.PositiveInfinity;
        foreach (Complex pole in factors.Poles())
            slowest = Math.Min(slowest, Complex.Abs(pole));
        if (factors.Variance > 0)
            slowest = Math.Min(slowest, Math.Sqrt(Math.Log(2) / factors.Variance));
        _scale = slowest <= double.MaxValue ? slowest / (2 * Math.PI) : factors.Delay > 0 ? 0.25 / factors.Delay : 1;
    }

    internal override IReadOnlyList<Factors> Branches => new[] { _factors };

    internal override double FrequencyScale => _scale;

    internal override Complex ComplexGain(double hertz) => _factors.At(2 * Math.PI * hertz);

    private protected override void FillGains(double[] hertz, Complex[] gains, int from, int count) => _factors.Fill(hertz, gains, from, count);

    internal override double PowerGain(double hertz) => _factors.PowerAt(2 * Math.PI * hertz);

    internal override double PhaseRadians(double hertz) => _factors.PhaseAt(2 * Math.PI * hertz);

    internal override double GroupDelaySeconds(double hertz) => _factors.GroupDelayAt(2 * Math.PI * hertz);

    private protected override double StatedBandwidth => _bandwidth;

    internal override double StepDelay => _factors.Delay;

    private protected override StepResponse MakeStep() => StepOf(_factors);

    private protected override double? PowerIntegral() => FactorsIntegral.OfPower(_factors);

    /// <summary>The step of factors, their delay apart, by the way that suits them.</summary>
    internal static StepResponse StepOf(Factors factors)
    {
        factors = factors.WithoutDelay();
        if (factors.Variance == 0)
            return new RationalStep(factors);
        return (StepResponse?)FourierStep.For(factors) ?? new SmoothedStep(factors);
    }

    private protected override IReadOnlyList<double> SearchGrid() => _grid ??= FrequencyGrid.Of(_factors);
}
