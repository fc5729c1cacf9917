#:project ../../src/Acquisition.Core/Acquisition.Core.csproj
// Questions after a measurement, one region for each page of docs/how-to.
using System;
using System.IO;
using System.Runtime.CompilerServices;
using Acquisition.Core;
using Acquisition.Core.Literals;

Console.WriteLine("[edge]");
#region edge
MeasurementChain chain = MeasurementChain.From(33.Ohm())
    .Probe(Probe.Passive(10, 10.MOhm(), 12.pF(), 350.MHz()))
    .Into(FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(200.MHz())));

Console.WriteLine($"the chain alone takes {chain.Response.RiseTime:G4}");
foreach (Duration displayed in new[] { 3.51.ns(), 2.40.ns(), 2.10.ns() })
{
    DeembeddedRiseTime edge = DeembeddedRiseTime.ByResponse(displayed, 0.04.ns(), chain.Response, 3.Percent(), EdgeShape.Linear);
    Console.WriteLine($"{displayed:G3} on the display: {edge}");
    foreach (Finding finding in edge.Findings) Console.WriteLine("    " + finding);
}
#endregion

Console.WriteLine("\n[element]");
#region element
double[] hertz = { 10e6, 50e6, 100e6, 200e6, 300e6 };
Sweep direct = Sweep.OfDecibels(hertz, new[] { 0.00, -0.08, -0.31, -1.20, -2.62 });
Sweep throughA = Sweep.OfDecibels(hertz, new[] { 0.00, -0.12, -0.46, -1.86, -4.09 });
Sweep throughB = Sweep.OfDecibels(hertz, new[] { 0.00, -0.27, -1.06, -4.19, -9.31 });

AttributionResult result = RollOffAttribution.OfElements("generator", "probe A", "probe B", "front end")
    .WithSweep(direct, "generator", "front end")
    .WithSweep(throughA, "generator", "probe A", "front end")
    .WithSweep(throughB, "generator", "probe B", "front end")
    .WithLevelUncertainty(0.05.dB())
    .Solve();

Console.WriteLine(result.ExplainAt(200.MHz(), "generator", "probe B", "front end"));
Console.WriteLine($"probe A: {result.ResponseOf("probe A")!.Bandwidth()}");
Console.WriteLine($"probe B: {result.ResponseOf("probe B")!.Bandwidth()}");
foreach (Ambiguity open in result.Ambiguities) Console.WriteLine(open);
#endregion

Console.WriteLine("\n[budget]");
#region budget
Uncertain<Voltage> reading = Uncertain.Of(2.44.V(), Spread.Standard(4.mV()), "reading, noise");
Uncertain<Voltage> offset = Uncertain.Of(0.V(), Spread.Bound(20.mV()), "offset, data sheet");
Uncertain<Ratio> gain = Uncertain.Of(Ratio.FromFraction(1), Spread.Bound(1.5.Percent()), "gain, data sheet");
Uncertain<Ratio> divider = Uncertain.Of(Ratio.FromFraction(1), Spread.Expanded(1.Percent(), 2), "probe, certificate");
Uncertain<Voltage> level = (reading + offset) * gain * divider;

Console.WriteLine(level.Budget().ToTable());
Console.WriteLine(DecisionRule.GuardedAcceptance.Decide(level, ToleranceLimits.AtLeast(2.40.V())));
Console.WriteLine(DecisionRule.SimpleAcceptance.Decide(level, ToleranceLimits.AtLeast(2.40.V())));
#endregion

Console.WriteLine("\n[file]");
#region file
Record record;
using (StreamReader file = File.OpenText(Path.Combine(Folder(), "lamp-driver.csv")))
    record = CsvRecords.Read(file)[0].WithResolution(31.25.mV());

Console.WriteLine(record);
PulseMeasurement pulses = PulseMeasurement.Of(record);
Console.WriteLine(pulses);
Console.WriteLine($"rise      {pulses.RisingDuration}");
Console.WriteLine($"width     {pulses.PositivePulseDuration}");
Console.WriteLine($"period    {pulses.Period}");
Console.WriteLine($"overshoot {pulses.Overshoot}");
foreach (Finding finding in pulses.Findings) Console.WriteLine(finding);
#endregion

static string Folder([CallerFilePath] string file = "") => Path.GetDirectoryName(file)!;
