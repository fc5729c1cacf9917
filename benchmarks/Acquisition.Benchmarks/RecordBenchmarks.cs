using System;
using System.Numerics;
using System.Runtime.InteropServices;
using Acquisition.Core;
using Acquisition.Core.Literals;
using BenchmarkDotNet.Attributes;

namespace Acquisition.Benchmarks;

/// <summary>
/// Levels and edges of 16 million 8-bit codes, beside merely adding the codes up with the platform's vectors. Pulses of some noise; an edge every 50 000 samples to every 50.
/// Samples per second are 16 777 216 over the time.
/// </summary>
[MemoryDiagnoser]
public class RecordBenchmarks
{
    private const int Points = 1 << 24;

    private byte[] _codes = [];
    private Record _record = null!;

    [Params(50_000, 1_000, 500, 200, 100, 50)]
    public int SamplesPerEdge { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        var random = new Random(1);
        _codes = new byte[Points];
        for (int i = 0; i < Points; i++)
        {
            int place = i % (2 * SamplesPerEdge), rise = Math.Min(4, place), fall = Math.Clamp(place - SamplesPerEdge, 0, 4);
            _codes[i] = (byte)(50 + 37 * (rise - fall) + random.Next(-2, 3));
        }
        _record = Record.FromCodes(_codes, 1.GSaPerS(), 1.mV(), 0.V(), copy: false);
    }

    [Benchmark(Baseline = true)]
    public long VectorisedSumOfCodes()
    {
        var total = Vector<ulong>.Zero;
        ReadOnlySpan<Vector<byte>> vectors = MemoryMarshal.Cast<byte, Vector<byte>>(_codes);
        for (int from = 0; from < vectors.Length; from += 128)
        {
            var sums = Vector<ushort>.Zero;
            foreach (Vector<byte> v in vectors.Slice(from, Math.Min(128, vectors.Length - from)))
            {
                Vector.Widen(v, out Vector<ushort> low, out Vector<ushort> high);
                sums += low + high;
            }
            Vector.Widen(sums, out Vector<uint> first, out Vector<uint> second);
            Vector.Widen(first + second, out Vector<ulong> a, out Vector<ulong> b);
            total += a + b;
        }
        return (long)Vector.Sum(total);
    }

    [Benchmark]
    public long LevelsAndEdges() => PulseMeasurement.Of(_record).TransitionCount;

    [Benchmark]
    public double Statistics() => RecordStatistics.Of(_record).Value.Rms.SiValue;

    [Benchmark]
    public int Preview() => RecordPreview.Of(_record, 2000).Columns;
}
