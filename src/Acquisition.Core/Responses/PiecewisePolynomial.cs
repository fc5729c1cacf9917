using System;
using System.Collections.Generic;

namespace Acquisition.Core.Responses;

/// <summary>
/// A function of time held as Chebyshev series on pieces, halved until each series has converged: smooth stretches take few pieces, edges many, and a value costs the
/// same however dear the function is. Where the function jumps a piece has to begin.
/// </summary>
internal sealed class PiecewisePolynomial
{
    private const int Terms = 16, MostHalvings = 48, MostPieces = 100_000;

    private static readonly double[] Nodes = MakeNodes();
    private static readonly double[] Cosines = MakeCosines();

    private readonly double _tolerance;
    private readonly List<double> _starts = new();
    private readonly List<double> _coefficients = new();

    /// <param name="function">What to hold; asked inside the pieces only, never at their ends.</param>
    /// <param name="marks">Where it begins and ends, where it has corners or jumps, and where it may become lively after a calm, rising.</param>
    /// <param name="tolerance">How far the pieces may be from it.</param>
    internal PiecewisePolynomial(Func<double, double> function, IReadOnlyList<double> marks, double tolerance)
    {
        _tolerance = tolerance;
        for (int i = 1; i < marks.Count; i++)
        {
            if (marks[i] > marks[i - 1])
                Add(function, marks[i - 1], marks[i], MostHalvings, false);
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

    /// <summary>A smooth stretch, or null where it takes more halvings than allowed: a lively one is found out after few values.</summary>
    internal static PiecewisePolynomial? OfSmooth(Func<double, double> function, double low, double high, double tolerance, int halvings)
    {
        var pieces = new PiecewisePolynomial(tolerance);
        if (!pieces.Add(function, low, high, halvings, true))
            return null;
        pieces._starts.Add(high);
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
        return Clenshaw(piece, (2 * time - _starts[piece] - _starts[piece + 1]) / (_starts[piece + 1] - _starts[piece]));
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

    /// <summary>Adds pieces from one time to another; false where they had to be smooth within the halvings and are not.</summary>
    private bool Add(Func<double, double> function, double low, double high, int halvings, bool strictly)
    {
        double middle = 0.5 * (low + high), half = 0.5 * (high - low);
        var values = new double[Terms];
        double lowest = double.PositiveInfinity, highest = double.NegativeInfinity;
        for (int i = 0; i < Terms; i++)
        {
            values[i] = function(middle + half * Nodes[i]);
            lowest = Math.Min(lowest, values[i]);
            highest = Math.Max(highest, values[i]);
        }
        var series = new double[Terms];
        for (int k = 0; k < Terms; k++)
        {
            for (int i = 0; i < Terms; i++)
                series[k] += Cosines[k * Terms + i] * values[i];
        }
        double rest = Math.Abs(series[Terms - 1]) + Math.Abs(series[Terms - 2]) + Math.Abs(series[Terms - 3]);
        // The time itself is known to rounding only: on a steep stretch far from zero the value is no better than that.
        double tolerance = Math.Max(_tolerance, 1e-15 * Math.Max(Math.Abs(low), Math.Abs(high)) * (highest - lowest) / (high - low));
        bool converged = rest <= tolerance || highest - lowest <= tolerance;
        if (!converged && halvings > 0 && Pieces < MostPieces)
            return Add(function, low, middle, halvings - 1, strictly) && Add(function, middle, high, halvings - 1, strictly);
        if (!converged && strictly)
            return false;
        _starts.Add(low);
        _coefficients.AddRange(series);
        return true;
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
}
