using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Reports.Tests;

/// <summary>What any picture holds to: colours, style, scale, size of the file, words, and what cannot be drawn.</summary>
public sealed partial class DrawingTests
{
    private static readonly Plot Empty = new("plot", Axis.Linear("time", "s"), Axis.Linear("voltage", "V"));

    /// <summary>WCAG 2.1, 1.4.11: graphics keep 3 : 1 to what is beside them; 1.4.3: texts keep 4.5 : 1. Relative luminance as defined there.</summary>
    [Fact]
    public void Colours_KeepTheContrastThatWcagAsksOfGraphicsAndTexts()
    {
        Assert.All(Palette.Light.Append(Palette.Guide), colour => Assert.True(Contrast(colour, Palette.Paper) >= 3, $"{colour} on {Palette.Paper}: {Contrast(colour, Palette.Paper):F2}"));
        Assert.All(Palette.Dark.Append(Palette.DarkGuide), colour => Assert.True(Contrast(colour, Palette.DarkPaper) >= 3, $"{colour} on {Palette.DarkPaper}: {Contrast(colour, Palette.DarkPaper):F2}"));
        Assert.True(Contrast(Palette.Text, Palette.Paper) >= 4.5);
        Assert.True(Contrast(Palette.DarkText, Palette.DarkPaper) >= 4.5);
        Assert.Equal(21, Contrast("#000000", "#ffffff"), 6);
    }

    [Fact]
    public void NoTwoLooks_AreAlikeInColourAndDash_ForADozenTraces()
    {
        var looks = Enumerable.Range(0, 12).Select(i => (Palette.ColourOf(i), Palette.Dashes[i % Palette.Dashes.Length])).ToArray();

        Assert.Equal(looks.Length, looks.Distinct().Count());
    }

    [Fact]
    public void Style_TouchesNothingOutsideOfThePicture_AndThePictureAsksForNothing()
    {
        foreach (Func<PlotOptions, Plot> draw in StandardPlots.All.Values)
        {
            string svg = draw(PlotOptions.Default).ToSvg();
            XElement root = XDocument.Parse(svg).Root!;
            string style = root.Element(TextBoxes.Svg + "style")!.Value;
            string rules = style["@media screen and (prefers-color-scheme:dark){".Length..^1];

            Assert.All(rules.Split('}', StringSplitOptions.RemoveEmptyEntries), rule => Assert.StartsWith("." + Palette.Root + " .", rule, StringComparison.Ordinal));
            Assert.Equal(Palette.Root, root.Attribute("class")!.Value);
            Assert.DoesNotContain(root.DescendantsAndSelf().Attributes(), attribute => attribute.Name.LocalName is "id" or "href" or "src" || attribute.Name.LocalName.StartsWith("on", StringComparison.Ordinal));
            Assert.DoesNotContain("url(", svg, StringComparison.Ordinal);
            Assert.DoesNotContain("@import", svg, StringComparison.Ordinal);
            Assert.DoesNotContain("script", svg, StringComparison.OrdinalIgnoreCase);
        }
    }

    [Fact]
    public void EveryStandardPlot_SaysInWordsWhatIsSeen()
    {
        foreach ((string name, Func<PlotOptions, Plot> draw) in StandardPlots.All)
        {
            Plot plot = draw(PlotOptions.Default);
            XElement root = XDocument.Parse(plot.ToSvg()).Root!;

            Assert.Equal("img", root.Attribute("role")!.Value);
            Assert.Equal(plot.Title, root.Element(TextBoxes.Svg + "title")!.Value);
            Assert.Equal(plot.Description, root.Element(TextBoxes.Svg + "desc")!.Value);
            Assert.True(DigitWithUnit().Count(plot.Description) >= 3, $"{name}: {plot.Description}");
        }
    }

    [Fact]
    public void Description_TellsAxesTracesAndMarks()
    {
        Plot plot = Empty.WithLine("edge", [0, 2e-9], [0, 3.3]).WithHorizontalLimit("limit", 2.5).WithDescription("An edge.");

        Assert.Equal("An edge. Horizontal axis: time. Vertical axis: voltage. Edge: 2 points, time from 0 s to 2 ns, voltage from 0 V to 3.3 V. Level lines: limit at 2.5 V.", plot.Description);
    }

    [Fact]
    public void PlotWithoutData_SaysSo()
    {
        string svg = Empty.ToSvg();

        Assert.Contains(">no data<", svg, StringComparison.Ordinal);
        Assert.Contains("There are no data.", Empty.Description, StringComparison.Ordinal);
    }

