using System;
using System.IO;
using System.Linq;
using System.Text.Json;

namespace Acquisition.Core.Tests.Uncertainty;

/// <summary>Values made by tests/scripts/uncertainty/make_reference.py (SciPy; versions in the file).</summary>
internal static class ReferenceValues
{
    private static readonly JsonElement Root = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Uncertainty", "reference.json"))).RootElement;

    internal static string[] Strings(string name) => Root.GetProperty(name).EnumerateArray().Select(x => x.GetString()!).ToArray();

    /// <summary>A table; a missing limit (null) is infinite.</summary>
    internal static double[][] Table(string name) =>
        Root.GetProperty(name).EnumerateArray().Select(row => row.EnumerateArray().Select(x => x.ValueKind == JsonValueKind.Null ? double.NegativeInfinity : x.GetDouble()).ToArray()).ToArray();

    internal static double Number(string name, string field) => Root.GetProperty(name).GetProperty(field).GetDouble();

    internal static double[] Numbers(string name, string field) => Root.GetProperty(name).GetProperty(field).EnumerateArray().Select(x => x.GetDouble()).ToArray();
}
