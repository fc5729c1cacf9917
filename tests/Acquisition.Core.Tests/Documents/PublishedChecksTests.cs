using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Reflection;
using System.Text;
using System.Text.Json;
using Acquisition.Core.Tests.Handbook;
using Acquisition.Core.Tests.Quantities;
using Xunit;

namespace Acquisition.Core.Tests.Documents;

/// <summary>
/// docs/published-checks.md: what the library is held against outside itself. Counts and tolerances are taken from the check values, from the committed outputs of other
/// programs and from the attributes of the tests; <c>ACQUISITION_WRITE_DOCS=1 dotnet test</c> writes the page anew.
/// </summary>
public sealed class PublishedChecksTests
{
    private static readonly string[] StandardWords =
        ["JCGM", "GUM", "IEEE", "IEC", "ISO", "SI Brochure", "CGPM", "UCUM", "ILAC", "ITU", "JEDEC", "NPL", "NCSL"];

    [Fact]
    public void Page_IsTheOneOfTheTests()
    {
        string computed = Page();
        if (Environment.GetEnvironmentVariable("ACQUISITION_WRITE_DOCS") == "1") File.WriteAllText(Repository.PathOf("docs", "published-checks.md"), computed);

        Assert.Equal(Repository.Read("docs", "published-checks.md"), computed);
    }

    [Fact]
    public void PrintedFigures_AreMet_WithinTheirLastDigit() =>
        Assert.All(Printed(), value => Assert.True(HalfUnits(value) <= 1, value.Id + " lies " + HalfUnits(value).ToString("G3", CultureInfo.InvariantCulture) + " half units away"));

    [Fact]
    public void RulesWithoutSource_AreThoseOfTheSources() => Assert.Equal(CommonPractice.Found, CommonPractice.Listed);

    private static string Page()
    {
        var text = new StringBuilder();
        text.Append("# What the library is checked against\n\n");
        text.Append("Checks by something outside the project: figures printed by standards, values computed elsewhere from published definitions, other programs, open measured data, libraries. A test writes this page; the counts are those of the tests.\n");
        text.Append("No text of a standard was at hand: clause numbers and what is marked \"from memory\" were not compared with the document. Each value with its inputs, tolerance and source is in `tests/Acquisition.Core.Tests/Handbook/check-values.json`.\n\n");
        AppendPrinted(text);
        AppendComputed(text);
        AppendPrograms(text);
        AppendOpenData(text);
        CommonPractice.Append(text);
        return text.ToString();
    }

    private static void AppendPrinted(StringBuilder text)
    {
        text.Append("## Figures printed by the source\n\n");
        text.Append("The library's value, before rounding, lies within half a unit of the printed last digit, or within the scatter of a Monte Carlo figure. The last column is the largest distance, in that unit.\n\n");
        text.Append("| source | figures | of these from memory | largest distance |\n|---|---|---|---|\n");
        foreach (IGrouping<string, CheckValue> document in Printed().GroupBy(Document).OrderBy(group => group.Key, StringComparer.Ordinal))
            text.Append(CultureInfo.InvariantCulture, $"| {document.Key} | {document.Count()} | {document.Count(IsFromMemory)} | {document.Max(HalfUnits):F2} |\n");
        text.Append(CultureInfo.InvariantCulture, $"| all | {Printed().Count()} | {Printed().Count(IsFromMemory)} | {Printed().Max(HalfUnits):F2} |\n\n");
    }

    private static void AppendComputed(StringBuilder text)
    {
        text.Append("## Values computed elsewhere from a published definition\n\n");
        text.Append("Computed by scripts in Python with NumPy and SciPy (`tests/scripts/handbook`), by another route than the library's. The tolerance is the widest of the group, relative to the value; for values of 0 it is absolute.\n\n");
        foreach ((string heading, Func<string, bool> belongs) in new (string, Func<string, bool>)[]
                 {
                     ("Standards and guides", IsStandard),
                     ("Papers and textbooks", source => !IsStandard(source) && !IsPractice(source) && IsLiterature(source)),
                     ("Derived, without a document of its own", source => !IsStandard(source) && !IsPractice(source) && !IsLiterature(source)),
                     ("Common practice", source => !IsStandard(source) && IsPractice(source)),
                 })
        {
            CheckValue[] values = CheckValue.All.Values.Where(value => !HasPrinted(value) && belongs(value.Source)).ToArray();
            text.Append(CultureInfo.InvariantCulture, $"### {heading}: {values.Length}\n\n| source | values | handbook | tolerance |\n|---|---|---|---|\n");
            foreach (IGrouping<string, CheckValue> source in values.GroupBy(value => value.Source).OrderBy(group => group.Key, StringComparer.OrdinalIgnoreCase))
            {
                string sections = string.Join(", ", source.Select(value => value.Section).Distinct().OrderBy(Order, StringComparer.Ordinal));
                text.Append(CultureInfo.InvariantCulture, $"| {Cell(source.Key)} | {source.Count()} | {sections} | {Tolerance(source)} |\n");
            }
            text.Append('\n');
        }
    }