    public static TheoryData<double[]> OddData() => new(
        [1.5], [2, 2, 2], [-3, -2, -1], [-double.MaxValue, double.MaxValue], [0, 5e-324], [1e9, 1e9 + 1e-3], [0, 0], [1e300, 1e301], [-1e-30, 1e-30]);

    [Theory]
    [MemberData(nameof(OddData))]
    public void OddData_AreDrawnInsideTheFrame(double[] values)
    {
        double[] x = Enumerable.Range(0, values.Length).Select(i => (double)i).ToArray();
        string svg = Empty.WithLine("l", x, values).WithDots("d", x, values).ToSvg();

        TextBoxes.AssertTheyAreApartAndInside(svg);
        XElement frame = XDocument.Parse(svg).Root!.Elements(TextBoxes.Svg + "svg").Single();
        double top = TextBoxes.Number(frame, "y"), bottom = top + TextBoxes.Number(frame, "height");
        double[] places = frame.Elements().SelectMany(path => Pair().Matches(path.Attribute("d")!.Value).Select(match => double.Parse(match.Groups[2].Value, CultureInfo.InvariantCulture))).ToArray();
        Assert.NotEmpty(places);
        Assert.All(places, y => Assert.InRange(y, top, bottom));
    }

    [Property]
    public Property LinearTicks_StepBy125_AndTheirTextsAreTheirValues() => Prop.ForAll(
        (from middle in Gen.Choose(-5000, 5000) from span in Gen.Choose(1, 100_000) from exponent in Gen.Choose(-14, 14) from length in Gen.Choose(80, 900) select (Low: middle * Math.Pow(10, exponent), Span: span * Math.Pow(10, exponent), length)).ToArbitrary(),
        given =>
        {
            Scale scale = Axis.Linear("time", "s").Over([given.Low, given.Low + given.Span], given.length, false);
            double[] values = scale.Ticks.Select(tick => tick.Value).ToArray();
            if (values.Length < 2) return;
            double step = values[1] - values[0], decade = Math.Pow(10, Math.Floor(Math.Log10(step * 1.0001)));
            Assert.Contains(new[] { 1.0, 2, 5 }, digit => Math.Abs((step / decade) - digit) < 1e-3);
            double unit = scale.Title switch { "time / s" => 1, _ when UnitOf(scale.Title) is { } prefix => prefix, _ => double.NaN };
            if (scale.Title.Contains("from", StringComparison.Ordinal) || double.IsNaN(unit)) return;
            Assert.All(scale.Ticks.Where(tick => tick.IsMajor), tick => Assert.Equal(tick.Value / unit, double.Parse(tick.Text.Replace('\u2212', '-'), CultureInfo.InvariantCulture), Math.Abs(step / unit) * 1e-6));
        });

    [Theory]
    [InlineData(1e6, 1e9, "1 MHz 10 MHz 100 MHz 1 GHz")]
    [InlineData(10e6, 500e6, "10 MHz 20 MHz 50 MHz 100 MHz 200 MHz 500 MHz")]
    [InlineData(1, 1e12, "1 Hz 1 kHz 1 MHz 1 GHz 1 THz")]
    public void LogarithmicTicks_CarryAsManyTextsAsThereIsRoomFor(double lower, double upper, string texts)
    {
        Scale scale = Axis.Logarithmic("frequency", "Hz").WithRange(lower, upper).Over([], upper > 1e11 ? 300 : 600, false);

        Assert.Equal(texts, string.Join(" ", scale.Ticks.Where(tick => tick.IsMajor).Select(tick => tick.Text)));
        Assert.True(scale.Ticks.Count(tick => !tick.IsMajor) > 5);
    }

    [Fact]
    public void FarFromZero_TicksCountFromAnOffset()
    {
        Scale scale = Axis.Linear("time", "s").Tight().Over([12.345678, 12.345678 + 80e-9], 500, false);

        Assert.StartsWith("time / ns from 12.345678", scale.Title, StringComparison.Ordinal);
        Assert.Equal("0", scale.Ticks[0].Text);
    }

    [Fact]
    public void AMillionSamples_MakeASmallFile_ThatKeepsEveryExtreme()
    {
        var random = new Random(5);
        double[] x = Enumerable.Range(0, 1_000_000).Select(i => i * 1e-9).ToArray(), y = x.Select(_ => random.NextDouble()).ToArray();
        (y[123_456], y[987_654]) = (-7, 9);
        Plot plot = Empty.WithLine("record", x, y);
        string svg = plot.ToSvg();

        Assert.True(svg.Length < 60_000, $"{svg.Length} characters");
        Scale scale = plot.X.Over(Panel.XValues(plot), 700, false);
        int[] shown = Columns.Visible(plot.Content.Traces[0], scale.PlaceOf, 700).ToArray();
        Assert.Contains(123_456, shown);
        Assert.Contains(987_654, shown);
    }

