using System;
using System.Collections.Generic;
using System.Threading;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core;

/// <summary>Propagates whole distributions through a model by random trials (JCGM 101): for models that are not nearly linear, and for inputs that are not normal.</summary>
/// <remarks>
/// The generator is xoshiro256++, seeded anew for each input and each block of 2500 trials; normal draws are made by the ziggurat method. So a seed gives the same draws on
/// any number of threads and on every platform; the last bits of a result are then those of the model's own arithmetic.
/// </remarks>
public static class MonteCarlo
{
    /// <summary>A model of a millisecond a trial is then cancelled within a tenth of a second.</summary>
    private const int TrialsPerCheck = 64;

    /// <summary>Evaluates a model over columns of draws: the fast way.</summary>
    /// <param name="inputs">The inputs; those that share a source are drawn together.</param>
    /// <param name="model">The model over columns.</param>
    /// <param name="resultKind">What the result is.</param>
    /// <param name="options">Trials, seed, coverage and threads; the usual ones where null.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1, on whichever thread does the work; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentNullException">An argument other than the options and the progress is null.</exception>
    /// <exception cref="InvalidOperationException">Some trials had no value.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static MonteCarloResult Run(IReadOnlyList<UncertainQuantity> inputs, MonteCarloKernel model, QuantityKind resultKind, MonteCarloOptions? options = null,
        IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        if (inputs is null) throw new ArgumentNullException(nameof(inputs));
        if (model is null) throw new ArgumentNullException(nameof(model));
        if (resultKind is null) throw new ArgumentNullException(nameof(resultKind));
        foreach (UncertainQuantity input in inputs)
        {
            if (input is null) throw new ArgumentNullException(nameof(inputs));
        }
        LongCall? call = LongCall.Of(progress, cancellation);
        MonteCarloResult result = new MonteCarloRun(inputs, model, options ?? MonteCarloOptions.Default, call).Evaluate(resultKind);
        call?.Completed();
        return result;
    }

    /// <summary>Evaluates a function of one uncertain value.</summary>
    public static MonteCarloResult Run<T, TResult>(Uncertain<T> x, Func<T, TResult> model, MonteCarloOptions? options = null,
        IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
        where T : struct, IQuantity
        where TResult : struct, IQuantity
    {
        if (model is null) throw new ArgumentNullException(nameof(model));
        Func<double, string, T> make = StrongType<T>.Nearest;
        return Run(
            new UncertainQuantity[] { x },
            (inputs, result, count) =>
            {
                for (int i = 0; i < count; i++)
                {
                    if (i % TrialsPerCheck == 0) cancellation.ThrowIfCancellationRequested();
                    result[i] = model(make(inputs[0][i], nameof(x))).ToQuantity().SiValue;
                }
            },
            StrongType<TResult>.Kind, options, progress, cancellation);
    }

    /// <summary>Evaluates a function of two uncertain values.</summary>
    public static MonteCarloResult Run<T1, T2, TResult>(Uncertain<T1> x1, Uncertain<T2> x2, Func<T1, T2, TResult> model, MonteCarloOptions? options = null,
        IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
        where T1 : struct, IQuantity
        where T2 : struct, IQuantity
        where TResult : struct, IQuantity
    {
        if (model is null) throw new ArgumentNullException(nameof(model));
        Func<double, string, T1> make1 = StrongType<T1>.Nearest;
        Func<double, string, T2> make2 = StrongType<T2>.Nearest;
        return Run(
            new UncertainQuantity[] { x1, x2 },
            (inputs, result, count) =>
            {
                for (int i = 0; i < count; i++)
                {
                    if (i % TrialsPerCheck == 0) cancellation.ThrowIfCancellationRequested();
                    result[i] = model(make1(inputs[0][i], nameof(x1)), make2(inputs[1][i], nameof(x2))).ToQuantity().SiValue;
                }
            },
            StrongType<TResult>.Kind, options, progress, cancellation);
    }

    /// <summary>Evaluates a function of three uncertain values.</summary>
    public static MonteCarloResult Run<T1, T2, T3, TResult>(
        Uncertain<T1> x1, Uncertain<T2> x2, Uncertain<T3> x3, Func<T1, T2, T3, TResult> model, MonteCarloOptions? options = null,
        IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
        where T1 : struct, IQuantity
        where T2 : struct, IQuantity
        where T3 : struct, IQuantity
        where TResult : struct, IQuantity
    {
        if (model is null) throw new ArgumentNullException(nameof(model));
        Func<double, string, T1> make1 = StrongType<T1>.Nearest;
        Func<double, string, T2> make2 = StrongType<T2>.Nearest;
        Func<double, string, T3> make3 = StrongType<T3>.Nearest;
        return Run(
            new UncertainQuantity[] { x1, x2, x3 },
            (inputs, result, count) =>
            {
                for (int i = 0; i < count; i++)
                {
                    if (i % TrialsPerCheck == 0) cancellation.ThrowIfCancellationRequested();
                    result[i] = model(make1(inputs[0][i], nameof(x1)), make2(inputs[1][i], nameof(x2)), make3(inputs[2][i], nameof(x3))).ToQuantity().SiValue;
                }
            },
            StrongType<TResult>.Kind, options, progress, cancellation);
    }

    /// <summary>Evaluates a function of four uncertain values; for more inputs use the overload over columns.</summary>
    public static MonteCarloResult Run<T1, T2, T3, T4, TResult>(
        Uncertain<T1> x1, Uncertain<T2> x2, Uncertain<T3> x3, Uncertain<T4> x4, Func<T1, T2, T3, T4, TResult> model, MonteCarloOptions? options = null,
        IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
        where T1 : struct, IQuantity
        where T2 : struct, IQuantity
        where T3 : struct, IQuantity
        where T4 : struct, IQuantity
        where TResult : struct, IQuantity
    {
        if (model is null) throw new ArgumentNullException(nameof(model));
        Func<double, string, T1> make1 = StrongType<T1>.Nearest;
        Func<double, string, T2> make2 = StrongType<T2>.Nearest;
        Func<double, string, T3> make3 = StrongType<T3>.Nearest;
        Func<double, string, T4> make4 = StrongType<T4>.Nearest;
        return Run(
            new UncertainQuantity[] { x1, x2, x3, x4 },
            (inputs, result, count) =>
            {
                for (int i = 0; i < count; i++)
                {
                    if (i % TrialsPerCheck == 0) cancellation.ThrowIfCancellationRequested();
                    result[i] = model(make1(inputs[0][i], nameof(x1)), make2(inputs[1][i], nameof(x2)), make3(inputs[2][i], nameof(x3)), make4(inputs[3][i], nameof(x4)))
                        .ToQuantity().SiValue;
                }
            },
            StrongType<TResult>.Kind, options, progress, cancellation);
    }
}
