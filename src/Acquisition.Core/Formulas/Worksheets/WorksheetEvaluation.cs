using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Formulas.Execution;
using Acquisition.Core.Formulas.Syntax;

namespace Acquisition.Core.Formulas.Worksheets;

/// <summary>One evaluation of a worksheet, line by line: a line that fails takes with it only those that use it.</summary>
internal sealed class WorksheetEvaluation
{
    /// <summary>The coverage factor of the guard band (handbook 11.9).</summary>
    private const double GuardFactor = 2;

    private readonly Worksheet _sheet;
    private readonly Program _program;
    private readonly Program? _uncertain;
    private readonly HashSet<string> _overridden;
    private readonly HashSet<string> _failed = new(StringComparer.Ordinal);
    private readonly double[] _numbers;
    private readonly object?[] _objects;

    internal WorksheetEvaluation(Worksheet sheet, IReadOnlyDictionary<string, FormulaValue> overrides)
    {
        _sheet = sheet;
        _overridden = new HashSet<string>(overrides.Keys, StringComparer.Ordinal);
        _program = sheet.Program.With(Replacements(sheet, sheet.Places, overrides));
        _uncertain = sheet.Uncertain?.With(Replacements(sheet, sheet.UncertainPlaces, overrides));
        _numbers = new double[_program.Registers];
        _program.LoadConstants(_numbers);
        _objects = _program.NewObjects(null);
    }

    internal WorksheetResult Run()
    {
        var entries = new List<WorksheetEntry>(_sheet.Statements.Count);
        for (int i = 0; i < _sheet.Statements.Count; i++) entries.Add(Evaluate(i));
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
        string text = value is { } found ? found.ToString(statement.Digits > 0 ? "G" + statement.Digits.ToString(System.Globalization.CultureInfo.InvariantCulture) : null) : "";
        var entry = new WorksheetEntry(statement.Line, statement.Keyword, statement.Name, statement.FormulaText, value, text)
        {
            Message = statement.Message,
            Problem = problem,
            IsOverridden = isOverridden,
        };
        if (problem is null && !isOverridden && value!.Value.Kind.IsQuantity) entry.SiStandardUncertainty = StandardUncertainty(_sheet.UncertainPlaces[index].Register);
        if (statement.Keyword == WorksheetKeyword.Check) entry.Verdict = problem is null ? Verdict(index) : WorksheetVerdict.NotEvaluated;
        return entry;
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

    private WorksheetVerdict Verdict(int index)
    {
        bool isMet = _numbers[_sheet.Places[index].Register] != 0;
        int margin = _sheet.UncertainPlaces[index].Margin;
        if (margin >= 0 && StandardUncertainty(margin) is { } uncertainty && Math.Abs(_numbers[_sheet.Places[index].Margin]) < GuardFactor * uncertainty) return WorksheetVerdict.Inconclusive;
        return isMet ? WorksheetVerdict.Passed : WorksheetVerdict.Failed;
    }

    /// <summary>The standard uncertainty of a register to first order, its sources independent (JCGM 100, 5.1.2); null where it has none.</summary>
    private double? StandardUncertainty(int register)
    {
        if (_uncertain is null) return null;
        Sensitivities found = Sensitivities.Of(_uncertain, register, Array.Empty<double>(), null, Array.Empty<double>());
        double sum = 0;
        bool isUncertain = false;
        for (int i = 0; i < found.HalfWidths.Length; i++)
        {
            if (found.Derivatives[i] == 0) continue;
            double standard = found.HalfWidths[i] / (_uncertain.Terms[i].CoverageFactor ?? Math.Sqrt(3));
            double part = found.Derivatives[i] * standard;
            sum += part * part;
            isUncertain = true;
        }
        return isUncertain ? Math.Sqrt(sum) : null;
    }
}
