using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Xml.Linq;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Reports.Tests;

/// <summary>Texts never meet, none is cut off, none stands on the data: for the pictures of the library at several sizes, and for any data, names and marks.</summary>
public sealed class LayoutTests
{
    private static readonly (int Width, int Height)[] Sizes = [(800, 450), (480, 300), (320, 200), (1600, 700)];

    public static TheoryData<string> StandardNames() => new(StandardPlots.All.Keys);

    [Theory]
    [MemberData(nameof(StandardNames))]
    public void TextsOfAStandardPlot_AreApartAndInside_AtEverySize(string name)
    {
        foreach ((int width, int height) in Sizes) TextBoxes.AssertTheyAreApartAndInside(StandardPlots.All[name](PlotOptions.Default.WithSize(width, height)).ToSvg());
    }

    [Theory]
    [MemberData(nameof(StandardNames))]
    public void NoTextOfAStandardPlot_StandsOnItsData(string name)
    {
        XElement root = XDocument.Parse(StandardPlots.All[name](PlotOptions.Default).ToSvg()).Root!;
        // Headings of groups of bars take a row of their own, in which nothing is drawn.
        foreach (TextBoxes.Box text in TextBoxes.Of(root).Where(_ => !name.StartsWith("shortlist", StringComparison.Ordinal)))
            Assert.DoesNotContain(TextBoxes.Frames(root), frame => frame.Meets(text));
    }

    [Property(MaxTest = 100)]
    public Property TextsOfAnyPlot_AreApartAndInside() => Prop.ForAll(Arbitrary(), plot => TextBoxes.AssertTheyAreApartAndInside(plot.ToSvg()));

    [Property(MaxTest = 60)]
    public Property TextsOfAnyBars_AreApartAndInside()
    {
        Gen<Bar> bar = from name in Text() from note in Text() from value in Value() from fill in Gen.Elements(BarFill.Heading, BarFill.Solid, BarFill.Hollow, BarFill.Absent) from size in Gen.Choose(0, 3) select new Bar(name, value, note, fill, size, size * Math.Abs(value / 8));
        Gen<Plot> plots = from title in Text() from unit in Unit() from count in Gen.Choose(1, 12) from bars in bar.ListOf(count) from options in Size()
                          select new Plot(title, Axis.Linear("size", unit), Axis.Linear("", "")).With(options).WithBars(bars.ToArray());
        return Prop.ForAll(plots.ToArbitrary(), plot => TextBoxes.AssertTheyAreApartAndInside(plot.ToSvg()));
    }

    [Fact]
    public void WidthsReckonedWith_AreNoLessThanThoseOfTheFonts()
    {
        foreach ((int code, double width) in TextBoxes.Widths) Assert.True(TextExtent.Width(char.ConvertFromUtf32(code), 1000) >= width - 0.05, $"U+{code:X4} takes {width}, reckoned with {TextExtent.Width(char.ConvertFromUtf32(code), 1000)}");
    }

    [Fact]
    public void SixtyMarks_KeepTheirNamesApart_AndTellHowManyAreMissing()
    {
        var plot = new Plot("marks", Axis.Linear("time", "s"), Axis.Linear("voltage", "V")).WithLine("l", [0, 60], [0, 60]);
        for (int i = 0; i < 60; i++) plot = plot.WithVerticalLimit("upright mark " + i, i).WithHorizontalLimit("level mark " + i, i);
        string svg = plot.ToSvg();

        TextBoxes.AssertTheyAreApartAndInside(svg);
        string[] texts = TextBoxes.Of(XDocument.Parse(svg).Root!).Select(box => box.Text).ToArray();
        Assert.Equal(60, texts.Count(text => text.StartsWith("upright mark", StringComparison.Ordinal)) + More(texts.First(text => text.EndsWith("more", StringComparison.Ordinal))));
        Assert.Equal(60, texts.Count(text => text.StartsWith("level mark", StringComparison.Ordinal)) + More(texts.Last(text => text.EndsWith("more", StringComparison.Ordinal))));
    }

