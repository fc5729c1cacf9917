using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Chain;

namespace Acquisition.Core;

// Cables with an open end: what their echoes do to a signal, and what stops them (handbook 7.5, 7.7).
public sealed partial class MeasurementChain
{
    /// <summary>A delay of a sixth of the edge, a round trip of a third: a shorter line acts as what it is all together (handbook 7.7).</summary>
    private const double ShortLine = 1.0 / 3;

    /// <summary>A straight edge whose whole ramp is no longer than the round trip, 0.8 of it from 10 % to 90 %, shows the echoes in full (handbook 7.7).</summary>
    private const double LongLine = 0.8;

    private IReadOnlyList<CableTermination>? _terminations;

    private IEnumerable<CableRun> OpenCables => CableRun.Of(Source, _elements, FrontEnd).Where(run => run.IsOpen);

    /// <summary>The ways to terminate its open cables that do not load a signal's source beyond what a terminated input usually stands.</summary>
    /// <param name="peak">The peak of the signal.</param>
    /// <param name="rms">Its rms value, V.</param>
    internal IEnumerable<CableTermination> Terminations(PeakVoltage peak, double rms)
    {
        _terminations ??= OpenCables.SelectMany(run => CableTermination.Of(this, run)).ToList();
        if (VoltageCautions.For(peak).Count > 0)
            return [];
        return _terminations.Where(way => !way.IsLoad || Watts(way.Chain, rms) <= UsualWatts);
    }

    // What a generator that shows what its load gets brings without it counts.
    private double Watts(MeasurementChain terminated, double rms)
    {
        double volts = rms * Source.Scale * terminated.Loading.ReferenceGain.ToAmplitudeRatio().SiValue;
        return volts * volts / OpenCables.Min(run => run.Ohms);
    }

    private void AddOpenCables(List<Finding> findings)
    {
        foreach (CableRun run in OpenCables)
        {
            findings.Add(new Finding(
                "cable-unterminated", Severity.Warning, $"{Ends(run)}: {Runs(run)}; only edges of more than {Duration.FromSeconds(run.RoundTrip / ShortLine).InWords(3)} take it for a capacitance of {Capacitance.FromFarads(run.Farads).InWords(3)}",
                $"an end or a beginning of {Resistance.FromOhms(run.Ohms).InWords()}", "handbook 7.7"));
        }
    }

    /// <summary>What open cables do to an edge, or to a tone where there is none: judged by how long the edge takes beside the way to and fro.</summary>
    private void AddOpenCables(List<Finding> findings, Edge? edge, double highest, PeakVoltage peak, double rms)
    {
        // With a signal more is known than what the chain alone could say.
        findings.RemoveAll(finding => finding.Code == "cable-unterminated");
        if (edge is null && highest == 0)
            return;
        // A tone changes as fast as an edge whose knee it is (handbook 4.4).
        double rise = edge?.RiseTime.SiValue ?? 0.5 / highest;
        foreach (CableRun run in OpenCables)
        {
            string seen = Shown(this, edge, highest) is { } excess ? edge is null ? $"; {Frequency.FromHertz(highest).InWords()} is shown {Much(excess)}" : $"; {Called(edge)} overshoots by {Over(excess)} on the display" : "";
            if (run.RoundTrip <= ShortLine * rise)
            {
                string slow = edge is null ? "a sixth of a period" : $"a third of the edge of {edge.RiseTime.InWords()}";
                findings.Add(new Finding(
                    "cable-unterminated", Severity.Note, $"{Ends(run)}: there and back takes {Duration.FromSeconds(run.RoundTrip).InWords(3)}, less than {slow}, so that it acts as a capacitance of {Capacitance.FromFarads(run.Farads).InWords(3)}{seen}", null, "handbook 7.7"));
                continue;
            }
            bool isFull = rise <= LongLine * run.RoundTrip && Math.Abs(Shown(this, edge, highest) ?? 0) > 0.1;
            findings.Add(new Finding(
                "cable-unterminated", isFull ? Severity.Failure : Severity.Warning, $"{Ends(run)}: {Runs(run)}{seen}", WaysToTerminate(edge, highest, peak, rms), "handbook 7.5, 7.7"));
        }
    }

