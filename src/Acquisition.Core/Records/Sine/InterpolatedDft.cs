using System;

namespace Acquisition.Core.Records;

/// <summary>The frequency of the largest line of a short spectrum, between its bins (handbook 9.3; Jain, Collins and Davis 1979; Grandke 1983).</summary>
internal readonly struct InterpolatedDft
{
    private InterpolatedDft(int bin, double position, double prominence)
    {
        Bin = bin;
        Position = position;
        Prominence = prominence;
    }

    /// <summary>The largest bin, DC and Nyquist left out.</summary>
    internal int Bin { get; }

    /// <summary>The frequency in bins.</summary>
    internal double Position { get; }

    /// <summary>Power of the largest bin over the mean power of the bins that are not beside it.</summary>
    internal double Prominence { get; }

    /// <summary>Of the first so many samples.</summary>
    internal static InterpolatedDft Of(SamplePasses x, int length, bool hann)
    {
        var transform = new RealTransform(length);
        double mean = 0;
        for (int at = 0; at < length;)
        {
            SampleBlock block = x.Next(at, length);
            for (; at < block.To; at++)
            {
                transform[at] = block[at];
                mean += block[at];
            }
        }
        mean /= length;
        for (int i = 0; i < length; i++)
            transform[i] = (transform[i] - mean) * (hann ? 0.5 - 0.5 * Math.Cos(2 * Math.PI * i / length) : 1);
        transform.Transform();
        var power = new double[transform.Bins];
        int last = (length - 1) / 2, k = 1;
        double total = 0;
        for (int i = 0; i < power.Length; i++)
        {
            power[i] = transform.Power(i);
            if (i >= 1 && i <= last)
            {
                total += power[i];
                if (power[i] > power[k])
                    k = i;
            }
        }
        double left = power[k - 1], right = k + 1 < power.Length ? power[k + 1] : 0, beside = 0;
        int others = 0;
        for (int i = Math.Max(1, k - 3); i <= Math.Min(last, k + 3); i++)
        {
            beside += power[i];
            others++;
        }
        double elsewhere = (total - beside) / Math.Max(1, last - others);
        double ratio = Math.Sqrt(Math.Max(left, right) / power[k]);
        double shift = hann ? (2 * ratio - 1) / (ratio + 1) : ratio / (1 + ratio);
        double position = power[k] > 0 ? k + (right >= left ? shift : -shift) : k;
        return new InterpolatedDft(k, position, elsewhere > 0 ? power[k] / elsewhere : power[k] > 0 ? double.PositiveInfinity : 0);
    }
}
