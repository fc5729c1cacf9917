#:project ../../src/Acquisition.Core/Acquisition.Core.csproj
// The beacon clock at the mixer board, through a passive probe with a long ground lead: what the chain does to it, and which part does it.
using System;
using System.Globalization;
using Acquisition.Core;
using Acquisition.Core.Literals;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;

#region chain
FrontEnd digitizer = FrontEnd.HighImpedance(1.MOhm(), 15.pF(), Response.Gaussian(200.MHz())).WithName("bench digitizer, 200 MHz");
Probe probe = Probe.Passive(10, 10.MOhm(), 10.pF(), 200.MHz()).WithName("passive probe 10:1, 200 MHz").WithGroundLead(150.mm());
MeasurementChain chain = MeasurementChain.From(50.Ohm()).Probe(probe).Into(digitizer);

Console.WriteLine($"bandwidth  {chain.Response.Bandwidth.Megahertz:F1} MHz");
Console.WriteLine($"rise time  {chain.Response.RiseTime.Nanoseconds:F2} ns");
Console.WriteLine($"overshoot  {chain.Response.Overshoot.Percent:F1} %");
#endregion

#region parts
foreach (ChainContribution<DecibelRatio> part in chain.AttenuationAt(72.MHz()).Contributions)
    Console.WriteLine($"{part.Part,-30} {part.ByRemoval.Decibels,6:F2} dB by removal {part.InOrder.Decibels,6:F2} dB in order");
#endregion

#region findings
foreach (Finding finding in chain.Examine(72.MHz(), 2.8.ns(), 1.65.Vpk()))
    Console.WriteLine(finding);
#endregion

#region digitizing
Digitizer memory = new Digitizer(2.GSaPerS(), 14.kpts(), 8.bit()).WithDivisions(8, 14);
Timebase slow = memory.TimebasePerDivision(10.ms(), 1);
Console.WriteLine(slow);
Console.WriteLine($"a pulse of 26 ns meets a sample with a chance of {PulseCapture.ChanceOfASample(26.ns(), slow.Rate).Percent:F2} %");
#endregion
