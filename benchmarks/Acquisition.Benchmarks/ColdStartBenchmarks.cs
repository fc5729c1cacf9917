using System.Globalization;
using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using U = UnitsNet;

namespace Acquisition.Benchmarks;

/// <summary>
/// What the first text and the first formula of a process cost, compilation included: each method runs once in a process of its own, 20 times. Look at the
/// median and subtract that of the empty method. The bars: 5 ms for the first text, 10 ms for the first formula.
/// </summary>
/// <remarks>The engine of the benchmark runs in the same process before it, so that the runtime itself is awake, as in any host; none of our code and none of the rivals' is. Run it without -i and without --job: <c>--filter '*ColdStart*'</c>.</remarks>
[SimpleJob(RunStrategy.ColdStart, launchCount: 20, warmupCount: 0, iterationCount: 1, invocationCount: 1)]
[MinColumn, MedianColumn]
public class ColdStartBenchmarks
{
    [Benchmark(Baseline = true)]
    public double Nothing() => 0;

    [Benchmark]
    public double FirstText() => Acquisition.Core.Frequency.Parse("100 MHz").Hertz;

    [Benchmark]
    public double FirstTextByUnitsNet() => U.Frequency.Parse("100 MHz", CultureInfo.InvariantCulture).Hertz;

    [Benchmark]
    public string FirstTextReadAndWritten() => Acquisition.Core.Frequency.Parse("100 MHz").ToString();

    [Benchmark]
    public string FirstTextReadAndWrittenByUnitsNet() => U.Frequency.Parse("100 MHz", CultureInfo.InvariantCulture).ToString(CultureInfo.InvariantCulture);

    [Benchmark]
    public double FirstFormula() => Acquisition.Core.Formula.Build("0.35 / 100 MHz in ns").EvaluateSi();

    /// <summary>The same quotient in hertz and seconds: NCalc knows no units.</summary>
    [Benchmark]
    public object? FirstFormulaByNCalc() => new NCalc.Expression("0.35 / 100000000").Evaluate();

    [Benchmark]
    public string FirstFormulaWritten() => Acquisition.Core.Formula.Build("0.35 / 100 MHz in ns").Evaluate().ToString();

    [Benchmark]
    public double FirstFormulaWithFunctions() => Acquisition.Core.Formula.Build("rise_time(gaussian(100 MHz))").EvaluateSi();

    [Benchmark]
    public object? FirstFormulaWithAFunctionByNCalc() => new NCalc.Expression("Sqrt(100000000)").Evaluate();
}
