using System;
using System.Linq;
using Acquisition.Core;
using Acquisition.Core.Literals;
using Xunit;
using Record = Acquisition.Core.Record;

namespace Acquisition.Reports.Tests;

/// <summary>What each kind of picture shows, held to closed forms and to the result it was drawn from.</summary>
public sealed class FactoryTests
{
    /// <summary>|H| = 1/√(1 + (f/f3)²), the single pole of any textbook: -3.0103 dB at the corner, -20.04 dB a decade above.</summary>
    [Fact]
    public void ResponsePlot_OfASinglePole_PassesHalfPowerAtItsCorner_AndFallsBy20DecibelsPerDecade()
    {
        Plot plot = ResponsePlot.Of(Response.SinglePole(100.MHz()));
        Trace curve = plot.Content.Traces[0];

        Assert.Equal(1e6, plot.X.Lower, 1);
        Assert.Equal(1e9, plot.X.Upper, 1);
        Assert.Equal(-10 * Math.Log10(101), curve.Y[^1], 9);
        Assert.Equal(100e6, plot.Content.Vertical.Single().Value, 1e-3);
        Assert.Equal("bandwidth 100 MHz", plot.Content.Vertical.Single().Name);
        Assert.Equal(10 * Math.Log10(0.5), plot.Content.Horizontal.Single().Value, 12);
    }

