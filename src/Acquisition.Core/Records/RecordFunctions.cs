using System;
using System.Collections.Generic;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Records;

/// <summary>Records in the formula language: what an ideal sampler makes of a signal, and what is measured on a record. A host may hand in records of its own.</summary>
internal static class RecordFunctions
{
    private static readonly ValueKind Model = ValueKind.Model<Record>("record");
    private static readonly ValueKind SignalModel = ValueKind.Model<Signal>("signal");

    /// <summary>The names that <see cref="All"/> declares.</summary>
    internal const string Names =
        "capture rise_time fall_time period pulse_duration duty_factor period_jitter cycle_to_cycle_jitter";

    internal static IEnumerable<FunctionDefinition> All()
    {
        yield return FunctionDefinition.Named("capture", "The record that an ideal sampler makes of a signal: no noise, no steps.", "handbook 5.4")
            .Takes("signal", SignalModel).Takes("sample_rate", QuantityKind.SampleRate).Takes("points", QuantityKind.PointCount)
            .ReturnsObject(Model, a => new SimulatedCapture(a.Model<Signal>(0), SampleRate.FromSi(a.SiValue(1), "sample_rate"), PointCount.FromSi(a.SiValue(2), "points")).Capture())
            .Example("period(capture(square(24 MHz, 2 Vpp, 5 ns), 2 GSa/s, 10 kpts))", "41.6667 ns");
        yield return FunctionDefinition.Named("rise_time", "The mean 10 % to 90 % duration of the rising transitions of a record.", "handbook 8.3")
            .Takes("record", Model)
            .Returns(QuantityKind.Duration, (Record record) => Mean(PulseMeasurement.Of(record).RisingDuration))
            .Example("rise_time(capture(square(24 MHz, 2 Vpp, 5 ns), 2 GSa/s, 10 kpts))", "5.0000 ns");
        yield return FunctionDefinition.Named("fall_time", "The mean 90 % to 10 % duration of the falling transitions of a record.", "handbook 8.3")
            .Takes("record", Model)
            .Returns(QuantityKind.Duration, (Record record) => Mean(PulseMeasurement.Of(record).FallingDuration))
            .Example("fall_time(capture(square(24 MHz, 2 Vpp, 5 ns), 2 GSa/s, 10 kpts))", "5.0000 ns");
        yield return FunctionDefinition.Named("period", "The mean period of the pulses of a record.", "handbook 8.3")
            .Takes("record", Model)
            .Returns(QuantityKind.Duration, (Record record) => Mean(PulseMeasurement.Of(record).Period))
            .Example("period(capture(square(24 MHz, 2 Vpp, 5 ns), 1 GSa/s, 10 kpts))", "41.6667 ns");
        yield return FunctionDefinition.Named("pulse_duration", "The mean duration of the positive pulses of a record, at the middle level.", "handbook 8.3")
            .Takes("record", Model)
            .Returns(QuantityKind.Duration, (Record record) => Mean(PulseMeasurement.Of(record).PositivePulseDuration))
            .Example("pulse_duration(capture(square(24 MHz, 2 Vpp, 5 ns), 2 GSa/s, 10 kpts))", "20.8333 ns");
        yield return FunctionDefinition.Named("duty_factor", "The mean duty factor of the positive pulses of a record.", "handbook 8.3")
            .Takes("record", Model)
            .Returns(QuantityKind.Ratio, (Record record) => Mean(PulseMeasurement.Of(record).DutyFactor))
            .Example("duty_factor(capture(square(24 MHz, 2 Vpp, 5 ns), 2 GSa/s, 10 kpts))", "50.000 %");
        yield return FunctionDefinition.Named("period_jitter", "The period jitter that white jitter of single edges makes: √2 of it.", "handbook 8.6")
            .Takes("edge_jitter", QuantityKind.Duration)
            .Returns(QuantityKind.Duration, jitter => EdgeJitter.WhitePeriodJitter(Duration.FromSi(jitter, "edge_jitter")).SiValue, _ => Math.Sqrt(2))
            .Example("period_jitter(3 ps)", "4.24264 ps");
        yield return FunctionDefinition.Named("cycle_to_cycle_jitter", "The cycle-to-cycle jitter that white jitter of single edges makes: √6 of it.", "handbook 8.6")
            .Takes("edge_jitter", QuantityKind.Duration)
            .Returns(QuantityKind.Duration, jitter => EdgeJitter.WhiteCycleToCycleJitter(Duration.FromSi(jitter, "edge_jitter")).SiValue, _ => Math.Sqrt(6))
            .Example("cycle_to_cycle_jitter(3 ps)", "7.34847 ps");
    }

    /// <summary>The mean, or the reason of its absence as a refusal of the record.</summary>
    private static double Mean<T>(Measured<Statistics<T>> measured)
        where T : struct, IQuantity =>
        measured.HasValue ? measured.Value.Mean.ToQuantity().SiValue : throw new ArgumentException(measured.Reason!.Message, nameof(measured));
}
