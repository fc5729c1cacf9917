#:project ../../src/Acquisition.Core/Acquisition.Core.csproj
// Questions before a measurement, one region for each page of docs/how-to.
using System;
using System.Linq;
using Acquisition.Core;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;

Console.WriteLine("[bandwidth]");
#region bandwidth
Signal beaconClock = Signal.Square(24.MHz(), 3.3.Vpp(), riseTime: 2.8.ns());
var demands = new Requirement(beaconClock).WithEdgeTolerance(5.Percent()).WithHarmonics(5).WithAmplitudeTolerance(3.Percent());

foreach (ResponseShape shape in new[] { ResponseShape.Gaussian, ResponseShape.Butterworth(4) })
{
    Explained<Frequency> needed = demands.Specify(shape).Bandwidth!;
    Console.WriteLine($"{shape}: at least {needed.Value:G4}");
    foreach (var input in needed.Inputs) Console.WriteLine($"    {input.Key}: {input.Value}");
    foreach (var rule in needed.Rules) Console.WriteLine($"    rule of thumb {rule}");
}
#endregion

Console.WriteLine("\n[probe]");
#region probe
FrontEnd input200 = FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(200.MHz()));
FrontEnd input50 = FrontEnd.FiftyOhm(Response.Gaussian(200.MHz()));
var choices = new[]
{
    (Name: "passive probe 10:1, lead 150 mm", Chain: MeasurementChain.From(50.Ohm()).Probe(Probe.Passive(10, 10.MOhm(), 12.pF(), 350.MHz()).WithGroundLead(150.mm())).Into(input200)),
    (Name: "passive probe 10:1, lead 10 mm", Chain: MeasurementChain.From(50.Ohm()).Probe(Probe.Passive(10, 10.MOhm(), 12.pF(), 350.MHz()).WithGroundLead(10.mm())).Into(input200)),
    (Name: "active probe 10:1, 1 pF", Chain: MeasurementChain.From(50.Ohm()).Probe(Probe.Active(10, 1.MOhm(), 1.pF(), Response.Gaussian(1.GHz()))).Into(input50)),
    (Name: "500 Ω divider 10:1, 0.5 pF", Chain: MeasurementChain.From(50.Ohm()).Probe(Probe.LowImpedance(10, 0.5.pF(), Response.Gaussian(1.5.GHz()))).Into(input50)),
};
foreach (var (name, chain) in choices)
{
    Console.WriteLine($"{name,-32} DC {chain.AmplitudeAt(0.Hz()).Value:G3}, at the tip {chain.Loading.AmplitudeRatio(72.MHz()):G3} at 72 MHz, "
        + $"shown {chain.AmplitudeAt(72.MHz()).Value:G3}, overshoot {chain.Response.Overshoot:G2}");
    foreach (Finding finding in chain.Examine(72.MHz(), 2.8.ns(), 1.65.Vpk()).Where(finding => finding.Severity != Severity.Note)) Console.WriteLine("    " + finding);
}
#endregion

Console.WriteLine("\n[rate]");
#region rate
Signal clock = Signal.Square(24.MHz(), 3.3.Vpp(), riseTime: 2.8.ns());
Digitizer digitizer = new Digitizer(2.GSaPerS(), 14.Mpts(), 8.bit()).WithChannelsInUse(2, 1.GSaPerS(), 14.Mpts());
Specification wanted = new Requirement(clock).WithEdgeTolerance(10.Percent()).WithWindow(10.ms()).Specify();

Console.WriteLine($"needed: {wanted.SampleRate!.Value:G4} ({wanted.SampleRate.Method}), {wanted.RecordLength!.Value:G4}");
foreach (int channels in new[] { 1, 2 })
{
    Timebase given = digitizer.TimebaseFor(10.ms(), channels);
    Console.WriteLine($"{channels} in use: {given.RecordLength:G4} at {given.Rate:G4}; {Sampling.IntervalsOnEdge(given.Rate, 2.8.ns()).Fraction:F2} intervals on the edge");
    foreach (Finding finding in given.Findings) Console.WriteLine("    " + finding);
}
Console.WriteLine($"longest window at the needed rate: {Sampling.Window(14.Mpts(), wanted.SampleRate.Value):G4}");
#endregion

