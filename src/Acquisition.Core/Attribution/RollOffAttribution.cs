using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>
/// Which element of a chain takes how much of a roll-off: sweeps of several combinations of generator, probes, cables and front ends, taken apart by least squares in decibels
/// (handbook 10.3 to 10.6).
/// </summary>
/// <remarks>
/// Each sweep is first made relative to its own level at one reference frequency, so that absolute gains drop out. Every element in a path must be named in its row, adapters
/// and cables too, or count as part of another element. What the combinations cannot tell apart is said and never split by a convention. Immutable: each <c>With...</c> gives a new one.
/// </remarks>
public sealed class RollOffAttribution
{
    private readonly string[] _elements;
    private readonly AttributionRow[] _rows;
    private readonly double? _reference;
    private readonly double? _uncertainty;
    private readonly double _common;

    private RollOffAttribution(string[] elements, AttributionRow[] rows, double? reference, double? uncertainty, double common)
    {
        Elements = Array.AsReadOnly(elements);
        _elements = elements;
        _rows = rows;
        _reference = reference;
        _uncertainty = uncertainty;
        _common = common;
    }

    /// <summary>The elements, in the order of their naming.</summary>
    public IReadOnlyList<string> Elements { get; }

    /// <summary>What is known: sweeps, references and assumptions.</summary>
    public IReadOnlyList<AttributionRow> Rows => Array.AsReadOnly(_rows);

    /// <summary>Begins with the elements that occur.</summary>
    /// <param name="elements">Their names, each once; at least one, at most 40.</param>
    /// <exception cref="ArgumentNullException">The names, or one of them, are null.</exception>
    /// <exception cref="ArgumentException">There is no name, there are too many, or one occurs twice or is empty.</exception>
    public static RollOffAttribution OfElements(params string[] elements)
    {
        if (elements is null || elements.Contains(null))
            throw new ArgumentNullException(nameof(elements));
        if (elements.Length is 0 or > 40)
            throw new ArgumentException($"{nameof(elements)} must hold 1 to 40 names; has {elements.Length}", nameof(elements));
        foreach (IGrouping<string, string> name in elements.GroupBy(e => e, StringComparer.Ordinal))
        {
            if (name.Key.Trim().Length == 0 || name.Count() > 1)
                throw new ArgumentException($"{nameof(elements)} must be different names that are not empty; '{name.Key}' is not", nameof(elements));
        }
        return new RollOffAttribution((string[])elements.Clone(), [], null, null, 0);
    }

    /// <summary>Adds a sweep measured through some of the elements.</summary>
    /// <param name="sweep">The levels; their uncertainties weigh the row.</param>
    /// <param name="elements">The elements in the path; at least one, each once.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">An element was not named at the beginning, or occurs twice in the path.</exception>
    public RollOffAttribution WithSweep(Sweep sweep, params string[] elements)
    {
        double[] coefficients = Coefficients(elements);
        return With(new AttributionRow(
            AttributionEvidence.Measured, (string[])elements.Clone(), coefficients, sweep ?? throw new ArgumentNullException(nameof(sweep)), AttributionRow.Join(elements), sweep.HertzValues[0], sweep.HertzValues[sweep.Count - 1]));
    }

    /// <summary>Adds an element's own response known from elsewhere: a power sensor's reading of the generator, a calibrated front end. It counts where its sweep reaches.</summary>
    /// <param name="element">The element.</param>
    /// <param name="response">Its levels, with their uncertainties.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">The element was not named at the beginning, or the levels carry no uncertainty.</exception>
    public RollOffAttribution WithKnown(string element, Sweep response)
    {
        double[] coefficients = Coefficients([element]);
        if (response is null)
            throw new ArgumentNullException(nameof(response));
        if (!response.HasUncertainties)
            throw new ArgumentException($"what is known of {element} must carry its uncertainty; give each level one", nameof(response));
        return With(new AttributionRow(AttributionEvidence.Known, [element], coefficients, response, $"{element} alone, known", response.HertzValues[0], response.HertzValues[response.Count - 1]));
    }

    /// <summary>Adds an assumption: the element follows a response to within a standard uncertainty, up to a frequency. It is named with every result.</summary>
    /// <param name="element">The element.</param>
    /// <param name="response">The response it is taken to have; its bandwidth must not be what is sought.</param>
    /// <param name="uncertainty">The standard uncertainty of its level, above 0 dB (a bound of ±a is a/sqrt 3).</param>
    /// <param name="from">Where the assumption begins, above 0 Hz.</param>
    /// <param name="to">Where it ends.</param>
    /// <exception cref="ArgumentNullException">The element or the response is null.</exception>
    /// <exception cref="ArgumentException">The element was not named at the beginning.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The uncertainty or a frequency is not in its range.</exception>
    public RollOffAttribution WithAssumed(string element, Response response, DecibelRatio uncertainty, Frequency from, Frequency to)
    {
        if (response is null)
            throw new ArgumentNullException(nameof(response));
        return WithAssumption(element, f => 20 * Math.Log10(response.Magnitude(f)), uncertainty, from, to, response.Name);
    }

