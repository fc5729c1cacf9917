using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Reports;

/// <summary>A picture of lines, steps, dots, stems and bands over two axes, written as SVG.</summary>
/// <remarks>
/// Immutable: each <c>With…</c> returns a new plot. The same plot gives the same bytes on every culture and runtime; room for texts is reckoned from a table of widths,
/// since fonts differ from reader to reader. Traces differ by dash pattern or mark as well as by colour; names stand outside of the drawing area; the picture follows
/// a dark screen; <see cref="Description"/> says in words what is seen.
/// </remarks>
public sealed class Plot
{
    private readonly PlotContent _content;

    private Plot(string title, Axis x, Axis y, PlotContent content)
    {
        Title = title ?? throw new ArgumentNullException(nameof(title));
        X = x ?? throw new ArgumentNullException(nameof(x));
        Y = y ?? throw new ArgumentNullException(nameof(y));
        _content = content;
    }

    /// <summary>An empty plot.</summary>
    /// <param name="title">What the picture shows.</param>
    /// <param name="x">The horizontal axis.</param>
    /// <param name="y">The vertical axis.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public Plot(string title, Axis x, Axis y)
        : this(title, x, y, new PlotContent())
    {
    }

    /// <summary>What the picture shows.</summary>
    public string Title { get; }

    /// <summary>The horizontal axis.</summary>
    public Axis X { get; }

    /// <summary>The vertical axis.</summary>
    public Axis Y { get; }

    /// <summary>What is seen, in words and numbers, for those who do not see it; part of the SVG, and fit as the alternative text of a link to it.</summary>
    public string Description => PlotWords.Describe(this);

    internal PlotContent Content => _content;

    /// <summary>Adds points joined by straight lines. Of very many points each column of the picture keeps its extremes.</summary>
    /// <param name="name">The name in the legend; empty for none.</param>
    /// <param name="xInAxisUnits">The horizontal values, in the unit of the axis.</param>
    /// <param name="yInAxisUnits">The vertical values, as many.</param>
    /// <exception cref="ArgumentException">The two differ in length, or a value cannot be drawn; the message names its index.</exception>
    public Plot WithLine(string name, IReadOnlyList<double> xInAxisUnits, IReadOnlyList<double> yInAxisUnits) => With(name, TraceStyle.Line, xInAxisUnits, yInAxisUnits);

    /// <summary>Adds points drawn as dots: samples as they were taken.</summary>
    /// <inheritdoc cref="WithLine"/>
    public Plot WithDots(string name, IReadOnlyList<double> xInAxisUnits, IReadOnlyList<double> yInAxisUnits) => With(name, TraceStyle.Dots, xInAxisUnits, yInAxisUnits);

    /// <summary>Adds points held until the next one.</summary>
    /// <inheritdoc cref="WithLine"/>
    public Plot WithSteps(string name, IReadOnlyList<double> xInAxisUnits, IReadOnlyList<double> yInAxisUnits) => With(name, TraceStyle.Steps, xInAxisUnits, yInAxisUnits);

    /// <summary>Adds points on stems from the foot of the picture: the lines of a spectrum.</summary>
    /// <inheritdoc cref="WithLine"/>
    public Plot WithStems(string name, IReadOnlyList<double> xInAxisUnits, IReadOnlyList<double> yInAxisUnits) => With(name, TraceStyle.Stems, xInAxisUnits, yInAxisUnits);

    /// <summary>Adds the area between two values.</summary>
    /// <param name="name">The name in the legend; empty for none.</param>
    /// <param name="xInAxisUnits">The horizontal values, in the unit of the axis.</param>
    /// <param name="lowerInAxisUnits">The lower values, as many.</param>
    /// <param name="upperInAxisUnits">The upper values, as many.</param>
    /// <exception cref="ArgumentException">They differ in length, or a value cannot be drawn; the message names its index.</exception>
    public Plot WithBand(string name, IReadOnlyList<double> xInAxisUnits, IReadOnlyList<double> lowerInAxisUnits, IReadOnlyList<double> upperInAxisUnits) =>
        With(name, TraceStyle.Band, xInAxisUnits, lowerInAxisUnits, upperInAxisUnits);

    /// <summary>Adds dots with an upright from one value to another through each: points with their uncertainty.</summary>
    /// <inheritdoc cref="WithBand"/>
    public Plot WithIntervals(string name, IReadOnlyList<double> xInAxisUnits, IReadOnlyList<double> lowerInAxisUnits, IReadOnlyList<double> upperInAxisUnits) =>
        With(name, TraceStyle.Intervals, xInAxisUnits, lowerInAxisUnits, upperInAxisUnits);

