#:project ../../src/Acquisition.Reports/Acquisition.Reports.csproj
// One result, six formats: the skew between the two outputs of the lantern buoy's mixer board, judged by a worksheet and written as a report.
//   dotnet run docs/examples/report.cs
using System;
using Acquisition.Core;
using Acquisition.Core.Formulas;
using Acquisition.Reports;

#region report
Worksheet sheet = Worksheet.Build(
    """
    given skew = 350 ps
    check skew * (1 ± 10 %) <= 500 ps    else "the two outputs are too far apart"
    show  skew in ps
    """);
Report report = sheet.Evaluate().ToReport("Mixer board")
    .WithIdentification("serial number", "017")
    .WithIdentification("date", "2026-03-14");
#endregion

Console.OutputEncoding = System.Text.Encoding.UTF8;
#region formats
Print("text", report.ToText(80));
Print("markdown", report.ToMarkdown());
Print("html", report.ToHtmlFragment(hasStyle: false));
Print("csv", report.ToCsv());
foreach (var table in report.CsvTables())
    Print("csv table " + table.Key, table.Value);
Print("json", report.ToJson());
#endregion

static void Print(string format, string text) => Console.Write($"[{format}]\n{text.Replace("\r", "")}\n");
