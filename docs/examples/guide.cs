#:project ../../src/Acquisition.Core/Acquisition.Core.csproj
#:property NoWarn=$(NoWarn);CA1305;CA1861
// CA1305 asks for a culture where reading knows none unless it is handed one; CA1861 minds arrays in what runs once.
// What the reference pages of the guide show, each below the name of its page.
//   dotnet run docs/examples/guide.cs
using System;
using System.IO;
using System.Linq;
using System.Runtime.CompilerServices;
using Acquisition.Core;
using Acquisition.Core.Formulas;
using Acquisition.Core.Functions;
using Acquisition.Core.Literals;

Console.WriteLine("[notation]");
#region notation
Quantity any = Quantity.Parse("-20 dB/decade");              // any kind: Kind says which, SiValue how much
Frequency clock = Frequency.Parse("24 MHz");                 // one kind: "24 MSa/s" is refused
bool isRead = SampleRate.TryParse("2 GSa", out SampleRate _); // never throws, whatever the text

Console.WriteLine($"{any} ({any.Kind.Name}); {clock:4 kHz}; a rate: {isRead}");
#endregion

Console.WriteLine("\n[format]");
#region format
QuantityFormat column = QuantityFormat.SignificantDigits(4).WithUnit("MHz").WithAsciiSymbols();

Console.WriteLine(column.Format(clock));
#endregion

Console.WriteLine("\n[formula]");
#region formula
Formula formula = FormulaContext.Standard
    .WithInput("bandwidth", QuantityKind.Frequency)
    .Build("0.35 / bandwidth in ns");
FormulaValue value = formula.Evaluate(Quantity.Parse("100 MHz"));
double seconds = formula.EvaluateSi(200e6);                  // for loops: allocates nothing
double[] hertz = { 100e6, 200e6, 500e6 }, results = new double[3];
formula.EvaluateColumns(new[] { hertz }, results);           // for columns

Console.WriteLine($"{value}; {seconds} s; {string.Join(", ", results)} s");
#endregion

Console.WriteLine("\n[functions]");
#region functions
FormulaContext context = FormulaContext.Standard
    .WithUnit("tick", "10 ns")
    .WithFunctions(FunctionDefinition.Named("edge_count", "Edges of a clock in a window.", "our test plan 3.2")
        .Takes("clock", QuantityKind.Frequency)
        .Takes("window", QuantityKind.Duration)
        .Returns(QuantityKind.Ratio, (hertz, seconds) => 2 * hertz * seconds)
        .Example("edge_count(24 MHz, 1 ms)", "48000"));

Console.WriteLine(context.Build("edge_count(24 MHz, 100 000 tick)").Evaluate());
#endregion

Console.WriteLine("\n[worksheet]");
string text = File.ReadAllText(Path.Combine(Folder(), "beacon-clock.worksheet"));
#region worksheet
WorksheetResult sheet = Worksheet.Build(text).Evaluate();

foreach (WorksheetEntry entry in sheet.Entries.Where(entry => entry.Keyword is WorksheetKeyword.Check or WorksheetKeyword.Show))
    Console.WriteLine(entry);
Console.WriteLine(sheet.HasPassed);
#endregion

Console.WriteLine("\n[signals]");
#region signals
Signal beacon = Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns());     // 10 % to 90 % edges of 2.8 ns

Console.WriteLine($"third harmonic {beacon.Harmonic(3).Peak:G4}, edges included");
Console.WriteLine($"up to the fifth {beacon.PowerUpToHarmonic(5):G4} of the AC power");
Console.WriteLine($"steepest edge {beacon.SteepestEdge}");
#endregion

Console.WriteLine("\n[responses]");
#region responses
Response chain = Response.Gaussian(200.MHz()).Then(Response.Butterworth(4, 350.MHz())).Then(Response.Delay(5.ns()));

Console.WriteLine($"bandwidth {chain.Bandwidth:G4}, where the amplitude is 1/√2");
Console.WriteLine($"rise time {chain.RiseTime:G4}, overshoot {chain.Overshoot:G3}, from the computed step");
Console.WriteLine($"an edge of 2.8 ns leaves with {chain.RiseTimeOf(new Edge(2.8.ns())).Value:G4}");
Explained<Frequency> why = chain.ExplainBandwidth();              // value, method, source, rules of thumb and their error
Console.WriteLine($"{why.Method}, {why.Source}");
#endregion

Console.WriteLine("\n[timebase]");
Record captured = new SimulatedCapture(Signal.Square(24.MHz(), 3.3.Vpp(), 2.5.ns()), 2.GSaPerS(), 20.kpts())
    .Through(Response.Gaussian(200.MHz())).WithNoise(10.mVrms()).WithClockJitter(3.ps()).WithConverter(8.bit(), 4.Vpp()).Capture();
