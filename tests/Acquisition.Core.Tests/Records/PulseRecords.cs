using System;
using System.Linq;
using Acquisition.Core.Literals;

namespace Acquisition.Core.Tests.Records;

/// <summary>Records by formula.</summary>
internal static class PulseRecords
{
    /// <summary>The trapezoid of handbook 8.3: 10 GSa/s, 1000 points.</summary>
    public static Record Trapezoid()
    {
        double[] t = [0, 20e-9, 22e-9, 60e-9, 63e-9, 100e-9], x = [0.2, 0.2, 1.2, 1.2, 0.2, 0.2];
        return Record.FromVolts(Enumerable.Range(0, 1000).Select(i => Interpolate(i / 10e9, t, x)).ToArray(), 10.GSaPerS());
    }

    /// <summary>The step of handbook 8.3: second order, damping 0.5, 100 MHz, at 5 ns; 10 GSa/s, 1000 points.</summary>
    public static Record SecondOrderStep()
    {
        const double zeta = 0.5, wn = 2 * Math.PI * 100e6;
        double wd = wn * Math.Sqrt(1 - zeta * zeta);
        return Record.FromVolts(Enumerable.Range(0, 1000).Select(i =>
        {
            double t = i / 10e9 - 5e-9;
            return t <= 0 ? 0 : 1 - Math.Exp(-zeta * wn * t) * (Math.Cos(wd * t) + zeta / Math.Sqrt(1 - zeta * zeta) * Math.Sin(wd * t));
        }).ToArray(), 10.GSaPerS());
    }

    /// <summary>Linear edges of 1 ns between 0 V and 1 V around the instants given.</summary>
    public static Record FromInstants(double[] rising, double[] falling, double window, double rate, double edge = 1e-9)
    {
        int n = (int)Math.Round(window * rate);
        var volts = new double[n];
        for (int i = 0; i < n; i++)
        {
            double t = i / rate;
            volts[i] = rising.Sum(r => Ramp((t - r) / edge)) - falling.Sum(f => Ramp((t - f) / edge));
        }
        return Record.FromVolts(volts, SampleRate.FromSamplesPerSecond(rate));
    }

    public static double Gaussian(System.Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static double Ramp(double x) => Math.Clamp(x + 0.5, 0, 1);

    private static double Interpolate(double at, double[] t, double[] x)
    {
        int i = 1;
        while (i < t.Length - 1 && t[i] <= at)
            i++;
        return x[i - 1] + (at - t[i - 1]) / (t[i] - t[i - 1]) * (x[i] - x[i - 1]);
    }
}
