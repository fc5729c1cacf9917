using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Records;
using Acquisition.Core.Tests.Handbook;
using Xunit;

namespace Acquisition.Core.Tests.Records;

/// <summary>Every check value of handbook 8 that is about records: trapezoid, exponential and second-order steps, states, settling, jitter.</summary>
public sealed class PulseHandbookTests
{
    [Theory]
    [HandbookData("PP-001", "PP-002", "PP-003", "PP-004", "PP-005", "PP-006")]
    public void Trapezoid_IsMeasuredByTheDefinitions(string id)
    {
        PulseSettings known = PulseSettings.Default.WithStateLevels(0.2.V(), 1.2.V());
        if (id == "PP-006")
            known = known.WithReferences(Ratio.FromPercent(20), Ratio.FromPercent(50), Ratio.FromPercent(80));
        PulseMeasurement pulses = PulseMeasurement.Of(PulseRecords.Trapezoid(), known);

        CheckValue.All[id].Confirm(id switch
        {
            "PP-001" => pulses.RisingDuration.Value.Mean.Seconds,
            "PP-002" => pulses.FallingDuration.Value.Mean.Seconds,
            "PP-003" => pulses.PositivePulseDuration.Value.Mean.Seconds,
            "PP-004" => pulses.Transitions[0].Instant.Seconds,
            "PP-005" => pulses.RisingSlewRate.Value.Mean.ToQuantity().SiValue,
            _ => pulses.RisingDuration.Value.Mean.Seconds,
        });
        Assert.Equal(2, pulses.TransitionCount);
        Assert.Equal("incomplete-pulse", pulses.Period.Reason!.Code);
    }

    [Theory]
    [HandbookData("PP-H")]
    public void HistogramMode_IsTheCenterOfTheFullestBin(string id)
    {
        CheckValue v = CheckValue.All[id];
        StateLevels states = PulseMeasurement.Of(PulseRecords.Trapezoid(), PulseSettings.Default.WithStates(StateLevelMethod.HistogramBinCenter, v.Integer("bins"))).States.Value;

        v.Confirm((id[^1] == 'L' ? states.Low : states.High).SiValue);
    }

    [Theory]
    [HandbookData("PP-SH")]
    public void ShortestHalf_HasAMeanAndAMidpoint(string id)
    {
        CheckValue v = CheckValue.All[id];
        double[] sorted = v.Numbers("values").Order().ToArray();
        ShortestHalf half = ShortestHalf.OfSorted(sorted, 0, sorted.Length);

        v.Confirm(id == "PP-SH1" ? half.Midpoint : half.Mean);

        // The same values as codes of 5 mV.
        Record codes = Record.FromCodes(sorted.Select(x => (short)Math.Round(x / 0.005)).ToArray(), 1.GSaPerS(), 5.mV(), 0.V());
        AmplitudeDistribution distribution = AmplitudeDistribution.Of(codes.Samples, 100);
        ShortestHalf ofCodes = ShortestHalf.OfCodes(distribution, 0, distribution.Counts.Length);
        v.Confirm(id == "PP-SH1" ? ofCodes.Midpoint : ofCodes.Mean);
    }

    [Theory]
    [HandbookData("PP-RC0", "PP-RC1", "PP-RC2")]
    public void ExponentialEdge_ReadsLongAtFewSamples(string id)
    {
        CheckValue v = CheckValue.All[id];
        double fs = v.Number("fs"), t0 = v.Number("t0"), tau = v.Number("tau");
        double[] volts = Enumerable.Range(0, v.Integer("N")).Select(i => i / fs > t0 ? 1 - Math.Exp(-(i / fs - t0) / tau) : 0).ToArray();
        PulseMeasurement pulses = PulseMeasurement.Of(Record.FromVolts(volts, SampleRate.FromSamplesPerSecond(fs)), PulseSettings.Default.WithStateLevels(0.V(), 1.V()));

        v.Confirm(pulses.RisingDuration.Value.Mean.Seconds);
    }

    [Theory]
    [HandbookData("PP-2O1", "PP-2O3", "PP-2O4")]
    public void SecondOrderStep_OvershootsAndSettlesByTheDefinitions(string id)
    {
        PulseMeasurement pulses = PulseMeasurement.Of(PulseRecords.SecondOrderStep(), PulseSettings.Default.WithStateLevels(0.V(), 1.V()));
        PulseTransition edge = Assert.Single(pulses.Transitions);

        CheckValue.All[id].Confirm(id switch
        {
            "PP-2O1" => edge.Overshoot.Value.Fraction,
            "PP-2O3" => edge.TransitionDuration.Value.Seconds,
            _ => edge.SettlingDuration(Ratio.FromPercent(2)).Value.Seconds,
        });
    }

    [Theory]
    [HandbookData("PP-SU")]
    public void SinglePole_SettlesFromItsMiddleInTheLogarithmOfTheBand(string id)
    {
        CheckValue v = CheckValue.All[id];
        const double fs = 1000;
        double[] volts = Enumerable.Range(0, 20_000).Select(i => i / fs > 1 ? 1 - Math.Exp(-(i / fs - 1)) : 0).ToArray();
        PulseTransition edge = Assert.Single(PulseMeasurement.Of(Record.FromVolts(volts, 1.kSaPerS()), PulseSettings.Default.WithStateLevels(0.V(), 1.V())).Transitions);

        // Straight lines between samples at a thousandth of the time constant err by their curvature, some 1e-7.
        Assert.Equal(v.Expected, edge.SettlingDuration(Ratio.FromFraction(v.Number("band"))).Value.Seconds, 1e-6);
    }

