using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using Acquisition.Core;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Reports.Tests;

/// <summary>The plots in docs/plots are drawn by the library; <c>ACQUISITION_WRITE_DOCS=1 dotnet test</c> draws them anew.</summary>
public sealed class DocumentPlotsTests
{
    private static readonly PlotOptions Small = PlotOptions.Default.WithSize(560, 340);

    private static readonly Dictionary<string, Response> Models = new()
    {
        ["single-pole"] = Response.SinglePole(100.MHz()),
        ["five-equal-poles"] = Response.PolesEqual(5, 100.MHz()),
        ["gaussian"] = Response.Gaussian(100.MHz()),
        ["butterworth-4"] = Response.Butterworth(4, 100.MHz()),
        ["bessel-4"] = Response.Bessel(4, 100.MHz()),
        ["chebyshev-5"] = Response.Chebyshev(5, 0.5.dB(), 100.MHz()),
        ["second-order"] = Response.SecondOrder(100.MHz(), Ratio.FromFraction(0.4)),
        ["brick-wall"] = Response.BrickWall(100.MHz()),
        ["skin-effect"] = Response.SkinEffect(100.MHz()),
    };

    public static TheoryData<string> Names() => new(Models.Keys);

    public static TheoryData<string> StandardNames() => new(StandardPlots.All.Keys);

    [Theory]
    [MemberData(nameof(Names))]
    public void GainPlot_IsTheOneInTheDocuments(string model) => Compare($"gain-{model}.svg", ResponsePlot.Of(Models[model], Small));

    [Theory]
    [MemberData(nameof(Names))]
    public void StepPlot_IsTheOneInTheDocuments(string model) => Compare($"step-{model}.svg", StepPlot.Of(Models[model], Small));

    [Theory]
    [MemberData(nameof(StandardNames))]
    public void StandardPlot_IsTheOneInTheDocuments(string name) => Compare(name + ".svg", StandardPlots.All[name](PlotOptions.Default));

    [Fact]
    public void EveryPictureInTheFolder_IsDrawnByATest()
    {
        IEnumerable<string> drawn = Models.Keys.SelectMany(model => new[] { $"gain-{model}.svg", $"step-{model}.svg" }).Concat(StandardPlots.All.Keys.Select(name => name + ".svg"));

        Assert.Equal(drawn.OrderBy(name => name, StringComparer.Ordinal), Directory.GetFiles(Folder, "*.svg").Select(path => Path.GetFileName(path)!).OrderBy(name => name, StringComparer.Ordinal));
    }

    private static string Folder => Path.Combine(Repository.Folder, "docs", "plots");

    private static void Compare(string file, Plot plot)
    {
        string path = Path.Combine(Folder, file), svg = plot.ToSvg();
        if (Environment.GetEnvironmentVariable("ACQUISITION_WRITE_DOCS") == "1") File.WriteAllText(path, svg);

        Assert.Equal(File.ReadAllText(path).Replace("\r\n", "\n", StringComparison.Ordinal), svg);
    }
}
