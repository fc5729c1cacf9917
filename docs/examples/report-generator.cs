#:project ../../src/Acquisition.Core/Acquisition.Core.csproj
#:project ../../src/Acquisition.Reports/Acquisition.Reports.csproj
// A small report generator: a template names what one unit's report holds, the files it names hold the results. Out come one HTML page, Markdown and its plots.
//   dotnet run docs/examples/report-generator.cs                                       the report of unit 017, into the folder for temporary files
//   dotnet run docs/examples/report-generator.cs -- unit.report path/to/folder  a template of your own
// Exit code: 0 written, 2 a file cannot be used.
using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Runtime.CompilerServices;
using Acquisition.Core;
using Acquisition.Core.Formulas;
using Acquisition.Reports;

Console.OutputEncoding = System.Text.Encoding.UTF8;
if (args.Length is not (0 or 2)) return Refuse("give a template and a folder for the report, or nothing for the example");
string template = args.Length == 2 ? args[0] : Path.Combine(Folder(), "mixer-board.report");
string output = args.Length == 2 ? args[1] : Path.Combine(Path.GetTempPath(), "acquisition-report");
string place = template;
try
{
    var report = new Report("Report");
    Worksheet? sequence = null;
    var readings = new Dictionary<string, FormulaValue>();
    string[] lines = Read(template).Split('\n');
    for (int i = 0; i < lines.Length; i++)
    {
        string line = lines[i].Trim();
        if (line.Length == 0 || line[0] == '#') continue;
        place = $"{template}, line {i + 1}";
        string[] words = line.Split((char[]?)null, 2, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        string rest = words.Length == 2 ? words[1] : throw new FormatException($"'{words[0]}' needs something after it");
        switch (words[0])
        {
            #region parts
            case "title":
                report = report.WithTitle(rest);
                break;
            case "sequence":
                sequence = Worksheet.Build(Read(Beside(rest)));
                break;
            case "readings":
                readings = ReadingsOf(Read(Beside(rest)));
                break;
            case "text":
                report = report.WithParagraph(TextTemplate.Build(rest, FormulaContext.Standard.WithNamesOf(Sequence())).Fill(Sequence().Evaluate(readings).Values));
                break;
            case "verdicts":
                report = report.WithReport(Sequence().Evaluate(readings).ToReport(rest));
                break;
            case "budget":
                report = report.WithReport(Sequence().Budget(rest, readings).ToReport($"Uncertainty of {rest}"));
                break;
            case "record":
                using (FileStream file = File.OpenRead(Beside(rest)))
                    report = report.WithReport(PulseMeasurement.Of(CsvRecords.Read(file)[0]).ToReport($"Pulses in {rest}"));
                break;
            case "outlook":
                report = report.WithReport(Bench.Parse(Read(Beside(rest))).Outlook.ToReport($"What the set-up shows, {rest}"));
                break;
            #endregion
            default:
                throw new FormatException($"found '{words[0]}', expected title, sequence, readings, text, verdicts, budget, record or outlook");
        }
    }

    #region written
    Directory.CreateDirectory(output);
    string stem = Path.GetFileNameWithoutExtension(template);
    File.WriteAllText(Path.Combine(output, stem + ".html"), report.ToHtml());
    File.WriteAllText(Path.Combine(output, stem + ".md"), report.ToMarkdown(stem));
    foreach ((string name, string svg) in report.PlotFiles(stem).Select(file => (file.Key, file.Value)))
        File.WriteAllText(Path.Combine(output, name), svg);
    #endregion
    Console.WriteLine($"{stem}.html, {stem}.md, {string.Join(", ", report.PlotFiles(stem).Select(file => file.Key))}\n");
    Console.Write(report.ToText());
    return 0;

    Worksheet Sequence() => sequence ?? throw new FormatException("a line 'sequence' must come first");
}
catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException or FormatException or ArgumentException)
{
    return Refuse($"{place}: {refusal.Message.Split('\n')[0]}");
}

string Beside(string file) => Path.Combine(Path.GetDirectoryName(Path.GetFullPath(template))!, file);

static Dictionary<string, FormulaValue> ReadingsOf(string text)
{
    var readings = new Dictionary<string, FormulaValue>();
    foreach (string line in text.Split('\n').Select(line => line.Trim()).Where(line => line.Length > 0 && line[0] != '#'))
    {
        string[] sides = line.Split('=', 2, StringSplitOptions.TrimEntries);
        if (sides.Length < 2) throw new FormatException($"found '{line}', expected name = reading");
        if (!readings.TryAdd(sides[0], Quantity.Parse(sides[1], CultureInfo.InvariantCulture))) throw new FormatException($"{sides[0]} is read a second time");
    }
    return readings;
}

static string Read(string file) => File.Exists(file) ? File.ReadAllText(file).Replace("\r", "") : throw new IOException($"{file} does not exist");

static int Refuse(string sentence)
{
    Console.Error.WriteLine(sentence);
    return 2;
}

static string Folder([CallerFilePath] string file = "") => Path.GetDirectoryName(file)!;