#region timebase
PulseSettings settings = PulseSettings.Default.WithTimebase(Ratio.FromPartsPerMillion(2.5), 3.ps());
PulseMeasurement measured = PulseMeasurement.Of(captured, settings);
PulseTransition edge = measured.Transitions[0];

Console.WriteLine($"{edge.TransitionDuration}: {edge.TransitionDurationUncertainty}");
Console.WriteLine($"{measured.Period}: {measured.PeriodUncertainty}");
#endregion

Console.WriteLine("\n[sine]");
#region sine
Record record = new SimulatedCapture(Signal.Sine(10.1.MHz(), 0.9.Vpk()), 200.MSaPerS(), 4096.pts())
    .WithNoise(2.mVrms()).WithConverter(10.bit(), 2.Vpp()).Capture();
SineFit fit = SineFit.FourParameter(record);                      // frequency unknown; the start is found in the spectrum
SineFit known = SineFit.ThreeParameter(record, 10.1.MHz());       // frequency known

foreach (SineFit found in new[] { fit, known })
{
    if (found.Sine is { } sine)
        Console.WriteLine($"{sine.Amplitude:G4} (u = {sine.AmplitudeUncertainty:G2}) at {sine.Frequency:G7}, SINAD {sine.Sinad:G4}");
    foreach (Finding finding in found.Findings)
        Console.WriteLine(finding);
}
#endregion

Console.WriteLine("\n[attribution]");
Sweep direct = At1GHz(-1.2), throughA = At1GHz(-3.0), throughB = At1GHz(-2.1);
#region attribution
AttributionResult result = RollOffAttribution.OfElements("generator", "probe A", "probe B", "front end")
    .WithSweep(direct, "generator", "front end")
    .WithSweep(throughA, "generator", "probe A", "front end")
    .WithSweep(throughB, "generator", "probe B", "front end")
    .Solve();

Console.WriteLine(result.ExplainAt(1.GHz()));
foreach (Ambiguity open in result.Ambiguities)
    Console.WriteLine(open);
#endregion

Console.WriteLine("\n[uncertain]");
#region uncertain
Voltage[] readings = { 500.8.mV(), 500.1.mV(), 499.6.mV(), 500.3.mV(), 500.7.mV() };

Uncertain<Voltage> reading = TypeA.Mean(readings, "reading");                                 // s/√n, n - 1 degrees of freedom
Uncertain<Voltage> gain = Uncertain.Of(0.V(), Spread.Bound(5.mV()), "gain");                  // data-sheet limits: rectangular
Uncertain<Resistance> shunt = Uncertain.Of(1.Ohm(), Spread.Expanded(0.01.Ohm(), 2), "shunt"); // certificate: U and k
Uncertain<Current> lamp = (reading + gain) / shunt;

Console.WriteLine(lamp.Budget().ToTable());
#endregion

Console.WriteLine("\n[trials]");
#region trials
Formula rule = Formula.Build("0.35 / (100 MHz ± 5 %)");
UncertaintyBudget budget = rule.Budget();
MonteCarloResult trials = rule.PropagateDistributions();

Console.WriteLine(budget);
CoverageInterval interval = trials.SymmetricInterval(budget.CoverageProbability);
Console.WriteLine($"{interval.Low:G4} to {interval.High:G4}; first order holds: {FirstOrderValidation.Of(budget, trials).IsValidated}");
#endregion

Console.WriteLine("\n[decision]");
#region decision
ConformityDecision decision = DecisionRule.GuardedAcceptance.Decide(lamp, ToleranceLimits.AtMost(0.51.A()));

Console.WriteLine(decision);
#endregion

Console.WriteLine("\n[requirement]");
#region requirement
Specification needed = new Requirement(Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns()))
    .WithEdgeTolerance(5.Percent()).WithHarmonics(5).WithWindow(100.us()).Specify();

Console.WriteLine(needed);
#endregion

Console.WriteLine("\n[floating]");
Catalogue workshop = Catalogue.Parse(File.ReadAllText(Path.Combine(Folder(), "workshop-catalogue.json")));
#region floating
Signal gate = Signal.Square(100.kHz(), 15.Vpp(), 20.ns());
Requirement highSide = new Requirement(gate).WithEdgeTolerance(20.Percent()).WithSourceResistance(10.Ohm()).WithCommonMode(400.V());
Shortlist list = Shortlist.Of(highSide, workshop);

Console.WriteLine(highSide.Specify());
Console.WriteLine(list.Best);
#endregion
return 0;

// A path read at two frequencies: 0 dB at 10 MHz, exactly, and at 1 GHz what is given, with 0.1 dB.
static Sweep At1GHz(double decibels) => Sweep.OfDecibels(new[] { 10e6, 1e9 }, new[] { 0, decibels }, new[] { 0, 0.1 });

static string Folder([CallerFilePath] string file = "") => Path.GetDirectoryName(file)!;
