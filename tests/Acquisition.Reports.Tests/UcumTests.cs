using System.Linq;
using Acquisition.Core;
using Xunit;

namespace Acquisition.Reports.Tests;

/// <summary>Codes of The Unified Code for Units of Measure 2.1, tables 1 to 24 (from memory; B[V] was looked up in published lists of the atoms).</summary>
public sealed class UcumTests
{
    [Theory]
    [InlineData("", "1")]
    [InlineData("Hz", "Hz")]
    [InlineData("Ω", "Ohm")]
    [InlineData("V/s", "V/s")]
    [InlineData("V²/Hz", "V2/Hz")]
    [InlineData("A·s", "A.s")]
    [InlineData("bit/s", "bit/s")]
    [InlineData("dB/m", "dB/m")]
    [InlineData("dBV", "dB[V]")]
    [InlineData("Vpp", "V{peak-to-peak}")]
    [InlineData("s⁻¹", "s-1")]
    [InlineData("V/(m·s²)", "V/(m.s2)")]
    public void Symbol_HasItsCode(string symbol, string code) => Assert.Equal(code, Ucum.Of(symbol));

    [Theory]
    [InlineData("Sa/s")]
    [InlineData("pts")]
    [InlineData("V/√Hz")]
    [InlineData("dBm")]
    [InlineData("dBc")]
    [InlineData("dBFS")]
    [InlineData("div")]
    [InlineData("UI")]
    [InlineData("octave")]
    [InlineData("V (rms)")]
    [InlineData("dB (V, re Carrier)")]
    [InlineData("V^1.5")]
    public void SymbolThatUcumDoesNotKnow_HasNone(string symbol) => Assert.Null(Ucum.Of(symbol));

    [Fact]
    public void EveryNamedKind_HasACodeOrIsOnTheListOfThoseWithout()
    {
        string[] without = [.. typeof(QuantityKind).GetFields().Select(field => field.GetValue(null)).OfType<QuantityKind>().Select(kind => kind.Symbol).Where(symbol => Ucum.Of(symbol) is null).Distinct()];

        Assert.Equal(
            ["Sa/s", "pts", "V/√Hz", "A/√Hz", "V/div", "A/div", "s/div", "s/Sa", "symbol", "UI", "div", "octave", "decade", "dBc", "dBFS", "dBm", "dB/octave", "dB/decade", "dBm/Hz", "dBc/Hz", "dBFS/Hz"], without);
    }
}
