using System;
using System.Globalization;
using System.Linq;
using Acquisition.Core;
using BenchmarkDotNet.Attributes;
using U = UnitsNet;

namespace Acquisition.Benchmarks;

/// <summary>Reading and writing one quantity, beside UnitsNet doing the same in the same run. The bar: reading takes at most 1/200 of its time and no memory.</summary>
[MemoryDiagnoser]
public class QuantityTextBenchmarks
{
    private static readonly char[] Buffer = new char[64];
    private static readonly Frequency Ours = Frequency.FromMegahertz(100);
    private static readonly U.Frequency Theirs = U.Frequency.FromMegahertz(100);

    // 64 texts of different length and prefix, so that nothing about one literal is known in advance.
    private static readonly string[] Texts = Enumerable.Range(0, 64)
        .Select(i => (i % 4 == 0 ? 100 + i : 1.25 * (i + 1)).ToString(CultureInfo.InvariantCulture) + (i % 3) switch { 0 => " MHz", 1 => " kHz", _ => " GHz" }).ToArray();

    /// <summary>The baseline.</summary>
    [Benchmark(Baseline = true, OperationsPerInvoke = 64)]
    public double UnitsNetParse()
    {
        double sum = 0;
        foreach (string text in Texts) sum += U.Frequency.Parse(text, CultureInfo.InvariantCulture).Hertz;
        return sum;
    }

    [Benchmark(OperationsPerInvoke = 64)]
    public double Parse()
    {
        double sum = 0;
        foreach (string text in Texts) sum += Frequency.Parse(text).Hertz;
        return sum;
    }

    [Benchmark]
    public double ParseSpan() => Frequency.Parse("100 MHz".AsSpan()).Hertz;

    [Benchmark]
    public double ParseUtf8() => Frequency.Parse("100 MHz"u8).Hertz;

    [Benchmark]
    public double ParseOfAnyKind() => Quantity.Parse("100 MHz").SiValue;

    [Benchmark]
    public double ParseQuotient() => SampleRate.Parse("2.5 GSa/s").SamplesPerSecond;

    [Benchmark]
    public double ParseInch() => Length.Parse("1.35 in").Meters;

    [Benchmark]
    public bool Refuse() => Frequency.TryParse("100 MHZ", out _);

    [Benchmark]
    public string UnitsNetFormat() => Theirs.ToString(CultureInfo.InvariantCulture);

    [Benchmark]
    public string Format() => Ours.ToString();

    [Benchmark]
    public int FormatIntoSpan() => Ours.TryFormat(Buffer, out int written) ? written : 0;

    [Benchmark]
    public string FormatFourDigits() => Ours.ToString("4");
}
