using System.Collections.Generic;
using Acquisition.Core;
using Acquisition.Core.Explanations.Json;

namespace Acquisition.Reports;

/// <summary>Writes a <see cref="Report"/> as JSON; docs/report.schema.json describes it.</summary>
internal static class JsonReport
{
    /// <summary>Raised when a reader of the former version could misread the new one; members may be added without.</summary>
    private const int Version = 2;

    internal static string Write(Report report, IReadOnlyList<Block> blocks)
    {
        JsonWriter json = new JsonWriter().BeginObject().Text("format", "acquisition-report").Integer("version", Version).Text("title", report.Title).BeginArray("identification");
        foreach (KeyValuePair<string, string> line in report.Identification) json.BeginObject().Text("name", line.Key).Text("text", line.Value).EndObject();
        json.EndArray().BeginArray("blocks");
        foreach (Block block in blocks) Write(json, block);
        return json.EndArray().EndObject().ToString();
    }

    private static void Write(JsonWriter json, Block block)
    {
        json.BeginObject();
        switch (block)
        {
            case Heading heading:
                json.Text("type", "heading").Integer("level", heading.Level).Text("text", heading.Text);
                break;
            case Paragraph paragraph:
                json.Text("type", "paragraph").Text("text", paragraph.Text);
                break;
            case Picture picture:
                json.Text("type", "plot").Text("name", picture.Name).Text("title", picture.Plot.Title).Text("description", picture.Plot.Description);
                JsonPlot.Write(json, picture.Plot);
                break;
            case FindingList list:
                json.Text("type", "findings").Text("name", list.Name).BeginArray("findings");
                foreach (Finding finding in list.Findings) Write(json, finding);
                json.EndArray();
                break;
            case TableBlock table:
                Write(json, table);
                break;
            case ValuesBlock values:
                json.Text("type", "values").Text("name", values.Name).Text("caption", values.Values.Caption).BeginArray("values");
                foreach (ReportValue value in values.Values.Values) Write(json, value);
                json.EndArray();
                break;
            case VerdictsBlock verdicts:
                json.Text("type", "verdicts").Text("name", verdicts.Name).Text("caption", verdicts.Caption).BeginArray("verdicts");
                foreach (ReportVerdict verdict in verdicts.Verdicts) Write(json, verdict);
                json.EndArray();
                break;
        }
        json.EndObject();
    }

    private static void Write(JsonWriter json, Finding finding) => json
        .BeginObject().Text("code", finding.Code).Text("severity", finding.Severity.ToString().ToLowerInvariant()).Text("message", finding.Message)
        .OptionalText("remedy", finding.Remedy).OptionalText("source", finding.Source).EndObject();

    private static void Write(JsonWriter json, TableBlock block)
    {
        json.Text("type", "table").Text("name", block.Name).Text("caption", block.Table.Caption).BeginArray("columns");
        foreach (string column in block.Table.Columns) json.Text(null, column);
        json.EndArray().BeginArray("rows");
        foreach (IReadOnlyList<ReportCell> row in block.Table.Rows)
        {
            json.BeginArray();
            foreach (ReportCell cell in row) Write(json, null, cell);
            json.EndArray();
        }
        json.EndArray();
    }

    private static void Write(JsonWriter json, ReportValue value)
    {
        json.BeginObject().Text("name", value.Name);
        Write(json, "value", value.Value);
        json.OptionalText("method", value.Method).OptionalText("source", value.Source);
        if (value.Inputs.Count > 0)
        {
            json.BeginArray("inputs");
            foreach (KeyValuePair<string, string> input in value.Inputs) json.BeginObject().Text("name", input.Key).Text("text", input.Value).EndObject();
            json.EndArray();
        }
        if (value.Rules.Count > 0)
        {
            json.BeginArray("rulesOfThumb");
            foreach (ReportRule rule in value.Rules)
            {
                json.BeginObject().Text("rule", rule.Rule);
                Write(json, "value", rule.Value);
                Write(json, "difference", rule.Difference);
                json.EndObject();
            }
            json.EndArray();
        }
        if (value.Assumptions.Count > 0)
        {
            json.BeginArray("assumptions");
            foreach (string assumption in value.Assumptions) json.Text(null, assumption);
            json.EndArray();
        }
        json.EndObject();
    }

    private static void Write(JsonWriter json, ReportVerdict verdict)
    {
        json.BeginObject().Text("name", verdict.Name).Text("verdict", ReportVerdict.InWords(verdict.Outcome)).Text("text", verdict.Text);
        Optional(json, "value", verdict.Value);
        Optional(json, "standardUncertainty", verdict.Uncertainty);
        Optional(json, "lowerLimit", verdict.Lower);
        Optional(json, "upperLimit", verdict.Upper);
        if (verdict.IsLowerExcluded) json.Truth("lowerLimitIsExcluded", true);
        if (verdict.IsUpperExcluded) json.Truth("upperLimitIsExcluded", true);
        Optional(json, "margin", verdict.Margin);
        Optional(json, "guardBand", verdict.GuardBand);
        Optional(json, "conformanceProbability", verdict.Probability);
        if (verdict.Rule.Length > 0) json.Text("rule", verdict.Rule);
        if (verdict.Remark.Length > 0) json.Text("remark", verdict.Remark);
        json.EndObject();
    }

    private static void Optional(JsonWriter json, string name, ReportCell cell)
    {
        if (!cell.IsEmpty) Write(json, name, cell);
    }

    private static void Write(JsonWriter json, string? name, ReportCell cell)
    {
        json.BeginObject(name).Text("text", cell.Text);
        if (cell.Quantity is { } quantity)
        {
            json.Text("kind", quantity.Kind.Name).Number("siValue", quantity.SiValue).Text("siUnit", quantity.Kind.Symbol).OptionalText("ucum", Ucum.Of(quantity.Kind.Symbol));
        }
        if (cell.Truth is { } truth) json.Truth("truth", truth);
        json.EndObject();
    }
}
