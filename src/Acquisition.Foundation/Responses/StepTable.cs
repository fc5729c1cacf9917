using System;
using System.Collections.Generic;

namespace Acquisition.Core.Responses;

/// <summary>
/// A step response that is dear to compute, held as polynomials: time is cut into long stretches that grow away from its beginning, and a stretch becomes polynomials when it is first
/// asked for. Far out, where a tail that is still lively would take too many of them, there is no table.
/// </summary>
internal sealed class StepTable
{
    /// <summary>Halvings and polynomials of a stretch near the step, where there may be a jump; and of one far from it.</summary>
    private const int NearHalvings = 48, FarHalvings = 10, MostPieces = 20_000;

    /// <summary>So early does a step begin, in units.</summary>
    private const double Earliest = 8;

    /// <summary>Ends of the stretches before and after the origin, in units. What comes early may come very shortly before it: a long stretch would have no node there.</summary>
    private static readonly double[] Before = { 0.0625, 1, Earliest, 64, 256, 1024, 4096, 65536, 1048576, 16777216, 268435456 }, After = { 64, 256, 1024, 4096, 65536, 1048576, 16777216, 268435456 };

    private readonly Func<double, double, Stretch> _stretch;
    private readonly double _origin, _unit, _near, _tolerance;

    // Filled by whichever thread comes first; another would put the same there.
    private readonly Held?[] _before = new Held?[Before.Length], _after = new Held?[After.Length];

    /// <param name="stretch">The step between two times.</param>
    /// <param name="origin">About when it begins, s.</param>
    /// <param name="unit">About how long it takes, s.</param>
    /// <param name="near">Until when echoes may come, in units: up to there the table looks at every stretch of a unit.</param>
    /// <param name="tolerance">How far the table may be from the step.</param>
    internal StepTable(Func<double, double, Stretch> stretch, double origin, double unit, double near, double tolerance)
    {
        _stretch = stretch;
        _origin = origin;
        _unit = unit;
        _near = near;
        _tolerance = tolerance;
    }

    /// <summary>Value and slope at a time; false where they are not in the table.</summary>
    internal bool TryValue(double seconds, out double value, out double slope)
    {
        value = slope = 0;
        if (PiecesAt(seconds) is not { } pieces)
            return false;
        value = pieces.Value(seconds, out slope);
        return true;
    }

    /// <summary>The value at a time; false where it is not in the table.</summary>
    internal bool TryValue(double seconds, out double value)
    {
        value = 0;
        if (PiecesAt(seconds) is not { } pieces)
            return false;
        value = pieces.Value(seconds);
        return true;
    }

    /// <summary>The integral between two times; false where some of it is not in the table.</summary>
    internal bool TryIntegrate(double low, double high, out double integral)
    {
        integral = 0;
        for (double from = low; from < high;)
        {
            if (PiecesAt(from) is not { } pieces)
                return false;
            double to = Math.Min(high, pieces.Last);
            // A time at the very end of a stretch belongs to it: the next begins there.
            if (!(to > from) && PiecesAt(to = Math.Min(high, from + 1e-9 * _unit)) is null)
                return false;
            integral += pieces.Between(from, to);
            from = to;
        }
        return true;
    }

    private PiecewisePolynomial? PiecesAt(double seconds)
    {
        bool isBefore = seconds < _origin;
        double units = Math.Abs(seconds - _origin) / _unit;
        double[] ends = isBefore ? Before : After;
        int number = 0;
        while (number < ends.Length && units > ends[number])
            number++;
        return number < ends.Length ? PiecesOf(number, isBefore) : null;
    }

    /// <summary>The stretches from the one just before the origin to a time in units, in order of time; without pieces where there is no table.</summary>
    internal IEnumerable<(double From, double To, PiecewisePolynomial? Pieces)> StretchesUntil(double to)
    {
        for (int number = Array.IndexOf(Before, Earliest); number >= 0; number--)
            yield return (-Before[number], number == 0 ? 0 : -Before[number - 1], PiecesOf(number, isBefore: true));
        for (int number = 0; number < After.Length && (number == 0 || After[number - 1] < to); number++)
            yield return (number == 0 ? 0 : After[number - 1], After[number], PiecesOf(number, isBefore: false));
    }

    private PiecewisePolynomial? PiecesOf(int number, bool isBefore)
    {
        Held?[] all = isBefore ? _before : _after;
        return (all[number] ??= Make(number, isBefore)).Pieces;
    }

    private Held Make(int number, bool isBefore)
    {
        double[] ends = isBefore ? Before : After;
        double from = number == 0 ? 0 : ends[number - 1], to = ends[number], unit = isBefore ? -_unit : _unit;
        // What is too lively here does not calm down farther out.
        if (from > Earliest && PiecesOf(number - 1, isBefore) is null)
            return new Held(null);
        double near = _origin + from * unit, far = _origin + to * unit;
        Stretch stretch = _stretch(Math.Min(near, far), Math.Max(near, far));
        bool isNear = from < Math.Max(Earliest, _near);
        return new Held(PiecewisePolynomial.Of(stretch, _tolerance, isNear ? NearHalvings : FarHalvings, MostPieces, isNear && !isBefore ? 2 * _unit : double.PositiveInfinity));
    }

    private sealed class Held
    {
        internal Held(PiecewisePolynomial? pieces) => Pieces = pieces;

        /// <summary>Null where it is too lively.</summary>
        internal PiecewisePolynomial? Pieces { get; }
    }
}
