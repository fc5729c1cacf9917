using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core;

/// <summary>What one row of an attribution rests on.</summary>
public enum AttributionEvidence
{
    /// <summary>A sweep of the elements together.</summary>
    Measured,

    /// <summary>An element's response known from elsewhere: a power sensor's reading, a calibration.</summary>
    Known,

    /// <summary>An assumption: it decides what cannot be measured, and it is named with the result.</summary>
    Assumed,
}

/// <summary>One row of an attribution: the elements in the path, and what is known of their sum.</summary>
public sealed class AttributionRow
{
    private readonly double _from;
    private readonly double _to;

    internal AttributionRow(AttributionEvidence evidence, string[] elements, double[] coefficients, Sweep sweep, string text, double from, double to)
    {
        Evidence = evidence;
        Elements = elements.Frozen();
        Coefficients = coefficients;
        Sweep = sweep;
        Text = text;
        _from = from;
        _to = to;
    }

    /// <summary>What the row rests on.</summary>
    public AttributionEvidence Evidence { get; }

    /// <summary>The elements in the path.</summary>
    public IReadOnlyList<string> Elements { get; }

    /// <summary>The levels of the path.</summary>
    public Sweep Sweep { get; }

    internal double[] Coefficients { get; }

    internal string Text { get; }

    internal bool Covers(double hertz) => hertz >= _from && hertz <= _to;

    /// <summary>The elements and the evidence.</summary>
    public override string ToString() => Text;

    internal static string Join(IEnumerable<string> elements) => string.Join(" + ", elements.ToArray());
}
