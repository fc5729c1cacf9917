#:project ../../src/Acquisition.Core/Acquisition.Core.csproj
// The bench question of the README, and the same calculators as formulas.
using System;
#region question
using Acquisition.Core;
using Acquisition.Core.Literals;

Signal clock = Signal.Square(24.MHz(), 3.3.Vpp(), riseTime: 2.8.ns());
MeasurementChain chain = MeasurementChain.From(33.Ohm())
    .Probe(Probe.Passive(attenuationFactor: 10, 10.MOhm(), 12.pF(), 200.MHz()))
    .Into(FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(200.MHz())));
Outlook outlook = clock.Through(chain).SampledBy(new Digitizer(2.GSaPerS(), 14.Mpts(), 8.bit())).Over(10.ms());

Console.WriteLine($"chain   {outlook.ChainBandwidth!.Value:G4}, rise time {outlook.ChainRiseTime!.Value:G4}");
Console.WriteLine($"edge    {outlook.DisplayedEdge!.Value:G4} on the display ({outlook.DisplayedEdge.Rules[0]})");
Console.WriteLine($"clock   {outlook.Timebase.Rate:G4}, {outlook.Timebase.RecordLength}");
foreach (Finding finding in outlook.Findings) Console.WriteLine(finding);
#endregion

Console.WriteLine();
#region formulas
Console.WriteLine(TextFormulas.Evaluate("0.35 / 100 MHz in ns"));
Console.WriteLine(TextFormulas.Fill("The front end rises in {{ rise_time(cascade(gaussian(200 MHz), single_pole(500 MHz))) : G4 ns }}."));
Console.WriteLine(TextFormulas.Evaluate("2 GSa/s * 100 ms"));
Console.WriteLine(TextFormulas.Check("seen <= 1.10 * edge", "seen = 3.47 ns", "edge = 2.8 ns"));
#endregion
