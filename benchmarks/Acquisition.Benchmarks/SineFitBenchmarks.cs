using System;
using System.Linq;
using Acquisition.Core;
using BenchmarkDotNet.Attributes;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;
using MathNet.Numerics.Optimization;

namespace Acquisition.Benchmarks;

/// <summary>
/// Four-parameter sine fit of 100 000 samples, without a hint where the frequency is, beside MathNet's Levenberg-Marquardt minimiser (which is given the start and the exact
/// derivatives). The same samples as a record of 8-bit and of 12-bit codes, which are converted a block at a time. SciPy's curve_fit on the same samples: benchmarks/scipy_sine_fit.py, in the same session.
/// </summary>
[MemoryDiagnoser]
public class SineFitBenchmarks
{
    private const int Points = 100_000;
    private const double Cycles = 0.0371234;

    private readonly SampleRate _rate = SampleRate.FromSamplesPerSecond(1);
    private double[] _samples = [];
    private Record _bytes = null!, _shorts = null!;
    private Vector<double> _time = null!, _values = null!;

    [GlobalSetup]
    public void Make()
    {
        // Park and Miller's minimal standard generator, twelve values to one of unit variance: as in the script.
        long seed = 1;
        _samples = new double[Points];
        for (int n = 0; n < Points; n++)
        {
            double sum = 0;
            for (int k = 0; k < 12; k++)
            {
                seed = 16807 * seed % 2147483647;
                sum += seed / 2147483647.0;
            }
            _samples[n] = 0.1 + 0.8 * Math.Cos(2 * Math.PI * Cycles * n + 0.5) + 0.01 * (sum - 6);
        }
        _time = new DenseVector(Enumerable.Range(0, Points).Select(n => (double)n).ToArray());
        _values = new DenseVector(_samples);
        _bytes = Record.FromCodes(_samples.Select(x => (byte)Math.Round(128 + 110 * x)).ToArray(), _rate, Voltage.FromVolts(1 / 110.0), Voltage.FromVolts(-128 / 110.0));
        _shorts = Record.FromCodes(_samples.Select(x => (short)Math.Round(2000 * x)).ToArray(), _rate, Voltage.FromVolts(1 / 2000.0), Voltage.FromVolts(0))
            .WithLimits(Voltage.FromVolts(-2048 / 2000.0), Voltage.FromVolts(2047 / 2000.0));
        double difference = Math.Abs(SineFit().Sine!.Frequency.Hertz - LevenbergMarquardt());
        if (!(difference < 1e-10))
            throw new InvalidOperationException($"the two fits differ by {difference} cycles per sample");
    }

    [Benchmark(Baseline = true)]
    public double LevenbergMarquardt()
    {
        IObjectiveModel objective = ObjectiveFunction.NonlinearModel(Model, Derivatives, _time, _values);
        NonlinearMinimizationResult result = new LevenbergMarquardtMinimizer().FindMinimum(objective, new DenseVector([0.7, -0.38, 0.1, 2 * Math.PI * (Cycles + 1e-7)]));
        return result.MinimizingPoint[3] / (2 * Math.PI);
    }

    [Benchmark]
    public SineFit SineFit() => Acquisition.Core.SineFit.FourParameter(_samples, _rate);

    [Benchmark]
    public SineFit SineFitOfBytes() => Acquisition.Core.SineFit.FourParameter(_bytes);

    [Benchmark]
    public SineFit SineFitOfShorts() => Acquisition.Core.SineFit.FourParameter(_shorts);

    private static Vector<double> Model(Vector<double> p, Vector<double> t) => t.Map(n => p[0] * Math.Cos(p[3] * n) + p[1] * Math.Sin(p[3] * n) + p[2]);

    private static Matrix<double> Derivatives(Vector<double> p, Vector<double> t)
    {
        var matrix = new DenseMatrix(t.Count, 4);
        for (int i = 0; i < t.Count; i++)
        {
            double c = Math.Cos(p[3] * t[i]), s = Math.Sin(p[3] * t[i]);
            matrix[i, 0] = c;
            matrix[i, 1] = s;
            matrix[i, 2] = 1;
            matrix[i, 3] = t[i] * (p[1] * c - p[0] * s);
        }
        return matrix;
    }
}
