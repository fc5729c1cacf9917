using System;
using System.Linq;
using System.Numerics;
using Acquisition.Core;
using Acquisition.Core.Literals;
using BenchmarkDotNet.Attributes;

namespace Acquisition.Benchmarks;

/// <summary>
/// A four-stage mixed cascade, as of probe, input, filter and limiter: what a planner asks of each candidate. The rival of the bulk figure is
/// <c>benchmarks/scipy_response.py</c>, run in the same session; the rival of the single gain is the textbook product of complex fractions.
/// </summary>
[MemoryDiagnoser]
public class ResponseBenchmarks
{
    private readonly double[] _hertz = Enumerable.Range(0, 100_000).Select(i => 1e5 * Math.Pow(1e5, i / 99_999.0)).ToArray();
    private readonly Complex[] _gains = new Complex[100_000];
    private readonly Response _chain = Make();
    private readonly Response _poleChain = Response.SinglePole(500.MHz()).Then(Response.Butterworth(4, 350.MHz())).Then(Response.Bessel(3, 1.GHz()));
    private readonly Duration _late = 3.3.ns();
    private readonly Complex[] _poles = Poles();
    private readonly Frequency _at = 180.MHz();

    [Benchmark(Description = "bandwidth, rise time and overshoot of a new four-stage cascade")]
    public double Characteristics()
    {
        Response chain = Make();
        return chain.Bandwidth.Hertz + chain.RiseTime.Seconds + chain.Overshoot.Fraction;
    }

    [Benchmark(Description = "the same without a Gaussian stage")]
    public double PoleCharacteristics()
    {
        Response chain = Response.SinglePole(500.MHz()).Then(Response.Butterworth(4, 350.MHz())).Then(Response.Bessel(3, 1.GHz())).Then(Response.SinglePole(700.MHz()));
        return chain.Bandwidth.Hertz + chain.RiseTime.Seconds + chain.Overshoot.Fraction;
    }

    [Benchmark(Description = "one value of the step of its poles")]
    public double OneStepValue() => _poleChain.StepAt(_late).Fraction;

    [Benchmark(Description = "one complex gain of the cascade")]
    public Complex OneGain() => _chain.ComplexGain(_at);

    [Benchmark(Description = "the same as a product of System.Numerics.Complex fractions")]
    public Complex OneGainByComplexNumbers()
    {
        double omega = 2 * Math.PI * _at.Hertz, ratio = _at.Hertz / 200e6;
        Complex product = Math.Exp(-0.5 * Math.Log(2) * ratio * ratio), s = new(0, omega);
        foreach (Complex pole in _poles)
            product *= -pole / (s - pole);
        return product;
    }

    [Benchmark(Description = "100 000 complex gains of the cascade")]
    public Complex Bulk()
    {
        _chain.ComplexGains(_hertz, _gains);
        return _gains[50_000];
    }

    private static Response Make() =>
        Response.Gaussian(200.MHz()).Then(Response.SinglePole(500.MHz())).Then(Response.Butterworth(4, 350.MHz())).Then(Response.Bessel(3, 1.GHz()));

    private static Complex[] Poles() =>
        Response.SinglePole(500.MHz()).Then(Response.Butterworth(4, 350.MHz())).Then(Response.Bessel(3, 1.GHz())).Branches![0].Poles();
}
