#:project ../../src/Acquisition.Core/Acquisition.Core.csproj
// The rules of thumb of the trade beside what the models say, one table for each page of docs/explanation.
using System;
using System.Linq;
using Acquisition.Core;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Acquisition.Core.Responses;

Frequency f3 = 100.MHz();
Signal clock = Signal.Square(24.MHz(), 3.3.Vpp(), riseTime: 2.8.ns());

Console.WriteLine("[rise-time]");
#region rise-time
Response[] models =
{
    Response.SinglePole(f3), Response.PolesEqual(5, f3), Response.Gaussian(f3), Response.Bessel(4, f3), Response.Butterworth(2, f3), Response.Butterworth(4, f3),
    Response.Butterworth(8, f3), Response.Chebyshev(5, 0.5.dB(), f3), Response.BrickWall(f3), Response.SkinEffect(f3),
};
Console.WriteLine("model                                 rise time  x bandwidth  overshoot  0.35 / bandwidth is off by");
foreach (Response model in models)
    Console.WriteLine($"{model.Name,-36} {model.RiseTime,10:F2 ns} {model.RiseTime.Seconds * f3.Hertz,11:F4} {model.Overshoot.Percent,8:F1} % {100 * (0.35 / f3.Hertz / model.RiseTime.Seconds - 1),12:+0.0;-0.0;0.0} %");
#endregion

Console.WriteLine("\n[cascade]");
#region cascade
(string Name, Response[] Stages)[] cascades =
{
    ("two Gaussian stages", new[] { Response.Gaussian(f3), Response.Gaussian(f3) }),
    ("two single poles", new[] { Response.SinglePole(f3), Response.SinglePole(f3) }),
    ("five single poles", Enumerable.Repeat(Response.SinglePole(f3), 5).ToArray()),
    ("single poles, 100 and 300 MHz", new[] { Response.SinglePole(f3), Response.SinglePole(3 * f3) }),
    ("two Butterworth 4", new[] { Response.Butterworth(4, f3), Response.Butterworth(4, f3) }),
    ("Gaussian and Butterworth 4", new[] { Response.Gaussian(f3), Response.Butterworth(4, f3) }),
};
Console.WriteLine("stages                           computed   by the rule  off by");
foreach (var (name, stages) in cascades)
{
    Duration computed = Response.Cascade(stages).RiseTime, rule = RootSumOfSquares.Combine(stages.Select(stage => stage.RiseTime).ToArray());
    Console.WriteLine($"{name,-30} {computed,10:F2 ns} {rule,10:F2 ns} {100 * (rule / computed).Fraction - 100,10:+0.0;-0.0;0.0} %");
}
#endregion

Console.WriteLine("\n[alias]");
#region alias
Console.WriteLine("rate / bandwidth                    2.5       4       5      10");
foreach (Response model in new[] { Response.SinglePole(f3), Response.Gaussian(f3), Response.Butterworth(4, f3) })
{
    string folded = string.Concat(new[] { 2.5, 4, 5, 10 }.Select(times => $"{model.Gain(f3 * times - f3).Decibels,8:F1}"));
    Console.WriteLine($"{model.Name,-30} {folded}  dB where it folds onto the bandwidth");
}
#endregion

Console.WriteLine("\n[interpolation]");
#region interpolation
Console.WriteLine("samples per period               2.1      2.5        4        5       10       20");
foreach (Reconstruction drawn in new[] { Reconstruction.Linear, Reconstruction.CubicLagrange, Reconstruction.Sinc })
{
    string errors = string.Concat(new[] { 2.1, 2.5, 4, 5, 10, 20 }.Select(n => $"{drawn.WorstError(f3, SampleRate.FromSamplesPerSecond(n * f3.Hertz)).Percent,9:G3}"));
    Console.WriteLine($"{drawn.Name,-26} {errors}  % of the amplitude, at worst");
}
#endregion

Console.WriteLine("\n[harmonics]");
#region harmonics
Console.WriteLine("up to    power  rms error   edge behind a bandwidth there   bandwidth that shows it to 3 %");
foreach (int n in new[] { 1, 3, 5, 7, 9, 17 })
{
    Response chain = Response.Gaussian(n * 24.MHz());
    string edge = n == 1 ? "a sine" : $"{chain.RiseTimeOf(clock).Value:F2 ns}";
    Console.WriteLine($"{n,5} {clock.PowerUpToHarmonic(n).Percent,8:F2} % {clock.RmsErrorBeyondHarmonic(n).Percent,7:F1} % {edge,14} behind {n * 24.MHz(),7} {NeededBandwidth.ForAmplitude(n * 24.MHz(), 3.Percent(), ResponseShape.Gaussian),20:G3}");
}
#endregion

