using System;
using System.Collections.Generic;

namespace Acquisition.Core.Responses;

/// <summary>
/// A function of time held as Chebyshev series on pieces, halved until each series has converged: smooth stretches take few pieces, edges many, and a value costs the
/// same however dear the function is. Where the function jumps a piece has to begin.
/// </summary>
internal sealed class PiecewisePolynomial
{
    internal const int Terms = 16;
    private const int MostHalvings = 48, MostPieces = 100_000;

    private static readonly double[] Cosines = MakeCosines();

    /// <summary>The nodes of a piece, of which -1 is its low end and 1 its high one: those of Chebyshev.</summary>
    internal static double[] Nodes { get; } = MakeNodes();

    private readonly double _tolerance;
    private readonly List<double> _starts = new();
    private readonly List<double> _coefficients = new();
    private double[]? _before;

    /// <param name="function">What to hold; asked inside the pieces only, never at their ends.</param>
    /// <param name="marks">Where it begins and ends, where it has corners or jumps, and where it may become lively after a calm, rising.</param>
    /// <param name="tolerance">How far the pieces may be from it.</param>
    internal PiecewisePolynomial(Func<double, double> function, IReadOnlyList<double> marks, double tolerance)
    {
        _tolerance = tolerance;
        for (int i = 1; i < marks.Count; i++)
        {
            if (marks[i] > marks[i - 1])
                Add(new FunctionStretch(function, marks[i - 1], marks[i]), new Limits(MostHalvings, MostPieces, double.PositiveInfinity, false));
        }
        _starts.Add(marks[marks.Count - 1]);
    }

    /// <summary>Times so close that a cubic between two of them shows what happens: sixteen to a piece, and the end.</summary>
    internal IEnumerable<double> Times()
    {
        for (int piece = 0; piece < Pieces; piece++)
        {
            for (int i = 0; i < Terms; i++)
                yield return _starts[piece] + (_starts[piece + 1] - _starts[piece]) * i / Terms;
        }
        yield return Last;
    }

    private PiecewisePolynomial(double tolerance) => _tolerance = tolerance;

    /// <summary>A stretch, or null where it takes more halvings or pieces than allowed.</summary>
    /// <param name="stretch">What to hold.</param>
    /// <param name="tolerance">How far the pieces may be from it.</param>
    /// <param name="halvings">So many at most: where few are allowed, a stretch that is too lively is found out after few values.</param>
    /// <param name="most">So many pieces at most.</param>
    /// <param name="longest">So long may a piece be: something short in the middle of a calm might pass between its nodes.</param>
    internal static PiecewisePolynomial? Of(Stretch stretch, double tolerance, int halvings, int most, double longest)
    {
        var pieces = new PiecewisePolynomial(tolerance);
        if (!pieces.Add(stretch, new Limits(halvings, most, longest, true)))
            return null;
        pieces._starts.Add(stretch.High);
        return pieces;
    }

    internal int Pieces => _starts.Count - 1;

    /// <summary>Where it begins.</summary>
    internal double First => _starts[0];

    /// <summary>Where it ends.</summary>
    internal double Last => _starts[_starts.Count - 1];

    /// <summary>The value at a time from the first mark to the last.</summary>
    internal double Value(double time)
    {
        int piece = PieceAt(time);
        return Clenshaw(piece, At(piece, time));
    }

    /// <summary>The value, and the slope of the piece: less exact than the value by about a hundred over the length of the piece.</summary>
    internal double Value(double time, out double slope)
    {
        int piece = PieceAt(time), from = piece * Terms;
        double width = _starts[piece + 1] - _starts[piece], x = (2 * time - _starts[piece] - _starts[piece + 1]) / width;
        // Clenshaw's recurrence and its derivative.
        double next = 0, last = 0, nextRate = 0, lastRate = 0;
        for (int k = Terms - 1; k > 0; k--)
        {
            (nextRate, lastRate) = (2 * next + 2 * x * nextRate - lastRate, nextRate);
            (next, last) = (_coefficients[from + k] + 2 * x * next - last, next);
        }
        slope = 2 / width * (next + x * nextRate - lastRate);
        return _coefficients[from] + x * next - last;
    }

    /// <summary>The integral between two times from the first mark to the last: of the parts of two pieces and all pieces between them.</summary>
    internal double Between(double low, double high)
    {
        int first = PieceAt(low), last = PieceAt(high);
        if (first == last)
            return Primitive(first, At(first, high)) - Primitive(first, At(first, low));
        double[] before = _before ??= Cumulate();
        return before[first + 1] - before[first] - Primitive(first, At(first, low)) + (before[last] - before[first + 1]) + Primitive(last, At(last, high));
    }

    /// <summary>The integral up to each piece.</summary>
    private double[] Cumulate()
    {
        var before = new double[_starts.Count];
        for (int piece = 0; piece < Pieces; piece++)
            before[piece + 1] = before[piece] + Primitive(piece, 1);
        return before;
    }

    private double At(int piece, double time) => (2 * time - _starts[piece] - _starts[piece + 1]) / (_starts[piece + 1] - _starts[piece]);

    /// <summary>The integral over a piece from its low end: that of T(k) is T(k + 1)/(2 (k + 1)) - T(k - 1)/(2 (k - 1)) (NIST DLMF 18.17, from memory).</summary>
    private double Primitive(int piece, double x)
    {
        int from = piece * Terms;
        // The coefficients of the primitive from those of the series, the highest first: Clenshaw's recurrence runs down through them, at x and at -1.
        double next = 0, last = 0, atLow = 0;
        for (int k = Terms; k > 0; k--)
        {
            double below = k == 1 ? 2 * _coefficients[from] : _coefficients[from + k - 1], above = k + 1 < Terms ? _coefficients[from + k + 1] : 0, own = (below - above) / (2 * k);
            (next, last) = (own + 2 * x * next - last, next);
            atLow += k % 2 == 0 ? own : -own;
        }
        return 0.5 * (_starts[piece + 1] - _starts[piece]) * (x * next - last - atLow);
    }

