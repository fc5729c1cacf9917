using System;
using System.Diagnostics;

namespace Acquisition.Benchmarks;

/// <summary>What the first formula of a fresh process costs, compilation of the code that reads it included: run <c>dotnet run -c Release -- first-formula</c> several times.</summary>
internal static class FirstFormula
{
    internal static void Measure()
    {
        var watch = Stopwatch.StartNew();
        Acquisition.Core.Formula formula = Acquisition.Core.Formula.Build("0.35 / 100 MHz in ns");
        double seconds = formula.EvaluateSi(), built = watch.Elapsed.TotalMilliseconds;
        string text = formula.Evaluate().ToString();
        double written = watch.Elapsed.TotalMilliseconds;
        double rise = Acquisition.Core.Formula.Build("rise_time(gaussian(100 MHz))").EvaluateSi();
        double called = watch.Elapsed.TotalMilliseconds;
        Console.WriteLine(FormattableString.Invariant(
            $"first formula ({seconds} s) built and evaluated: {built:F1} ms; written ({text}): {written - built:F1} ms more; first functions ({rise} s): {called - written:F1} ms more"));
    }
}
