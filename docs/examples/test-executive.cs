#:project ../../src/Acquisition.Core/Acquisition.Core.csproj
// A small test executive: the worksheet holds the steps with their limits, the readings file holds what the bench measured on one unit.
//   dotnet run docs/examples/test-executive.cs                                                 unit 017 of the mixer board
//   dotnet run docs/examples/test-executive.cs -- sequence.worksheet unit.readings [result.json]  a sequence and a unit of your own
// Exit code: 0 passed, 1 failed or not decided, 2 the files cannot be used.
using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Runtime.CompilerServices;
using Acquisition.Core;
using Acquisition.Core.Formulas;
using Acquisition.Core.Functions;

Console.OutputEncoding = System.Text.Encoding.UTF8;
if (args.Length is 1 or > 3) return Refuse("give a sequence, the readings of a unit and, if wanted, a file for the result; or nothing for the example");
string sequenceFile = args.Length > 0 ? args[0] : Path.Combine(Folder(), "mixer-board.worksheet");
string readingsFile = args.Length > 0 ? args[1] : Path.Combine(Folder(), "mixer-board-017.readings");
try
{
    #region sequence
    string text = Read(sequenceFile);
    if (!Worksheet.TryBuild(text, FormulaContext.Standard, out Worksheet? sequence, out IReadOnlyList<FormulaProblem> problems))
        return Refuse($"{sequenceFile}, {problems[0]}");
    Dictionary<string, FormulaValue> readings = ReadingsOf(sequence!, readingsFile);
    WorksheetResult result = sequence!.Evaluate(readings, DecisionRule.GuardedAcceptance);
    if (args.Length == 3) File.WriteAllText(args[2], result.ToJson());
    #endregion

    Console.WriteLine($"Sequence {Path.GetFileName(sequenceFile)}, readings {Path.GetFileName(readingsFile)}, rule: {DecisionRule.GuardedAcceptance}");
    #region steps
    bool hasPassed = true, isStopped = false;
    foreach (Step step in StepsOf(text))
    {
        WorksheetEntry[] lines = result.Entries.Where(entry => entry.Line > step.From && entry.Line < step.To).ToArray();
        bool isGood = lines.All(IsGood);
        Console.WriteLine($"\n{step.Name}: {(isStopped ? "not run" : isGood ? "passed" : "NOT PASSED")}");
        if (isStopped) continue;
        foreach (WorksheetEntry entry in lines)
            Print(entry);
        hasPassed &= isGood;
        isStopped = !isGood && step.StopsTheSequence;
    }
    #endregion
    Console.WriteLine($"\nUnit {(hasPassed ? "passed" : "NOT PASSED")}");
    return hasPassed ? 0 : 1;
}
catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException or FormatException or ArgumentException)
{
    return Refuse(refusal.Message);
}

static bool IsGood(WorksheetEntry entry) =>
    entry.Problem is null && (entry.Verdict ?? WorksheetVerdict.Passed) == WorksheetVerdict.Passed && (entry.IsOverridden || entry.Keyword != WorksheetKeyword.Given);

static void Print(WorksheetEntry entry)
{
    if (entry.Problem is { } problem) Console.WriteLine($"  line {entry.Line,2}  {entry.Formula}: {problem}");
    else if (entry.Verdict is { } verdict)
    {
        string likely = entry.Decision is { } decision ? $", met with probability {ProbabilityText.Of(decision.ConformanceProbability)}" : "";
        Console.WriteLine($"  {(verdict == WorksheetVerdict.Passed ? "ok   " : verdict == WorksheetVerdict.Failed ? "FAIL " : "OPEN ")}  {entry.Formula}{likely}");
        if (verdict != WorksheetVerdict.Passed && entry.Message is { } message) Console.WriteLine($"         {message}");
    }
    else if (entry.Keyword == WorksheetKeyword.Given && !entry.IsOverridden) Console.WriteLine($"  MISSING {entry.Name} was not read");
    else if (entry.IsOverridden) Console.WriteLine($"  read   {entry.Name} = {entry.Text}");
    else if (entry.Keyword == WorksheetKeyword.Show) Console.WriteLine($"  shows  {entry.Formula}: {entry.Text}");
}

// One reading for each line, "name = formula"; every name must be given in the sequence, and once.
static Dictionary<string, FormulaValue> ReadingsOf(Worksheet sequence, string file)
{
    var readings = new Dictionary<string, FormulaValue>();
    string[] lines = Read(file).Split('\n');
    for (int i = 0; i < lines.Length; i++)
    {
        string line = lines[i].Trim(), place = $"{file}, line {i + 1}";
        if (line.Length == 0 || line[0] == '#') continue;
        string[] sides = line.Split('=', 2);
        string name = sides[0].Trim();
        if (sides.Length < 2) throw new FormatException($"{place}: found '{line}', expected name = reading");
        FormulaInput? given = sequence.Givens.FirstOrDefault(input => input.Name == name);
        if (given is null) throw new FormatException($"{place}: '{name}' is not given in the sequence; given are {string.Join(", ", sequence.Givens.Select(input => input.Name))}");
        Quantity value;
        try { value = Quantity.Parse(sides[1].Trim(), CultureInfo.InvariantCulture); }
        catch (QuantityFormatException refusal) { throw new FormatException($"{place}, reading '{sides[1].Trim()}', {refusal.Message}"); }
        if (!given.Kind.Equals(ValueKind.Of(value.Kind))) throw new FormatException($"{place}: {name} is a {value.Kind.Name} ({value}), expected a {given.Kind.Name}");
        if (!readings.TryAdd(name, value)) throw new FormatException($"{place}: {name} is read a second time");
    }
    return readings;
}

static IReadOnlyList<Step> StepsOf(string text)
{
    const string Mark = "# step ", Stop = "(or stop)";
    string[] lines = text.Split('\n');
    int[] heads = Enumerable.Range(0, lines.Length).Where(i => lines[i].StartsWith(Mark, StringComparison.Ordinal)).ToArray();
    if (heads.Length == 0) return new[] { new Step("sequence", 0, int.MaxValue, false) };
    return heads.Select((head, i) => new Step(
        lines[head][Mark.Length..].Replace(Stop, "").Trim(), i == 0 ? 0 : head, i + 1 < heads.Length ? heads[i + 1] + 1 : int.MaxValue, lines[head].Contains(Stop))).ToArray();
}

static string Read(string file) => File.Exists(file) ? File.ReadAllText(file).Replace("\r", "") : throw new IOException($"{file} does not exist");

static int Refuse(string sentence)
{
    Console.Error.WriteLine(sentence);
    return 2;
}

static string Folder([CallerFilePath] string file = "") => Path.GetDirectoryName(file)!;

internal sealed record Step(string Name, int From, int To, bool StopsTheSequence);
