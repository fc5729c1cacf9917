using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Reports;

/// <summary>The names of upright lines in rows above the frame, each beside the pole that rises from its line; texts never meet, and poles pass through none as far as there is a way.</summary>
internal sealed class Flags
{
    internal const double RowHeight = 17;

    private const double Gap = 10, Beside = 4;
    private const int MostRows = 8;

    private readonly double _left, _right;
    private readonly List<Flag> _flags = new();

    private Flags(double left, double right)
    {
        _left = left;
        _right = right;
    }

    /// <summary>How many rows the names take.</summary>
    internal int Rows { get; private set; }

    internal IReadOnlyList<Flag> All => _flags;

    /// <summary>How many names found no room.</summary>
    internal int Left { get; private set; }

    /// <param name="marks">Names and the places of their lines.</param>
    /// <param name="left">Where names may begin.</param>
    /// <param name="right">Where they must end.</param>
    internal static Flags Of(IEnumerable<KeyValuePair<string, double>> marks, double left, double right)
    {
        var flags = new Flags(left, right);
        // From the right, so that a name to the right of its pole meets only poles whose height is known; names stand in for equal places.
        foreach (KeyValuePair<string, double> mark in marks.OrderByDescending(mark => mark.Value).ThenBy(mark => mark.Key, StringComparer.Ordinal)) flags.Add(mark.Key, mark.Value);
        if (flags.Left > 0) flags.Rows++;
        return flags;
    }

    private void Add(string name, double pole)
    {
        string text = TextExtent.Fit(name, _right - _left, PlacedText.Small);
        double width = TextExtent.Width(text, PlacedText.Small);
        for (int row = 0; row < MostRows; row++)
        {
            foreach (double from in Places(pole, width))
            {
                if (!IsFree(row, from, from + width) || !PoleIsFree(row, pole)) continue;
                Put(new Flag(text, name, pole, from, width, row));
                return;
            }
        }
        if (Rows < MostRows) Put(new Flag(text, name, pole, Math.Max(_left, Math.Min(pole + Beside, _right - width)), width, Rows));
        else Left++;
    }

    private void Put(Flag flag)
    {
        _flags.Add(flag);
        Rows = Math.Max(Rows, flag.Row + 1);
    }

    private IEnumerable<double> Places(double pole, double width)
    {
        if (pole + Beside + width <= _right) yield return pole + Beside;
        if (pole - Beside - width >= _left) yield return pole - Beside - width;
    }

    private bool IsFree(int row, double from, double to) => _flags.All(other =>
        (other.Row != row || to + Gap <= other.From || from >= other.From + other.Width + Gap)
        && (other.Row < row || other.Pole <= from - 2 || other.Pole >= to + 2));

    private bool PoleIsFree(int row, double pole) => _flags.All(other => other.Row > row || pole <= other.From - 2 || pole >= other.From + other.Width + 2);

    internal sealed class Flag(string text, string whole, double pole, double from, double width, int row)
    {
        internal string Text { get; } = text;

        internal string Whole { get; } = whole;

        internal double Pole { get; } = pole;

        internal double From { get; } = from;

        internal double Width { get; } = width;

        internal int Row { get; } = row;
    }
}
