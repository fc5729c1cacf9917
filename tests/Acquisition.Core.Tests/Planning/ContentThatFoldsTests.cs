using System;
using System.Linq;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>The sample rate that a square needs: two and a half samples a period of the last line that matters.</summary>
public sealed class ContentThatFoldsTests
{
    // An ideal square has 1/n in each odd line (handbook 4.3); a Gaussian chain that shows the third to the tolerance leaves 2^-(n f/B)² of their powers (2.2).
    // From the line on that is asked for, together with all above it they hold more than the tolerated part of the rms; from the next one on less.
    [Theory]
    [InlineData(10)]
    [InlineData(3)]
    [InlineData(1)]
    [InlineData(0.2)]
    public void TheRate_ReachesTheLastLineThatMatters(double percent)
    {
        Specification needed = new Requirement(Signal.Square(1.MHz(), 1.Vpp())).WithAmplitudeTolerance(Ratio.FromPercent(percent)).WithHarmonics(3).Specify();
        double bandwidth = 3e6 / Math.Sqrt(-2 * Math.Log(1 - (percent / 100), 2));
        double[] powers = Enumerable.Range(0, 3000).Select(n => n % 2 == 0 ? 0 : Math.Pow(2, -Math.Pow(n * 1e6 / bandwidth, 2)) / ((double)n * n)).ToArray();
        int last = Enumerable.Range(1, 2999).Last(n => powers.Skip(n).Sum() > percent * percent * 1e-4 * powers.Sum());

        Assert.Equal(bandwidth, needed.Bandwidth!.Value.Hertz, 1e-6 * bandwidth);
        Assert.Equal(2.5e6 * Math.Max(3, last), needed.SampleRate!.Value.SamplesPerSecond, 1);
        Assert.Contains($"what lies above harmonic {Math.Max(3, last)} of ", needed.SampleRate.Method, StringComparison.Ordinal);
    }
}
