using System;

namespace Acquisition.Core.Records;

/// <summary>Sums over a window of samples, counted from a level, of which two that follow each other make those of both: a line is fitted to windows of any length without another look at the samples.</summary>
internal readonly struct WindowSums
{
    private readonly double _sum, _moment, _squares;

    private WindowSums(int length, double sum, double moment, double squares)
    {
        Length = length;
        _sum = sum;
        _moment = moment;
        _squares = squares;
    }

    internal int Length { get; }

    internal RunningMoments Moments => new(Length, _sum / Length, Math.Max(0, _squares - _sum * _sum / Length), 0, 0);

    /// <summary>The variance about the line that fits best, divisor n - 2; 0 where it is below the last digits of the sums.</summary>
    internal double ResidualVariance
    {
        get
        {
            double moment = _moment - 0.5 * (Length - 1) * _sum, n = Length;
            double squares = _squares - _sum * _sum / n - 12 * moment * moment / (n * (n * n - 1));
            return squares > 1e-13 * _squares ? squares / (n - 2) : 0;
        }
    }

    internal static WindowSums Of(double[] block, int from, int length, double level)
    {
        double sum = 0, moment = 0, squares = 0;
        for (int j = 0; j < length; j++)
        {
            double x = block[from + j] - level;
            sum += x;
            moment += j * x;
            squares += x * x;
        }
        return new WindowSums(length, sum, moment, squares);
    }

    /// <summary>The sums over this window and the one after it.</summary>
    internal WindowSums Followed(in WindowSums next) => new(Length + next.Length, _sum + next._sum, _moment + next._moment + Length * next._sum, _squares + next._squares);
}
