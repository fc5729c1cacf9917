#:project ../../src/Acquisition.Core/Acquisition.Core.csproj
// What does a captured pulse train measure? The beacon clock of the lantern buoy, as a bench digitizer of 200 MHz and 8 bits would capture it.
//   dotnet run docs/examples/records.cs
using System;
using Acquisition.Core;
using Acquisition.Core.Literals;

#region capture
Record clock = new SimulatedCapture(Signal.Square(24.MHz(), 3.3.Vpp(), 2.5.ns()), 2.GSaPerS(), 20.kpts())
    .Through(Response.Gaussian(200.MHz()))
    .WithNoise(10.mVrms())
    .WithClockJitter(3.ps())
    .WithConverter(8.bit(), 4.Vpp())
    .Capture();
#endregion

#region measure
PulseMeasurement pulses = PulseMeasurement.Of(clock);

Console.WriteLine(pulses);
Console.WriteLine($"rise:   {pulses.RisingDuration}");
Console.WriteLine($"period: {pulses.Period}");
Console.WriteLine($"jitter: {pulses.Jitter}");
foreach (Finding finding in pulses.Findings)
    Console.WriteLine(finding);

// What a record does not hold is absent, with the reason; nothing is guessed.
Measured<Statistics<Duration>> period = PulseMeasurement.Of(clock.Slice(0, 60)).Period;
if (!period.HasValue)
    Console.WriteLine($"period: {period.Reason}");
#endregion
return 0;
