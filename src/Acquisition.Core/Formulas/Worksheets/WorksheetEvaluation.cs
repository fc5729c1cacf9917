using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Formulas.Execution;
using Acquisition.Core.Formulas.Syntax;

namespace Acquisition.Core.Formulas.Worksheets;

/// <summary>One evaluation of a worksheet, line by line: a line that fails takes with it only those that use it.</summary>
internal sealed class WorksheetEvaluation
{
    private const int UsualDigits = 6;

    private readonly Worksheet _sheet;
    private readonly DecisionRule _rule;
    private readonly Program _program;
    private readonly Program? _uncertain;
    private readonly HashSet<string> _overridden;
    private readonly HashSet<string> _failed = new(StringComparer.Ordinal);
    private readonly double[] _numbers;
    private readonly object?[] _objects;

    internal WorksheetEvaluation(Worksheet sheet, IReadOnlyDictionary<string, FormulaValue> overrides, DecisionRule rule)
    {
        _sheet = sheet;
        _rule = rule;
        _overridden = new HashSet<string>(overrides.Keys, StringComparer.Ordinal);
        _program = sheet.Program.With(Replacements(sheet, sheet.Places, overrides));
        _uncertain = sheet.Uncertain?.With(Replacements(sheet, sheet.UncertainPlaces, overrides));
        _numbers = new double[_program.Registers];
        _program.LoadConstants(_numbers);
        _objects = _program.NewObjects(null);
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
        double? uncertainty = value is { Kind.Quantity: { } kind } && !isOverridden ? TryUncertainty(_sheet.UncertainPlaces[index].Register, kind)?.Budget(Coverage.Usual).SiStandardUncertainty : null;
        string text = value is { } found ? found.ToString(Format(statement, found, uncertainty)) : "";
        var entry = new WorksheetEntry(statement.Line, statement.Keyword, statement.Name, statement.FormulaText, value, text)
        {
            Message = statement.Message,
            Problem = problem,
            IsOverridden = isOverridden,
            StandardUncertaintyInSi = uncertainty,
        };
        if (statement.Keyword == WorksheetKeyword.Check)
        {
            entry.Decision = problem is null ? Decision(index) : null;
            if (problem is null && place.Comparison is { } comparison && Arithmetic.IsFinite(_numbers[comparison.Margin])) SayWhatIsCompared(entry, comparison);
            entry.IsStrict = statement.Formula is BinaryNode { Operator: Operator.Less or Operator.Greater };
            entry.Verdict = problem is null ? Verdict(index, entry.Decision) : WorksheetVerdict.NotEvaluated;
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
            if (statement.Keyword == WorksheetKeyword.Given || !value.Kind.IsQuantity || ReferenceEquals(value.Kind.Quantity, PointCount.Kind)) return null;
            double size = Math.Abs(value.SiValue);
            digits = uncertainty is { } u && u > 0 && size > 0 && value.Kind.Quantity!.Nature < QuantityNature.Point
                ? (int)Math.Max(2, Math.Min(15, Math.Floor(Math.Log10(size)) - Math.Floor(Math.Log10(u)) + 2))
                : UsualDigits;
        }
        return "G" + digits.ToString(System.Globalization.CultureInfo.InvariantCulture);
    }

    private void SayWhatIsCompared(WorksheetEntry entry, ComparisonPlace comparison)
    {
        var limit = new Quantity(_numbers[comparison.Limit], comparison.Kind);
        entry.Checked = new Quantity(_numbers[comparison.Checked], comparison.Kind);
        entry.LowerLimit = comparison.IsUpper ? null : limit;
        entry.UpperLimit = comparison.IsUpper ? limit : null;
        entry.Margin = new Quantity(_numbers[comparison.Margin], comparison.MarginKind);
    }

    private bool TryRun(WorksheetStatement statement, in WorksheetPlace place)
    {
        try
        {
            _program.Run(place.From, place.To, _numbers, _objects, null);
        }
        catch (Exception refusal) when (refusal is not OutOfMemoryException)
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
        return new ProgramUncertainty(_uncertain ?? _program, _sheet.UncertainPlaces[index].Register, kind, _sheet.Text, Array.Empty<UncertainQuantity>(), null);
    }

    /// <summary>The decision on a comparison (JCGM 106): the checked value against its limit; where that is uncertain itself, the margin, which must be at least 0.</summary>
    private ConformityDecision? Decision(int index)
    {
        if (_sheet.UncertainPlaces[index].Comparison is not { } comparison) return null;
        if (TryUncertainty(comparison.Limit, comparison.Kind) is not null)
            return TryUncertainty(comparison.Margin, comparison.MarginKind) is { } margin ? _rule.Decide(margin.Budget(Coverage.Usual), 0, double.PositiveInfinity) : null;
        if (TryUncertainty(comparison.Checked, comparison.Kind) is not { } measured) return null;
        double limit = _numbers[_sheet.Places[index].Comparison!.Limit];
        return comparison.IsUpper
            ? _rule.Decide(measured.Budget(Coverage.Usual), double.NegativeInfinity, limit)
            : _rule.Decide(measured.Budget(Coverage.Usual), limit, double.PositiveInfinity);
    }

    /// <summary>Without uncertainty a check is met or not; with it, what lies in the guard band is inconclusive.</summary>
    private WorksheetVerdict Verdict(int index, ConformityDecision? decision) => decision?.Verdict switch
    {
        null => _numbers[_sheet.Places[index].Register] != 0 ? WorksheetVerdict.Passed : WorksheetVerdict.Failed,
        Core.Verdict.Pass => WorksheetVerdict.Passed,
        Core.Verdict.Fail => WorksheetVerdict.Failed,
        _ => WorksheetVerdict.Inconclusive,
    };

    /// <summary>The uncertainty of a register; null where nothing is uncertain, or where a line that fails, or one that is not smooth, leaves none.</summary>
    private ProgramUncertainty? TryUncertainty(int register, QuantityKind kind)
    {
        if (_uncertain is null) return null;
        try
        {
            var found = new ProgramUncertainty(_uncertain, register, kind, _sheet.Text, Array.Empty<UncertainQuantity>(), null);
            return found.HasValue && found.IsUncertain ? found : null;
        }
        catch (Exception refusal) when (refusal is not OutOfMemoryException)
        {
            return null;
        }
    }
}