    [Theory]
    [HandbookData("PP-PD1", "PP-PD2")]
    public void PeriodAndDutyFactor_AreThoseOfTheSameCycle(string id)
    {
        CheckValue v = CheckValue.All[id];
        double[] rising = v.Numbers("rising_50"), falling = v.Numbers("falling_50");
        PulseMeasurement pulses = PulseMeasurement.Of(PulseRecords.FromInstants(rising, falling, 250e-9, 10e9));

        if (id == "PP-PD1")
            Assert.Equal(v.Expected, pulses.Period.Value.Mean.Seconds, 1e-16);
        else
            Assert.Equal(v.Expected, pulses.DutyFactor.Value.Mean.Fraction, 1e-9);
    }

    [Theory]
    [HandbookData("JI-001", "JI-002", "JI-003", "JI-004", "JI-005", "JI-006", "JI-007")]
    public void Jitter_IsThatOfTheDefinitions(string id)
    {
        double[] off = [0, 3e-12, -2e-12, 1e-12, 4e-12, -5e-12, 2e-12];
        Duration[] instants = off.Select((x, k) => Duration.FromSeconds(k * 1e-9 + x)).ToArray();
        EdgeJitter jitter = EdgeJitter.Of(instants);

        CheckValue.All[id].Confirm(id switch
        {
            "JI-001" => jitter.PeriodJitter.Seconds,
            "JI-002" => jitter.PeriodJitterPeakToPeak.Seconds,
            "JI-003" => jitter.CycleToCycleMost.Seconds,
            "JI-004" => jitter.CycleToCycleRms.Seconds,
            "JI-005" => jitter.TimeIntervalErrorRms.Seconds,
            "JI-006" => EdgeJitter.Of(instants, 0.s(), 1.ns()).TimeIntervalErrorRms.Seconds,
            _ => jitter.ClockPeriod.Seconds,
        });
    }

    [Theory]
    [HandbookData("JI-010", "JI-011")]
    public void WhiteEdgeJitter_ShowsInPeriodsAndCyclesByTheirFactors(string id)
    {
        var random = new System.Random(7);
        double[] instants = Enumerable.Range(0, 100_000).Select(k => 1000.0 * k + Gaussian(random)).ToArray();
        EdgeJitter jitter = EdgeJitter.OfSeconds(instants);

        Assert.Equal(CheckValue.All[id].Expected, id == "JI-010" ? jitter.PeriodJitter.Seconds : jitter.CycleToCycleRms.Seconds, 0.02);
    }

    private static double Gaussian(System.Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    [Theory]
    [HandbookData("JI-010", "JI-011")]
    public void WhiteEdgeJitter_HasItsFactors(string id) =>
        CheckValue.All[id].Confirm((id == "JI-010" ? EdgeJitter.WhitePeriodJitter(1.s()) : EdgeJitter.WhiteCycleToCycleJitter(1.s())).Seconds);

    [Theory]
    [HandbookData("PP-LV")]
    public void WrongStateLevel_MakesTheDurationWrongByItsSensitivity(string id)
    {
        CheckValue v = CheckValue.All[id];
        double[] references = v.Numbers("references");
        Ratio proximal = Ratio.FromFraction(references[0]), distal = Ratio.FromFraction(references[1]);
        bool exponential = id[^1] == 'E';

        v.Confirm((exponential ? StateLevelSensitivity.OfExponentialEdge(proximal, distal) : StateLevelSensitivity.OfGaussianEdge(proximal, distal)).Fraction);

        // The same on a record: the high level given a thousandth too high.
        Signal edge = Signal.Step(1.Vpp(), 100.ns(), exponential ? EdgeShape.Exponential : EdgeShape.Gaussian);
        Record record = new SimulatedCapture(edge, 10.GSaPerS(), 20.kpts()).WithStart(-500.ns()).Capture();
        double low = record.ReadingAt(0), high = record.ReadingAt(19_999);
        PulseSettings right = PulseSettings.Default.WithReferences(proximal, Ratio.FromPercent(50), distal).WithStateLevels(Voltage.FromVolts(low), Voltage.FromVolts(high));
        PulseSettings wrong = right.WithStateLevels(Voltage.FromVolts(low), Voltage.FromVolts(high + 0.001));
        double expected = PulseMeasurement.Of(record, right).RisingDuration.Value.Mean.Seconds, read = PulseMeasurement.Of(record, wrong).RisingDuration.Value.Mean.Seconds;
        Assert.Equal(v.Expected, (read / expected - 1) / 0.001, 0.02 * v.Expected);
    }

    [Theory]
    [HandbookData("PP-ST", "PP-RCX", "PP-2O2")]
    public void ContinuousSteps_HaveTheValuesThatRecordsApproach(string id)
    {
        CheckValue v = CheckValue.All[id];
        Response pole = Response.SinglePole(Frequency.FromHertz(1 / (2 * Math.PI * (v.Has("tau") ? v.Number("tau") : 1))));

        v.Confirm(id switch
        {
            "PP-RCX" => pole.RiseTime.Seconds,
            "PP-2O2" => Response.SecondOrder(100.MHz(), Ratio.FromFraction(v.Number("zeta"))).Overshoot.Fraction,
            _ => pole.SettlingTime(Ratio.FromFraction(v.Number("band"))).Seconds,
        });
    }
}