    private string? WaysToTerminate(Edge? edge, double highest, PeakVoltage peak, double rms)
    {
        if (VoltageCautions.For(peak).Count > 0)
            return "what is said of its safety comes first";
        var ways = Terminations(peak, rms).Select(way => (way.Words, way.IsLoad, way.Chain, Excess: Shown(way.Chain, edge, highest))).Where(way => way.Excess is not null)
            .OrderBy(way => Math.Abs(way.Excess!.Value)).Select(way => $"{way.Words} ({Then(way.Chain, edge, way.Excess!.Value)})").ToList();
        return ways.Count > 0 ? string.Join("; or ", ways) : "a probe at the node instead of the cable";
    }

    /// <summary>What a terminated chain makes of an edge in words, as <c>cable-unterminated</c> says it: how far it overshoots and what is left of the amplitude.</summary>
    internal string Then(MeasurementChain terminated, Edge? edge) => Then(terminated, edge, edge is null ? null : Shown(terminated, edge, 0));

    /// <summary>What is shown, what is left of the amplitude at DC, and that a terminating input stands little: 5 V rms at 50 Ω (common practice).</summary>
    private string Then(MeasurementChain terminated, Edge? edge, double? excess)
    {
        string shown = excess is not { } value ? "" : edge is null ? $"then shown {Much(value)}, " : $"then {Over(value)} of overshoot, ";
        double left = terminated.Response.ReferenceGain.ToAmplitudeRatio().SiValue;
        string loaded = terminated.FrontEnd.IsTerminated && !FrontEnd.IsTerminated ? "; look up first what it stands, usually 5 V rms" : "";
        return $"{shown}{Ratio.FromFraction(left).InWords(3)} of the amplitude{loaded}";
    }

    /// <summary>By how much an edge overshoots, or a tone is shown too high; null where that is not computed.</summary>
    private static double? Shown(MeasurementChain chain, Edge? edge, double highest)
    {
        Response response = chain.Response;
        if (!response.PassesDc)
            return null;
        return edge is null ? (response.Magnitude(highest) / response.ReferenceMagnitude) - 1 : response.OvershootOf(edge).SiValue;
    }

    private static string Called(Edge edge) => edge.RiseTime.SiValue > 0 ? "an edge of " + edge.RiseTime.InWords() : "an ideal edge";

    // Less than a thousandth is said to be nothing.
    private static string Over(double overshoot) => Ratio.FromFraction(overshoot < 1e-3 ? 0 : overshoot).InWords(3);

    private static string Much(double excess) => Ratio.FromFraction(Math.Abs(excess)).InWords(3) + (excess < 0 ? " too low" : " too high");

    private static string Ends(CableRun run) =>
        $"{run.Name} of {Resistance.FromOhms(run.Ohms).InWords()} begins at {(double.IsInfinity(run.SourceOhms) ? "an open end" : Resistance.FromOhms(run.SourceOhms).InWords(3))} (reflection {FewDigits.Number(run.SourceReflection, 3)}) "
        + $"and ends in {(double.IsInfinity(run.LoadOhms) ? "an open end" : Resistance.FromOhms(run.LoadOhms).InWords(3))} (reflection {FewDigits.Number(run.LoadReflection, 3)})";

    private string Runs(CableRun run)
    {
        string trip = $"an echo follows every {Duration.FromSeconds(run.RoundTrip).InWords(3)}";
        return run.Echo < 0
            ? $"{trip}, a step overshoots by {Ratio.FromFraction(-run.Echo).InWords(3)} at its end and rings at about {Frequency.FromHertz(RingsAt(run)).InWords(3)}"
            : $"{trip}, each {Ratio.FromFraction(run.Echo).InWords(3)} of the one before, so that a step climbs in stairs";
    }

    /// <summary>Where the gain is largest below a quarter of a wave: what hangs on the ends lowers it.</summary>
    private double RingsAt(CableRun run)
    {
        double quarter = 1 / (4 * run.Seconds), best = quarter, largest = 0;
        for (double part = 0.25; part <= 1.01; part += 0.005)
        {
            double gain = Response.Magnitude(part * quarter);
            if (gain > largest)
                (best, largest) = (part * quarter, gain);
        }
        return best;
    }
}
