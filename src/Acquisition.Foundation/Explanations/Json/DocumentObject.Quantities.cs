using System;
using System.Collections.Generic;

namespace Acquisition.Core.Explanations.Json;

// Members that are quantities, written as text with a unit.
internal sealed partial class DocumentObject
{
    /// <summary>A quantity, written as text with its unit; null where there is none or it cannot be read.</summary>
    internal T? OptionalQuantity<T>(string name, Func<string, T> parse)
        where T : struct
    {
        Known(name);
        return _value.Member(name) is { Kind: not JsonKind.Null } value ? QuantityOf(value, At(name), parse) : null;
    }

    internal T Quantity<T>(string name, Func<string, T> parse)
        where T : struct
    {
        if (!Has(name))
            Missing(name, Expectation(typeof(T)));
        return OptionalQuantity(name, parse) ?? default;
    }

    internal IReadOnlyList<T> Quantities<T>(string name, Func<string, T> parse)
        where T : struct
    {
        var read = new List<T>();
        int index = 0;
        foreach (JsonValue item in Items(name))
        {
            if (QuantityOf(item, At(name, index++), parse) is { } quantity)
                read.Add(quantity);
        }
        return read;
    }

    private T? QuantityOf<T>(JsonValue value, string path, Func<string, T> parse)
        where T : struct
    {
        if (value.Kind != JsonKind.Text)
        {
            Report(value, path, $"found {value.KindName}, expected {Expectation(typeof(T))} with its unit in double quotes");
            return null;
        }
        try
        {
            T read = parse(value.Text);
            if (DocumentLimits.Refuse(read) is not { } refused)
                return read;
            Report(value, path, refused);
        }
        catch (Exception refusal) when (refusal is FormatException or ArgumentException or OverflowException)
        {
            Report(value, path, FirstLine(refusal));
        }
        return null;
    }

    private static string Expectation(Type quantity) => "a quantity such as " + quantity.Name switch
    {
        nameof(Frequency) => "\"100 MHz\"",
        nameof(Duration) => "\"2.8 ns\"",
        nameof(SampleRate) => "\"2 GSa/s\"",
        nameof(PointCount) => "\"14 kpts\"",
        nameof(BitDepth) => "\"8 bit\"",
        nameof(BitRate) => "\"100 Mbit/s\"",
        nameof(Voltage) => "\"3.3 V\"",
        nameof(PeakToPeakVoltage) => "\"3.3 Vpp\"",
        nameof(PeakVoltage) => "\"1 Vpk\"",
        nameof(RmsVoltage) => "\"0.4 mVrms\"",
        nameof(Resistance) => "\"50 Ω\"",
        nameof(Capacitance) => "\"14 pF\"",
        nameof(Inductance) => "\"10 nH\"",
        nameof(Length) => "\"1 m\"",
        nameof(Ratio) => "\"3 %\"",
        nameof(DecibelRatio) => "\"-3 dB\"",
        nameof(Temperature) => "\"23 °C\"",
        nameof(NoiseDensity) => "\"4 nV/√Hz\"",
        _ => "\"1 " + quantity.Name + "\"",
    };
}
