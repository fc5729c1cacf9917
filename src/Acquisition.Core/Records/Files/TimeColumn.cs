using System;
using System.Collections.Generic;

namespace Acquisition.Core.Records;

/// <summary>The times of a table: uniform, or refused with the row at which they are not.</summary>
internal static class TimeColumn
{
    /// <summary>A time may be off the straight line by this part of an interval: tables round their times.</summary>
    private const double Tolerance = 0.1;

    /// <summary>Off by less than this part of an interval is the rounding of a table that is written with enough digits.</summary>
    internal const double Exact = 1e-3;

    internal static Finding NotExact(double off, double interval) => new(
        "times-not-exact",
        Severity.Note,
        $"the times are up to {FewDigits.Of(off, QuantityKind.Ratio)} of an interval ({FewDigits.Seconds(off * interval)}) off a straight line; they are taken as uniform",
        "write the times with more digits, or give the sample rate");

    /// <summary>Start and interval of uniform times, and how far they are off at most, in intervals.</summary>
    /// <param name="times">The times, s.</param>
    /// <param name="count">How many.</param>
    /// <param name="lineOf">The line of a row.</param>
    /// <param name="column">The column, from 1.</param>
    internal static (double Start, double Interval, double Off) Uniform(double[] times, int count, Func<int, long> lineOf, int column)
    {
        if (count < 2)
            throw RecordFormatException.At(lineOf(0), column, "one row of times makes no interval: give the sample rate");
        double usual = UsualStep(times, count);
        if (!(usual > 0))
            throw RecordFormatException.At(lineOf(1), column, "the times do not increase, or are rounded more coarsely than the samples are apart: give the sample rate");
        for (int i = 1; i < count; i++)
        {
            double step = times[i] - times[i - 1];
            if (!(Math.Abs(step - usual) <= 0.5 * usual))
            {
                string what = step > 0 ? step > usual ? "a gap" : "times too close" : "times that do not increase";
                throw RecordFormatException.At(lineOf(i), column, $"{what}: {FewDigits.Seconds(step)} after the row before; the rows are {FewDigits.Seconds(usual)} apart. Records are uniform: split the table there, or resample it");
            }
        }
        double interval = (times[count - 1] - times[0]) / (count - 1), most = 0;
        for (int i = 1; i < count; i++)
        {
            double off = times[i] - (times[0] + i * interval);
            most = Math.Max(most, Math.Abs(off));
            if (Math.Abs(off) > Tolerance * interval)
                throw RecordFormatException.At(lineOf(i), column, $"the times are not uniform: this one is {FewDigits.Seconds(off)} off the straight line, and the rows are {FewDigits.Seconds(interval)} apart. Give the sample rate if the times are only rounded");
        }
        return (times[0], interval, most / interval);
    }

    /// <summary>The median of up to 1001 steps spread over the table.</summary>
    private static double UsualStep(double[] times, int count)
    {
        var steps = new List<double>();
        int stride = Math.Max(1, (count - 1) / 1000);
        for (int i = 1; i < count; i += stride)
            steps.Add(times[i] - times[i - 1]);
        steps.Sort();
        return steps[steps.Count / 2];
    }
}
