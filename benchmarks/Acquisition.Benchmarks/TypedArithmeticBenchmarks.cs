using System;
using System.Runtime.CompilerServices;
using Acquisition.Core;
using BenchmarkDotNet.Attributes;
using U = UnitsNet;

namespace Acquisition.Benchmarks;

/// <summary>
/// Arithmetic on strong types beside the same arithmetic on plain doubles with the same checks. The bar: a loop within 1.1 times, a single conversion within 1 ns.
/// </summary>
[MemoryDiagnoser]
public class TypedArithmeticBenchmarks
{
    /// <summary>A record's worth: fits the first-level cache, so that arithmetic is measured and not memory.</summary>
    private const int Count = 1000;

    private readonly Voltage[] _typed = new Voltage[Count];
    private readonly double[] _plain = new double[Count];
    private readonly Resistance _resistance = Resistance.FromOhms(50);
    private double _bandwidth = 200;

    [GlobalSetup]
    public void Fill()
    {
        var random = new Random(1);
        for (int i = 0; i < Count; i++) _typed[i] = Voltage.FromVolts(_plain[i] = random.NextDouble());
    }

    [Benchmark(Baseline = true)]
    public double PlainLoop()
    {
        double sum = 0;
        foreach (double volts in _plain) sum = Checked(sum + Checked(volts / 50.0));
        return sum;
    }

    [Benchmark]
    public double TypedLoop()
    {
        Current sum = default;
        foreach (Voltage voltage in _typed) sum += voltage / _resistance;
        return sum.Amperes;
    }

    [Benchmark]
    public double PlainConversion() => Checked(0.35 / Checked(_bandwidth * 1e6)) * 1e9;

    [Benchmark]
    public double TypedConversion() => (0.35 / Frequency.FromMegahertz(_bandwidth)).Nanoseconds;

    [Benchmark]
    public double UnitsNetConversion() => U.Duration.FromSeconds(0.35 / U.Frequency.FromMegahertz(_bandwidth).Hertz).Nanoseconds;

    /// <summary>As cheap as it can be: inlined, the exception made elsewhere, as the strong types do.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Checked(double value) => Math.Abs(value) <= double.MaxValue ? value : throw Refusal(value);

    private static ArgumentOutOfRangeException Refusal(double value) => new(nameof(value), value, "must be finite");
}
