using System;

namespace Acquisition.Core;

/// <summary>
/// Rare events and the time an instrument is blind: events at random, records at a steady rate, each event shorter than the window and independent of the
/// trigger (handbook 5.11). A trigger on the event itself replaces all of this by one record per event.
/// </summary>
public static class DeadTime
{
    /// <summary>The share of time that is looked at: record rate × window (handbook 5.11).</summary>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not above zero, or the records would overlap.</exception>
    public static Ratio ObservedShare(Frequency recordRate, Duration window)
    {
        RequireSeparate(recordRate, window);
        return Ratio.FromSi(Math.Min(1, recordRate.SiValue * window.SiValue), nameof(window));
    }

    /// <summary>The chance of at least one event in what is looked at during a time: 1 - (1 - R Tw)^(W t).</summary>
    /// <param name="eventRate">How often the event comes on average, R.</param>
    /// <param name="recordRate">Records per second, W.</param>
    /// <param name="window">The window of one record, Tw; R Tw must be below 1, and is well below it for the model to hold.</param>
    /// <param name="time">How long one looks, t.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not above zero, or more than one event per window is expected, or the records would overlap.</exception>
    public static Ratio ChanceOfCapture(Frequency eventRate, Frequency recordRate, Duration window, Duration time)
    {
        double perRecord = PerRecord(eventRate, recordRate, window), records = recordRate.SiValue * Sampling.RequireTime(time, nameof(time));
        return Ratio.FromSi(-ExpM1(records * EquivalentTime.Log1Minus(perRecord)), nameof(time));
    }

    /// <summary>The same chance by the Poisson law, 1 - exp(-R W Tw t), which also holds when several events may fall into one window.</summary>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not above zero, or the records would overlap.</exception>
    public static Ratio PoissonChanceOfCapture(Frequency eventRate, Frequency recordRate, Duration window, Duration time)
    {
        RequireSeparate(recordRate, window);
        return Ratio.FromSi(-ExpM1(-Rate(eventRate, nameof(eventRate)) * recordRate.SiValue * window.SiValue * Sampling.RequireTime(time, nameof(time))), nameof(time));
    }

    /// <summary>How long one has to look for a chance of at least <paramref name="confidence"/>: ln(1 - P) / (W ln(1 - R Tw)).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="confidence"/> is not above 0 and below 1, or another argument is out of range.</exception>
    public static Duration TimeFor(Ratio confidence, Frequency eventRate, Frequency recordRate, Duration window)
    {
        double p = confidence.SiValue;
        if (!(p > 0 && p < 1))
            throw Refuse.OutOfRange(p, Ratio.Kind, nameof(confidence), "above 0 and below 1");
        double perRecord = PerRecord(eventRate, recordRate, window);
        return Duration.FromSi(EquivalentTime.Log1Minus(p) / (recordRate.SiValue * EquivalentTime.Log1Minus(perRecord)), nameof(confidence));
    }

    private static double PerRecord(Frequency eventRate, Frequency recordRate, Duration window)
    {
        RequireSeparate(recordRate, window);
        double perRecord = Rate(eventRate, nameof(eventRate)) * window.SiValue;
        return perRecord < 1
            ? perRecord
            : throw Refuse.OutOfRange(eventRate.SiValue, Frequency.Kind, nameof(eventRate), $"below one event per window of {window}", "for frequent events use the Poisson law");
    }

    private static void RequireSeparate(Frequency recordRate, Duration window)
    {
        double share = Rate(recordRate, nameof(recordRate)) * Sampling.RequireTime(window, nameof(window));
        if (share > 1 + 1e-12)
            throw Refuse.OutOfRange(recordRate.SiValue, Frequency.Kind, nameof(recordRate), $"at most {1.0 / window:G4}, one record per window");
    }

    private static double Rate(Frequency rate, string argument) => Refuse.UnlessAboveZero(rate.SiValue, Frequency.Kind, argument);

    /// <summary>e^x - 1 without loss of digits for small x.</summary>
    internal static double ExpM1(double x)
    {
        if (Math.Abs(x) > 0.01)
            return Math.Exp(x) - 1;
        double term = x, sum = x;
        for (int k = 2; k <= 9; k++)
            sum += term *= x / k;
        return sum;
    }
}
