using System;
using System.Collections.Generic;
using System.IO;
using Acquisition.Core;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Reports.Tests;

/// <summary>The plots in docs/plots are drawn by the library; <c>ACQUISITION_WRITE_DOCS=1 dotnet test</c> draws them anew.</summary>
public sealed class DocumentPlotsTests
{
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

    [Theory]
    [MemberData(nameof(Names))]
    public void GainPlot_IsTheOneInTheDocuments(string model) => Compare($"gain-{model}.svg", OutlookReport.Gain(Models[model]).ToSvg());

    [Theory]
    [MemberData(nameof(Names))]
    public void StepPlot_IsTheOneInTheDocuments(string model) => Compare($"step-{model}.svg", OutlookReport.Step(Models[model]).ToSvg());

    private static void Compare(string file, string svg)
    {
        string folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Acquisition.Core.sln"))) folder = Path.GetDirectoryName(folder)!;
        string path = Path.Combine(folder, "docs", "plots", file);
        if (Environment.GetEnvironmentVariable("ACQUISITION_WRITE_DOCS") == "1") File.WriteAllText(path, svg);

        Assert.Equal(File.ReadAllText(path).Replace("\r\n", "\n", StringComparison.Ordinal), svg);
    }
}
