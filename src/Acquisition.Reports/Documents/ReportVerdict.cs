using System;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>A verdict together with the numbers it follows from: a value, its limits and the guard band.</summary>
/// <remarks>
/// Immutable: each <c>With…</c> returns a new verdict. With y the value, L and U the limits (none is without end) and g the guard band (none is 0), all in SI: a value from
/// L + |g| to U − |g| is <em>surely</em> in, from L to U <em>within</em>, from L − |g| to U + |g| <em>nearly</em> in. Where g is not negative: surely in is a pass, within a conditional pass,
/// nearly in a conditional fail if |g| is above 0, the rest a fail. Where g is negative: surely in is a pass, nearly in a conditional pass, the rest a fail (JCGM 106 clause 8).
/// A value on a limit that is excluded is not within. The report prints the verdict it was given; JSON carries what the rule needs.
/// </remarks>
public sealed class ReportVerdict
{
    /// <summary>A verdict.</summary>
    /// <param name="name">What was judged.</param>
    /// <param name="outcome">The verdict; null where nothing could be judged.</param>
    /// <param name="text">The verdict in the words of the result, such as <c>passed</c> or <c>not proven</c>.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> or <paramref name="text"/> is null.</exception>
    public ReportVerdict(string name, Verdict? outcome, string text)
    {
        Name = name ?? throw new ArgumentNullException(nameof(name));
        Outcome = outcome;
        Text = text ?? throw new ArgumentNullException(nameof(text));
    }

    private ReportVerdict(ReportVerdict other)
    {
        Name = other.Name;
        Outcome = other.Outcome;
        Text = other.Text;
        Value = other.Value;
        Uncertainty = other.Uncertainty;
        Lower = other.Lower;
        Upper = other.Upper;
        IsLowerExcluded = other.IsLowerExcluded;
        IsUpperExcluded = other.IsUpperExcluded;
        Margin = other.Margin;
        GuardBand = other.GuardBand;
        Rule = other.Rule;
        Probability = other.Probability;
        Remark = other.Remark;
    }

    /// <summary>What was judged.</summary>
    public string Name { get; }

    /// <summary>The verdict; null where nothing could be judged.</summary>
    public Verdict? Outcome { get; }

    /// <summary>The verdict in words.</summary>
    public string Text { get; }

    internal ReportCell Value { get; private set; } = ReportCell.Empty;

    internal ReportCell Uncertainty { get; private set; } = ReportCell.Empty;

    internal ReportCell Lower { get; private set; } = ReportCell.Empty;

    internal ReportCell Upper { get; private set; } = ReportCell.Empty;

    internal bool IsLowerExcluded { get; private set; }

    internal bool IsUpperExcluded { get; private set; }

    internal ReportCell Margin { get; private set; } = ReportCell.Empty;

    internal ReportCell GuardBand { get; private set; } = ReportCell.Empty;

    internal ReportCell Probability { get; private set; } = ReportCell.Empty;

    internal string Rule { get; private set; } = "";

    internal string Remark { get; private set; } = "";

    /// <summary>The value that was judged.</summary>
    /// <param name="value">The value.</param>
    /// <param name="standardUncertainty">Its standard uncertainty or, where the limit is uncertain too, that of their difference; null where there is none.</param>
    /// <exception cref="ArgumentNullException"><paramref name="value"/> is null.</exception>
    public ReportVerdict WithValue(ReportCell value, ReportCell? standardUncertainty = null) =>
        new(this) { Value = value ?? throw new ArgumentNullException(nameof(value)), Uncertainty = standardUncertainty ?? ReportCell.Empty };

    /// <summary>The limits.</summary>
    /// <param name="lower">The lower limit; null for none.</param>
    /// <param name="upper">The upper limit; null for none.</param>
    /// <param name="isLowerExcluded">Whether a value on the lower limit is not within.</param>
    /// <param name="isUpperExcluded">Whether a value on the upper limit is not within.</param>
    public ReportVerdict WithLimits(ReportCell? lower, ReportCell? upper, bool isLowerExcluded = false, bool isUpperExcluded = false) =>
        new(this) { Lower = lower ?? ReportCell.Empty, Upper = upper ?? ReportCell.Empty, IsLowerExcluded = isLowerExcluded, IsUpperExcluded = isUpperExcluded };

    /// <summary>By how much the nearest limit is kept.</summary>
    /// <param name="margin">The margin, negative beyond the limit; null for none.</param>
    public ReportVerdict WithMargin(ReportCell? margin) => new(this) { Margin = margin ?? ReportCell.Empty };

    /// <summary>The rule of the decision, its guard band and the probability of conformity.</summary>
    /// <param name="rule">The rule in words.</param>
    /// <param name="guardBand">The width of the guard band, negative where it lies outside the limits; null for none.</param>
    /// <param name="conformanceProbability">The probability that the true value conforms; null where it is not known.</param>
    /// <exception cref="ArgumentNullException"><paramref name="rule"/> is null.</exception>
    public ReportVerdict WithRule(string rule, ReportCell? guardBand = null, ReportCell? conformanceProbability = null) =>
        new(this) { Rule = rule ?? throw new ArgumentNullException(nameof(rule)), GuardBand = guardBand ?? ReportCell.Empty, Probability = conformanceProbability ?? ReportCell.Empty };

    /// <summary>What else to know, such as the cure.</summary>
    /// <param name="remark">The remark; null for none.</param>
    public ReportVerdict WithRemark(string? remark) => new(this) { Remark = remark ?? "" };

    internal static string InWords(Verdict? outcome) => outcome switch
    {
        Verdict.Pass => "pass",
        Verdict.ConditionalPass => "conditional pass",
        Verdict.ConditionalFail => "conditional fail",
        Verdict.Fail => "fail",
        _ => "not evaluated",
    };
}
