using System;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Configs;

namespace Acquisition.Benchmarks;

/// <summary>Formulas beside NCalcSync, which knows no units, and beside a loop written by hand.</summary>
[MemoryDiagnoser]
[GroupBenchmarksBy(BenchmarkLogicalGroupRule.ByCategory)]
[CategoriesColumn]
public class FormulaBenchmarks
{
    /// <summary>As many rows as a minute of samples at some kilohertz, and far more than any cache holds.</summary>
    private const int Rows = 1_000_000;

    private readonly Acquisition.Core.FormulaContext _context = Acquisition.Core.FormulaContext.Standard
        .WithInput("a", Acquisition.Core.QuantityKind.Duration).WithInput("b", Acquisition.Core.QuantityKind.Duration);

    private readonly Acquisition.Core.FormulaContext _plain = Acquisition.Core.FormulaContext.Standard
        .WithInput("a", Acquisition.Core.QuantityKind.Ratio).WithInput("b", Acquisition.Core.QuantityKind.Ratio);

    private readonly double[] _a = new double[Rows];
    private readonly double[] _b = new double[Rows];
    private readonly double[] _results = new double[Rows];
    private Acquisition.Core.Formula _formula = null!;
    private NCalc.Expression _expression = null!;

    [GlobalSetup]
    public void Prepare()
    {
        var random = new Random(1);
        for (int i = 0; i < Rows; i++) (_a[i], _b[i]) = (random.NextDouble() * 1e-9, random.NextDouble() * 1e-9);
        _formula = _context.Build("sqrt(a^2 + b^2)");
        _expression = new NCalc.Expression("Sqrt(a * a + b * b)");
        _expression.Parameters["a"] = 3e-9;
        _expression.Parameters["b"] = 4e-9;
        _expression.Evaluate();
    }

    [Benchmark(Baseline = true)]
    [BenchmarkCategory("build")]
    public object BuildShortFormulaWithUnits() => _context.Build("sqrt(a^2 + b^2) + 1 ns");

    [Benchmark]
    [BenchmarkCategory("build")]
    public object BuildShortFormulaWithoutUnits() => _plain.Build("sqrt(a * a + b * b) + 1");

    [Benchmark]
    [BenchmarkCategory("build")]
    public bool ParseSameArithmeticByNCalc()
    {
        // HasErrors parses and nothing more; without the option the second parse would come from a cache.
        var expression = new NCalc.Expression("Sqrt(a * a + b * b) + 1", NCalc.ExpressionOptions.NoCache);
        return expression.HasErrors();
    }

    [Benchmark(Baseline = true)]
    [BenchmarkCategory("evaluate")]
    public double EvaluateOnce() => _formula.EvaluateSi(3e-9, 4e-9);

    [Benchmark]
    [BenchmarkCategory("evaluate")]
    public object? EvaluateOnceByNCalc()
    {
        _expression.Parameters["a"] = 3e-9;
        _expression.Parameters["b"] = 4e-9;
        return _expression.Evaluate();
    }

    [Benchmark]
    [BenchmarkCategory("column")]
    public void EvaluateColumn() => _formula.EvaluateColumns([_a, _b], _results);

    [Benchmark(Baseline = true)]
    [BenchmarkCategory("column")]
    public void LoopByHand()
    {
        double[] a = _a, b = _b, results = _results;
        for (int i = 0; i < results.Length; i++) results[i] = Math.Sqrt(a[i] * a[i] + b[i] * b[i]);
    }
}
