using System;

namespace Acquisition.Core.Records;

/// <summary>What the sine and spectrum doors need of a record: volts, and the limits and range of the converter that took it.</summary>
internal static class RecordInVolts
{
    /// <summary>What is larger is no sample: its square would not be finite.</summary>
    internal const double Largest = 1e150;

    internal static SampleStore Volts(this Record record, string argument)
    {
        if (record is null)
            throw new ArgumentNullException(argument);
        if (!ReferenceEquals(record.Kind, QuantityKind.Voltage))
            throw new ArgumentException($"{argument} must be a record of voltages; it is one of {record.Kind.Name} ({record.Kind.Symbol}); convert it with the sensor's scale first", argument);
        return record.Samples;
    }

    /// <summary>The first sample that is not a number up to <see cref="Largest"/>, where the extremes say that there is one.</summary>
    internal static int? FirstUnusable(this SampleStore samples, double lowest, double highest)
    {
        if (lowest >= -Largest && highest <= Largest)
            return null;
        int i = 0;
        while (Math.Abs(samples[i]) <= Largest)
            i++;
        return i;
    }

    /// <summary>From the lowest to the highest code and one step more, which is 2^N steps of an N-bit converter; null where the limits are not known.</summary>
    internal static double? FullScale(this Record record) =>
        record.LowLimitSi is { } low && record.HighLimitSi is { } high && high > low ? high - low + (record.ResolutionSi ?? 0) : null;
}
