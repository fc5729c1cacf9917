using System;
using System.Collections.Generic;
using Acquisition.Core.Formulas.Execution;
using Acquisition.Core.Formulas.Syntax;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core.Formulas.Worksheets.Checks;

/// <summary>
/// Decides demands by a decision rule, comparison by comparison: <c>and</c> is as good as its worst part, <c>or</c> as its best. Parts are asked in order, and no further than
/// needed, as the evaluation does.
/// </summary>
internal sealed class Decisions(WorksheetEvaluation evaluation, DecisionRule rule)
{
    private readonly Dictionary<Demand, Outcome> _decided = new();
    private readonly Dictionary<Conditions, string> _settled = new();

    internal Outcome Of(Demand demand)
    {
        if (_decided.TryGetValue(demand, out Outcome? known)) return known;
        Outcome outcome = demand switch
        {
            FixedDemand truth => Outcome.Exact(truth.IsMet),
            GivenDemand given => evaluation.OverriddenTruth(given.Line) is { } truth ? Outcome.Exact(truth == given.IsWanted) : Of(given.Own),
            AllDemand all => Joined(all.Parts, Verdict.Fail, isBest: false),
            AnyDemand any => Joined(any.Parts, Verdict.Pass, isBest: true),
            RangeDemand range => Of(range),
            ComparisonDemand comparison => Of(comparison),
            _ => Of((OtherDemand)demand),
        };
        return _decided[demand] = outcome;
    }

    /// <summary>Decides what a line's value rests on, so that no later line has to go far back.</summary>
    internal void Settle(Conditions conditions) => UndecidedIn(conditions);

    private Outcome Joined(IReadOnlyList<Demand> parts, Verdict last, bool isBest)
    {
        Outcome result = Of(parts[0]);
        for (int i = 1; i < parts.Count && result.Verdict != last; i++)
        {
            Outcome next = Of(parts[i]);
            result = result.With(next, next.Verdict > result.Verdict == isBest ? next.Verdict : result.Verdict);
        }
        return result;
    }

    private Outcome Of(RangeDemand range)
    {
        DemandPlace lower = range.Lower.Place, upper = range.Upper.Place;
        if (UndecidedIn(range.Lower.Conditions).Length + UndecidedIn(range.Upper.Conditions).Length == 0
            && Side(lower, range.IsLowerOnTheLeft) is { IsUncertain: true } measured
            && Side(lower, !range.IsLowerOnTheLeft) is { IsUncertain: false } low
            && Side(upper, !range.IsUpperOnTheLeft) is { IsUncertain: false } high
            && high.SiValue > low.SiValue)
        {
            string text = range.Lower.Text == range.Upper.Text ? range.Lower.Text : $"{range.Lower.Text} and {range.Upper.Text}";
            return Decided(text, measured, new ToleranceInterval(low.SiValue, high.SiValue, range.Lower.IsStrict, range.Upper.IsStrict), RoundingOf(lower) + RoundingOf(upper));
        }
        return Joined(new Demand[] { range.Lower, range.Upper }, Verdict.Fail, isBest: false);
    }

    private Outcome Of(ComparisonDemand comparison)
    {
        string text = comparison.Text;
        DemandPlace place = comparison.Place;
        if (evaluation.Numbers(place.Uses, place.From, place.To) is not { } found || !Arithmetic.IsFinite(found.Numbers[place.Left]) || !Arithmetic.IsFinite(found.Numbers[place.Right]))
            return Outcome.Undecided(text, false, "a side has no value");
        double left = found.Numbers[place.Left], right = found.Numbers[place.Right], rounding = found.Roundings[place.Left] + found.Roundings[place.Right];
        bool isTie = Math.Abs(left - right) <= rounding;
        bool isMet = comparison.Operator switch
        {
            Operator.Less => left < right && !isTie,
            Operator.LessOrEqual => left < right || isTie,
            Operator.Greater => left > right && !isTie,
            Operator.GreaterOrEqual => left > right || isTie,
            Operator.Equal => isTie,
            _ => !isTie,
        };
        if (UndecidedIn(comparison.Conditions) is { Length: > 0 } condition) return Outcome.Undecided(text, isMet, $"it rests on a condition that is not decided: {condition}");
        try
        {
            ProgramUncertainty margin = evaluation.Uncertainty(place.Uses, place.From, place.To, place.Margin, place.MarginKind!);
            if (!margin.IsUncertain) return Outcome.Exact(isMet);
            if (comparison.Operator >= Operator.Equal) return Equality(text, comparison.Operator, isMet, margin.Budget(Coverage.Usual));
            return Limit(text, comparison, margin, rounding);
        }
        catch (Exception refusal) when (refusal is not (OutOfMemoryException or OperationCanceledException))
        {
            return Outcome.Undecided(text, isMet, "it cannot be decided: " + refusal.Message);
        }
    }

    /// <summary>What both sides of a comparison may have lost to rounding.</summary>
    private double RoundingOf(DemandPlace place) => evaluation.Numbers(place.Uses, place.From, place.To) is { } found ? found.Roundings[place.Left] + found.Roundings[place.Right] : 0;

