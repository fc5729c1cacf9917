using System;

namespace Acquisition.Core.Planning;

/// <summary>What the mean of several samples, as high resolution stores it, leaves of a pulse (handbook 5.5).</summary>
internal static class MeanOfAPulse
{
    private const int MostPoints = 4096;
    private const int Phases = 8;

    /// <summary>The largest mean of so many samples in a row, relative to the height of a long pulse, wherever the samples fall; NaN where the response does not rise.</summary>
    internal static double Largest(Duration width, Duration riseTime, Response response, Duration interval, int count)
    {
        double peak = EdgeThrough.PulsePeak(width, riseTime, response);
        if (double.IsNaN(peak) || !response.StepResponse.FirstReach(0.5 * response.StepReference, out double middle))
            return peak;
        double margin = 3 * response.RiseTime.SiValue, from = middle - margin - riseTime.SiValue, to = middle + width.SiValue + margin + riseTime.SiValue, spacing = Math.Max(interval.SiValue, (to - from) / MostPoints);
        // A mean over next to nothing of the pulse leaves it as it is.
        int length = (int)Math.Round(count * interval.SiValue / spacing);
        if (length < 2)
            return peak;
        Func<double, double> value = EdgeThrough.Pulse(width, riseTime, response);
        double best = 0;
        for (int phase = 0; phase < Phases; phase++)
            best = Math.Max(best, Largest(value, from + (phase * spacing / Phases), to, spacing, length));
        return Math.Min(best, peak);
    }

    private static double Largest(Func<double, double> value, double from, double to, double spacing, int length)
    {
        int points = (int)Math.Ceiling((to - from) / spacing) + 1;
        var samples = new double[points];
        double sum = 0, best = 0;
        for (int i = 0; i < points; i++)
        {
            samples[i] = value(from + (i * spacing));
            sum += samples[i] - (i >= length ? samples[i - length] : 0);
            best = Math.Max(best, sum);
        }
        return best / length;
    }
}
