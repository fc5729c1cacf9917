using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.Json;
using Xunit;

namespace Acquisition.Core.Tests.Handbook;

/// <summary>One computed value of check-values.json: what goes in, what must come out, how closely, and where it is from.</summary>
public sealed class CheckValue
{
    private readonly JsonElement _entry;

    private CheckValue(JsonElement entry) => _entry = entry;

    /// <summary>All values, by id.</summary>
    public static IReadOnlyDictionary<string, CheckValue> All { get; } = Load();

    public string Id => _entry.GetProperty("id").GetString()!;

    public string Section => _entry.GetProperty("section").GetString()!;

    public string Topic => _entry.GetProperty("topic").GetString()!;

    public string Unit => _entry.GetProperty("unit").GetString()!;

    public string Method => _entry.GetProperty("method").GetString()!;

    /// <summary>Where it is from.</summary>
    public string Source => _entry.GetProperty("source").GetString()!;

    /// <summary>The figure that the source prints, with half a unit of its last digit; null where it prints none.</summary>
    public (double Value, double HalfUnit)? Printed =>
        _entry.TryGetProperty("published", out JsonElement printed) ? (printed.GetProperty("value").GetDouble(), printed.GetProperty("half_unit").GetDouble()) : null;

    /// <summary>The raw inputs, for entries whose shape is their own.</summary>
    public JsonElement Inputs => _entry.GetProperty("inputs");

    public JsonElement ExpectedElement => _entry.GetProperty("expected");

    public double Expected => ExpectedElement.GetDouble();

    public double Tolerance => _entry.GetProperty("tolerance").GetDouble();

    public bool Has(string input) => Inputs.TryGetProperty(input, out _);

    public double Number(string input) => Inputs.GetProperty(input).GetDouble();

    public int Integer(string input) => Inputs.GetProperty(input).GetInt32();

    public string Text(string input) => Inputs.GetProperty(input).GetString()!;

    public double[] Numbers(string input) => Inputs.GetProperty(input).EnumerateArray().Select(x => x.GetDouble()).ToArray();

    /// <summary>Fails unless <paramref name="actual"/> lies within the tolerance of the expected value.</summary>
    public void Confirm(double actual) =>
        Assert.True(Math.Abs(actual - Expected) <= Tolerance, FormattableString.Invariant($"{Id} ({Topic}): expected {Expected:R} {Unit} within {Tolerance:R}, was {actual:R}. {Method}"));

    public override string ToString() => Id;

    private static Dictionary<string, CheckValue> Load()
    {
        using var document = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Handbook", "check-values.json")));
        return document.RootElement.EnumerateArray().Select(entry => new CheckValue(entry.Clone())).ToDictionary(value => value.Id);
    }
}
