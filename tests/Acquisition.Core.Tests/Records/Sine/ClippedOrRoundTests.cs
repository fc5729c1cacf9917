using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Records;
using Xunit;
using static Acquisition.Core.Tests.Records.Sine.SineFitTests;

namespace Acquisition.Core.Tests.Records.Sine;

/// <summary>How a flat top is told from a round one: each condition on either side, on records whose sine is known and whose top is set by hand.</summary>
public sealed class ClippedOrRoundTests
{
    private static readonly double[] Whole = Make(4000, 0.0317123);
    private static readonly SineSolution Fit = SineSolver.Solve(Passes(Whole), 0, Whole.Length, 0.0317123, free: false)!;

    private static SamplePasses Passes(double[] x) => new(NumberSamples.Of(x));

    private static ClippedSamples? Find(double[] x, double? low = null, double? high = null) => ClippedSamples.Find(Passes(x), Fit, x.Min(), x.Max(), low, high);

    /// <summary>The samples of the sine above 0.9 as the rule says, all others up to a level lowered to it, and of those one alone kept at that level.</summary>
    private static double[] WithTop(Func<int, double> top, double next)
    {
        int beyond = 0;
        bool kept = false;
        return Whole.Select(v =>
        {
            if (v > 0.9)
                return top(beyond++);
            if (v <= next)
                return v;
            (bool first, kept) = (!kept, true);
            return first ? next : next - 0.01;
        }).ToArray();
    }

    private static int Beyond => Whole.Count(v => v > 0.9);

    // Four samples at the last code are more than three times the one at the code before; three are not.
    [Theory]
    [InlineData(3, false)]
    [InlineData(4, true)]
    public void SamplesThatShareTheTop_AreClippedWhereNoRoundTopHasSoMany(int shared, bool clipped)
    {
        double[] falling = Whole.OrderByDescending(v => v).ToArray();
        double level = 0.5 * (falling[shared - 1] + falling[shared]);
        ClippedSamples? found = Find(Whole.Select(v => Math.Min(v, level)).ToArray());
        Assert.Equal(clipped ? shared : null, found?.Count);
        Assert.Equal(clipped ? shared : null, Find(Whole.Select(v => Math.Max(-v, -level)).Select(v => -v).ToArray())?.Count);
    }

    // A gap below the top by more than half of the amplitude is that of two levels, not a code: three samples then are enough, two are not.
    [Theory]
    [InlineData(2, false)]
    [InlineData(3, true)]
    public void ThreeSamplesAboveAWideGap_AreClipped(int shared, bool clipped)
    {
        double[] falling = Whole.OrderByDescending(v => v).ToArray();
        double[] x = Whole.Select(v => v >= falling[shared - 1] ? 0.95 : v > 0.4 ? 0.4 : v).ToArray();
        ClippedSamples? found = ClippedSamples.Find(Passes(x), Fit, -2, 0.95, null, null);
        // Of all that the sine has beyond 0.95, half must sit there.
        Assert.Null(found);
        x = Whole.Select(v => v >= falling[shared - 1] ? 0.5 * (falling[shared - 1] + falling[shared]) : v > 0.4 ? 0.4 : v).ToArray();
        Assert.Equal(clipped, ClippedSamples.Find(Passes(x), Fit, -2, x.Max(), null, null) is not null);
    }

    // Half of the samples that the sine has beyond the top must sit at it.
    [Theory]
    [InlineData(0, true)]
    [InlineData(1, false)]
    public void TheTop_HoldsHalfOfWhatTheSineHasBeyondIt(int less, bool clipped)
    {
        int at = (Beyond + 1) / 2 - less;
        double[] x = WithTop(i => i < at ? 0.9 : 0.7, 0.88);
        ClippedSamples? found = Find(x);
        Assert.Equal(clipped, found is not null);
        if (clipped)
        {
            Assert.Equal((at, 0.9, double.NegativeInfinity), (found!.Count, found.High, found.Low));
            Assert.True(found.Holds(0.9));
            Assert.False(found.Holds(0.8999));
            Assert.False(found.Holds(-1));
        }
    }

    // The sine runs beyond a clipped top by more than half a step, in the mean; the top code of a quantised sine holds it to within that.
    [Theory]
    [InlineData(0.98, true)]
    [InlineData(1.02, false)]
    public void TheExcess_IsMoreThanHalfAStep(double share, bool clipped)
    {
        double excess = Whole.Where(v => v > 0.9).Average(v => v - 0.9);
        double[] x = WithTop(_ => 0.9, 0.9 - (2 * excess * share));
        Assert.Equal(clipped, Find(x) is not null);
        ClippedSamples? mirrored = ClippedSamples.Find(Passes(x.Select(v => -v).ToArray()), SineSolver.Solve(Passes(Whole.Select(v => -v).ToArray()), 0, Whole.Length, 0.0317123, free: false)!, -0.9, -x.Min(), null, null);
        Assert.Equal(clipped ? -0.9 : null, mirrored?.Low);
        if (clipped)
            Assert.True(double.IsPositiveInfinity(mirrored!.High));
    }

    // What the converter states holds without looking at the samples: all at the limits count, and none where the record keeps within them.
    [Fact]
    public void StatedLimits_AreTakenAsTheyAre()
    {
        double[] x = Whole.Select(v => Math.Max(-0.8, Math.Min(0.9, v))).ToArray();
        int low = Whole.Count(v => v <= -0.8), high = Whole.Count(v => v >= 0.9);
        Assert.Equal(low + high, Find(x, -0.8, 0.9)!.Count);
        Assert.Equal(high, Find(x, -0.81, 0.9)!.Count);
        Assert.Equal(low, Find(x, -0.8, 0.91)!.Count);
        Assert.Null(Find(x, -0.81, 0.91));
        // One limit stated, the other found in the samples.
        Assert.Equal((low + high, -0.8, 0.9), (Find(x, -0.8)!.Count, Find(x, -0.8)!.Low, Find(x, -0.8)!.High));
    }

    // |sin| ≥ L for 1 - 2 asin(L)/π of the time: 79 % at L = 0.3239, 81 % at 0.2940. Four fifths are too many to fit.
    [Theory]
    [InlineData(0.3239, true)]
    [InlineData(0.2940, false)]
    public void MoreThanFourFifthsAtTheLimits_AreRefused(double limit, bool fitted)
    {
        double[] x = Whole.Select(v => Math.Max(-limit, Math.Min(limit, v))).ToArray();
        SineFit fit = SineFit.FourParameter(Record.FromVolts(x, Rate).WithLimits(Voltage.FromVolts(-limit), Voltage.FromVolts(limit)), Frequency.FromHertz(0.0317123 * Rate.SamplesPerSecond));
        Assert.Equal(fitted, fit.Sine is not null);
        if (fitted)
            Assert.Equal(1, fit.Sine!.Amplitude.Volts, 1e-6);
        else
            Assert.Equal("sine-fit-clipped-away", fit.Findings[0].Code);
    }
}
