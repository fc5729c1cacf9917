using System;

namespace Acquisition.Core.Records;

/// <summary>Whether edges follow each other regularly, and how many are missing where they do.</summary>
internal static class PulseTrain
{
    /// <summary>A train is regular when this share of its periods lies within this part of their median.</summary>
    private const double RegularShare = 0.7, RegularSpread = 0.1;

    internal static long Missing(double[] instants, out double period)
    {
        period = 0;
        if (instants.Length < 4)
            return 0;
        var periods = new double[instants.Length - 1];
        for (int k = 0; k < periods.Length; k++)
            periods[k] = instants[k + 1] - instants[k];
        var sorted = (double[])periods.Clone();
        Array.Sort(sorted);
        double median = sorted[sorted.Length / 2];
        int regular = 0;
        long missing = 0;
        foreach (double p in periods)
        {
            double multiple = Math.Round(p / median);
            if (multiple < 1 || Math.Abs(p - multiple * median) > RegularSpread * median * Math.Sqrt(Math.Max(1, multiple)))
                continue;
            if (multiple == 1)
                regular++;
            else
                missing += (long)multiple - 1;
        }
        period = median;
        return regular >= RegularShare * periods.Length ? missing : 0;
    }
}
