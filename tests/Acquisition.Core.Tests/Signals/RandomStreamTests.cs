using System;
using System.Linq;
using Acquisition.Core.Signals;
using Acquisition.Core.Tests.Uncertainty;
using Xunit;

namespace Acquisition.Core.Tests.Signals;

public sealed class RandomStreamTests
{
    /// <summary>First outputs for the state 1, 2, 3, 4 of the authors' xoshiro256plusplus.c, as the tests of the Rust crate rand_xoshiro hold them (rust-random/rngs, xoshiro256plusplus.rs).</summary>
    [Fact]
    public void Generator_IsThePublishedOne()
    {
        var stream = new RandomStream(1, 2, 3, 4);
        ulong[] published =
        [
            41943041, 58720359, 3588806011781223, 3591011842654386, 9228616714210784205,
            9973669472204895162, 14011001112246962877, 12406186145184390807, 15849039046786891736, 10450023813501588000,
        ];

        Assert.Equal(published, Enumerable.Range(0, 10).Select(_ => stream.NextBits()));
    }

    /// <summary>SplitMix64 of the seed 0, from its authors' page (from memory).</summary>
    [Fact]
    public void Seeding_IsThePublishedOne()
    {
        const ulong Golden = 0x9E3779B97F4A7C15;
        Assert.Equal(0xE220A8397B1DCDAFUL, RandomStream.Mix(Golden));
        Assert.Equal(0x6E789E6AA1B965F4UL, RandomStream.Mix(unchecked(2 * Golden)));
    }

    /// <summary>The first draws of the generator, computed by an independent implementation of xoshiro256++ and SplitMix64 (tests/scripts/uncertainty/make_reference.py).</summary>
    [Fact]
    public void Generator_DrawsWhatItsDefinitionSays()
    {
        var stream = new RandomStream(1, 2, 3);
        string[] words = Enumerable.Range(0, 5).Select(_ => stream.NextBits().ToString("x16", System.Globalization.CultureInfo.InvariantCulture)).ToArray();

        Assert.Equal(ReferenceValues.Strings("random_stream"), words);
    }

    [Fact]
    public void StreamsOfOneSeed_AreUncorrelated()
    {
        const int Count = 100_000;
        double[][] columns = (from sequence in new[] { -1, 0, 1 } from block in new[] { 0, 1 } select Column(sequence, block)).ToArray();

        for (int i = 0; i < columns.Length; i++)
        {
            for (int j = 0; j < i; j++)
                Assert.Equal(0, columns[i].Zip(columns[j], (x, y) => x * y).Average(), 5 / Math.Sqrt(Count));
        }

        static double[] Column(int sequence, int block)
        {
            var draws = new double[Count];
            var stream = new RandomStream(7, sequence, block);
            NormalSampler.Fill(ref stream, draws, Count, 1);
            return draws;
        }
    }

    [Fact]
    public void NormalDraws_AreTheSameOneByOneAndInColumns()
    {
        var column = new double[10_000];
        RandomStream stream = new(9, 0, 0), alike = stream;
        NormalSampler.Fill(ref stream, column, column.Length, 2);

        Assert.Equal(column, Enumerable.Range(0, column.Length).Select(_ => 2 * NormalSampler.Next(ref alike)));
        Assert.Equal(stream.NextBits(), alike.NextBits());
    }

    /// <summary>The ziggurat's joints, base layer and tail: moments up to the sixth (15) and the mass beyond 3.65.</summary>
    [Fact]
    public void NormalDraws_HaveTheMomentsAndTheTailOfTheNormalDistribution()
    {
        var draws = new double[4_000_000];
        var stream = new RandomStream(3, 0, 0);
        NormalSampler.Fill(ref stream, draws, draws.Length, 1);
        double n = draws.Length;

        Assert.Equal(0, draws.Average(), 5 / Math.Sqrt(n));
        Assert.Equal(1, draws.Average(x => x * x), 5 * Math.Sqrt(2 / n));
        Assert.Equal(3, draws.Average(x => Math.Pow(x, 4)), 5 * Math.Sqrt(96 / n));
        Assert.Equal(15, draws.Average(x => Math.Pow(x, 6)), 5 * Math.Sqrt(10170 / n));
        double tail = 2 * Acquisition.Core.Uncertainty.Normal.Cumulative(-3.6541528853610088);
        Assert.Equal(tail, draws.Count(x => Math.Abs(x) > 3.6541528853610088) / n, 5 * Math.Sqrt(tail / n));
    }

    [Fact]
    public void PortableLogarithmAndExponential_AreThoseOfTheFramework()
    {
        for (double x = 1e-300; x < 1e300; x *= 1.7) Assert.Equal(Math.Log(x), PortableMath.Log(x), 4e-16 * Math.Max(1, Math.Abs(Math.Log(x))));
        for (double x = -690; x < 690; x += 0.37) Assert.Equal(1, PortableMath.Exp(x) / Math.Exp(x), 3e-14);
    }
}
