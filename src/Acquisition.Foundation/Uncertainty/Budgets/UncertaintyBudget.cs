using System;
using System.Collections.Generic;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core;

/// <summary>The uncertainty budget of a result by the law of propagation of uncertainty (JCGM 100 clause 5, annexes G and H): value, contributions, combined and expanded uncertainty.</summary>
/// <remarks>Immutable.</remarks>
#if NET8_0_OR_GREATER
[System.Text.Json.Serialization.JsonConverter(typeof(ResultJsonConverter))]
#endif
public sealed class UncertaintyBudget
{
    private readonly UncertaintySource[] _sources;
    private readonly double[] _sensitivities;
    private readonly double _secondOrderVariance;
    private readonly double _correlatedVariance;
    private readonly Func<UncertaintyBudget, Finding?>? _lateFinding;
    private readonly Func<double>? _reach;
    private IReadOnlyList<BudgetLine>? _lines;
    private IReadOnlyList<Finding>? _findings;

    internal UncertaintyBudget(
        Quantity value, UncertaintySource[] sources, double[] sensitivities, Coverage coverage, double secondOrderVariance = 0, IReadOnlyList<Finding>? findings = null,
        Func<UncertaintyBudget, Finding?>? lateFinding = null, Func<double>? reach = null)
    {
        Value = value;
        _sources = sources;
        _sensitivities = sensitivities;
        _secondOrderVariance = secondOrderVariance;
        OwnFindings = findings ?? Array.Empty<Finding>();
        Coverage = coverage;
        _lateFinding = lateFinding;
        _reach = reach;

        double independent = 0;
        bool correlated = false;
        for (int i = 0; i < sources.Length; i++)
        {
            double contribution = sensitivities[i] * sources[i].StandardUncertainty;
            independent += contribution * contribution;
            correlated |= sources[i].Set is not null;
        }
        _correlatedVariance = correlated ? new LinearCombination(sources, sensitivities).Variance() - independent : 0;
        double variance = Math.Max(0, independent + _correlatedVariance + secondOrderVariance);
        SiStandardUncertainty = Math.Sqrt(variance);
        EffectiveDegreesOfFreedom = EffectiveDegrees(variance);
        CoverageFactor = coverage.CoverageFactorFor(EffectiveDegreesOfFreedom);
    }

    internal double SiStandardUncertainty { get; }

    internal double SiExpandedUncertainty => CoverageFactor * SiStandardUncertainty;

    /// <summary>How far the result can lie from its value where every input keeps within limits that are stated; infinite where one has none, or where that is not known.</summary>
    internal double SiReach => _reach?.Invoke() ?? double.PositiveInfinity;

    internal UncertaintySource[] Sources => _sources;

    internal double[] Sensitivities => _sensitivities;

    /// <summary>The result as it follows its sources; what second-order terms add is a source of its own.</summary>
    internal LinearCombination Combination()
    {
        var combination = new LinearCombination(_sources, _sensitivities);
        if (!(_secondOrderVariance > 0)) return combination;
        var source = new UncertaintySource("second-order terms", Value, new NormalDistribution(Math.Sqrt(_secondOrderVariance)), "JCGM 100 5.1.2, note");
        return LinearCombination.Sum(combination, 1, LinearCombination.Of(source), 1);
    }

    internal IReadOnlyList<Finding> OwnFindings { get; }

    /// <summary>A finding that costs evaluations of the model, looked for only when somebody reads the findings.</summary>
    internal Finding? LateFinding() => _lateFinding?.Invoke(this);

    /// <summary>The estimate of the result.</summary>
    public Quantity Value { get; }

    /// <summary>How the expanded uncertainty was asked for.</summary>
    public Coverage Coverage { get; }

    /// <summary>The combined standard uncertainty u_c.</summary>
    public Quantity StandardUncertainty => new(SiStandardUncertainty, UncertaintyKind.Of(Value.Kind));

    /// <summary>The effective degrees of freedom by the Welch-Satterthwaite formula (JCGM 100 G.4.1); infinite where no input has finite ones, or where the formula does not hold (correlated readings; a finding says so).</summary>
    public double EffectiveDegreesOfFreedom { get; }

