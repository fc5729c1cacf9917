using System;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core;

/// <summary>Makes uncertain values, and the functions of them: <c>Uncertain.Of(100.MHz(), Spread.Bound(5.Percent()), "bandwidth")</c>.</summary>
public static partial class Uncertain
{
    /// <summary>A value with its stated spread: a new source of uncertainty, independent of all others.</summary>
    /// <param name="value">The estimate.</param>
    /// <param name="spread">How uncertain it is.</param>
    /// <param name="name">Its name in the budget; the value's kind where none is given.</param>
    /// <exception cref="ArgumentNullException"><paramref name="spread"/> is null.</exception>
    /// <exception cref="ArgumentException">The spread is stated in a unit that does not fit the value, or as a part of a value that is zero.</exception>
    public static Uncertain<T> Of<T>(T value, Spread spread, string? name = null)
        where T : struct, IQuantity
    {
        Quantity estimate = value.ToQuantity();
        return new Uncertain<T>(estimate.SiValue, LinearCombination.Of(SourceOf(estimate, spread, name)));
    }

    /// <summary>A value that is taken as exact.</summary>
    public static Uncertain<T> Exact<T>(T value)
        where T : struct, IQuantity =>
        new(value.ToQuantity().SiValue, LinearCombination.Exact);

    /// <summary>Two values of different kinds whose correlation coefficient is known (JCGM 100 5.2).</summary>
    /// <param name="first">The first value, as it was made: by <see cref="Of{T}"/> and not by arithmetic.</param>
    /// <param name="second">The second value, likewise.</param>
    /// <param name="correlationCoefficient">From -1 to 1.</param>
    /// <exception cref="ArgumentException">A value is a result of arithmetic, or already correlated, or the coefficient is not from -1 to 1.</exception>
    public static (Uncertain<T1> First, Uncertain<T2> Second) Correlated<T1, T2>(Uncertain<T1> first, Uncertain<T2> second, double correlationCoefficient)
        where T1 : struct, IQuantity
        where T2 : struct, IQuantity
    {
        UncertainQuantity[] made = Correlate(new UncertainQuantity[] { first, second }, new[,] { { 1, correlationCoefficient }, { correlationCoefficient, 1 } });
        return ((Uncertain<T1>)made[0], (Uncertain<T2>)made[1]);
    }

    /// <summary>Three values whose correlation coefficients are known.</summary>
    /// <exception cref="ArgumentException">A value is a result of arithmetic, or already correlated, or the coefficients contradict each other.</exception>
    public static (Uncertain<T1> First, Uncertain<T2> Second, Uncertain<T3> Third) Correlated<T1, T2, T3>(
        Uncertain<T1> first, Uncertain<T2> second, Uncertain<T3> third, double correlationOfFirstAndSecond, double correlationOfFirstAndThird, double correlationOfSecondAndThird)
        where T1 : struct, IQuantity
        where T2 : struct, IQuantity
        where T3 : struct, IQuantity
    {
        UncertainQuantity[] made = Correlate(
            new UncertainQuantity[] { first, second, third },
            new[,]
            {
                { 1, correlationOfFirstAndSecond, correlationOfFirstAndThird },
                { correlationOfFirstAndSecond, 1, correlationOfSecondAndThird },
                { correlationOfFirstAndThird, correlationOfSecondAndThird, 1 },
            });
        return ((Uncertain<T1>)made[0], (Uncertain<T2>)made[1], (Uncertain<T3>)made[2]);
    }

    /// <summary>Values of one kind whose correlation coefficients are known.</summary>
    /// <param name="values">The values, as they were made: not results of arithmetic.</param>
    /// <param name="correlationCoefficients">The symmetric matrix with 1 on its diagonal, positive semidefinite.</param>
    /// <exception cref="ArgumentException">A value is a result of arithmetic, or already correlated, or the matrix is not a correlation matrix.</exception>
    public static Uncertain<T>[] Correlated<T>(Uncertain<T>[] values, double[,] correlationCoefficients)
        where T : struct, IQuantity =>
        Array.ConvertAll(
            Correlate(
                Array.ConvertAll(values ?? throw new ArgumentNullException(nameof(values)), value => (UncertainQuantity)value),
                correlationCoefficients ?? throw new ArgumentNullException(nameof(correlationCoefficients))),
            made => (Uncertain<T>)made);

    internal static UncertaintySource SourceOf(Quantity estimate, Spread spread, string? name)
    {
        if (spread is null) throw new ArgumentNullException(nameof(spread));
        return new UncertaintySource(name ?? estimate.Kind.Name, estimate, spread.Around(estimate), spread.ToString());
    }

    private static UncertainQuantity[] Correlate(UncertainQuantity[] values, double[,] coefficients)
    {
        if (coefficients.GetLength(0) != values.Length) throw new ArgumentException($"{values.Length} values need a correlation matrix of as many rows; had {coefficients.GetLength(0)}");
        var set = new CorrelatedSet((double[,])coefficients.Clone());
        var made = new UncertainQuantity[values.Length];
        for (int i = 0; i < values.Length; i++)
        {
            UncertainQuantity value = values[i] ?? throw new ArgumentNullException(nameof(values));
            LinearCombination combination = value.Combination;
            if (combination.Sources.Length != 1 || combination.Sensitivities[0] != 1 || combination.Sources[0].Set is not null || combination.Sources[0].Estimate.SiValue != value.SiEstimate)
                throw new ArgumentException($"value {i + 1} ({value}) is a result, or already correlated; correlation coefficients are stated between values as they were made");
            UncertaintySource old = combination.Sources[0];
            var source = new UncertaintySource(old.Name, old.Estimate, old.Distribution, old.Statement);
            source.Join(set, i);
            made[i] = value.WithCombination(LinearCombination.Of(source));
        }
        return made;
    }
}
