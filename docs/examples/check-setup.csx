#r "nuget: Acquisition.Core, 0.1.0"
// Before a test run: does the set-up on the bench show the lamp driver's pulses, and will it catch the rare short one?
// A test executive runs this first and stops where a finding is graver than a note.
using System;
using System.Linq;
using Acquisition.Core;
using Acquisition.Core.Literals;

Signal lampDriver = Signal.PulseTrain(2.kHz(), 12.Vpp(), 20.us(), 60.ns(), 60.ns());
Probe probe = Probe.Passive(10, 10.MOhm(), 16.pF(), 200.MHz()).WithName("passive probe 10:1, 200 MHz").WithRating(VoltageRating.Constant(400.V()));
FrontEnd input = FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(200.MHz())).WithName("bench digitizer, 200 MHz").WithNoise(15.mVrms());
MeasurementChain chain = MeasurementChain.From(10.Ohm()).Probe(probe).Into(input);
Digitizer digitizer = new Digitizer(2.GSaPerS(), 14.Mpts(), 8.bit()).WithName("bench digitizer").WithFullScaleRanges(80.mVpp(), 800.mVpp(), 8.Vpp());

Outlook outlook = lampDriver.Through(chain).SampledBy(digitizer).WithRecordRate(5.Hz()).WatchingFor(40.ns(), 0.5.Hz()).Over(140.ms());

Console.WriteLine($"edge of {lampDriver.RiseTime} is shown as {outlook.DisplayedEdge!.Value.ToString("G4")}, on {outlook.IntervalsPerEdge!.Value.Fraction:F1} sample intervals");
foreach (Finding finding in outlook.Findings)
    Console.WriteLine(finding);
bool go = outlook.Findings.All(finding => finding.Severity == Severity.Note);
Console.WriteLine(go ? "go" : "no go");
