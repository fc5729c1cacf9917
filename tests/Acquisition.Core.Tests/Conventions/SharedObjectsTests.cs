using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Numerics;
using System.Threading;
using Acquisition.Core.Attribution;
using Acquisition.Core.Formulas;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Acquisition.Core.Responses;
using Acquisition.Core.Tests.Planning;
using Acquisition.Core.Tests.Records;
using Acquisition.Core.Uncertainty;
using Xunit;

namespace Acquisition.Core.Tests.Conventions;

/// <summary>
/// One object, new and with nothing computed yet, asked by many threads at the same moment gives each of them the same bits as one that a single thread asks. Many objects compute
/// on demand and keep what they found; a cache that others can see half filled would show here, as the last test proves.
/// </summary>
public class SharedObjectsTests
{
    private const int Threads = 8, Rounds = 20, FewRounds = 2;

    /// <summary>What is dear to compute meets its cache more slowly, so that fewer rounds do.</summary>
    private static readonly HashSet<string> Dear = ["brick wall", "skin effect", "Touchstone"];

    /// <summary>A name, and a maker of a new object that gives back the question to ask it.</summary>
    private static readonly Dictionary<string, Func<Func<string>>> Subjects = new()
    {
        ["single pole"] = () => Asking(Response.SinglePole(100.MHz())),
        ["equal poles"] = () => Asking(Response.PolesEqual(5, 100.MHz())),
        ["Gaussian"] = () => Asking(Response.Gaussian(100.MHz())),
        ["Butterworth"] = () => Asking(Response.Butterworth(4, 100.MHz())),
        ["Bessel"] = () => Asking(Response.Bessel(6, 100.MHz())),
        ["Chebyshev"] = () => Asking(Response.Chebyshev(5, 0.5.dB(), 100.MHz())),
        ["second order"] = () => Asking(Response.SecondOrder(100.MHz(), Ratio.FromFraction(0.3))),
        ["brick wall"] = () => Asking(Response.BrickWall(100.MHz())),
        ["skin effect"] = () => Asking(Response.SkinEffect(100.MHz())),
        ["cascade"] = () => Asking(Response.Gaussian(300.MHz()).Then(Response.SecondOrder(400.MHz(), Ratio.FromFraction(0.4))).Then(Response.Delay(2.ns()))),
        ["function"] = () => Asking(Response.FromFunction("by hand", 100.MHz(), hertz => Math.Exp(-hertz * hertz / 1e16))),
        ["table"] = () => Asking(Measured()),
        ["Touchstone"] = () => Asking(TouchstoneData.Parse(Touchstone()).ToResponse("pad", 2, 1, OutsideBand.Hold, OutsideBand.Hold)),
        ["filtered signal"] = () =>
        {
            Signal through = Response.Butterworth(3, 100.MHz()).Apply(Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns()));
            return () => Bits(Enumerable.Range(0, 50).Select(i => through.Value(i * 1e-9)).Append(through.Highest).Append(through.Lowest).Append(through.PeakToPeak.Volts));
        },
        ["bits as signal"] = () =>
        {
            Signal bits = Signal.PseudoRandomBits(7, BitRate.FromBitsPerSecond(10e6), 1.Vpp(), 5.ns());
            return () => Bits(Enumerable.Range(1, 20).Select(n => bits.Harmonic(n).Peak.Volts).Append(bits.Value(1.234e-6)));
        },
        ["chain"] = () =>
        {
            MeasurementChain chain = MeasurementChain.From(50.Ohm()).Probe(Probe.Passive(10, 10.MOhm(), 10.pF(), 200.MHz()).WithGroundLead(150.mm()))
                .Into(FrontEnd.HighImpedance(1.MOhm(), 15.pF(), Response.Gaussian(200.MHz())));
            return () => string.Join("|", chain.Findings)
                + Bits([chain.Response.Bandwidth.Hertz, chain.ResponseFromTip.Bandwidth.Hertz, chain.Loading.AmplitudeRatio(100.MHz()).Fraction]);
        },
        ["outlook"] = () =>
        {
            Outlook outlook = Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns()).Through(Response.Gaussian(100.MHz())).SampledBy(new Digitizer(500.MSaPerS(), 10.kpts(), 8.bit())).Over(10.us());
            return () => outlook + string.Join("|", outlook.Findings) + string.Join("|", outlook.Contributions)
                + Bits([outlook.DisplayedAmplitude.Value.Volts, outlook.DisplayedEdge!.Value.Seconds, outlook.ChainBandwidth!.Value.Hertz, .. outlook.Harmonics.Select(line => line.ShownAt.Hertz)]);
        },
        ["catalogue"] = () =>
        {
            Catalogue catalogue = Catalogue.Parse(DocumentFiles.Read("examples", "workshop-catalogue.json"));
            Requirement wanted = new Requirement(Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns())).WithEdgeTolerance(15.Percent()).WithWindow(1.ms());
            return () => Shortlist.Of(wanted, catalogue).ToString();
        },
        ["record"] = () =>
        {
            Record record = PulseRecords.Trapezoid();
            return () =>
            {
                PulseMeasurement pulses = PulseMeasurement.Of(record);
                return Bits([pulses.RisingDuration.Value.Mean.Seconds, pulses.States.Value.Amplitude.SiValue, .. record.Reconstruct(Reconstruction.Sinc, 4).Trace.ToSiValues()]);
            };
        },
        ["pulse measurement"] = () =>
        {
            PulseMeasurement pulses = PulseMeasurement.Of(PulseRecords.Trapezoid());
            return () => Bits([pulses.RisingDuration.Value.Mean.Seconds, pulses.FallingDuration.Value.Mean.Seconds]) + string.Join("|", pulses.Transitions);
        },
        ["window"] = () =>
        {
            SpectralWindow window = SpectralWindow.OfCosines("own", 0.42, 0.5, 0.08);
            return () => Bits([window.HighestSideLobe.Decibels, window.EquivalentNoiseBandwidthInBins]);
        },
        ["context and functions"] = () =>
        {
            FormulaContext context = FormulaContext.Standard.WithFunctions().WithInput("u", QuantityKind.Voltage);
            return () => string.Join(" ", context.Functions.All.Select(function => function.Signature)) + context.Build("sqrt(u * u) / 50 ohm").EvaluateSi(3);
        },
        ["formula"] = () =>
        {
            Formula formula = FormulaContext.Standard.WithInput("edge", QuantityKind.Duration).WithInput("clock", QuantityKind.Frequency).Build("sqrt(edge^2 + (0.34 / clock)^2)");
            return () => Bits(Enumerable.Range(1, 100).Select(i => formula.EvaluateSi(i * 1e-9, 1e8)).Append(formula.EvaluateSi(1e-9, 3e8)));
        },
        ["problem"] = () =>
        {
            FormulaContext.Standard.TryBuild("srqt(4)", out _, out IReadOnlyList<FormulaProblem> problems);
            return () => problems[0].Message;
        },
        ["worksheet"] = () =>
        {
            Worksheet sheet = Worksheet.Build("given u = 1 V ± 10 mV\nlet p = u^2 / 50 ohm\ncheck p < 25 mW else \"too much\"");
            return () => string.Join("|", sheet.Evaluate().Entries.Select(entry => FormattableString.Invariant($"{entry} {entry.StandardUncertaintyInSi:R} {entry.Verdict}")));
        },
        ["budget"] = () =>
        {
            UncertaintyBudget budget = (Uncertain.Of(1.V(), Spread.Standard(10.mV())) / Uncertain.Of(50.Ohm(), Spread.Bound(1.Ohm()))).Budget();
            return () => budget + string.Join("|", budget.Lines) + string.Join("|", budget.Findings);
        },
        ["trials"] = () =>
        {
            MonteCarloResult result = MonteCarlo.Run(Uncertain.Of(1.V(), Spread.Standard(10.mV())), v => v * 2, MonteCarloOptions.Default.WithTrials(2000).WithThreads(1));
            return () => Bits([.. result.SortedResultsInSi(), result.ShortestInterval().Low.SiValue, result.SymmetricInterval(Ratio.FromPercent(90)).High.SiValue,
                result.Quantile(Ratio.FromPercent(25)).SiValue]);
        },
        ["kind without a name"] = () =>
        {
            QuantityKind kind = QuantityKind.Of(QuantityKind.Voltage.Dimension * QuantityKind.Duration.Dimension * QuantityKind.Length.Dimension);
            return () => kind.Name + kind.Symbol + new Quantity(2, kind);
        },
        ["attribution"] = () =>
        {
            Sweep one = Sweep.OfDecibels([10e6, 1e9], [0, -1], [0, 0.1]), both = Sweep.OfDecibels([10e6, 1e9], [0, -3], [0, 0.1]);
            AttributionResult result = RollOffAttribution.OfElements("probe", "digitizer").WithSweep(one, "probe").WithSweep(both, "probe", "digitizer").WithReference(10.MHz()).Solve();
            return () => result + string.Join("|", result.Findings) + result.ResponseOf("digitizer")!.LevelAt(1.GHz()).Decibels.ToString("R", CultureInfo.InvariantCulture);
        },
    };

    public static TheoryData<string> Names => new(Subjects.Keys);

    [Theory, MemberData(nameof(Names))]
    public void ManyThreadsAtOnce_GetTheBitsOfOneAlone(string subject)
    {
        string alone = Subjects[subject]()();
        int rounds = Dear.Contains(subject) ? FewRounds : Rounds;
        for (int round = 0; round < rounds; round++)
        {
            string[] answers = AllAtOnce(Subjects[subject]());
            Assert.All(answers, answer => Assert.Equal(alone, answer));
        }
    }

    // What the tests above would see of a cache that is announced before it is filled.
    [Fact]
    public void ACacheThatIsSeenHalfFilled_IsFound()
    {
        string alone = new HalfFilled().Ask();
        for (int round = 0; round < 1000; round++)
        {
            if (AllAtOnce(new HalfFilled().Ask).Any(answer => answer != alone))
                return;
        }
        Assert.Fail("the test cannot see what it is made for");
    }

    private static string[] AllAtOnce(Func<string> ask)
    {
        var answers = new string[Threads];
        using var start = new Barrier(Threads);
        var threads = new Thread[Threads];
        for (int i = 0; i < Threads; i++)
        {
            int own = i;
            threads[i] = new Thread(() =>
            {
                start.SignalAndWait();
                try
                {
                    answers[own] = ask();
                }
                catch (Exception refusal)
                {
                    answers[own] = refusal.ToString();
                }
            });
            threads[i].Start();
        }
        foreach (Thread thread in threads)
            thread.Join();
        return answers;
    }

    private static Func<string> Asking(Response response) => () => Bits([
        Or(() => response.RiseTime.Seconds), Or(() => response.Bandwidth.Hertz), Or(() => response.Overshoot.Fraction), Or(() => response.NoiseBandwidth.Hertz),
        .. Enumerable.Range(0, 40).Select(i => Or(() => response.StepAt(Duration.FromNanoseconds(i - 5)).Fraction)),
        .. Enumerable.Range(1, 20).Select(i => response.AmplitudeRatio(Frequency.FromMegahertz(10 * i)).Fraction),
    ]);

    /// <summary>Some responses have no bandwidth or no edge: then they must say so to every thread.</summary>
    private static double Or(Func<double> value)
    {
        try
        {
            return value();
        }
        catch (InvalidOperationException)
        {
            return double.NaN;
        }
    }

    private static string Bits(IEnumerable<double> values) => string.Join(" ", values.Select(value => BitConverter.DoubleToInt64Bits(value).ToString("x16", CultureInfo.InvariantCulture)));

    private static Response Measured() => Response.Measured(
        "sweep", Enumerable.Range(0, 60).Select(i => new FrequencyPoint(Frequency.FromMegahertz(10 * (i + 1)), DecibelRatio.FromDecibels(-3.0 * i * i / 400), Angle.FromDegrees(-4.0 * i))).ToArray(),
        OutsideBand.Hold);

    private static string Touchstone() => "# MHz S DB R 50\n" + string.Concat(Enumerable.Range(1, 60).Select(i =>
        FormattableString.Invariant($"{10 * i} -20 0 {-3.0 * i * i / 400} {-4 * i} -40 0 -20 0\n")));

    private sealed class HalfFilled
    {
        private double[]? _roots;

        public string Ask()
        {
            if (_roots is null)
            {
                _roots = new double[20_000];
                for (int i = 0; i < _roots.Length; i++)
                    _roots[i] = Math.Sqrt(i);
            }
            return Bits([_roots[^1]]);
        }
    }
}