Console.WriteLine("\n[pulse]");
#region pulse
Signal lampDriver = Signal.PulseTrain(2.kHz(), 12.Vpp(), 20.us(), 60.ns(), 60.ns());
MeasurementChain toLamp = MeasurementChain.From(10.Ohm())
    .Probe(Probe.Passive(10, 10.MOhm(), 12.pF(), 350.MHz()))
    .Into(FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(200.MHz())));
Digitizer recorder = new Digitizer(2.GSaPerS(), 14.Mpts(), 8.bit());
Outlook watch = lampDriver.Through(toLamp).SampledBy(recorder).WithRecordRate(5.Hz()).WatchingFor(40.ns(), 0.5.Hz()).Over(140.ms());
EventOutlook spike = watch.Events!;

Console.WriteLine($"height shown            {spike.Height:G4} of the pulse");
Console.WriteLine($"chance of a sample      {spike.ChanceOfASample:G4}, at least {spike.FewestSamples}");
Console.WriteLine($"time observed           {spike.ObservedShare!.Value:G4}");
Console.WriteLine($"chance for each pulse   {spike.ChancePerOccurrence!.Value:G4}");
Console.WriteLine($"99 % sure to have one   after {spike.TrialsFor(99.Percent())} pulses, or {spike.TimeFor(99.Percent())!.Value:G4} where they come at random");
#endregion

Console.WriteLine("\n[detail]");
#region detail
Digitizer eightBits = new Digitizer(1.GSaPerS(), 1.Mpts(), 8.bit()).WithFullScaleRanges(80.mVpp(), 800.mVpp(), 8.Vpp());
Signal ripple = Signal.Triangle(100.kHz(), 60.mVpp());
MeasurementChain charger = MeasurementChain.From(1.Ohm()).Into(FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(200.MHz())).WithNoise(0.4.mVrms()));

Outlook single = ripple.Through(charger).SampledBy(eightBits).Over(100.us());
Console.WriteLine($"range {single.FullScale!.Value:G3}, one code {single.LeastSignificantBit!.Value:G3}, noise {single.TotalNoise!.Value:G3}");
Console.WriteLine($"smallest detail of one record  {single.SmallestDetail!.Value:G3}, {single.EffectiveBits!.Value:G3}");
Console.WriteLine($"the mean of 64 records gains   {Averaging.BitsGained(64):G3}, if the ripple repeats and the noise does not");
Console.WriteLine($"the mean of 16 samples gains   {HighResolution.BitsGained(16):G3} and leaves {HighResolution.Bandwidth(16, 1.GSaPerS()):G3}");
#endregion

Console.WriteLine("\n[alias]");
#region alias
Frequency harmonic = 5 * 24.MHz();
foreach (SampleRate rate in new[] { 200.MSaPerS(), 170.MSaPerS() })
    Console.WriteLine($"{harmonic:G4} sampled at {rate:G4} shows at {Aliasing.Fold(harmonic, rate):G4}, zone {Aliasing.NyquistZone(harmonic, rate)}");

Signal square = Signal.Square(24.MHz(), 3.3.Vpp(), riseTime: 2.8.ns());
MeasurementChain toClock = MeasurementChain.From(10.Ohm())
    .Probe(Probe.Passive(10, 10.MOhm(), 12.pF(), 350.MHz()))
    .Into(FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(200.MHz())));
Outlook slow = square.Through(toClock).SampledBy(new Digitizer(200.MSaPerS(), 1.Mpts(), 8.bit())).Over(1.ms());
foreach (Finding finding in slow.Findings.Where(finding => finding.Code == "harmonics-aliased")) Console.WriteLine(finding);
#endregion
