using System;
using System.Collections.Generic;

namespace Acquisition.Core.Responses;

/// <summary>
/// A step response that is dear to compute, held where it is smooth: time is cut into stretches that grow away from its beginning, and a stretch becomes a few polynomials
/// when it is first asked for. Where it is too lively for that (the far tail behind an abrupt edge of the gain, which rings on), there is no table.
/// </summary>
internal sealed class StepTable
{
    private const int MostHalvings = 10;

    /// <summary>Ends of the stretches, in units: octaves as long as it may ring, wider ones where only a slow tail can be smooth.</summary>
    private static readonly double[] Ends = { 1, 2, 4, 8, 16, 32, 64, 128, 256, 4096, 65536, 1048576, 16777216, 268435456 };

    private readonly Func<double, double> _function;
    private readonly double _origin, _unit, _tolerance;

    // Filled by whichever thread comes first; another would put the same there.
    private readonly Stretch?[] _before = new Stretch?[Ends.Length], _after = new Stretch?[Ends.Length];

    /// <param name="function">Value at a time.</param>
    /// <param name="origin">About when it begins, s.</param>
    /// <param name="unit">About how long it takes, s.</param>
    /// <param name="tolerance">How far the table may be from it.</param>
    internal StepTable(Func<double, double> function, double origin, double unit, double tolerance)
    {
        _function = function;
        _origin = origin;
        _unit = unit;
        _tolerance = tolerance;
    }

    /// <summary>Value and slope at a time; false where they are not in the table.</summary>
    internal bool TryValue(double seconds, out double value, out double slope)
    {
        value = slope = 0;
        double units = Math.Abs(seconds - _origin) / _unit;
        int number = 0;
        while (number < Ends.Length && units >= Ends[number])
            number++;
        if (number == Ends.Length)
            return false;
        Stretch?[] side = seconds < _origin ? _before : _after;
        if ((side[number] ??= Make(number, seconds < _origin ? -_unit : _unit)).Pieces is not { } pieces)
            return false;
        value = pieces.Value(seconds, out slope);
        return true;
    }

    /// <summary>The stretches between two times in units, in order of time; without pieces where there is no table.</summary>
    internal IEnumerable<(double From, double To, PiecewisePolynomial? Pieces)> Stretches(double from, double to)
    {
        for (int number = Ends.Length - 1; number >= 0; number--)
        {
            if (Ends[number] <= -from)
                yield return (-Ends[number], number == 0 ? 0 : -Ends[number - 1], (_before[number] ??= Make(number, -_unit)).Pieces);
        }
        for (int number = 0; number < Ends.Length && (number == 0 || Ends[number - 1] < to); number++)
            yield return (number == 0 ? 0 : Ends[number - 1], Ends[number], (_after[number] ??= Make(number, _unit)).Pieces);
    }

    private Stretch Make(int number, double unit)
    {
        double near = _origin + (number == 0 ? 0 : Ends[number - 1]) * unit, far = _origin + Ends[number] * unit;
        return new Stretch(PiecewisePolynomial.OfSmooth(_function, Math.Min(near, far), Math.Max(near, far), _tolerance, MostHalvings));
    }

    private sealed class Stretch
    {
        internal Stretch(PiecewisePolynomial? pieces) => Pieces = pieces;

        /// <summary>Null where it is not smooth enough.</summary>
        internal PiecewisePolynomial? Pieces { get; }
    }
}
