#:project ../../src/Acquisition.Core/Acquisition.Core.csproj
#:project ../../src/Acquisition.Reports/Acquisition.Reports.csproj
// The steps of docs/tutorial.md in one file: from a signal to an answered bench question.
#region using
using System;
using System.Linq;
using Acquisition.Core;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Acquisition.Reports;
#endregion

Console.WriteLine("[signal]");
#region signal
Signal clock = Signal.Square(24.MHz(), 3.3.Vpp(), riseTime: 2.8.ns());

Console.WriteLine($"period         {clock.Period:G4}");
Console.WriteLine($"third harmonic {clock.Harmonic(3).Peak:G4} at {clock.Harmonic(3).Frequency:G4}");
Console.WriteLine($"power up to it {clock.PowerUpToHarmonic(3):G4} of all");
#endregion

Console.WriteLine("\n[needed]");
#region needed
Specification needed = new Requirement(clock)
    .WithEdgeTolerance(10.Percent())
    .WithWindow(1.ms())
    .Specify();

Console.WriteLine($"bandwidth   at least {needed.Bandwidth!.Value:G4}");
Console.WriteLine($"            {needed.Bandwidth.Method}, {needed.Bandwidth.Source}");
Console.WriteLine($"sample rate at least {needed.SampleRate!.Value:G4}");
Console.WriteLine($"memory      at least {needed.RecordLength!.Value:G4}");
#endregion

Console.WriteLine("\n[bench]");
#region bench
Probe probe = Probe.Passive(attenuationFactor: 10, 10.MOhm(), 12.pF(), 350.MHz());
FrontEnd input = FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(200.MHz()));
Digitizer digitizer = new Digitizer(2.GSaPerS(), 14.Mpts(), 8.bit());
MeasurementChain chain = MeasurementChain.From(33.Ohm()).Probe(probe).Into(input);

Console.WriteLine($"bandwidth {chain.Bandwidth().Value:G4}, rise time {chain.RiseTime().Value:G4}");
Console.WriteLine($"rule of thumb: {chain.RiseTime().Rules[0]}");
#endregion

Console.WriteLine("\n[outlook]");
#region outlook
Outlook outlook = clock.Through(chain).SampledBy(digitizer).Over(1.ms());

Console.WriteLine($"edge {outlook.DisplayedEdge!.Value:G4}, on {outlook.IntervalsPerEdge!.Value.Fraction:F1} sample intervals");
foreach (Finding finding in outlook.Findings)
    Console.WriteLine(finding);
foreach (Contribution contribution in outlook.Contributions)
    Console.WriteLine(contribution);
#endregion

Console.WriteLine("\n[compare]");
#region compare
FrontEnd faster = FrontEnd.HighImpedance(1.MOhm(), 12.pF(), Response.Gaussian(500.MHz()));
Outlook other = clock.Through(MeasurementChain.From(33.Ohm()).Probe(probe).Into(faster)).SampledBy(digitizer).Over(1.ms());

Console.Write(OutlookComparison.Of(outlook, other));
Console.WriteLine($"weakest link now: {other.WeakestLink}");
#endregion

Console.WriteLine("\n[reading]");
#region reading
DeembeddedRiseTime edge = DeembeddedRiseTime.ByResponse(
    displayed: 3.51.ns(), displayedUncertainty: 0.04.ns(), chain.Response, chainUncertainty: 3.Percent(), EdgeShape.Linear);

Console.WriteLine($"the board's edge: {edge}");
Console.WriteLine($"by the rule:      {DeembeddedRiseTime.ByRootSumSquare(3.51.ns(), 0.04.ns(), chain.Response.RiseTime, chain.Response.RiseTime * 0.03)}");
#endregion

Console.WriteLine("\n[decision]");
#region decision
Uncertain<Duration> measured = Uncertain.Of(edge.RiseTime!.Value, Spread.Standard(edge.Uncertainty!.Value), "edge");
Console.WriteLine(DecisionRule.GuardedAcceptance.Decide(measured, ToleranceLimits.AtMost(3.2.ns())));
#endregion

Console.WriteLine("\n[report]");
#region report
string page = outlook.ToReport("Beacon clock at the mixer board").ToMarkdown();
Console.WriteLine(string.Join("\n\n", page.Split("\n\n").Take(3)));
#endregion
