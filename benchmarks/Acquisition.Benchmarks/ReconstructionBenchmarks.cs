using System;
using Acquisition.Core;
using Acquisition.Core.Literals;
using BenchmarkDotNet.Attributes;

namespace Acquisition.Benchmarks;

/// <summary>
/// A trace of ten points for each of a million samples. The rival is scipy.signal.resample_poly on the same samples: run benchmarks/scipy_resample.py in the same session.
/// Its default filter spans 20 samples (Kaiser 5); the sinc of 20 taps and Kaiser 5 does the same work, that of 32 taps and Kaiser 9 is the library's default.
/// </summary>
public class ReconstructionBenchmarks
{
    private readonly double[] _samples = new double[1_000_000];
    private Record _record = null!;

    [GlobalSetup]
    public void Setup()
    {
        for (int i = 0; i < _samples.Length; i++)
            _samples[i] = Math.Sin(0.1 * i) + 0.5 * Math.Sin(0.37 * i);
        _record = Record.FromVolts(_samples, 1.GSaPerS());
    }

    [Benchmark(Baseline = true)]
    public Record SincOf20Taps() => _record.Reconstruct(Reconstruction.WindowedSinc(20, 5), 10).Trace;

    [Benchmark]
    public Record SincOf32Taps() => _record.Reconstruct(Reconstruction.Sinc, 10).Trace;

    [Benchmark]
    public Record StraightLines() => _record.Reconstruct(Reconstruction.Linear, 10).Trace;
}
