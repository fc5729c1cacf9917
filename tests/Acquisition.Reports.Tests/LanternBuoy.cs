using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using Acquisition.Core;
using Acquisition.Core.Formulas;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Acquisition.Core.Records;

namespace Acquisition.Reports.Tests;

/// <summary>One result of each kind, from the workshop that builds the lantern buoy. Its instruments and readings are invented.</summary>
internal static class LanternBuoy
{
    private static readonly Lazy<IReadOnlyDictionary<string, Report>> All = new(() => Make().ToDictionary(x => x.Key, x => x.Value));

    internal const string Sheet =
        """
        # Mixer board of the lantern buoy
        given  edge_read = 3.42 ns
        given  supply    = 5.02 V
        let    chain     = rise_time(gaussian(200 MHz))
        let    skew      = 350 ps
        let    at_board  = supply * (1 ± 0.5 %)
        check  at_board >= 4.75 V                else "the regulator is too low"
        check  at_board <= 5.03 V                else "the regulator is too high"
        check  skew < 500 ps                     else "the two outputs are too far apart"
        check  skew < 350 ps                     else "the skew must stay below 350 ps"
        check  edge_read <= 3.2 ns               else "the driver is too slow for the mixer"
        check  skew < 500 ps and supply > 4 V    else "start-up is not safe"
        show   skew in ps
        show   chain in ns, 3 digits
        """;

    internal static IReadOnlyDictionary<string, Report> Reports => All.Value;

    internal static WorksheetResult Worksheet() => Core.Worksheet.Build(Sheet).Evaluate();

