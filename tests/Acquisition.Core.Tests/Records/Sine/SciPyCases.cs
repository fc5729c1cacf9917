using System;
using System.IO;
using System.Linq;
using System.Text.Json;

namespace Acquisition.Core.Tests.Records.Sine;

/// <summary>Values that SciPy computed from records which both sides make by formula: tests/scripts/sine/scipy_cases.py.</summary>
internal static class SciPyCases
{
    private static readonly Lazy<JsonElement> Loaded = new(() =>
        JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Records", "Sine", "scipy-cases.json"))).RootElement);

    internal static JsonElement All => Loaded.Value;

    /// <summary>The minimal standard generator of Park and Miller (1988); twelve of its values make one of unit variance.</summary>
    internal static double[] Noise(long seed, int count)
    {
        var values = new double[count];
        for (int i = 0; i < count; i++)
        {
            double sum = 0;
            for (int k = 0; k < 12; k++)
            {
                seed = 16807 * seed % 2147483647;
                sum += seed / 2147483647.0;
            }
            values[i] = sum - 6;
        }
        return values;
    }

    internal static double[] Record(int points, double cycles, double amplitude, double phase, double offset, double sigma, long seed)
    {
        double[] noise = Noise(seed, points);
        return Enumerable.Range(0, points).Select(n => offset + amplitude * Math.Cos(2 * Math.PI * cycles * n + phase) + sigma * noise[n]).ToArray();
    }

    internal static double Number(this JsonElement entry, string name) => entry.GetProperty(name).GetDouble();

    internal static double[] Numbers(this JsonElement entry, string name) => entry.GetProperty(name).EnumerateArray().Select(e => e.GetDouble()).ToArray();
}
