using System;
using System.Collections.Generic;

namespace Acquisition.Core;

/// <summary>Which sample rates an instrument offers below its highest one. Memory caps the rate, and what is offered is the next one at or below the cap (handbook 5.4).</summary>
/// <remarks>Immutable and thread-safe.</remarks>
public abstract class RateSteps
{
    private RateSteps()
    {
    }

    /// <summary>Any rate.</summary>
    public static RateSteps Continuous { get; } = new Ladder(Array.Empty<double>());

    /// <summary>1, 2 and 5 times powers of ten.</summary>
    public static RateSteps OneTwoFive { get; } = new Ladder(new double[] { 1, 2, 5 });

    /// <summary>1, 2.5 and 5 times powers of ten.</summary>
    public static RateSteps OneTwoAndAHalfFive { get; } = new Ladder(new[] { 1, 2.5, 5 });

    /// <summary>The highest rate over a whole number: every k-th sample kept.</summary>
    public static RateSteps WholeDivisors { get; } = new Divided(false);

    /// <summary>The highest rate over a power of two.</summary>
    public static RateSteps Halving { get; } = new Divided(true);

    /// <summary>These rates and no other.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="rates"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="rates"/> is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A rate is 0 Sa/s.</exception>
    public static RateSteps Listed(params SampleRate[] rates) => new List(rates);

    /// <summary>The highest rate offered at or below a wish.</summary>
    /// <param name="wish">The wish; its last bits are forgiven, so that a rate computed to be 1 GSa/s is 1 GSa/s.</param>
    /// <param name="highest">The highest rate of the instrument.</param>
    /// <returns>The rate, or null where the wish lies below all rates offered.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is 0 Sa/s.</exception>
    public SampleRate? AtOrBelow(SampleRate wish, SampleRate highest)
    {
        double top = Sampling.RequireRate(highest, nameof(highest)), rate = Sampling.RequireRate(wish, nameof(wish));
        if (rate >= top && this is not List)
            rate = top;
        double found = Find(rate, top);
        return found > 0 ? SampleRate.FromSi(Math.Min(found, top), nameof(wish)) : null;
    }

    /// <summary>How far below a step a wish may lie and still mean it.</summary>
    private const double Forgiven = 1e-12;

    private protected abstract double Find(double wish, double highest);

    private sealed class Ladder : RateSteps
    {
        private readonly double[] _rungs;

        internal Ladder(double[] rungs) => _rungs = rungs;

        private protected override double Find(double wish, double highest)
        {
            if (_rungs.Length == 0 || wish == highest)
                return wish;
            double decade = Math.Floor(Math.Log10(wish)), best = 0;
            for (double power = decade - 1; power <= decade + 1; power++)
            {
                // Exact powers of ten, by division below one.
                double scale = Math.Pow(10, Math.Abs(power));
                foreach (double rung in _rungs)
                {
                    double rate = power >= 0 ? rung * scale : rung / scale;
                    if (rate <= wish * (1 + Forgiven) && rate > best)
                        best = rate;
                }
            }
            return best;
        }
    }

    private sealed class Divided : RateSteps
    {
        private readonly bool _powersOfTwo;

        internal Divided(bool powersOfTwo) => _powersOfTwo = powersOfTwo;

        private protected override double Find(double wish, double highest)
        {
            double divisor = Math.Ceiling(highest / wish * (1 - Forgiven));
            if (_powersOfTwo)
            {
                double power = 1;
                while (power < divisor)
                    power *= 2;
                divisor = power;
            }
            return highest / Math.Max(1, divisor);
        }
    }

    private sealed class List : RateSteps
    {
        private readonly double[] _rates;

        internal List(SampleRate[] rates)
        {
            _ = rates ?? throw new ArgumentNullException(nameof(rates));
            if (rates.Length == 0)
                throw new ArgumentException("rates must hold at least one rate", nameof(rates));
            _rates = Array.ConvertAll(rates, rate => Sampling.RequireRate(rate, nameof(rates)));
            Array.Sort(_rates);
        }

        private protected override double Find(double wish, double highest)
        {
            double best = 0;
            foreach (double rate in _rates)
            {
                if (rate <= wish * (1 + Forgiven) && rate <= highest * (1 + Forgiven))
                    best = rate;
            }
            return best;
        }
    }
}