    private static IEnumerable<KeyValuePair<string, Report>> Make()
    {
        Bench bench = Bench.Parse(Read("docs/examples/lantern-buoy.json"));
        Catalogue catalogue = Catalogue.Parse(Read("docs/examples/workshop-catalogue.json"));
        yield return new("outlook", bench.Outlook.ToReport("Beacon clock at the mixer board").WithIdentification("board", "mixer board 017").WithIdentification("operator", "second bench, day shift").WithIdentification("date", "2026-03-14"));
        yield return new("safety", ChargerNode().ToReport("Switching node of the solar charger"));
        yield return new("comparison", OutlookComparison.Of(With(200.MHz(), 16.pF()), With(500.MHz(), 9.5.pF())).ToReport("A faster probe", "probe of 200 MHz", "probe of 500 MHz"));
        Requirement wanted = new Requirement(Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns())).WithEdgeTolerance(15.Percent()).WithAmplitudeTolerance(10.Percent()).WithHarmonics(5).WithWindow(1.ms()).WithSmallestDetail(100.mV()).WithSourceResistance(33.Ohm());
        yield return new("specification", wanted.Specify().ToReport("Needed for the beacon clock"));
        Shortlist shortlist = Shortlist.Of(wanted, catalogue);
        yield return new("shortlist", shortlist.ToReport("Which instrument for the beacon clock", 3));
        yield return new("setup-advice", SetupAdvice.For(wanted, shortlist.Candidates[0].Instrument, shortlist.Candidates[0].Probe).ToReport("Set-up for the beacon clock"));
        yield return new("worksheet", Worksheet().ToReport("Mixer board, unit 017").WithIdentification("serial number", "017"));
        Uncertain<Duration> read = Uncertain.Of(3.42.ns(), Spread.Standard(40.ps(), 9), "edge as read");
        Uncertain<Duration> offset = Uncertain.Of(0.ns(), Spread.Bound(60.ps()), "delay of the cursor");
        Uncertain<Duration> edge = read + offset;
        yield return new("budget", edge.Budget().ToReport("Edge of the beacon clock"));
        Formula rule = Formula.Build("0.35 / (100 MHz ± 5 %)");
        MonteCarloResult trials = rule.PropagateDistributions(MonteCarloOptions.Default.WithTrials(200_000).WithSeed(17).WithThreads(1));
        yield return new("monte-carlo", trials.ToReport("Rise time by the rule of thumb", FirstOrderValidation.Of(rule.Budget(), trials)));
        yield return new("decision", DecisionRule.GuardedAcceptance.Decide(edge, ToleranceLimits.AtMost(3.5.ns())).ToReport("Is the edge short enough?"));
        Record clock = new SimulatedCapture(Signal.Square(24.MHz(), 3.3.Vpp(), 2.5.ns()), 2.GSaPerS(), 2.kpts())
            .Through(Response.Gaussian(200.MHz())).WithNoise(10.mVrms()).WithConverter(8.bit(), 4.Vpp()).Capture();
        yield return new("pulse", PulseMeasurement.Of(clock).ToReport("Beacon clock as captured", 4));
        Record carrier = new SimulatedCapture(Signal.Sine(10.1.MHz(), 0.9.Vpk()), 200.MSaPerS(), 4096.pts()).WithNoise(2.mVrms()).WithConverter(10.bit(), 2.Vpp()).Capture();
        yield return new("sine-fit", SineFit.FourParameter(carrier).ToReport("Radio burst: carrier"));
        yield return new("single-tone", SingleToneTest.Of(carrier).ToReport("Radio burst: spectrum"));
        double[] hertz = Enumerable.Range(0, 13).Select(i => 1e6 * Math.Pow(10, i / 5.0)).ToArray();
        Sweep Through(Response response) => Sweep.OfDecibels(hertz, hertz.Select(f => Math.Round(20 * Math.Log10(response.AmplitudeRatio(f.Hz()).Fraction), 3)).ToArray(), hertz.Select(_ => 0.02).ToArray());
        Sweep sweep = Through(Response.SinglePole(90.MHz()));
        yield return new("sweep", sweep.ToReport("Front end", sweep.Bandwidth(), sweep.FitTo(Response.SinglePole)));
        AttributionResult attribution = RollOffAttribution.OfElements("generator", "probe", "front end")
            .WithSweep(Through(Response.SinglePole(400.MHz()).Then(Response.SinglePole(90.MHz()))), "generator", "front end")
            .WithSweep(Through(Response.SinglePole(400.MHz()).Then(Response.SinglePole(90.MHz())).Then(Response.SinglePole(150.MHz()))), "generator", "probe", "front end").Solve();
        yield return new("attribution", attribution.ToReport([100.MHz()], "Who takes the carrier"));
        yield return new("chain-breakdown", Chain(200.MHz(), 16.pF()).RiseTimeByParts().ToReport("Rise time of the beacon clock's chain"));
    }

    private static MeasurementChain Chain(Frequency bandwidth, Capacitance capacitance) => MeasurementChain.From(33.Ohm())
        .Probe(Probe.Passive(10, 10.MOhm(), capacitance, bandwidth).WithName("passive probe 10:1").WithGroundLead(15.mm()))
        .Into(FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(200.MHz())).WithName("input, 200 MHz"));

    private static Outlook With(Frequency bandwidth, Capacitance capacitance) =>
        Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns()).Through(Chain(bandwidth, capacitance)).SampledBy(new Digitizer(2.GSaPerS(), 14.Mpts(), 8.bit())).Over(1.us());

    private static Outlook ChargerNode()
    {
        Bench bench = Bench.Parse(Read("docs/examples/lantern-buoy.json").Replace("\"3.3 Vpp\"", "\"900 Vpp\"", StringComparison.Ordinal).Replace("\"1.65 V\"", "\"450 V\"", StringComparison.Ordinal).Replace("24 MHz\"", "100 kHz\"", StringComparison.Ordinal));
        return bench.Outlook;
    }

    internal static string Folder()
    {
        string folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Acquisition.Core.sln"))) folder = Path.GetDirectoryName(folder)!;
        return folder;
    }

    private static string Read(string file) => File.ReadAllText(Path.Combine(Folder(), file));
}