    /// <summary>A limit that is exact is the tolerance limit of the other side; where both sides are uncertain, the margin between them must not be negative.</summary>
    private Outcome Limit(string text, ComparisonDemand comparison, ProgramUncertainty margin, double rounding)
    {
        bool isLeftMeasured = Side(comparison.Place, isLeft: false) is { IsUncertain: false };
        Measured? measured = Side(comparison.Place, isLeftMeasured), limit = Side(comparison.Place, !isLeftMeasured);
        bool isUpper = comparison.IsUpper == isLeftMeasured;
        bool isMargin = false;
        double at = 0;
        if (measured is { IsUncertain: true } && limit is { IsUncertain: false })
        {
            at = limit.SiValue;
        }
        else
        {
            isMargin = true;
            measured = new Measured(margin);
            isUpper = comparison.IsUpper != comparison.Place.IsUpper;
        }
        return Decided(text, measured, new ToleranceInterval(isUpper ? double.NegativeInfinity : at, isUpper ? at : double.PositiveInfinity, comparison.IsStrict, comparison.IsStrict), rounding, isMargin);
    }

    private Outcome Decided(string text, Measured measured, ToleranceInterval limits, double rounding, bool isMargin = false)
    {
        UncertaintyBudget budget = measured.Budget;
        bool isMet = limits.Contains(budget.Value.SiValue, rounding);
        foreach (Finding finding in budget.OwnFindings)
        {
            if (finding.Code == "second-order-not-evaluated") return Outcome.Undecided(text, isMet, $"{finding.Message}; {finding.Remedy}");
        }
        ConformityDecision decision;
        try
        {
            decision = rule.Decide(budget, limits, rounding);
        }
        catch (ArgumentException refusal)
        {
            return Outcome.Undecided(text, isMet, refusal.Message);
        }
        return Outcome.Of(new WorksheetComparison(text, decision.Verdict, decision, isMargin));
    }

    /// <summary>Two values that are known within limits can be seen to differ, never to be the same.</summary>
    private static Outcome Equality(string text, Operator op, bool isMet, UncertaintyBudget difference)
    {
        bool differs = Math.Abs(difference.Value.SiValue) > difference.SiExpandedUncertainty;
        if (differs) return Outcome.Of(new WorksheetComparison(text, op == Operator.NotEqual ? Verdict.Pass : Verdict.Fail, null));
        QuantityKind kind = difference.ExpandedUncertainty.Kind;
        string width = new Quantity(difference.SiExpandedUncertainty, kind).ToString("G2", null);
        return Outcome.Undecided(text, isMet, $"values known within ± {width} cannot be shown to be equal or not; write limits, or abs(a - b) <= a tolerance");
    }

    private Outcome Of(OtherDemand other)
    {
        string text = FormulaWriter.Write(other.Formula);
        DemandPlace place = other.Place;
        bool? isTrue = evaluation.Numbers(place.Uses, place.From, place.To) is { } found && Arithmetic.IsFinite(found.Numbers[place.Left]) ? found.Numbers[place.Left] != 0 : default(bool?);
        if (isTrue is null) return Outcome.Undecided(text, false, "it has no value");
        if (UndecidedIn(other.Conditions) is { Length: > 0 } condition) return Outcome.Undecided(text, isTrue == other.IsWanted, $"it rests on a condition that is not decided: {condition}");
        return evaluation.Deviates(place.Uses, place.From, place.To)
            ? Outcome.Undecided(text, isTrue == other.IsWanted, "it is asked about values with ±, and only comparisons of quantities have a guard band")
            : Outcome.Exact(isTrue == other.IsWanted);
    }

    /// <summary>The first condition that is not decided; empty where all are.</summary>
    private string UndecidedIn(Conditions conditions)
    {
        if (conditions.IsEmpty) return "";
        if (_settled.TryGetValue(conditions, out string? known)) return known;
        string found = "";
        for (int i = 0; i < conditions.Above.Count && found.Length == 0; i++) found = UndecidedIn(conditions.Above[i]);
        for (int i = 0; i < conditions.Choices.Count && found.Length == 0; i++)
        {
            Choice choice = conditions.Choices[i];
            found = Of(choice.Holds).Verdict == Verdict.Pass ? UndecidedIn(choice.WhenTrue)
                : Of(choice.Fails).Verdict == Verdict.Pass ? UndecidedIn(choice.WhenFalse)
                : choice.Text;
        }
        return _settled[conditions] = found;
    }

    private Measured? Side(DemandPlace place, bool isLeft)
    {
        try
        {
            ProgramUncertainty side = evaluation.Uncertainty(place.Uses, place.From, place.To, isLeft ? place.Left : place.Right, (isLeft ? place.LeftKind : place.RightKind)!);
            return side.HasValue ? new Measured(side) : null;
        }
        catch (Exception refusal) when (refusal is not (OutOfMemoryException or OperationCanceledException))
        {
            return null;
        }
    }

    private sealed class Measured(ProgramUncertainty found)
    {
        private UncertaintyBudget? _budget;

        internal bool IsUncertain => found.IsUncertain;

        internal UncertaintyBudget Budget => _budget ??= found.Budget(Coverage.Usual);

        internal double SiValue => found.SiValue;
    }
}
