using System;
using System.Linq;
using Xunit;

namespace Acquisition.Core.Tests.Digitizing;

/// <summary>Traces between samples: through the samples, up to the ends, and exact where the method is.</summary>
public sealed class ReconstructionTests
{
    // A cubic goes through four samples and a parabola through three, at the ends as within; Keys' kernel has the parabola exactly (Keys 1981).
    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(7)]
    public void Cubics_FollowAPolynomial_UpToTheEnds(int samples)
    {
        double Parabola(double x) => 2 - 3 * x + 0.5 * x * x;
        double Cubic(double x) => Parabola(x) + 0.25 * x * x * x;
        double[] places = Enumerable.Range(0, (samples - 1) * 8 + 1).Select(i => i / 8.0).ToArray();
        double[] keys = Reconstruction.CubicConvolution.Values(Enumerable.Range(0, samples).Select(i => Parabola(i)).ToArray(), places);
        double[] lagrange = Reconstruction.CubicLagrange.Values(Enumerable.Range(0, samples).Select(i => Cubic(i)).ToArray(), places);
        for (int i = 0; i < places.Length; i++)
        {
            Assert.Equal(Parabola(places[i]), keys[i], 1e-12);
            if (samples >= 4)
                Assert.Equal(Cubic(places[i]), lagrange[i], 1e-12);
        }
    }

    [Fact]
    public void Hold_KeepsTheSampleUntilTheNext() => Assert.Equal([1.0, 1, 1, 4, 4, 9], Reconstruction.Hold.Values([1, 4, 9], [0, 0.5, 0.999, 1, 1.9, 2]));

    [Fact]
    public void RefinedTraces_PassThroughTheSamples()
    {
        double[] samples = Enumerable.Range(0, 100).Select(i => Math.Sin(0.7 * i)).ToArray();
        foreach (Reconstruction reconstruction in new[] { Reconstruction.Hold, Reconstruction.Linear, Reconstruction.CubicLagrange, Reconstruction.CubicConvolution, Reconstruction.Sinc })
        {
            foreach (int factor in new[] { 1, 2, 5, 16, 33 })
            {
                double[] fine = reconstruction.Upsample(samples, factor);
                Assert.Equal(99 * factor + 1, fine.Length);
                for (int i = 0; i < samples.Length; i++)
                    Assert.Equal(samples[i], fine[i * factor], 1e-12);
                double[] at = reconstruction.Values(samples, Enumerable.Range(0, fine.Length).Select(i => (double)i / factor).ToArray());
                for (int i = 0; i < fine.Length; i++)
                    Assert.Equal(at[i], fine[i], 1e-11);
            }
        }
    }
}
