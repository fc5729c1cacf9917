using System;
using System.Linq;
using Acquisition.Core;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using BenchmarkDotNet.Attributes;

namespace Acquisition.Benchmarks;

/// <summary>A market of a thousand instruments and fifty probes, judged; beside it the same judgement by asking the full outlook of every candidate, for a fiftieth of the market.</summary>
[MemoryDiagnoser]
public class ShortlistBenchmarks
{
    private readonly Requirement _wanted = new Requirement(Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns())).WithEdgeTolerance(15.Percent()).WithAmplitudeTolerance(10.Percent()).WithHarmonics(5)
        .WithWindow(1.ms()).WithSmallestDetail(100.mV()).WithTimingTolerance(200.ps()).WithSourceResistance(33.Ohm());

    private Catalogue _market = null!;
    private Catalogue _small = null!;

    [GlobalSetup]
    public void Setup()
    {
        // Every instrument with a bandwidth of its own, so that no cache of equal stages can flatter the figure.
        var random = new Random(1);
        ResponseShape[] shapes = [ResponseShape.Gaussian, ResponseShape.SinglePole, ResponseShape.Butterworth(4), ResponseShape.Bessel(3)];
        var instruments = Enumerable.Range(0, 1000).Select(i => new CatalogueInstrument(
            FormattableString.Invariant($"digitizer {i}"), Stated.Guaranteed((50 * Math.Pow(40, random.NextDouble())).MHz()), shapes[i % 4], (8 + (2 * (i % 3))).bit(),
            [new ChannelMode(2, (0.5 * Math.Pow(20, random.NextDouble())).GSaPerS(), (i + 1).Mpts())],
            [new InputRange(1.Vpp(), Stated.Typical(1.mVrms())), new InputRange(10.Vpp(), Stated.Typical(8.mVrms()))],
            [new InputTermination(1.MOhm(), 15.pF(), 300.V())]).WithJitter(Stated.Typical(5.ps())).WithTimebaseAccuracy(Stated.Guaranteed(1.Ppm())).WithPrice(1 + (100 * random.NextDouble()))).ToArray();
        var probes = Enumerable.Range(0, 50).Select(i => new CatalogueProbe(
            FormattableString.Invariant($"probe {i}"), 10, Stated.Guaranteed((100 + (20 * i)).MHz()), ResponseShape.Gaussian, 10.MOhm(), (8 + (i % 9)).pF(), 1.MOhm())
            .WithLeadInductance(10.nH()).WithMaximumVoltage(400.V()).WithPrice(0.1 + (0.05 * i))).ToArray();
        _market = new Catalogue(instruments, probes);
        _small = new Catalogue(instruments.Take(100), probes.Take(10));
    }

    [Benchmark]
    public int ThousandInstrumentsByFiftyProbes() => Shortlist.Of(_wanted, _market).Candidates.Count;

    [Benchmark]
    public int HundredInstrumentsByTenProbes() => Shortlist.Of(_wanted, _small).Candidates.Count;

    [Benchmark(Baseline = true)]
    public int HundredInstrumentsByTenProbes_ByTheOutlookOfEach() =>
        Shortlist.Of(_wanted, _small).Candidates.Count(candidate => candidate.Outlook!.EdgeError is { } error && error <= 15.Percent());
}
