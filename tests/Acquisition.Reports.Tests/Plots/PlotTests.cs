using System;
using System.Globalization;
using System.Linq;
using System.Xml.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Reports.Tests;

public sealed class PlotTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    private static Plot GainPlot()
    {
        double[] hertz = Enumerable.Range(0, 81).Select(i => Math.Pow(10, 6 + i / 20.0)).ToArray();
        double[] decibels = hertz.Select(f => -10 * Math.Log10(1 + Math.Pow(f / 100e6, 2))).ToArray();
        return new Plot("Gain of a single pole <100 MHz>", Axis.Logarithmic("frequency", "Hz"), Axis.Linear("gain", "dB"))
            .WithLine("computed", hertz, decibels)
            .WithHorizontalLimit("half power", -3.0103)
            .WithVerticalLimit("100 MHz", 100e6);
    }

    [Fact]
    public void Svg_IsWellFormed_AndTitledForScreenReaders()
    {
        XElement root = XDocument.Parse(GainPlot().ToSvg()).Root!;

        Assert.Equal("img", root.Attribute("role")!.Value);
        Assert.Equal("Gain of a single pole <100 MHz>", root.Element(Svg + "title")!.Value);
    }

    [Fact]
    public void DecadeTicks_CarryTheirPrefix()
    {
        string[] texts = XDocument.Parse(GainPlot().ToSvg()).Descendants(Svg + "text").Select(x => x.Value).ToArray();

        Assert.Superset(new[] { "1 MHz", "10 MHz", "100 MHz", "1 GHz", "10 GHz", "frequency", "gain / dB", "\u221240" }.ToHashSet(), texts.ToHashSet());
    }

    [Fact]
    public void LinearAxis_ChoosesOnePrefixForAllItsTicks()
    {
        string svg = new Plot("edge", Axis.Linear("time", "s"), Axis.Linear("voltage", "V")).WithLine("edge", [0, 5e-9, 20e-9], [0, 1, 1]).ToSvg();

        Assert.Contains("time / ns", svg, StringComparison.Ordinal);
        Assert.Contains(">14<", svg, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("ar-EG")]
    [InlineData("sv-SE")]
    [InlineData("fa-IR")]
    public void Svg_IsTheSameUnderEveryCulture(string culture)
    {
        string expected = GainPlot().ToSvg();
        CultureInfo before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = new CultureInfo(culture);
        try
        {
            Assert.Equal(expected, GainPlot().ToSvg());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void ManyPoints_KeepTheirPeak()
    {
        double[] seconds = Enumerable.Range(0, 100_000).Select(i => i * 1e-9).ToArray();
        double[] volts = new double[seconds.Length];
        volts[54_321] = 1;
        string svg = new Plot("glitch", Axis.Linear("time", "s"), Axis.Linear("voltage", "V").WithRange(0, 1)).WithLine("trace", seconds, volts).ToSvg();

        XElement frame = XDocument.Parse(svg).Root!.Elements(Svg + "svg").Single(), trace = frame.Elements(Svg + "path").Single(path => (string?)path.Attribute("stroke-width") == "1.8");
        double top = ((string)trace.Attribute("d")!).Split('M', 'L').Where(point => point.Length > 0).Min(point => double.Parse(point.Split(' ')[1], CultureInfo.InvariantCulture));
        Assert.Equal(double.Parse(frame.Attribute("y")!.Value, CultureInfo.InvariantCulture) + 4, top, 2);
        Assert.True(svg.Length < 100_000, $"{svg.Length} characters for one picture");
    }

    [Fact]
    public void ValueThatCannotBeDrawn_IsRefusedWithItsIndex()
    {
        var plot = new Plot("p", Axis.Logarithmic("frequency", "Hz"), Axis.Linear("gain", "dB"));

        var refusal = Assert.Throws<ArgumentException>(() => plot.WithLine("l", [1, 0], [1, 2]));
        Assert.StartsWith("a value on the axis 'frequency' must be finite and above 0; was 0 at index 1", refusal.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => plot.WithLine("l", [1, 2], [1, double.NaN]));
        Assert.Throws<ArgumentException>(() => plot.WithLine("l", [1, 2], [1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Axis.Linear("gain", "dB").WithRange(1, 1));
    }

    [Property]
    public void AnyFiniteData_GiveAWellFormedPictureWithBoundedText(NormalFloat[] values)
    {
        double[] y = values.Select(value => value.Get).ToArray();
        double[] x = Enumerable.Range(0, y.Length).Select(i => (double)i).ToArray();

        string svg = new Plot("any", Axis.Linear("x", ""), Axis.Linear("y", "V")).WithLine("l", x, y).WithDots("d", x, y).WithSteps("s", x, y).ToSvg();

        Assert.NotNull(XDocument.Parse(svg).Root);
        Assert.DoesNotContain("NaN", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("∞", svg, StringComparison.Ordinal);
    }
}
