using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Reports;

/// <summary>A picture of lines, steps and dots over two axes, written as SVG.</summary>
/// <remarks>
/// Immutable: each <c>With…</c> returns a new plot. The same plot gives the same bytes on every culture and runtime; nothing in it depends on fonts, since no
/// text is measured. Traces differ by dash pattern as well as by colour, and the title is there for screen readers.
/// </remarks>
public sealed class Plot
{
    private readonly IReadOnlyList<Trace> _traces;
    private readonly IReadOnlyList<KeyValuePair<string, double>> _horizontal;
    private readonly IReadOnlyList<KeyValuePair<string, double>> _vertical;

    private Plot(
        string title, Axis x, Axis y, IReadOnlyList<Trace> traces, IReadOnlyList<KeyValuePair<string, double>> horizontal, IReadOnlyList<KeyValuePair<string, double>> vertical)
    {
        Title = title;
        X = x;
        Y = y;
        _traces = traces;
        _horizontal = horizontal;
        _vertical = vertical;
    }

    /// <summary>An empty plot.</summary>
    /// <param name="title">What the picture shows.</param>
    /// <param name="x">The horizontal axis.</param>
    /// <param name="y">The vertical axis.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public Plot(string title, Axis x, Axis y)
        : this(
            title ?? throw new ArgumentNullException(nameof(title)), x ?? throw new ArgumentNullException(nameof(x)), y ?? throw new ArgumentNullException(nameof(y)),
            Array.Empty<Trace>(), Array.Empty<KeyValuePair<string, double>>(), Array.Empty<KeyValuePair<string, double>>())
    {
    }

    /// <summary>What the picture shows.</summary>
    public string Title { get; }

    /// <summary>The horizontal axis.</summary>
    public Axis X { get; }

    /// <summary>The vertical axis.</summary>
    public Axis Y { get; }

    internal IReadOnlyList<Trace> Traces => _traces;

    internal IReadOnlyList<KeyValuePair<string, double>> HorizontalLimits => _horizontal;

    internal IReadOnlyList<KeyValuePair<string, double>> VerticalLimits => _vertical;

    /// <summary>Adds points joined by straight lines. Of very many points each column of the picture keeps its extremes.</summary>
    /// <param name="name">The name in the legend.</param>
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

    /// <summary>Adds a horizontal line across the picture, with its name at the right end.</summary>
    /// <param name="name">What the line marks.</param>
    /// <param name="yInAxisUnits">Where it lies.</param>
    /// <exception cref="ArgumentException">The value cannot be drawn.</exception>
    public Plot WithHorizontalLimit(string name, double yInAxisUnits)
    {
        Check(Y, new[] { yInAxisUnits }, nameof(yInAxisUnits));
        return new Plot(Title, X, Y, _traces, _horizontal.Append(Named(name, yInAxisUnits)).ToArray(), _vertical);
    }

    /// <summary>Adds a vertical line across the picture, with its name at the top.</summary>
    /// <param name="name">What the line marks.</param>
    /// <param name="xInAxisUnits">Where it lies.</param>
    /// <exception cref="ArgumentException">The value cannot be drawn.</exception>
    public Plot WithVerticalLimit(string name, double xInAxisUnits)
    {
        Check(X, new[] { xInAxisUnits }, nameof(xInAxisUnits));
        return new Plot(Title, X, Y, _traces, _horizontal, _vertical.Append(Named(name, xInAxisUnits)).ToArray());
    }

    /// <summary>The picture as an SVG document of 800 by 450 units, without scripts and external resources.</summary>
    public string ToSvg() => SvgWriter.Write(this);

    private Plot With(string name, TraceStyle style, IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        if (name is null) throw new ArgumentNullException(nameof(name));
        Check(X, x, nameof(x));
        Check(Y, y, nameof(y));
        if (x.Count != y.Count) throw new ArgumentException($"the trace '{name}' must have as many vertical as horizontal values; was {y.Count} and {x.Count}", nameof(y));
        return new Plot(Title, X, Y, _traces.Append(new Trace(name, style, x.ToArray(), y.ToArray())).ToArray(), _horizontal, _vertical);
    }

    private static KeyValuePair<string, double> Named(string name, double value) => new(name ?? throw new ArgumentNullException(nameof(name)), value);

    private static void Check(Axis axis, IReadOnlyList<double> values, string argument)
    {
        if (values is null) throw new ArgumentNullException(argument);
        for (int i = 0; i < values.Count; i++)
        {
            bool canBeDrawn = Math.Abs(values[i]) <= double.MaxValue && (!axis.IsLogarithmic || values[i] > 0);
            if (!canBeDrawn)
            {
                throw new ArgumentException(
                    FormattableString.Invariant($"a value on the axis '{axis.Label}' must be finite{(axis.IsLogarithmic ? " and above 0" : "")}; was {values[i]} at index {i}"), argument);
            }
        }
    }
}
