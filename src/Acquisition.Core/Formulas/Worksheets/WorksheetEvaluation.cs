using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Formulas.Execution;
using Acquisition.Core.Formulas.Syntax;
using Acquisition.Core.Formulas.Worksheets.Checks;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core.Formulas.Worksheets;

/// <summary>One evaluation of a worksheet, line by line: a line that fails takes with it only those that use it.</summary>
internal sealed class WorksheetEvaluation
{
    private const int UsualDigits = 6;

    private readonly Worksheet _sheet;
    private readonly Decisions _decisions;
    private readonly Program _program;
    private readonly RoundingRun _run;
    private readonly Program? _uncertain;
    private readonly UncertainValue?[]? _terms;
    private readonly HashSet<string> _overridden;
    private readonly Dictionary<string, int> _lines = new(StringComparer.Ordinal);
    private readonly HashSet<string> _failed = new(StringComparer.Ordinal);
    private readonly double[] _numbers;
    private readonly object?[] _objects;

    internal WorksheetEvaluation(Worksheet sheet, IReadOnlyDictionary<string, FormulaValue> overrides, DecisionRule rule)
    {
        _sheet = sheet;
        _decisions = new Decisions(this, rule);
        _overridden = new HashSet<string>(overrides.Keys, StringComparer.Ordinal);
        _program = sheet.Program.With(Replacements(sheet, sheet.Places, overrides));
        _run = new RoundingRun(_program);
        _uncertain = sheet.Uncertain?.With(Replacements(sheet, sheet.UncertainPlaces, overrides));
        _terms = _uncertain is null ? null : new UncertainValue?[_uncertain.Terms.Length];
        _numbers = new double[_program.Registers];
        _program.LoadConstants(_numbers);
        _objects = _program.NewObjects(null);
        for (int i = 0; i < sheet.Statements.Count; i++)
        {
            if (sheet.Statements[i].Name.Length > 0) _lines[sheet.Statements[i].Name] = i;
        }
    }

    internal WorksheetResult Run(LongCall? call = null)
    {
        var entries = new List<WorksheetEntry>(_sheet.Statements.Count);
        for (int i = 0; i < _sheet.Statements.Count; i++)
        {
            entries.Add(Evaluate(i));
            call?.Reached(i + 1, _sheet.Statements.Count);
        }
        call?.Completed();
        return new WorksheetResult(entries);
    }

    private static List<Replacement> Replacements(Worksheet sheet, WorksheetPlace[] places, IReadOnlyDictionary<string, FormulaValue> overrides)
    {
        var replacements = new List<Replacement>();
        for (int i = 0; i < places.Length; i++)
        {
            WorksheetStatement statement = sheet.Statements[i];
            if (statement.Keyword != WorksheetKeyword.Given || !overrides.TryGetValue(statement.Name, out FormulaValue value)) continue;
            replacements.Add(new Replacement(places[i].From, places[i].To, places[i].Register, places[i].Slot, value.Kind.IsHeldAsNumber, value.Number, value.Object));
        }
        return replacements;
    }

    private WorksheetEntry Evaluate(int index)
    {
        WorksheetStatement statement = _sheet.Statements[index];
        WorksheetPlace place = _sheet.Places[index];
        string? problem = null;
        string? missing = statement.Uses.FirstOrDefault(_failed.Contains);
        bool isOverridden = statement.Keyword == WorksheetKeyword.Given && _overridden.Contains(statement.Name);
        if (missing is not null && !isOverridden)
            problem = $"'{missing}' has no value";
        else if (!TryRun(statement, place))
            problem = Explain(place);

        FormulaValue? value = problem is null ? Value(statement, place) : default(FormulaValue?);
        if (problem is not null && statement.Name.Length > 0) _failed.Add(statement.Name);
        string? digits = statement.Digits > 0 ? "G" + statement.Digits.ToString(System.Globalization.CultureInfo.InvariantCulture) : null;
        UncertaintyBudget? budget = problem is null && !isOverridden && value!.Value.Kind.Quantity is { } quantity ? Budget(index, quantity) : null;
        if (budget is not null) value = value!.Value.Carrying(budget);
        string text = value is { } found ? found.ToString(Format(statement, found, budget?.SiStandardUncertainty)) : "";
        string withUncertainty = budget is null ? text : value!.Value.ToString(digits, budget);
        if (statement.Keyword == WorksheetKeyword.Show && !statement.IsValueOnly) text = withUncertainty;
        var entry = new WorksheetEntry(statement.Line, statement.Keyword, statement.Name, statement.FormulaText, value, text)
        {
            Message = statement.Message,
            Problem = problem,
            IsOverridden = isOverridden,
            Budget = budget,
            StandardUncertaintyInSi = budget?.SiStandardUncertainty,
            // What is given is said back as it was stated: limits are no expanded uncertainty.
            TextWithUncertainty = statement.IsValueOnly ? text : budget is not null && statement is { Keyword: WorksheetKeyword.Given, Formula: UncertainNode } ? statement.FormulaText : withUncertainty,
        };
        Outcome? outcome = problem is null && _uncertain is not null ? Decide(_sheet.UncertainPlaces[index]) : null;
        if (statement.Keyword == WorksheetKeyword.Check)
        {
            if (problem is null && place.Comparison is { } comparison && Arithmetic.IsFinite(_numbers[comparison.Margin])) SayWhatIsCompared(entry, comparison, statement.Formula is BinaryNode { Operator: Operator.Less or Operator.Greater });
            entry.Verdict = problem is not null ? WorksheetVerdict.NotEvaluated : outcome is { Comparisons.Count: > 0 } ? Verdict(outcome.Verdict) : value!.Value.IsTrue ? WorksheetVerdict.Passed : WorksheetVerdict.Failed;
            entry.Decision = outcome?.Decision;
            entry.Comparisons = (outcome?.Comparisons ?? Array.Empty<WorksheetComparison>()).Frozen();
            entry.Remark = entry.Verdict == WorksheetVerdict.Inconclusive ? entry.Comparisons.FirstOrDefault(each => each.Remark is not null)?.Remark : null;
            if (entry.Checked is null && entry.Decision is { } decision && !entry.Comparisons[0].IsDecidedByMargin) SayWhatIsDecided(entry, decision);
        }
        return entry;
    }

