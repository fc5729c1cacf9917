using System;
using System.Linq;
using System.Reflection;
using Acquisition.Core.Literals;
using Acquisition.Core.Records;
using Xunit;
using static Acquisition.Core.Tests.Records.Sine.SineFitTests;

namespace Acquisition.Core.Tests.Records.Sine;

/// <summary>The parts of a sine fit, each against its definition.</summary>
public sealed class SineFitPartsTests
{
    // Every sum by its definition, one sample after the other, over a record that is no multiple of four or of the places where the oscillator starts anew.
    [Fact]
    public void EachSum_IsThatOfItsDefinition()
    {
        double[] x = Make(1103, 0.123, noise: 0.1);
        const double Centre = 551, Half = 551;
        var model = new SineModel(0.7, 0.2, 0.1, 0.123);
        SineSums sums = default;
        sums.Add(new SampleBlock(x, 0, 0, x.Length), Centre, Half, model);
        double Sum(Func<double, double, double, double, double> term) => x.Select((v, n) =>
        {
            double p = 2 * Math.PI * 0.123 * (n - Centre), c = Math.Cos(p), s = Math.Sin(p);
            return term(c, s, (n - Centre) / Half, v - 0.1 - 0.7 * c - 0.2 * s);
        }).Sum();

        foreach ((string name, double expected) in new[]
        {
            ("Count", 1103), ("C", Sum((c, _, _, _) => c)), ("S", Sum((_, s, _, _) => s)), ("CC", Sum((c, _, _, _) => c * c)), ("CS", Sum((c, s, _, _) => c * s)),
            ("T", Sum((_, _, t, _) => t)), ("TT", Sum((_, _, t, _) => t * t)), ("TC", Sum((c, _, t, _) => t * c)), ("TS", Sum((_, s, t, _) => t * s)),
            ("TCC", Sum((c, _, t, _) => t * c * c)), ("TCS", Sum((c, s, t, _) => t * c * s)), ("TTCC", Sum((c, _, t, _) => t * t * c * c)), ("TTCS", Sum((c, s, t, _) => t * t * c * s)),
            ("R", Sum((_, _, _, r) => r)), ("RR", Sum((_, _, _, r) => r * r)), ("RC", Sum((c, _, _, r) => r * c)), ("RS", Sum((_, s, _, r) => r * s)),
            ("TRC", Sum((c, _, t, r) => t * r * c)), ("TRS", Sum((_, s, t, r) => t * r * s)),
        })
        {
            var found = (double)typeof(SineSums).GetField(name, BindingFlags.Instance | BindingFlags.NonPublic)!.GetValue(sums)!;
            Assert.True(Math.Abs(found - expected) < 1e-9, $"{name}: {found}, not {expected}");
        }
    }

    // The normal matrix of the columns cos, sin, 1 and t (-A sin + B cos), product by product; about a centre that is not the middle, where no sum vanishes.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void TheNormalMatrix_HoldsTheProductsOfItsColumns(bool free)
    {
        double[] x = Make(203, 0.0871, noise: 0.1);
        var model = new SineModel(0.7, 0.2, 0.1, 0.09);
        SineSums sums = default;
        sums.Add(new SampleBlock(x, 0, 0, x.Length), 90, 101, model);
        int size = free ? 4 : 3;
        double[] matrix = new double[16], gradient = new double[4];
        sums.Normal(model, free, matrix, gradient);
        double[][] columns = x.Select((_, n) =>
        {
            double p = 2 * Math.PI * 0.09 * (n - 90), c = Math.Cos(p), s = Math.Sin(p), t = (n - 90) / 101.0;
            return new[] { c, s, 1, t * (0.2 * c - 0.7 * s) };
        }).ToArray();
        double[] residual = x.Select((v, n) => v - 0.1 - 0.7 * columns[n][0] - 0.2 * columns[n][1]).ToArray();
        for (int i = 0; i < size; i++)
        {
            Assert.Equal(residual.Select((r, n) => r * columns[n][i]).Sum(), gradient[i], 1e-9);
            for (int j = 0; j < size; j++)
                Assert.Equal(columns.Sum(row => row[i] * row[j]), matrix[i * size + j], 1e-9);
        }
    }

    // By hand: 4a + 2b = 10, 2a + 5b = 13 has a = 1.5, b = 2; the inverse is (5, -2; -2, 4)/16. Scaled to ones on the diagonal, the second column keeps 1 - 4/20 of itself.
    [Fact]
    public void TwoEquations_AreSolvedAndInvertedAsByHand()
    {
        NormalSystem system = NormalSystem.Factor([4, 2, 2, 5], 2)!;
        Assert.Equal([1.5, 2], system.Solve([10, 13]).Select(v => Math.Round(v, 12)));
        Assert.Equal([5 / 16.0, -2 / 16.0, -2 / 16.0, 4 / 16.0], system.Inverse().Select(v => Math.Round(v, 12)));
        Assert.Equal(0.8, system.Independence, 1e-12);
        Assert.Equal(2, system.Size);
        // Two columns that are the same, none at all, and one beyond all numbers.
        Assert.Null(NormalSystem.Factor([4, 4, 4, 4], 2));
        Assert.Null(NormalSystem.Factor([4, 0, 0, 0], 2));
        Assert.Null(NormalSystem.Factor([double.PositiveInfinity, 0, 0, 1], 2));
        // Three: the middle of a chain of springs, 2 -1 0; -1 2 -1; 0 -1 2, has the inverse (3 2 1; 2 4 2; 1 2 3)/4.
        Assert.Equal([0.75, 0.5, 0.25, 0.5, 1, 0.5, 0.25, 0.5, 0.75], NormalSystem.Factor([2, -1, 0, -1, 2, -1, 0, -1, 2], 3)!.Inverse().Select(v => Math.Round(v, 12)));
    }