    private int PieceAt(double time)
    {
        int piece = _starts.BinarySearch(time);
        if (piece < 0)
            piece = ~piece - 1;
        return Math.Max(0, Math.Min(piece, Pieces - 1));
    }

    /// <summary>The largest and the smallest value: 33 points to a piece, then golden section about the best of them.</summary>
    internal (double Highest, double Lowest) Extremes() => (Largest(1), -Largest(-1));

    /// <summary>The integral of a function of the value over all pieces, by 16-point Gauss: exact for the square.</summary>
    internal double Integral(Func<double, double> ofValue)
    {
        double sum = 0;
        for (int piece = 0; piece < Pieces; piece++)
        {
            double half = 0.5 * (_starts[piece + 1] - _starts[piece]);
            for (int i = 0; i < GaussLegendre.Nodes.Length; i++)
                sum += half * GaussLegendre.Weights[i] * ofValue(Clenshaw(piece, GaussLegendre.Nodes[i]));
        }
        return sum;
    }

    private double Largest(double sign)
    {
        const int points = 32;
        double best = double.NegativeInfinity, place = 0;
        int at = 0;
        for (int piece = 0; piece < Pieces; piece++)
        {
            for (int i = 0; i <= points; i++)
            {
                double x = -1 + 2.0 * i / points, value = sign * Clenshaw(piece, x);
                if (value > best)
                    (best, place, at) = (value, x, piece);
            }
        }
        double low = Math.Max(-1, place - 2.0 / points), high = Math.Min(1, place + 2.0 / points), golden = 0.5 * (Math.Sqrt(5) - 1);
        for (int i = 0; i < 40; i++)
        {
            double left = high - golden * (high - low), right = low + golden * (high - low);
            if (sign * Clenshaw(at, left) > sign * Clenshaw(at, right))
                high = right;
            else
                low = left;
        }
        return Math.Max(best, sign * Clenshaw(at, 0.5 * (low + high)));
    }

    private double Clenshaw(int piece, double x)
    {
        int from = piece * Terms;
        double next = 0, last = 0;
        for (int k = Terms - 1; k > 0; k--)
            (next, last) = (_coefficients[from + k] + 2 * x * next - last, next);
        return _coefficients[from] + x * next - last;
    }

    /// <summary>Adds the pieces of a stretch; false where they had to converge within the halvings and do not.</summary>
    private bool Add(Stretch stretch, Limits limits, int halved = 0)
    {
        if (stretch.High - stretch.Low > limits.Longest)
            return AddHalves(stretch, limits, halved);
        var values = new double[Terms];
        stretch.Fill(values);
        double lowest = double.PositiveInfinity, highest = double.NegativeInfinity;
        foreach (double value in values)
        {
            lowest = Math.Min(lowest, value);
            highest = Math.Max(highest, value);
        }
        var series = new double[Terms];
        for (int k = 0; k < Terms; k++)
        {
            for (int i = 0; i < Terms; i++)
                series[k] += Cosines[k * Terms + i] * values[i];
        }
        double rest = Math.Abs(series[Terms - 1]) + Math.Abs(series[Terms - 2]) + Math.Abs(series[Terms - 3]);
        // The time itself is known to rounding only: on a steep stretch far from zero the value is no better than that.
        double tolerance = Math.Max(_tolerance, 1e-15 * Math.Max(Math.Abs(stretch.Low), Math.Abs(stretch.High)) * (highest - lowest) / (stretch.High - stretch.Low));
        bool converged = rest <= tolerance || highest - lowest <= tolerance;
        if (!converged && halved < limits.Halvings && Pieces < limits.Pieces)
            return AddHalves(stretch, limits, halved);
        if (!converged && limits.AreStrict)
            return false;
        _starts.Add(stretch.Low);
        _coefficients.AddRange(series);
        return true;
    }

    private bool AddHalves(Stretch stretch, Limits limits, int halved)
    {
        (Stretch early, Stretch late) = stretch.Halve();
        return Add(early, limits, halved + 1) && Add(late, limits, halved + 1);
    }

    private static double[] MakeNodes()
    {
        var nodes = new double[Terms];
        for (int i = 0; i < Terms; i++)
            nodes[i] = Math.Cos(Math.PI * (i + 0.5) / Terms);
        return nodes;
    }

    /// <summary>From values at the nodes to the coefficients.</summary>
    private static double[] MakeCosines()
    {
        var cosines = new double[Terms * Terms];
        for (int k = 0; k < Terms; k++)
        {
            for (int i = 0; i < Terms; i++)
                cosines[k * Terms + i] = (k == 0 ? 1.0 : 2.0) / Terms * Math.Cos(Math.PI * k * (i + 0.5) / Terms);
        }
        return cosines;
    }

    /// <summary>How far halving goes, and whether a piece that has not converged by then is as good as none.</summary>
    private sealed class Limits
    {
        internal Limits(int halvings, int pieces, double longest, bool areStrict)
        {
            Halvings = halvings;
            Pieces = pieces;
            Longest = longest;
            AreStrict = areStrict;
        }

        internal int Halvings { get; }

        internal int Pieces { get; }

        internal double Longest { get; }

        internal bool AreStrict { get; }
    }
}
