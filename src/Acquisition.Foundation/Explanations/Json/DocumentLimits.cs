using System;
using System.Collections.Generic;

namespace Acquisition.Core.Explanations.Json;

/// <summary>
/// What a quantity in a document may be at all: wider than any bench, and narrow enough for whatever is computed from a mixture of them to stay finite. What one member may be beside another is
/// for the types to say.
/// </summary>
internal static class DocumentLimits
{
    private static readonly Dictionary<Type, Limits> Known = new()
    {
        [typeof(Frequency)] = new(Frequency.Kind, 1e-6, 1e13),
        [typeof(SampleRate)] = new(SampleRate.Kind, 1e-6, 1e14),
        [typeof(BitRate)] = new(BitRate.Kind, 1e-6, 1e13),
        [typeof(Duration)] = new(Duration.Kind, 1e-18, 1e9, zero: true),
        [typeof(PointCount)] = new(PointCount.Kind, 2, 1e15),
        [typeof(BitDepth)] = new(BitDepth.Kind, 1, 64),
        [typeof(PeakToPeakVoltage)] = new(PeakToPeakVoltage.Kind, 1e-9, 1e7),
        [typeof(PeakVoltage)] = new(PeakVoltage.Kind, 1e-9, 1e7),
        [typeof(RmsVoltage)] = new(RmsVoltage.Kind, 1e-12, 1e7, zero: true),
        [typeof(Voltage)] = new(Voltage.Kind, 1e-9, 1e7, zero: true, negative: true),
        [typeof(Resistance)] = new(Resistance.Kind, 1e-3, 1e12, zero: true),
        [typeof(Capacitance)] = new(Capacitance.Kind, 1e-18, 1e-3, zero: true),
        [typeof(Inductance)] = new(Inductance.Kind, 1e-15, 1e-3, zero: true),
        [typeof(Length)] = new(Length.Kind, 1e-6, 1e5, zero: true),
        [typeof(Ratio)] = new(Ratio.Kind, 1e-12, 1e3, zero: true),
        [typeof(DecibelRatio)] = new(DecibelRatio.Kind, 1e-6, 200, zero: true, negative: true),
    };

    /// <summary>What is wrong with a value; null where nothing is.</summary>
    internal static string? Refuse<T>(T value)
        where T : struct => value is IQuantity quantity && Known.TryGetValue(typeof(T), out Limits? limits) ? limits.Refuse(quantity.ToQuantity().SiValue) : null;

    private sealed class Limits(QuantityKind kind, double least, double most, bool zero = false, bool negative = false)
    {
        // A limit written with a prefix may be read as its neighbour.
        private const double Rounding = 1e-12;

        internal string? Refuse(double value)
        {
            double size = negative ? Math.Abs(value) : value;
            return (size == 0 && zero) || (size >= least * (1 - Rounding) && size <= most * (1 + Rounding)) ? null
                : $"found {Text(value)}, expected {(zero ? Text(0) + " or " : "")}from {Text(least)} to {Text(most)}{(negative ? ", or as much below 0" : "")}";
        }

        private string Text(double value) => QuantityText.Format(value, kind, null, null);
    }
}