    private static void AppendPrograms(StringBuilder text)
    {
        text.Append("## Other programs and libraries\n\n");
        text.Append("Outputs of programs are committed beside the tests, with the script that made them in `tests/scripts`; libraries run in the tests themselves.\n\n");
        text.Append("| what was compared | with | values | agreement asked for |\n|---|---|---|---|\n");
        foreach ((string what, string with, int count, string agreement) in Programs())
            text.Append(CultureInfo.InvariantCulture, $"| {what} | {with} | {count} | {agreement} |\n");
        text.Append("| reading and writing of numbers | .NET's own, random and hostile texts | millions | the same bits |\n");
        text.Append("| arithmetic of formulas without units | NCalc 7.4.0, random trees | 100 a run | the same value |\n");
        text.Append("| a loaded network | nodal analysis with MathNet.Numerics 5.0.0 | 100 random networks a run | 1e-8 of the gain |\n\n");
    }

    private static IEnumerable<(string What, string With, int Count, string Agreement)> Programs()
    {
        yield return ("poles, gains, group delays, steps of filters and cascades", "SciPy 1.10.1", Lines("Responses", "scipy-responses.csv"), "1e-8 of gain and bandwidth, 1e-7 of step and delay; Gaussian before a pole 1e-11");
        yield return ("harmonics of waveforms", "SciPy 1.10.1, integration of the waveform", Lines("Signals", "scipy-signals.csv"), "2e-8");
        yield return ("gain and phase of loaded networks", "ngspice 39", Lines("Chain", "ngspice-gains.csv"), "2e-7");
        yield return ("steps of loaded networks", "ngspice 39", Lines("Chain", "ngspice-steps.csv"), "2e-3 of the step, the simulator's own error in time");
        yield return ("sine fits with their uncertainties", "SciPy 1.10.1, curve_fit", Members("Records/Sine/scipy-cases.json", "fits"), "1e-4 of an uncertainty; the uncertainties to 0.2 %");
        yield return ("spectral densities and mean squares", "SciPy 1.10.1, periodogram and Welch", Members("Records/Sine/scipy-cases.json", "spectra") + 1, "1e-9 of the largest");
        yield return ("fitted bandwidths of sweeps", "SciPy 1.10.1, curve_fit", Members("Records/Sine/scipy-cases.json", "sweeps"), "1e-4 of an uncertainty; the uncertainties to 0.1 %");
        yield return ("levels, durations and overshoot of ringing pulses", "ngspice 39, its own measurements", 5, "10 ps of 2.2 ns, 1e-3 of the amplitude");
        yield return ("period, jitter, duty of a train of codes", "NumPy 1.24.2", Members("Records/Data/scipy-pulses.json", null) - 1, "1e-9 of a sample");
        yield return ("quantiles of Student's t", "SciPy 1.10.1", Members("Uncertainty/reference.json", "t_quantiles"), "1e-9");
        yield return ("consumer's and producer's risks", "SciPy 1.10.1, integration", Members("Uncertainty/reference.json", "global_risks"), "1e-11");
        yield return ("a fitted line; a product of distributions", "NumPy 1.24.2, SciPy 1.10.1", 2, "1e-9; 2e-3 by trials");
        yield return ("size of units", "UnitsNet 5.75.1", UnitsNetOracleTests.Shared().Count(), "the last bit; 1e-8 where UnitsNet holds nine digits");
    }