    /// <summary>
    /// The digits of a line: those it states; all of what is given and of counts; of what is computed six, or as many as two digits of its standard uncertainty reach (JCGM 100 7.2.6).
    /// </summary>
    private static string? Format(WorksheetStatement statement, in FormulaValue value, double? uncertainty)
    {
        int digits = statement.Digits;
        if (digits <= 0)
        {
            if (!value.Kind.IsQuantity || ReferenceEquals(value.Kind.Quantity, PointCount.Kind)) return null;
            if (statement.Keyword == WorksheetKeyword.Given) return "R";
            double size = Math.Abs(value.SiValue);
            digits = uncertainty is { } u && u > 0 && size > 0 && value.Kind.Quantity!.Nature < QuantityNature.Point
                ? (int)Math.Max(2, Math.Min(15, Math.Floor(Math.Log10(size)) - Math.Floor(Math.Log10(u)) + 2))
                : UsualDigits;
        }
        return "G" + digits.ToString(System.Globalization.CultureInfo.InvariantCulture);
    }

    /// <summary>What is not written as one comparison and yet is one, or two limits on one quantity.</summary>
    private static void SayWhatIsDecided(WorksheetEntry entry, ConformityDecision decision)
    {
        Quantity value = decision.Measured.Value;
        entry.Checked = value;
        entry.LowerLimit = decision.LowerLimit;
        entry.UpperLimit = decision.UpperLimit;
        entry.IsLowerLimitExcluded = decision.IsLowerLimitExcluded;
        entry.IsUpperLimitExcluded = decision.IsUpperLimitExcluded;
        double above = value.SiValue - decision.LowerLimit?.SiValue ?? double.PositiveInfinity, below = decision.UpperLimit?.SiValue - value.SiValue ?? double.PositiveInfinity;
        double margin = Math.Min(above, below), limit = Math.Abs((above < below ? decision.LowerLimit : decision.UpperLimit)!.Value.SiValue);
        entry.Margin = new Quantity(Math.Abs(margin) <= Rounding.LastPlace * Math.Max(Math.Abs(value.SiValue), limit) ? 0 : margin, decision.GuardBand.Kind);
    }

    private void SayWhatIsCompared(WorksheetEntry entry, ComparisonPlace comparison, bool isStrict)
    {
        var limit = new Quantity(_numbers[comparison.Limit], comparison.Kind);
        entry.Checked = new Quantity(_numbers[comparison.Checked], comparison.Kind);
        entry.LowerLimit = comparison.IsUpper ? null : limit;
        entry.UpperLimit = comparison.IsUpper ? limit : null;
        entry.IsLowerLimitExcluded = isStrict && !comparison.IsUpper;
        entry.IsUpperLimitExcluded = isStrict && comparison.IsUpper;
        double margin = _numbers[comparison.Margin];
        entry.Margin = new Quantity(Math.Abs(margin) <= _run.Roundings[comparison.Margin] ? 0 : margin, comparison.MarginKind);
    }

    private bool TryRun(WorksheetStatement statement, in WorksheetPlace place)
    {
        try
        {
            _run.Run(place.From, place.To, _numbers, _objects);
        }
        catch (Exception refusal) when (refusal is not (OutOfMemoryException or OperationCanceledException))
        {
            return false;
        }
        return statement.Kind.IsHeldAsNumber ? Arithmetic.IsFinite(_numbers[place.Register]) : _objects[place.Register] is not null;
    }

    private string Explain(in WorksheetPlace place)
    {
        Diagnosis.Of(_sheet.Text, Array.Empty<FormulaInput>(), _program, Array.Empty<double>(), null, place.From, place.To, (double[])_numbers.Clone(), out FormulaProblem problem);
        return problem.ToString();
    }

