using System;

namespace Acquisition.Core.Records;

/// <summary>Whether edges follow each other regularly, and how many are missing where they do.</summary>
internal static class PulseTrain
{
    /// <summary>A train is regular when this share of its periods lies within this part of their median.</summary>
    private const double RegularShare = 0.7, RegularSpread = 0.1;

    /// <summary>Whether a period may hide a missing pulse: only where one is nearly half as long again as another can it be twice the median.</summary>
    internal static bool MayMiss(in RunningMoments periods) => periods.Count >= 3 && periods.Maximum >= 1.4 * periods.Minimum;

    /// <summary>How many edges of one direction are missing, and the period of the train; 0 for a train that is not regular.</summary>
    internal static long Missing(double[] instants, out double period)
    {
        period = 0;
        if (instants.Length < 4)
            return 0;
        var periods = new double[instants.Length - 1];
        for (int k = 0; k < periods.Length; k++)
            periods[k] = instants[k + 1] - instants[k];
        double median = Selected(periods, periods.Length / 2);
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

    /// <summary>The entry that would stand at an index if they were in order; they are put into another order (Hoare's FIND, 1961).</summary>
    private static double Selected(double[] values, int index)
    {
        int from = 0, to = values.Length - 1;
        while (from < to)
        {
            double pivot = values[index];
            int i = from, j = to;
            while (i <= j)
            {
                while (values[i] < pivot)
                    i++;
                while (values[j] > pivot)
                    j--;
                if (i > j)
                    break;
                (values[i], values[j]) = (values[j], values[i]);
                i++;
                j--;
            }
            if (j < index)
                from = i;
            if (index < i)
                to = j;
        }
        return values[index];
    }
}