    /// <summary>Adds a horizontal line across the picture, with its name right of the frame.</summary>
    /// <param name="name">What the line marks.</param>
    /// <param name="yInAxisUnits">Where it lies.</param>
    /// <exception cref="ArgumentException">The value cannot be drawn.</exception>
    public Plot WithHorizontalLimit(string name, double yInAxisUnits)
    {
        if (name is null) throw new ArgumentNullException(nameof(name));
        Check(Y, new[] { yInAxisUnits }, nameof(yInAxisUnits));
        return With(_content with { Horizontal = _content.Horizontal.Append(new PlotLimit(name, yInAxisUnits, double.NaN, double.NaN)).ToArray() });
    }

    /// <summary>Adds a vertical line across the picture, with its name above the frame.</summary>
    /// <param name="name">What the line marks.</param>
    /// <param name="xInAxisUnits">Where it lies.</param>
    /// <exception cref="ArgumentException">The value cannot be drawn.</exception>
    public Plot WithVerticalLimit(string name, double xInAxisUnits)
    {
        if (name is null) throw new ArgumentNullException(nameof(name));
        Check(X, new[] { xInAxisUnits }, nameof(xInAxisUnits));
        return With(_content with { Vertical = _content.Vertical.Append(new PlotLimit(name, xInAxisUnits, double.NaN, double.NaN)).ToArray() });
    }

    /// <summary>The same plot in another size. It grows higher where its texts or rows need more.</summary>
    /// <param name="width">The width in units of the SVG, 320 to 4000; texts are 13 units high.</param>
    /// <param name="height">The height, 200 to 4000.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length is outside its range.</exception>
    public Plot WithSize(int width, int height)
    {
        PlotOptions.CheckSize(width, height);
        return With(_content with { Width = width, Height = height });
    }

    /// <summary>The same plot with a sentence before its general description.</summary>
    /// <param name="lead">What the picture shows, in words and numbers.</param>
    /// <exception cref="ArgumentNullException"><paramref name="lead"/> is null.</exception>
    public Plot WithDescription(string lead) => With(_content with { Lead = lead ?? throw new ArgumentNullException(nameof(lead)) });

    /// <summary>The picture as an SVG document, without identifiers, scripts and external resources: several of them may stand in one HTML page.</summary>
    public string ToSvg() => SvgWriter.Write(this);

    /// <summary>Adds a trace with a look of its own; without one it takes the next.</summary>
    internal Plot With(string name, TraceStyle style, IReadOnlyList<double> x, IReadOnlyList<double> y, IReadOnlyList<double>? other = null, int look = -1)
    {
        if (name is null) throw new ArgumentNullException(nameof(name));
        Check(X, x, nameof(x));
        Check(Y, y, nameof(y));
        if (x.Count != y.Count) throw new ArgumentException(FormattableString.Invariant($"the trace '{name}' must have as many vertical as horizontal values; was {y.Count} and {x.Count}"), nameof(y));
        if (other is not null)
        {
            Check(style is TraceStyle.Pieces or TraceStyle.Columns ? X : Y, other, nameof(other));
            if (other.Count != x.Count) throw new ArgumentException(FormattableString.Invariant($"the trace '{name}' must have two ends for each value; had {other.Count} for {x.Count}"), nameof(other));
        }
        int next = _content.Traces.Count == 0 ? 0 : _content.Traces.Max(trace => trace.Look) + 1;
        return With(_content with { Traces = _content.Traces.Append(new Trace(name, style, look < 0 ? next : look, x.ToArray(), y.ToArray(), other?.ToArray())).ToArray() });
    }

    internal Plot WithBars(IReadOnlyList<Bar> bars) => With(_content with { Bars = bars });

    internal Plot WithVerticalStrip(string name, double x, double from, double to)
    {
        Check(X, new[] { x, from, to }, nameof(x));
        return With(_content with { Vertical = _content.Vertical.Append(new PlotLimit(name, x, from, to)).ToArray() });
    }

    internal Plot Above(Plot below) => With(_content with { Below = below });

    internal Plot With(PlotOptions options) => With(_content with { Width = options.Width, Height = options.Height });

    private Plot With(PlotContent content) => new(Title, X, Y, content);

    private static void Check(Axis axis, IReadOnlyList<double> values, string argument)
    {
        if (values is null) throw new ArgumentNullException(argument);
        for (int i = 0; i < values.Count; i++)
        {
            if (!axis.CanPlace(values[i]))
            {
                throw new ArgumentException(
                    FormattableString.Invariant($"a value on the axis '{axis.Label}' must be finite{(axis.IsLogarithmic ? " and above 0" : "")}; was {values[i]} at index {i}"), argument);
            }
        }
    }
}