    private FormulaValue Value(WorksheetStatement statement, in WorksheetPlace place)
    {
        var conversion = statement.Formula as ConversionNode;
        return statement.Kind.IsHeldAsNumber
            ? new FormulaValue(statement.Kind, _numbers[place.Register], null, conversion?.Unit, conversion?.LocalFactor ?? 0)
            : new FormulaValue(statement.Kind, 0, _objects[place.Register]);
    }

    /// <summary>The number of a line with its uncertainty, for budgets and trials.</summary>
    /// <exception cref="InvalidOperationException">The line has no value or is no quantity.</exception>
    internal ProgramUncertainty Uncertainty(int index)
    {
        WorksheetStatement statement = _sheet.Statements[index];
        QuantityKind kind = statement.Kind.Quantity ?? throw new InvalidOperationException($"'{statement.Name}' is a {statement.Kind.Name}; only a quantity has an uncertainty");
        for (int i = 0; i <= index; i++)
        {
            if (Evaluate(i).Problem is { } problem && i == index) throw new InvalidOperationException($"'{statement.Name}' has no value: {problem}");
        }
        WorksheetPlace place = _sheet.UncertainPlaces[index];
        return Uncertainty(new[] { statement.Name }, place.To, place.To, place.Register, kind);
    }

    /// <summary>The uncertainty of a register that some instructions leave behind, once the lines have run whose names they use.</summary>
    internal ProgramUncertainty Uncertainty(IEnumerable<string> uses, int from, int to, int register, QuantityKind kind) =>
        new(Needed(uses, from, to), register, kind, _sheet.Text, Array.Empty<UncertainQuantity>(), null, _terms);

    /// <summary>The registers after some instructions, with every uncertain term at its stated value, and what each may have lost to rounding; null where a function refuses.</summary>
    internal (double[] Numbers, double[] Roundings)? Numbers(IEnumerable<string> uses, int from, int to)
    {
        Program program = Needed(uses, from, to);
        var numbers = new double[program.Registers];
        program.LoadConstants(numbers);
        try
        {
            var run = new RoundingRun(program);
            run.Run(0, program.Code.Length, numbers, program.NewObjects(null));
            return (numbers, run.Roundings);
        }
        catch (Exception refusal) when (refusal is not (OutOfMemoryException or OperationCanceledException))
        {
            return null;
        }
    }

    /// <summary>Whether an uncertain term is among what some instructions need.</summary>
    internal bool Deviates(IEnumerable<string> uses, int from, int to) => Array.Exists(Needed(uses, from, to).Code, instruction => instruction.Operation == Operation.Deviate);

    /// <summary>What the host says of a truth value that is given; null where it leaves that to the sheet.</summary>
    internal bool? OverriddenTruth(int index) =>
        _overridden.Contains(_sheet.Statements[index].Name) ? _numbers[_sheet.Places[index].Register] != 0 : default(bool?);

    /// <summary>The uncertain program without the lines that are not asked for: one that fails must not take its neighbours with it.</summary>
    private Program Needed(IEnumerable<string> uses, int from, int to)
    {
        var isNeeded = new bool[_sheet.Statements.Count];
        foreach (string name in uses) isNeeded[_lines[name]] = true;
        for (int i = isNeeded.Length - 1; i >= 0; i--)
        {
            if (!isNeeded[i] || (_sheet.Statements[i].Keyword == WorksheetKeyword.Given && _overridden.Contains(_sheet.Statements[i].Name))) continue;
            foreach (string name in _sheet.Statements[i].Uses) isNeeded[_lines[name]] = true;
        }
        WorksheetPlace[] places = _uncertain is null ? _sheet.Places : _sheet.UncertainPlaces;
        var stretches = new List<(int, int)>();
        for (int i = 0; i < isNeeded.Length; i++)
        {
            if (isNeeded[i]) stretches.Add((places[i].From, places[i].To));
        }
        stretches.Add((from, to));
        return (_uncertain ?? _program).Only(stretches);
    }

    private Outcome? Decide(in WorksheetPlace place)
    {
        if (place.Conditions is { } conditions) _decisions.Settle(conditions);
        return place.Demand is { } demand ? _decisions.Of(demand) : null;
    }

    /// <summary>What lies in the guard band is inconclusive.</summary>
    private static WorksheetVerdict Verdict(Verdict verdict) => verdict switch
    {
        Core.Verdict.Pass => WorksheetVerdict.Passed,
        Core.Verdict.Fail => WorksheetVerdict.Failed,
        _ => WorksheetVerdict.Inconclusive,
    };

    /// <summary>The budget of a line; null where nothing is uncertain, or where it is not smooth.</summary>
    private UncertaintyBudget? Budget(int index, QuantityKind kind)
    {
        if (_uncertain is null) return null;
        try
        {
            WorksheetPlace place = _sheet.UncertainPlaces[index];
            ProgramUncertainty found = Uncertainty(_sheet.Statements[index].Uses, place.From, place.To, place.Register, kind);
            return found.HasValue && found.IsUncertain ? found.Budget(Coverage.Usual) : null;
        }
        catch (Exception refusal) when (refusal is not (OutOfMemoryException or OperationCanceledException))
        {
            return null;
        }
    }
}