    [Fact]
    public void ShortenedText_KeepsTheWholeOneForThePointer()
    {
        string title = string.Join(" ", Enumerable.Repeat("a long title", 80));
        XElement[] lines = XDocument.Parse(new Plot(title, Axis.Linear("x", ""), Axis.Linear("y", "")).ToSvg()).Root!.Elements(TextBoxes.Svg + "text").Take(3).ToArray();

        Assert.Equal(title, lines[2].Element(TextBoxes.Svg + "title")!.Value);
        Assert.EndsWith("…", lines[2].Nodes().OfType<XText>().First().Value, StringComparison.Ordinal);
    }

    private static int More(string text) => int.Parse(text.AsSpan(1, text.Length - 6), CultureInfo.InvariantCulture);

    private static Arbitrary<Plot> Arbitrary()
    {
        Gen<Plot> gen = from title in Text()
                        from x in Axes()
                        from y in Axes()
                        from options in Size()
                        from traces in Traces()
                        from uprights in Marks()
                        from levels in Marks()
                        select Build(new Plot(title, x, y).With(options), traces, uprights, levels);
        return gen.ToArbitrary();
    }

    private static Plot Build(Plot plot, IEnumerable<(string Name, TraceStyle Style, double[] X, double[] Y)> traces, IEnumerable<(string Name, double Value)> uprights, IEnumerable<(string Name, double Value)> levels)
    {
        double placed(Axis axis, double value) => axis.IsLogarithmic ? Math.Max(Math.Abs(value), 1e-300) : value;
        foreach (var trace in traces)
        {
            double[] x = trace.X.Select(value => placed(plot.X, value)).ToArray(), y = trace.Y.Select(value => placed(plot.Y, value)).ToArray();
            plot = plot.With(trace.Name, trace.Style, x, y, trace.Style is TraceStyle.Pieces or TraceStyle.Columns ? x : y);
        }
        foreach (var mark in uprights) plot = plot.WithVerticalLimit(mark.Name, placed(plot.X, mark.Value));
        foreach (var mark in levels) plot = plot.WithHorizontalLimit(mark.Name, placed(plot.Y, mark.Value));
        return plot;
    }

    private static Gen<string> Text() => Gen.OneOf(
        ArbMap.Default.GeneratorFor<string>().Select(text => text ?? ""), Gen.Elements("bandwidth 198.5 MHz", "passive probe 10:1, 200 MHz, with a long ground lead", "", "WWWWWWWWWWWWWWWWWWWWWWWWWW", "Übertragungsmaß", "周波数特性", "tension & <courant>", "\ud83d\ude00 \udc00"));

    private static Gen<string> Unit() => Gen.Elements("", "V", "Hz", "dB", "%", "Sa/s", "V²");

    private static Gen<Axis> Axes() => from label in Text() from unit in Unit() from isLogarithmic in Gen.Elements(true, false) select isLogarithmic ? Axis.Logarithmic(label, unit) : Axis.Linear(label, unit);

    private static Gen<PlotOptions> Size() => from width in Gen.Choose(320, 1200) from height in Gen.Choose(200, 900) select PlotOptions.Default.WithSize(width, height);

    /// <summary>Values of one magnitude beside each other, and of every magnitude.</summary>
    private static Gen<double> Value() => Gen.OneOf(
        Gen.Choose(-1000, 1000).Select(i => i / 7.0), Gen.Choose(1, 30).Select(i => 1e9 + i), ArbMap.Default.GeneratorFor<NormalFloat>().Select(value => value.Get), Gen.Elements(0, double.MaxValue, -double.MaxValue, double.Epsilon, 1e-300, 123456.789));

    private static Gen<IEnumerable<(string, double)>> Marks() => from count in Gen.Choose(0, 9) from marks in (from name in Text() from value in Value() select (name, value)).ListOf(count) select marks.AsEnumerable();

    private static Gen<IEnumerable<(string, TraceStyle, double[], double[])>> Traces() =>
        from count in Gen.Choose(0, 8)
        from traces in (from name in Text() from style in Gen.Elements(Enum.GetValues<TraceStyle>()) from n in Gen.Choose(0, 6) from x in Value().ArrayOf(n) from y in Value().ArrayOf(n) select (name, style, x, y)).ListOf(count)
        select traces.AsEnumerable();
}
