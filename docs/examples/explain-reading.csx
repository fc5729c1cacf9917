#r "nuget: Acquisition.Core, 0.1.0"
// A surprising reading: the beacon clock's driver is specified for edges of 2.8 ns, the screen shows 3.5 ns. What did the bench do, and what would a faster probe show?
using System;
using Acquisition.Core;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;

Signal beaconClock = Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns());
FrontEnd input = FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(200.MHz())).WithName("input, 200 MHz");
Digitizer digitizer = new Digitizer(2.GSaPerS(), 14.Mpts(), 8.bit());

Outlook With(Probe probe) => beaconClock.Through(MeasurementChain.From(33.Ohm()).Probe(probe).Into(input)).SampledBy(digitizer).Over(1.us());

Outlook before = With(Probe.Passive(10, 10.MOhm(), 16.pF(), 200.MHz()).WithName("passive probe 10:1, 200 MHz").WithGroundLead(15.mm()));
Outlook after = With(Probe.Passive(10, 10.MOhm(), 9.5.pF(), 500.MHz()).WithName("passive probe 10:1, 500 MHz").WithGroundLead(10.mm()));

Console.WriteLine($"the bench turns {beaconClock.RiseTime} into {before.DisplayedEdge!.Value.ToString("G4")}:");
foreach (Contribution contribution in before.Contributions)
    Console.WriteLine("  " + contribution);
Console.WriteLine();
Console.WriteLine("with the faster probe:");
Console.Write(OutlookComparison.Of(before, after));