    /// <summary>The coverage factor k.</summary>
    public double CoverageFactor { get; }

    /// <summary>The coverage probability that k stands for.</summary>
    public Ratio CoverageProbability => Coverage.CoverageProbabilityFor(EffectiveDegreesOfFreedom);

    /// <summary>The expanded uncertainty U = k u_c.</summary>
    public Quantity ExpandedUncertainty => new(SiExpandedUncertainty, UncertaintyKind.Of(Value.Kind));

    /// <summary>Whether second-order terms are part of the combined uncertainty (JCGM 100 5.1.2, note).</summary>
    public bool IncludesSecondOrder => _secondOrderVariance != 0;

    /// <summary>The part of the combined variance that second-order terms bring.</summary>
    public Ratio SecondOrderShare => ShareOf(_secondOrderVariance);

    /// <summary>The part of the combined variance that correlation between inputs brings; negative where it helps.</summary>
    public Ratio CorrelationShare => ShareOf(_correlatedVariance);

    /// <summary>The rows, in the order in which the inputs came up.</summary>
    public IReadOnlyList<BudgetLine> Lines => _lines ??= MakeLines().Frozen();

    /// <summary>What limits the trust in this budget, and the remedy.</summary>
    public IReadOnlyList<Finding> Findings => _findings ??= BudgetFindings.Of(this).Frozen();

    /// <summary>The result as JCGM 100 clause 7 writes it, such as <c>(10.020 ± 0.030) V, k = 2, p = 95.45 %</c>.</summary>
    public override string ToString() => ResultText.PlusMinus(this, 2);

    /// <summary>The result in a chosen notation of JCGM 100 7.2.</summary>
    /// <param name="notation">With ± and expanded uncertainty, or concise with the standard uncertainty in parentheses.</param>
    /// <param name="digits">Significant digits of the uncertainty, 1 or 2 as a rule (JCGM 100 7.2.6); the value is rounded to match.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="digits"/> is not from 1 to 6.</exception>
    public string ToString(UncertaintyNotation notation, int digits = 2)
    {
        if (digits < 1 || digits > 6) throw new ArgumentOutOfRangeException(nameof(digits), digits, $"digits must be from 1 to 6; was {digits}");
        return notation == UncertaintyNotation.Concise ? ResultText.Concise(Value, SiStandardUncertainty, digits) : ResultText.PlusMinus(this, digits);
    }

    /// <summary>The budget as a plain-text table.</summary>
    public string ToTable() => BudgetTable.Write(this);

    /// <summary>Welch-Satterthwaite. A correlated input with finite degrees of freedom makes it invalid (JCGM 100 G.4.1 and H.2), so none are claimed.</summary>
    private double EffectiveDegrees(double variance)
    {
        double sum = 0;
        for (int i = 0; i < _sources.Length; i++)
        {
            double nu = _sources[i].DegreesOfFreedom;
            double contribution = _sensitivities[i] * _sources[i].StandardUncertainty;
            if (double.IsPositiveInfinity(nu) || contribution == 0) continue;
            if (_sources[i].Set is not null) return double.PositiveInfinity;
            double square = contribution * contribution / variance;
            sum += square * square / nu;
        }
        return sum == 0 ? double.PositiveInfinity : 1 / sum;
    }

    private Ratio ShareOf(double variance) =>
        Ratio.FromSi(SiStandardUncertainty == 0 ? 0 : variance / (SiStandardUncertainty * SiStandardUncertainty), "variance");

    private BudgetLine[] MakeLines()
    {
        var lines = new BudgetLine[_sources.Length];
        QuantityKind kind = UncertaintyKind.Of(Value.Kind);
        for (int i = 0; i < lines.Length; i++)
        {
            UncertaintySource source = _sources[i];
            double contribution = _sensitivities[i] * source.StandardUncertainty;
            lines[i] = new BudgetLine(
                source.Name,
                source.Estimate,
                new Quantity(source.StandardUncertainty, UncertaintyKind.Of(source.Estimate.Kind)),
                source.Distribution.Name,
                source.Statement,
                source.DegreesOfFreedom,
                _sensitivities[i],
                new Quantity(contribution, kind),
                ShareOf(contribution * contribution));
        }
        return lines;
    }
}