    [Fact]
    public void ResponsePlot_OfACascade_DrawsEachStageThatFalls_AndNamesThoseThatDoNot()
    {
        Plot plot = StandardPlots.All["response-cascade"](PlotOptions.Default);

        Assert.Equal(["all stages", "1: Gaussian, 200 MHz", "2: Butterworth 4, 350 MHz", ""], plot.Content.Traces.Select(trace => trace.Name));
        Assert.Contains("Not drawn: 3: delay, 5 ns (flat).", plot.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void ResponsePlot_OfABandPass_MarksBothEdges() =>
        Assert.Equal(["lower edge", "upper edge"], StandardPlots.All["response-band"](PlotOptions.Default).Content.Vertical.Select(edge => edge.Name[..10]));

    [Fact]
    public void ResponsePlot_OfAMeasuredResponse_EndsWhereTheDataEnd()
    {
        Response measured = Response.Measured("probe", [new(1.MHz(), 0.dB()), new(100.MHz(), -3.5.dB()), new(200.MHz(), -9.dB())]);
        Trace curve = ResponsePlot.Of(measured, PlotOptions.Default.WithFrequencies(1.MHz(), 1.GHz())).Content.Traces[0];

        Assert.InRange(curve.X[^1], 195e6, 200e6 * (1 + 1e-12));
    }

    [Fact]
    public void ResponsePlot_OnALinearAxis_BeginsAtDc_WhichALogarithmicOneRefuses()
    {
        Assert.Equal(0, ResponsePlot.Of(Response.Gaussian(100.MHz()), PlotOptions.Default.WithLinearFrequency()).X.Lower);
        Assert.Contains("WithLinearFrequency", Assert.Throws<ArgumentException>(() => ResponsePlot.Of(Response.Gaussian(100.MHz()), PlotOptions.Default.WithFrequencies(0.Hz(), 1.GHz()))).Message, StringComparison.Ordinal);
    }

    /// <summary>10-90 % of exp(-t/τ) takes τ ln 9, from τ ln(10/9) to τ ln 10.</summary>
    [Fact]
    public void StepPlot_OfASinglePole_MarksTenAndNinetyPercentWhereTheExponentialHasThem()
    {
        double tau = 1 / (2 * Math.PI * 100e6);
        Plot plot = StepPlot.Of(Response.SinglePole(100.MHz()));
        PlotLimit rise = plot.Content.Vertical.Single();

        Assert.Equal(tau * Math.Log(10.0 / 9), rise.From, 1e-15);
        Assert.Equal(tau * Math.Log(10), rise.To, 1e-15);
        Assert.Equal([10.0, 90.0], plot.Content.Horizontal.Select(level => level.Value));
    }

    [Fact]
    public void StepPlot_RefusesWhatHasNoStepToDraw()
    {
        Assert.Throws<ArgumentException>(() => StepPlot.Of(Response.HighPass(10.Hz())));
        Assert.Throws<ArgumentException>(() => StepPlot.Of(Response.Attenuator(20.dB())));
    }

    /// <summary>The n-th harmonic of a square wave is 1/n of the first (Fourier 1822): -20 lg n.</summary>
    [Fact]
    public void SpectrumPlot_OfASquareWave_FallsAsOneOverTheNumberOfTheHarmonic()
    {
        Trace applied = SpectrumPlot.Of(Signal.Square(10.MHz(), 2.Vpp()), Response.BrickWall(10.GHz())).Content.Traces.Single(trace => trace.Name == "applied");

        for (int i = 0; i < applied.X.Count; i++) Assert.Equal(-20 * Math.Log10(applied.X[i] / 10e6), applied.Y[i], 6);
        Assert.Equal(3, applied.X[1] / applied.X[0], 9);
    }

    /// <summary>A line at f shows at |f - k fs| (handbook 5.3): of 24 MHz at 500 MSa/s the 11th harmonic, 264 MHz, shows at 236 MHz.</summary>
    [Fact]
    public void SpectrumPlot_OfAnOutlook_MarksFoldedLinesWhereTheyShow()
    {
        Plot plot = StandardPlots.All["spectrum-clock"](PlotOptions.Default);
        Trace folded = plot.Content.Traces.Single(trace => trace.Name.StartsWith("folded", StringComparison.Ordinal));

        Assert.Equal([236e6, 188e6, 140e6], folded.X.Select(hertz => Math.Round(hertz)));
        Assert.All(plot.Content.Traces.Single(trace => trace.Name == "displayed").X, hertz => Assert.InRange(hertz, 0, 250e6));
        Assert.Equal(250e6, plot.Content.Vertical.Single().Value, 1e-3);
        Assert.Contains("at 264 MHz, shows at 236 MHz", plot.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void TracePlot_PassesThroughEverySample_AndTheSincFollowsASineBetweenThem()
    {
        double[] volts = Enumerable.Range(0, 400).Select(i => Math.Sin(2 * Math.PI * 0.31 * i)).ToArray();
        Plot plot = TracePlot.Of(Record.FromVolts(volts, 1.GSaPerS()), PlotOptions.Default.WithTimes(150.ns(), 200.ns()));
        Trace sinc = plot.Content.Traces[0], samples = plot.Content.Traces[2];

        Assert.Equal(51, samples.X.Count);
        for (int i = 0; i < samples.X.Count; i++)
        {
            Assert.Equal(volts[150 + i], samples.Y[i]);
            Assert.Equal(samples.Y[i], sinc.Y[16 * i], 12);
        }
        // The sinc of 32 taps errs by about 1e-5 up to 0.4 of the rate (handbook 5.9).
        Assert.All(sinc.X.Select((t, i) => (t, i)), at => Assert.Equal(Math.Sin(2 * Math.PI * 0.31e9 * at.t), sinc.Y[at.i], 4e-5));
    }

    [Fact]
    public void TracePlot_WithoutTimes_ShowsTheSteepestStepOfALongRecord()
    {
        double[] volts = new double[100_000];
        for (int i = 77_777; i < volts.Length; i++) volts[i] = 1;
        Trace samples = TracePlot.Of(Record.FromVolts(volts, 1.GSaPerS())).Content.Traces[2];

        Assert.Contains(1, samples.Y);
        Assert.Contains(0, samples.Y);
        Assert.Equal(40, samples.X.Count);
    }

    [Fact]
    public void TracePlot_RefusesWhatCannotBeDrawnThrough()
    {
        Record two = Record.FromVolts([0, double.NaN, 1], 1.GSaPerS());

        Assert.Contains("at index 1", Assert.Throws<ArgumentException>(() => TracePlot.Of(two)).Message, StringComparison.Ordinal);
        Assert.Contains("two samples", Assert.Throws<ArgumentException>(() => TracePlot.Of(two.Slice(0, 1))).Message, StringComparison.Ordinal);
        Assert.Contains("no sample lies", Assert.Throws<ArgumentException>(() => TracePlot.Of(two, PlotOptions.Default.WithTimes(1.s(), 2.s()))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void RecordPlot_OfPulses_MarksLevelsCrossingsAndPulsesAsMeasured()
    {
        Plot plot = StandardPlots.All["record-runt"](PlotOptions.Default);
        Trace crossings = plot.Content.Traces.Single(trace => trace.Name.StartsWith("crossings", StringComparison.Ordinal)), pulses = plot.Content.Traces.Single(trace => trace.Name == "positive pulses");

        Assert.Equal(10, crossings.X.Count);
        Assert.Equal(5, pulses.X.Count);
        Assert.Equal(crossings.X.Where((_, i) => i % 2 == 0), pulses.X);
        Assert.Equal(crossings.X.Where((_, i) => i % 2 == 1), pulses.Other);
        Assert.Equal(["high", "low", "10", "50", "90"], plot.Content.Horizontal.Select(level => level.Name.Split(' ')[0]));
        Assert.Equal(5.2e-6, plot.Content.Traces.Single(trace => trace.Name == "runts").X.Single(), 0.2e-6);
    }

    [Fact]
    public void RecordPlot_OfALongRecord_KeepsItsExtremes()
    {
        double[] volts = new double[3_000_000];
        (volts[1_234_567], volts[2_000_001]) = (5, -4);
        Plot plot = RecordPlot.Of(Record.FromVolts(volts, 1.GSaPerS()));

        Assert.Equal(5, plot.Content.Traces[0].Y.Max());
        Assert.Equal(-4, plot.Content.Traces[0].Y.Min());
        Assert.True(plot.ToSvg().Length < 60_000);
    }

    [Fact]
    public void RecordPlot_WithoutStates_ShowsTheRecordAndSaysWhy()
    {
        Record sine = Record.FromVolts(Enumerable.Range(0, 1000).Select(i => Math.Sin(0.05 * i)).ToArray(), 1.GSaPerS());
        Plot plot = RecordPlot.Of(PulseMeasurement.Of(sine));

        Assert.Contains("No states were found", plot.Description, StringComparison.Ordinal);
        Assert.Empty(plot.Content.Horizontal);
    }

    [Fact]
    public void SweepPlot_MarksTheEdgeOfTheSweepWithTwiceItsUncertaintyOnEitherSide()
    {
        Sweep sweep = Sweep.OfDecibels([1e6, 10e6, 50e6, 100e6, 200e6], [0, 0, -0.8, -3, -9], [0.1, 0.1, 0.1, 0.1, 0.1]);
        SweepCrossing edge = sweep.Bandwidth().Upper!;
        PlotLimit mark = SweepPlot.Of(sweep).Content.Vertical.Single();

        Assert.Equal(edge.Frequency.Hertz, mark.Value);
        Assert.Equal(edge.Frequency.Hertz + (2 * edge.Uncertainty.Hertz), mark.To, 1e-3);
        Assert.Equal(edge.Frequency.Hertz - (2 * edge.Uncertainty.Hertz), mark.From, 1e-3);
    }

    [Fact]
    public void SweepPlot_OfAFit_ShowsResidualsBelow_ThatAddUpWithTheModel()
    {
        double[] hertz = Enumerable.Range(0, 20).Select(i => 1e6 * Math.Pow(10, i / 8.0)).ToArray();
        // A Gaussian falls by 3.0103 dB times (f/f3)²; every other point lies 0.1 dB off.
        Sweep sweep = Sweep.OfDecibels(hertz, hertz.Select((f, i) => (10 * Math.Log10(0.5) * Math.Pow(f / 120e6, 2)) + (i % 2 == 0 ? 0.1 : -0.1)).ToArray());
        SweepFit fit = sweep.FitTo(Response.Gaussian);
        Plot plot = SweepPlot.Of(sweep, fit);
        Trace residuals = plot.Content.Below!.Content.Traces[0];

        Assert.Equal(20, residuals.X.Count);
        double sum = residuals.Y.Sum(value => value * value);
        Assert.Equal(fit.ResidualDeviation.Decibels, Math.Sqrt(sum / fit.DegreesOfFreedom), 6);
    }

    [Fact]
    public void ShortlistPlot_FillsWhatIsMet_OutlinesWhatIsNot_AndSaysBothInWords()
    {
        Bar[] bars = StandardPlots.All["shortlist-clock"](PlotOptions.Default).Content.Bars.ToArray();

        Assert.Equal(6, bars.Count(bar => bar.Fill == BarFill.Heading));
        Assert.All(bars.Where(bar => bar.Fill == BarFill.Solid), bar => Assert.EndsWith(", met", bar.Note, StringComparison.Ordinal));
        Assert.All(bars.Where(bar => bar.Fill == BarFill.Hollow), bar => Assert.EndsWith(", not met", bar.Note, StringComparison.Ordinal));
        Assert.Contains(bars, bar => bar.Fill == BarFill.Hollow && bar.Value < 0);
        Assert.Single(StandardPlots.All["shortlist-clock"](PlotOptions.Default.WithMostCandidates(1)).Content.Bars, bar => bar.Fill == BarFill.Heading);
    }

    /// <summary>Limits ±a have the standard uncertainty a/√3 (JCGM 100 4.3.7).</summary>
    [Fact]
    public void BudgetPlot_ShowsTheLargestContributionFirst_AndWhatAllMakeTogether()
    {
        Uncertain<Voltage> sum = Uncertain.Of(1.V(), Spread.Standard(3.mV()), "small") + Uncertain.Of(1.V(), Spread.Bound(12.mV()), "large");
        Bar[] bars = BudgetPlot.Of(sum.Budget()).Content.Bars.ToArray();

        Assert.Equal(["large", "small", "combined", "expanded"], bars.Select(bar => bar.Name));
        Assert.Equal(12e-3 / Math.Sqrt(3), bars[0].Value, 1e-12);
        Assert.Equal(Math.Sqrt((48 + 9) * 1e-6), bars[2].Value, 1e-9);
    }

    [Fact]
    public void MonteCarloPlot_CountsEveryTrial_AndCoversWhatTheIntervalSays()
    {
        MonteCarloResult result = MonteCarlo.Run(Uncertain.Of(0.V(), Spread.Bound(1.V()), "x"), (Voltage x) => x, MonteCarloOptions.Default.WithTrials(100_000).WithSeed(1));
        Plot plot = MonteCarloPlot.Of(result);
        Trace columns = plot.Content.Traces[0];

        // A rectangular distribution fills its columns alike; the outermost thousandths lie beyond the picture.
        Assert.Equal(99.8, columns.Y.Sum(), 0.01);
        Assert.All(columns.Y, share => Assert.Equal(99.8 / columns.Y.Count, share, 0.35));
        Assert.Equal([-0.95, 0, 0.95], plot.Content.Vertical.Select(mark => Math.Round(mark.Value, 2)));
    }

    [Fact]
    public void MonteCarloPlot_RefusesABudgetOfAnotherKind()
    {
        MonteCarloResult volts = MonteCarlo.Run(Uncertain.Of(0.V(), Spread.Bound(1.V()), "x"), (Voltage x) => x, MonteCarloOptions.Default.WithTrials(10_000));

        Assert.Throws<ArgumentException>(() => MonteCarloPlot.Of(volts, Uncertain.Of(1.A(), Spread.Bound(1.mA()), "i").Budget()));
    }

    [Fact]
    public void AttributionPlot_DrawsWhatIsDetermined_AndNamesWhatIsNot()
    {
        Plot plot = StandardPlots.All["attribution-levels"](PlotOptions.Default);

        Assert.Equal(["probe A", "probe B", "generator + front end"], plot.Content.Traces.Where(trace => trace.Name.Length > 0).Select(trace => trace.Name));
        Assert.Contains("Not separated: generator, front end.", plot.Description, StringComparison.Ordinal);
        Assert.Equal(BarFill.Hollow, StandardPlots.All["attribution-shares"](PlotOptions.Default).Content.Bars.Single(bar => bar.Name == "generator + front end").Fill);
    }

    [Fact]
    public void TitleAndSizeOfTheOptions_AreThoseOfThePicture()
    {
        foreach (Func<PlotOptions, Plot> draw in StandardPlots.All.Values)
        {
            Plot plot = draw(PlotOptions.Default.WithSize(640, 400).WithTitle("A title of one's own"));

            Assert.Equal("A title of one's own", plot.Title);
            Assert.Equal(640, plot.Content.Width);
        }
    }
}
