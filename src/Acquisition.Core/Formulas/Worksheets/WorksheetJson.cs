using System.Collections.Generic;
using Acquisition.Core.Explanations.Json;

namespace Acquisition.Core.Formulas;

/// <summary>Writes a worksheet's result as JSON; docs/worksheet.schema.json describes it.</summary>
internal static class WorksheetJson
{
    internal static string Write(WorksheetResult result)
    {
        JsonWriter json = new JsonWriter().BeginObject().Truth("hasPassed", result.HasPassed).BeginArray("entries");
        foreach (WorksheetEntry entry in result.Entries)
        {
            json.BeginObject().Integer("line", entry.Line).Text("keyword", Word(entry.Keyword));
            if (entry.Name.Length > 0) json.Text("name", entry.Name);
            json.Text("formula", entry.Formula);
            if (entry.Value is { } value)
            {
                json.Text("kind", value.Kind.Name);
                if (value.Kind.IsTruth) json.Truth("value", value.IsTrue);
                else if (value.Kind.Quantity is { } kind) json.Number("siValue", value.SiValue).Text("siUnit", kind.Symbol);
                json.Text("text", entry.Text);
            }
            if (entry.StandardUncertaintyInSi is { } uncertainty) json.Number("siStandardUncertainty", uncertainty);
            if (entry.IsOverridden) json.Truth("isOverridden", true);
            if (entry.Verdict is { } verdict) json.Text("verdict", Word(verdict));
            if (entry.Checked is not null) WriteComparison(json, entry);
            if (entry.Decision is { } decision) Write(json, decision);
            if (entry.Decision is null && entry.Comparisons.Count > 0) Write(json, entry.Comparisons);
            if (entry.Findings.Count > 0) Write(json, entry.Findings);
            json.OptionalText("remark", entry.Remark).OptionalText("message", entry.Message).OptionalText("problem", entry.Problem).EndObject();
        }
        return json.EndArray().EndObject().ToString();
    }

    private static void Write(JsonWriter json, ConformityDecision decision) =>
        json.Text("rule", decision.Rule.Name).Text("decision", ConformityDecision.InWords(decision.Verdict)).Number("siGuardBand", decision.GuardBand.SiValue)
            .Number("conformanceProbability", decision.ConformanceProbability.Fraction);

    private static void Write(JsonWriter json, IReadOnlyList<Finding> findings)
    {
        json.BeginArray("findings");
        foreach (Finding finding in findings)
        {
            json.BeginObject().Text("code", finding.Code).Text("severity", finding.Severity.ToString().ToLowerInvariant()).Text("message", finding.Message)
                .OptionalText("remedy", finding.Remedy).OptionalText("source", finding.Source).EndObject();
        }
        json.EndArray();
    }

    private static void Write(JsonWriter json, IReadOnlyList<WorksheetComparison> comparisons)
    {
        json.BeginArray("comparisons");
        foreach (WorksheetComparison comparison in comparisons)
        {
            json.BeginObject().Text("formula", comparison.Formula).Text("verdict", ConformityDecision.InWords(comparison.Verdict));
            if (comparison.Decision is { } decision) Write(json, decision);
            json.OptionalText("remark", comparison.Remark).EndObject();
        }
        json.EndArray();
    }

    private static void WriteComparison(JsonWriter json, WorksheetEntry entry)
    {
        Quantity judged = entry.Checked!.Value, margin = entry.Margin!.Value;
        json.BeginObject("comparison").Text("kind", judged.Kind.Name).Number("siValue", judged.SiValue);
        if (entry.LowerLimit is { } low) json.Number("siLowerLimit", low.SiValue);
        if (entry.UpperLimit is { } high) json.Number("siUpperLimit", high.SiValue);
        if (entry.IsLowerLimitExcluded) json.Truth("lowerLimitIsExcluded", true);
        if (entry.IsUpperLimitExcluded) json.Truth("upperLimitIsExcluded", true);
        json.Text("siUnit", judged.Kind.Symbol).Number("siMargin", margin.SiValue).Text("marginUnit", margin.Kind.Symbol).EndObject();
    }

    /// <summary>A worksheet that cannot be built, as JSON.</summary>
    internal static string Write(IReadOnlyList<FormulaProblem> problems)
    {
        JsonWriter json = new JsonWriter().BeginObject().Truth("hasPassed", false).BeginArray("entries").EndArray().BeginArray("problems");
        foreach (FormulaProblem problem in problems)
        {
            json.BeginObject().Integer("line", problem.Line).Integer("column", problem.Column).Text("message", problem.Message).OptionalText("suggestion", problem.Suggestion).EndObject();
        }
        return json.EndArray().EndObject().ToString();
    }

    internal static string Word(WorksheetKeyword keyword) => keyword switch
    {
        WorksheetKeyword.Given => "given",
        WorksheetKeyword.Let => "let",
        WorksheetKeyword.Check => "check",
        _ => "show",
    };

    internal static string Word(WorksheetVerdict verdict) => verdict switch
    {
        WorksheetVerdict.Passed => "passed",
        WorksheetVerdict.Failed => "failed",
        WorksheetVerdict.Inconclusive => "inconclusive",
        _ => "not evaluated",
    };
}
