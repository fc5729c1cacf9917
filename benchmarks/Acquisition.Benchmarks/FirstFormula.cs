using System;
using System.Diagnostics;

namespace Acquisition.Benchmarks;

/// <summary>What the first formula of a fresh process costs, compilation of the code that reads it included: run <c>dotnet run -c Release -- first-formula</c> several times.</summary>
internal static class FirstFormula
{
    internal static void Measure()
    {
        var watch = Stopwatch.StartNew();
        string units = Acquisition.Core.Formula.Build("0.35 / 100 MHz in ns").Evaluate().ToString();
        double first = watch.Elapsed.TotalMilliseconds;
        watch.Restart();
        string calls = Acquisition.Core.Formula.Build("rise_time(gaussian(100 MHz))").Evaluate().ToString();
        Console.WriteLine(FormattableString.Invariant($"first formula ({units}): {first:F1} ms; second, with functions ({calls}): {watch.Elapsed.TotalMilliseconds:F1} ms"));
    }
}
