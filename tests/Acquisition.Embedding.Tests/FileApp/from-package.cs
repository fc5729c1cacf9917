#:package Acquisition.Core@0.1.0
#:package Acquisition.Reports@0.1.0
// A file-based app that takes the library from the packed file: what a single source file needs to answer a bench question.
using System;
using Acquisition.Core;
using Acquisition.Core.Literals;
using Acquisition.Reports;

Signal clock = Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns());
MeasurementChain chain = MeasurementChain.From(33.Ohm()).Probe(Probe.Passive(10, 10.MOhm(), 12.pF(), 200.MHz())).Into(FrontEnd.HighImpedance(1.MOhm(), 14.pF(), Response.Gaussian(200.MHz())));
Outlook outlook = clock.Through(chain).SampledBy(new Digitizer(2.GSaPerS(), 14.Mpts(), 8.bit())).Over(10.ms());

Console.WriteLine(outlook);
Console.WriteLine(outlook.ToReport("Beacon clock").ToMarkdown().Split('\n')[0]);