    /// <summary>Adds an assumption: the element is flat to within a standard uncertainty, up to a frequency. It is named with every result.</summary>
    /// <param name="element">The element.</param>
    /// <param name="uncertainty">The standard uncertainty of its flatness, above 0 dB (a bound of ±a is a/sqrt 3).</param>
    /// <param name="from">Where the assumption begins, above 0 Hz.</param>
    /// <param name="to">Where it ends.</param>
    /// <exception cref="ArgumentNullException">The element is null.</exception>
    /// <exception cref="ArgumentException">The element was not named at the beginning.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The uncertainty or a frequency is not in its range.</exception>
    public RollOffAttribution WithAssumedFlat(string element, DecibelRatio uncertainty, Frequency from, Frequency to) =>
        WithAssumption(element, _ => 0, uncertainty, from, to, "flat");

    /// <summary>The same with another reference frequency: where each row counts as 0 dB. It must lie in every sweep; the lowest common frequency is taken where none is chosen.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not above 0 Hz.</exception>
    public RollOffAttribution WithReference(Frequency frequency) =>
        new(_elements, _rows, Refuse.UnlessAboveZero(frequency.SiValue, Frequency.Kind, nameof(frequency)), _uncertainty, _common);

    /// <summary>The same with a standard uncertainty for all levels of sweeps that carry none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The uncertainty is not above 0 dB.</exception>
    public RollOffAttribution WithLevelUncertainty(DecibelRatio uncertainty) =>
        new(_elements, _rows, _reference, Refuse.UnlessAboveZero(uncertainty.Decibels, DecibelRatio.Kind, nameof(uncertainty)), _common);

    /// <summary>The same with a standard uncertainty that all measured sweeps share at each frequency (one generator setting, one reference receiver): it does not average.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The uncertainty is negative.</exception>
    public RollOffAttribution WithCommonUncertainty(DecibelRatio uncertainty) => new(
        _elements, _rows, _reference, _uncertainty,
        uncertainty.Decibels >= 0 ? uncertainty.Decibels : throw Refuse.OutOfRange(uncertainty.Decibels, DecibelRatio.Kind, nameof(uncertainty), "at least 0 dB"));

    /// <summary>Takes the roll-off apart at the frequencies of the first sweep that all sweeps cover.</summary>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="InvalidOperationException">There is no sweep, the sweeps have no frequency in common, or assumptions have nothing to be weighed against; the message says what to add.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public AttributionResult Solve(IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        LongCall? call = LongCall.Of(progress, cancellation);
        AttributionResult result = AttributionSolver.Solve(this, _rows, _reference, _uncertainty, _common, call);
        call?.Completed();
        return result;
    }

    private RollOffAttribution WithAssumption(string element, Func<double, double> level, DecibelRatio uncertainty, Frequency from, Frequency to, string shape)
    {
        double[] coefficients = Coefficients([element]);
        double u = Refuse.UnlessAboveZero(uncertainty.Decibels, DecibelRatio.Kind, nameof(uncertainty));
        double first = Refuse.UnlessAboveZero(from.SiValue, Frequency.Kind, nameof(from));
        if (!(to.SiValue > first))
            throw Refuse.OutOfRange(to.SiValue, Frequency.Kind, nameof(to), $"above {from}");
        // The sweep that stands for the assumption: dense enough that interpolation adds nothing a plot would show.
        double[] hertz = Enumerable.Range(0, 401).Select(i => i == 400 ? to.SiValue : first * Math.Pow(to.SiValue / first, i / 400.0)).ToArray();
        // The uncertainty is that of the level relative to the reference: all of it belongs to the point, none to the reference.
        var sweep = Sweep.OfDecibels(hertz, hertz.Select(level).ToArray(), hertz.Select(_ => u).ToArray());
        string text = $"{element} assumed {shape} within {FewDigits.Decibels(u)} (standard uncertainty) from {FewDigits.Hertz(first)} to {FewDigits.Hertz(to.SiValue)}";
        return With(new AttributionRow(AttributionEvidence.Assumed, [element], coefficients, sweep, text, first, to.SiValue));
    }

    private RollOffAttribution With(AttributionRow row) => new(_elements, _rows.Concat([row]).ToArray(), _reference, _uncertainty, _common);

    private double[] Coefficients(string[] elements)
    {
        if (elements is null)
            throw new ArgumentNullException(nameof(elements));
        if (elements.Length == 0)
            throw new ArgumentException("a path needs at least one element", nameof(elements));
        var coefficients = new double[Elements.Count];
        foreach (string element in elements)
        {
            int index = IndexOf(Elements, element ?? throw new ArgumentNullException(nameof(elements)), nameof(elements));
            if (coefficients[index] != 0)
                throw new ArgumentException($"{element} occurs twice in the path; give two of a kind two names", nameof(elements));
            coefficients[index] = 1;
        }
        return coefficients;
    }

    internal static int IndexOf(IReadOnlyList<string> elements, string element, string argument)
    {
        for (int i = 0; i < elements.Count; i++)
        {
            if (string.Equals(elements[i], element, StringComparison.Ordinal))
                return i;
        }
        throw new ArgumentException($"there is no element '{element}'; the elements are {string.Join(", ", elements.ToArray())}", argument);
    }

    /// <summary>Elements and rows in one line.</summary>
    public override string ToString() => $"{Elements.Count} elements, {_rows.Length} rows";
}
