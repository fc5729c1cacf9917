using System;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;
using System.Threading.Tasks;
using Xunit;

namespace Acquisition.Reports.Tests;

/// <summary>
/// Every report of the lantern buoy in every format, byte by byte; <c>ACQUISITION_WRITE_DOCS=1 dotnet test</c> writes the files anew. The SI values in them carry all bits of what
/// the library computed, so that a processor with other elementary functions may differ in a last digit of them.
/// </summary>
public sealed class GoldenTests
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
    public void Report_IsByteByByteTheGoldenFile(string name, ReportFormat format)
    {
        using var stream = new MemoryStream();
        LanternBuoy.Reports[name].WriteTo(stream, format);
        string path = Path.Combine(LanternBuoy.Folder(), "tests", "Acquisition.Reports.Tests", "Golden", name + Extension(format));
        if (Environment.GetEnvironmentVariable("ACQUISITION_WRITE_DOCS") == "1") File.WriteAllBytes(path, stream.ToArray());

        Assert.Equal(Encoding.UTF8.GetString(File.ReadAllBytes(path)), Encoding.UTF8.GetString(stream.ToArray()));
        Assert.Equal(File.ReadAllBytes(path), stream.ToArray());
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