Console.WriteLine("\n[probe]");
#region probe
Probe passive = Probe.Passive(10, 10.MOhm(), 12.pF(), 350.MHz());
Console.WriteLine("frequency       impedance   left of a 50 Ω node   of a 1 kΩ node");
foreach (Frequency f in new[] { 0.Hz(), 10.kHz(), 1.MHz(), 10.MHz(), 100.MHz(), 200.MHz() })
{
    Resistance ohms = Resistance.FromOhms(passive.InputOhmsAt(f).Magnitude);
    double low = SourceLoading.ComplexGain(50.Ohm(), 10.MOhm(), 12.pF(), f).Magnitude, high = SourceLoading.ComplexGain(1.kOhm(), 10.MOhm(), 12.pF(), f).Magnitude;
    Console.WriteLine($"{f,-12:G3} {ohms,12:G3} {100 * low,14:F2} % {100 * high,18:F2} %");
}
#endregion

Console.WriteLine("\n[bits]");
#region bits
Console.WriteLine($"8 bits, ideal: {Quantization.IdealSignalToNoise(8.bit()):F2 dB}");
foreach (double filled in new[] { 0.98, 0.5, 0.1 })
{
    Record sine = new SimulatedCapture(Signal.Sine(CoherentSampling.Near(1.MHz(), 100.MSaPerS(), 10.kpts()).Frequency, PeakVoltage.FromVolts(filled)), 100.MSaPerS(), 10.kpts()).WithConverter(8.bit(), 2.Vpp()).Capture();
    FittedSine fit = SineFit.FourParameter(sine).Sine!;
    Console.WriteLine($"a sine that fills {100 * filled,3} % of the range: SINAD {fit.Sinad:F1 dB}, {fit.EffectiveBitsUncorrected:F2 bit} by SINAD alone, {fit.EffectiveBits:F2 bit} with the range counted");
}
foreach (Frequency f in new[] { 10.MHz(), 100.MHz(), 1.GHz() })
    Console.WriteLine($"clock jitter of 5 ps at {f,7}: at most {SamplingJitter.SignalToNoise(f, 5.ps()):F1 dB}, {EffectiveResolution.FromSinad(SamplingJitter.SignalToNoise(f, 5.ps())):F1 bit}");
#endregion

Console.WriteLine("\n[averaging]");
#region averaging
Console.WriteLine("records  by the rule   noise 1 step   noise 0.1 step   (rms, of 31.25 mV steps)");
foreach (int records in new[] { 1, 4, 16, 64, 256 })
{
    RmsVoltage Left(RmsVoltage noise)
    {
        Record mean = new SimulatedCapture(Signal.Sine(CoherentSampling.Near(1.MHz(), 100.MSaPerS(), 10.kpts()).Frequency, 1.Vpk()), 100.MSaPerS(), 10.kpts())
            .WithNoise(noise).WithConverter(8.bit(), 8.Vpp()).WithAveraging(records).Capture();
        return SineFit.FourParameter(mean).Sine!.NoiseAndDistortion;
    }
    Console.WriteLine($"{records,6} {Averaging.NoiseReduction(records).Decibels,11:F1} dB {Left(31.25.mVrms()),15:F2 mVrms} {Left(3.125.mVrms()),15:F2 mVrms}");
}
#endregion

Console.WriteLine("\n[coverage]");
#region coverage
(string Name, string Model)[] budgets =
{
    ("one rectangular input", "5 V + (0 V ± 10 mV)"),
    ("two alike", "5 V + (0 V ± 10 mV) + (0 V ± 10 mV)"),
    ("four alike", "5 V + (0 V ± 10 mV) + (0 V ± 10 mV) + (0 V ± 10 mV) + (0 V ± 10 mV)"),
    ("a square about zero", "(0 V ± 10 mV)^2 / 1 V"),
};
Console.WriteLine("model                      U with k = 2   95.45 % of the trials   first order says");
foreach (var (name, model) in budgets)
{
    UncertaintyBudget budget = Formula.Build(model).Budget();
    CoverageInterval interval = Formula.Build(model).PropagateDistributions().ShortestInterval(95.45.Percent());
    Voltage half = Voltage.FromVolts((interval.High.SiValue - interval.Low.SiValue) / 2);
    Console.WriteLine($"{name,-24} {Voltage.FromVolts(budget.ExpandedUncertainty.SiValue),14:G3} {half,18:G3}   {(budget.Findings.Count > 0 ? budget.Findings[0].Code : "nothing more")}");
}
#endregion
