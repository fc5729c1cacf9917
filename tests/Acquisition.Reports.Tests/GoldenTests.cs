using System;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;
using System.Text.RegularExpressions;
using System.Threading.Tasks;
using Xunit;

namespace Acquisition.Reports.Tests;

/// <summary>
/// Every report of the lantern buoy in every format; <c>ACQUISITION_WRITE_DOCS=1 dotnet test</c> writes the files anew. All bytes but those of numbers are the same on every host. The SI values
/// carry all bits of what the library computed, so that a processor with other elementary functions may differ in a last digit of them: numbers agree to 1e-9.
/// </summary>
public sealed partial class GoldenTests
{
    public static TheoryData<string, ReportFormat> Files()
    {
        var files = new TheoryData<string, ReportFormat>();
        foreach (string name in LanternBuoy.Reports.Keys)
        {
            foreach (ReportFormat format in Enum.GetValues<ReportFormat>().Where(format => format != ReportFormat.HtmlFragment)) files.Add(name, format);
        }
        files.Add("safety", ReportFormat.HtmlFragment);
        return files;
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Report_IsTheGoldenFile(string name, ReportFormat format)
    {
        using var stream = new MemoryStream();
        LanternBuoy.Reports[name].WriteTo(stream, format);
        string path = Path.Combine(LanternBuoy.Folder(), "tests", "Acquisition.Reports.Tests", "Golden", name + Extension(format));
        if (Environment.GetEnvironmentVariable("ACQUISITION_WRITE_DOCS") == "1") File.WriteAllBytes(path, stream.ToArray());

        string golden = Encoding.UTF8.GetString(File.ReadAllBytes(path)), written = Encoding.UTF8.GetString(stream.ToArray());
        if (golden == written) return;
        Assert.Equal(Number().Replace(golden, "number"), Number().Replace(written, "number"));
        Assert.All(Number().Matches(golden).Zip(Number().Matches(written)), pair =>
        {
            double expected = double.Parse(pair.First.Value, CultureInfo.InvariantCulture), found = double.Parse(pair.Second.Value, CultureInfo.InvariantCulture);
            Assert.Equal(expected, found, Math.Max(1e-9 * Math.Abs(expected), 1e-18));
        });
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("ar-EG")]
    [InlineData("sv-SE")]
    [InlineData("tr-TR")]
    public void Report_IsTheSameUnderEveryCulture(string culture)
    {
        string[] expected = Everything();
        CultureInfo before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = new CultureInfo(culture);
        try
        {
            Assert.Equal(expected, Everything());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Report_IsTheSameFromManyThreads()
    {
        string expected = LanternBuoy.Reports["shortlist"].ToJson();
        Parallel.For(0, 64, _ => Assert.Equal(expected, LanternBuoy.Reports["shortlist"].WithTitle("x").WithTitle("Which instrument for the beacon clock").ToJson()));
    }

    // Numbers with all their digits; those of display texts and plots have few and are compared as text.
    [GeneratedRegex(@"\d+\.\d{6,}(E[+-]\d+)?|\d(\.\d+)?E[+-]\d+")]
    private static partial Regex Number();

    private static string[] Everything()
    {
        Report report = LanternBuoy.Worksheet().ToReport("Mixer board");
        return Enum.GetValues<ReportFormat>().Select(report.ToString).Concat(LanternBuoy.Reports["outlook"].CsvTables().Select(table => table.Value)).ToArray();
    }

    private static string Extension(ReportFormat format) => format switch
    {
        ReportFormat.Markdown => ".md",
        ReportFormat.Html => ".html",
        ReportFormat.HtmlFragment => ".fragment.html",
        ReportFormat.Text => ".txt",
        ReportFormat.Csv => ".csv",
        _ => ".json",
    };
}