    [Property]
    public Property EachColumn_KeepsItsLowestAndHighestPoint() => Prop.ForAll(Gen.Choose(-1000, 1000).ArrayOf(500).ToArbitrary(), values =>
    {
        var trace = new Trace("t", TraceStyle.Line, 0, Enumerable.Range(0, values.Length).Select(i => (double)i).ToArray(), values.Select(i => (double)i).ToArray());
        int[] shown = Columns.Visible(trace, x => x / 500, 10).ToArray();

        for (int column = 0; column < 10; column++)
        {
            Assert.Equal(values.Skip(50 * column).Take(50).Min(), shown.Where(i => i / 50 == column).Min(i => values[i]));
            Assert.Equal(values.Skip(50 * column).Take(50).Max(), shown.Where(i => i / 50 == column).Max(i => values[i]));
        }
        Assert.True(shown.Length <= 40);
        Assert.Equal(shown.Order(), shown);
    });

    [Fact]
    public void WhatXmlForbids_IsReplaced_AndWhatMeansSomething_IsEscaped()
    {
        Plot plot = new Plot("a < b & \"c\" \u0001 \ud800 \uffff end", Axis.Linear("x > y", ""), Axis.Linear("tab\there", "")).WithLine("l\u0000", [0, 1], [0, 1]);
        XElement root = XDocument.Parse(plot.ToSvg()).Root!;

        Assert.Equal("a < b & \"c\" \ufffd \ufffd \ufffd end", root.Element(TextBoxes.Svg + "title")!.Value);
        Assert.Contains(TextBoxes.Of(root), text => text.Text == "tab here");
    }

    [Fact]
    public void LinesFarOutsideOfAChosenRange_KeepTheirSlope()
    {
        XElement root = XDocument.Parse(new Plot("p", Axis.Linear("x", "").WithRange(0, 1), Axis.Linear("y", "").WithRange(0, 1)).WithLine("l", [-1e9, 1e9], [-1e9, 1e9]).ToSvg()).Root!;
        XElement frame = root.Elements(TextBoxes.Svg + "svg").Single();
        Match[] points = Pair().Matches(frame.Elements().Single(path => (string?)path.Attribute("stroke-width") == "1.8").Attribute("d")!.Value).ToArray();
        double at(Match point, int group) => double.Parse(point.Groups[group].Value, CultureInfo.InvariantCulture);
        double slope = (at(points[1], 2) - at(points[0], 2)) / (at(points[1], 1) - at(points[0], 1));

        Assert.Equal(-(TextBoxes.Number(frame, "height") - 8) / (TextBoxes.Number(frame, "width") - 8), slope, 4);
    }

    [Fact]
    public void SizesAndRangesThatCannotBe_AreRefusedByName()
    {
        Assert.Equal("width", Assert.Throws<ArgumentOutOfRangeException>(() => PlotOptions.Default.WithSize(100, 450)).ParamName);
        Assert.Equal("height", Assert.Throws<ArgumentOutOfRangeException>(() => Empty.WithSize(800, 5000)).ParamName);
        Assert.Throws<ArgumentOutOfRangeException>(() => Axis.Linear("x", "").WithRange(0, 5e-324));
        Assert.Throws<ArgumentOutOfRangeException>(() => Axis.Logarithmic("x", "").WithRange(0, 1));
        Assert.Throws<ArgumentException>(() => Empty.WithHorizontalLimit("l", double.NaN));
        Assert.Throws<ArgumentException>(() => Empty.WithBand("b", [0, 1], [0, 1], [1]));
    }

    private static double? UnitOf(string title) => title.Length == "time / ms".Length && title.EndsWith('s') ? Math.Pow(10, 3 * ("qryzafpnµm kMGTPEZYRQ".IndexOf(title[7]) - 10)) : null;

    private static double Contrast(string one, string other)
    {
        double a = Luminance(one), b = Luminance(other);
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    private static double Luminance(string colour)
    {
        double part(int at)
        {
            double value = int.Parse(colour.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
            return value <= 0.03928 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
        }
        return (0.2126 * part(1)) + (0.7152 * part(3)) + (0.0722 * part(5));
    }

    [GeneratedRegex(@"\d (?:[fpnµmkMGT]?(?:Hz|s|V|A|Ω|pts|Sa/s)|dB|%)")]
    private static partial Regex DigitWithUnit();

    [GeneratedRegex(@"[ML](-?[\d.]+) (-?[\d.]+)")]
    private static partial Regex Pair();
}
