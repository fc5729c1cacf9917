using System;
using Acquisition.Core;
using Acquisition.Core.Literals;
using BenchmarkDotNet.Attributes;

namespace Acquisition.Benchmarks;

/// <summary>
/// A five-input model, power in dBm behind a divider and a cable: one million trials (against NumPy: run benchmarks/numpy_monte_carlo.py in the same
/// session), the same by a plain loop with the framework's generator and a full sort, and the first-order budget.
/// </summary>
[MemoryDiagnoser]
public class UncertaintyBenchmarks
{
    private readonly UncertainQuantity[] _inputs =
    [
        Uncertain.Of(5.V(), Spread.Standard(30.mV()), "V"),
        Uncertain.Of(9.kOhm(), Spread.Bound(1.Percent()), "R1"),
        Uncertain.Of(1.kOhm(), Spread.Bound(1.Percent()), "R2"),
        Uncertain.Of(50.Ohm(), Spread.Standard(0.3.Ohm()), "Z"),
        Uncertain.Of(Ratio.FromFraction(0.89), Spread.Standard(Ratio.FromFraction(0.01)), "cable"),
    ];

    private readonly Uncertain<Voltage> _v = Uncertain.Of(5.V(), Spread.Standard(30.mV(), 9), "V");
    private readonly Uncertain<Resistance> _r1 = Uncertain.Of(9.kOhm(), Spread.Bound(1.Percent()), "R1");
    private readonly Uncertain<Resistance> _r2 = Uncertain.Of(1.kOhm(), Spread.Bound(1.Percent()), "R2");
    private readonly Uncertain<Resistance> _z = Uncertain.Of(50.Ohm(), Spread.Standard(0.3.Ohm()), "Z");
    private readonly Uncertain<Ratio> _cable = Uncertain.Of(Ratio.FromFraction(0.89), Spread.Standard(Ratio.FromFraction(0.01)), "cable");
    private readonly Formula _formula = FormulaContext.Standard
        .WithInput("v", QuantityKind.Voltage).WithInput("r1", QuantityKind.Resistance).WithInput("r2", QuantityKind.Resistance)
        .WithInput("z", QuantityKind.Resistance).WithInput("cable", QuantityKind.Ratio)
        .Build("(v * r2 / (r1 + r2) * cable)^2 / z");
    private long _seed;

    private static void Model(double[][] x, double[] y, int count)
    {
        double[] v = x[0], r1 = x[1], r2 = x[2], z = x[3], cable = x[4];
        for (int i = 0; i < count; i++)
        {
            double at = v[i] * r2[i] / (r1[i] + r2[i]) * cable[i];
            y[i] = at * at / z[i];
        }
    }

    [Benchmark(Baseline = true)]
    public double OneMillionTrials()
    {
        MonteCarloResult result = MonteCarlo.Run(_inputs, Model, QuantityKind.Power, MonteCarloOptions.Default.WithSeed(++_seed));
        return result.SymmetricInterval().Low.SiValue + result.ShortestInterval().High.SiValue + result.StandardUncertainty.SiValue;
    }

    [Benchmark]
    public double OneMillionTrialsOnOneThread()
    {
        MonteCarloResult result = MonteCarlo.Run(_inputs, Model, QuantityKind.Power, MonteCarloOptions.Default.WithSeed(++_seed).WithThreads(1));
        return result.SymmetricInterval().Low.SiValue + result.ShortestInterval().High.SiValue + result.StandardUncertainty.SiValue;
    }

    /// <summary>What one writes without a library: System.Random, Box-Muller, a full sort.</summary>
    [Benchmark]
    public double OneMillionTrialsByPlainLoop()
    {
        const int Trials = 1_000_000;
        var random = new Random((int)++_seed);
        var y = new double[Trials];
        double sum = 0, squares = 0;
        for (int i = 0; i < Trials; i++)
        {
            double v = 5 + 0.03 * Normal(random), r1 = 9000 * (1 + 0.01 * (2 * random.NextDouble() - 1)), r2 = 1000 * (1 + 0.01 * (2 * random.NextDouble() - 1));
            double z = 50 + 0.3 * Normal(random), cable = 0.89 + 0.01 * Normal(random);
            double at = v * r2 / (r1 + r2) * cable;
            y[i] = at * at / z;
            sum += y[i];
            squares += y[i] * y[i];
        }
        Array.Sort(y);
        return y[25_000] + y[975_000] + squares - sum * sum / Trials;
    }

    [Benchmark]
    public double OneMillionTrialsOfAFormula()
    {
        MonteCarloResult result = _formula.PropagateDistributions(MonteCarloOptions.Default.WithSeed(++_seed), _inputs);
        return result.SymmetricInterval().Low.SiValue + result.ShortestInterval().High.SiValue + result.StandardUncertainty.SiValue;
    }

    [Benchmark]
    public double FirstOrderBudgetOfAFormula() => _formula.Budget(_inputs).ExpandedUncertainty.SiValue;

    [Benchmark]
    public double FirstOrderBudget()
    {
        Uncertain<Voltage> at = _v * (_r2 / (_r1 + _r2)) * _cable;
        return (at * (at / _z)).Budget().ExpandedUncertainty.SiValue;
    }

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