    private static void AppendOpenData(StringBuilder text)
    {
        text.Append("## Open measured data and reference tables\n\n");
        text.Append("Measured by others and not part of this repository; the tests say loudly when they skip. Expected figures were computed from the files by independent NumPy and SciPy runs, or are certified (NIST Statistical Reference Datasets).\n\n");
        text.Append("| file | what must come out |\n|---|---|\n");
        var tests = from type in typeof(PublishedChecksTests).Assembly.GetTypes()
                    from method in type.GetMethods()
                    from attribute in method.GetCustomAttributesData()
                    where attribute.AttributeType == typeof(OpenDataFactAttribute)
                    let file = (string)attribute.ConstructorArguments[0].Value!
                    orderby file, method.Name
                    select (file, method.Name);
        foreach ((string file, string name) in tests) text.Append(CultureInfo.InvariantCulture, $"| {file} | {InWords(name)} |\n");
        text.Append('\n');
    }

    private static IEnumerable<CheckValue> Printed() => CheckValue.All.Values.Where(HasPrinted);

    private static bool HasPrinted(CheckValue value) => value.Printed is not null;

    private static double HalfUnits(CheckValue value) => Math.Abs(value.Expected - value.Printed!.Value.Value) / value.Printed.Value.HalfUnit;

    private static bool IsFromMemory(CheckValue value) => value.Source.Contains("from memory", StringComparison.Ordinal);

    private static string Document(CheckValue value) => value.Source.Split(" (")[0].Split(" prints")[0].Split(';')[0];

    private static bool IsStandard(string source) => !source.StartsWith("derived", StringComparison.Ordinal) && StandardWords.Any(word => source.Contains(word, StringComparison.Ordinal));

    private static bool IsPractice(string source) => source.Contains("common practice", StringComparison.Ordinal);

    private static bool IsLiterature(string source) =>
        !source.StartsWith("derived from", StringComparison.Ordinal) && (source.Contains("textbook", StringComparison.OrdinalIgnoreCase) || source.Contains("Searle", StringComparison.Ordinal) || source.Contains("Proakis", StringComparison.Ordinal)
        || source.Contains("Grover", StringComparison.Ordinal) || source.Contains("Paul", StringComparison.Ordinal)
        || Enumerable.Range(0, Math.Max(0, source.Length - 3)).Any(i => source[i] is '1' or '2' && source[i + 1] is '9' or '0' && char.IsAsciiDigit(source[i + 2]) && char.IsAsciiDigit(source[i + 3])));

    private static string Tolerance(IEnumerable<CheckValue> values)
    {
        CheckValue[] numbers = values.Where(value => value.ExpectedElement.ValueKind == JsonValueKind.Number).ToArray();
        if (numbers.Length == 0) return "the same text or numbers";
        double[] relative = numbers.Where(value => value.Expected != 0).Select(value => value.Tolerance / Math.Abs(value.Expected)).ToArray();
        return relative.Length > 0 ? relative.Max().ToString("0E+0", CultureInfo.InvariantCulture) : numbers.Max(value => value.Tolerance).ToString("0E+0", CultureInfo.InvariantCulture);
    }

    private static string Order(string section) => string.Join(".", section.Split('.').Select(part => part.PadLeft(3, '0')));

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal);

    private static int Lines(params string[] path) => File.ReadLines(Path.Combine([AppContext.BaseDirectory, .. path])).Skip(1).Count();

    private static int Members(string file, string? member)
    {
        using var document = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, file)));
        JsonElement part = member is null ? document.RootElement : document.RootElement.GetProperty(member);
        return part.ValueKind == JsonValueKind.Array ? part.GetArrayLength() : part.EnumerateObject().Count();
    }

    /// <summary>The name of a test as the sentence it is.</summary>
    private static string InWords(string name)
    {
        var words = new StringBuilder();
        int first = name.IndexOf('_', StringComparison.Ordinal);
        for (int i = 0; i < name.Length; i++)
        {
            bool starts = i > 0 && (char.IsUpper(name[i]) ? !char.IsUpper(name[i - 1]) : char.IsAsciiDigit(name[i]) && !char.IsAsciiDigit(name[i - 1]));
            if (name[i] == '_') words.Append(i == first ? "" : ",");
            else words.Append(starts ? " " : "").Append(i > 0 && !(i + 1 < name.Length && char.IsUpper(name[i + 1])) ? char.ToLowerInvariant(name[i]) : name[i]);
        }
        return words.ToString();
    }
}