    // The same sine about another middle has the same values.
    [Theory]
    [InlineData(0), InlineData(17.5), InlineData(900)]
    public void TheSameSineAboutAnotherCentre_HasTheSameValues(double centre)
    {
        double[] x = Make(400, 0.0731, 0.8, 1.1, 0.3);
        SineModel moved = SineSolver.Solve(new SamplePasses(NumberSamples.Of(x)), 0, 400, 0.0731, free: false)!.ModelAt(centre);
        for (int n = 0; n < 400; n += 7)
        {
            double p = 2 * Math.PI * 0.0731 * (n - centre);
            Assert.Equal(x[n], moved.Offset + moved.Cosine * Math.Cos(p) + moved.Sine * Math.Sin(p), 1e-9);
        }
    }

    // A change of unit changes no step of the way.
    [Theory]
    [InlineData(1e-9), InlineData(1e9)]
    public void TheNumberOfSteps_DoesNotDependOnTheUnit(double unit)
    {
        double[] x = Make(500, 0.0731, 1, 1.1, 0.3, 0.3, 5);
        SineFit one = SineFit.FourParameter(x, Rate, Frequency.FromHertz(0.0735e8)), other = SineFit.FourParameter(x.Select(v => v * unit).ToArray(), Rate, Frequency.FromHertz(0.0735e8));
        Assert.Equal(one.Iterations, other.Iterations);
        Assert.Equal(one.Sine!.Frequency.Hertz, other.Sine!.Frequency.Hertz, 1e-3);
    }

    // Linear equations: one step solves them, a second removes what rounding left of the first. A frequency that is free is found even from a start, in a record as in an array.
    [Fact]
    public void AGivenFrequency_TakesTwoSteps_AndAStartLeavesItFree()
    {
        double[] x = Make(500, 0.0731, 1e3, 1.1, 0.3, 0.3, 5);
        Assert.Equal(2, SineFit.ThreeParameter(x, Rate, 7.31.MHz()).Iterations);
        Assert.Equal(2, SineFit.ThreeParameter(Record.FromVolts(x, Rate), 7.31.MHz()).Iterations);
        foreach (FittedSine sine in new[] { SineFit.FourParameter(x, Rate, 7.32.MHz()).Sine!, SineFit.FourParameter(Record.FromVolts(x, Rate), 7.32.MHz()).Sine!, SineFit.FourParameter(Record.FromVolts(x, Rate)).Sine! })
        {
            Assert.False(sine.FrequencyWasGiven);
            Assert.Equal(7.31e6, sine.Frequency.Hertz, 20.0);
        }
    }

    // The largest sample that a fit takes is 1E150 V itself.
    [Fact]
    public void TheLargestUsableSample_IsUsable()
    {
        double[] x = Make(100, 0.1);
        x[40] = 1e150;
        Assert.DoesNotContain(SineFit.ThreeParameter(x, Rate, 10.MHz()).Findings, finding => finding.Code == "record-not-finite");
        x[40] = -1e150;
        Assert.DoesNotContain(SineFit.ThreeParameter(x, Rate, 10.MHz()).Findings, finding => finding.Code == "record-not-finite");
        x[40] = -1.01e150;
        Assert.Contains("sample 40", SineFit.ThreeParameter(x, Rate, 10.MHz()).Findings[0].Message, StringComparison.Ordinal);
    }

    // 4.8 periods in 10 µs are 480 kHz, five of them 10.4 µs; 0.6 periods 60 kHz, 83.3 µs. 495.2 periods lie 480 kHz below 50 MHz.
    [Theory]
    [InlineData(4.8, "few-periods", "the record holds 4.8 periods", "capture at least 10.4 µs (five periods)")]
    [InlineData(0.6, "sine-fit-under-one-period", "the record holds 0.6 periods of 60 kHz", "capture at least 83.3 µs (five periods), or give the frequency and fit three parameters")]
    [InlineData(495.2, "near-nyquist", "the frequency is 480 kHz from half the sample rate: 4.8 periods of the beat", "sample faster, or capture a longer record")]
    public void TooFewPeriods_AreToldWithWhatWouldDo(double periods, string code, string message, string remedy)
    {
        Finding finding = SineFit.FourParameter(Make(1000, periods / 1000), Rate).Findings.Single(one => one.Code == code);
        Assert.StartsWith(message, finding.Message, StringComparison.Ordinal);
        Assert.Equal(remedy, finding.Remedy);
    }

    // A start ten bins away does not settle on the line: half a bin of 100 kHz is 50 kHz.
    [Fact]
    public void AStartFarFromTheLine_IsToldHowNearItMustBe()
    {
        string[] codes = Enumerable.Range(4, 20).Select(bins => SineFit.FourParameter(Make(1000, 0.1, 1, 0.3, 0, 0.001), Rate, Frequency.FromHertz(1e7 + bins * 1e5)))
            .Where(fit => fit.Sine is null && fit.Findings[0].Code == "sine-fit-not-converged").Select(fit => fit.Findings[0].Remedy!).ToArray();
        Assert.NotEmpty(codes);
        Assert.All(codes, remedy => Assert.StartsWith("start within half a bin, 50 kHz, of the frequency", remedy, StringComparison.Ordinal));
    }
}
