using System;

namespace Acquisition.Core.Records;

/// <summary>What the sine and spectrum doors need of a record: volts, and the limits and range of the converter that took it.</summary>
internal static class RecordInVolts
{
    internal static double[] Volts(this Record record, string argument)
    {
        if (record is null)
            throw new ArgumentNullException(argument);
        if (!ReferenceEquals(record.Kind, QuantityKind.Voltage))
            throw new ArgumentException($"{argument} must be a record of voltages; it is one of {record.Kind.Name} ({record.Kind.Symbol}); convert it with the sensor's scale first", argument);
        return record.ToSiValues();
    }

    /// <summary>From the lowest to the highest code and one step more, which is 2^N steps of an N-bit converter; null where the limits are not known.</summary>
    internal static double? FullScale(this Record record) =>
        record.LowLimitSi is { } low && record.HighLimitSi is { } high && high > low ? high - low + (record.ResolutionSi ?? 0) : null;
}
