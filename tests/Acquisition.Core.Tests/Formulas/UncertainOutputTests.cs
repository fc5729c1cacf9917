using System.Linq;
using Acquisition.Core.Formulas;
using Xunit;

namespace Acquisition.Core.Tests.Formulas;

public sealed class UncertainOutputTests
{
    private static WorksheetEntry Show(string show) => Worksheet.Build("given a = 5 V ± 10 mV\ngiven level = -10 dBm ± 0.5 dB (k=2)\ngiven warm = 25 °C ± 2 K (k=2)\nshow " + show).Evaluate().Entries[3];

    // U = 2 * 10 mV/√3 = 11.547 mV (JCGM 100 4.3.7 and 7.2.6).
    [Theory]
    [InlineData("a in mV, 4 digits", "5000 mV ± 12 mV (k=2)")]
    [InlineData("a", "5.000 V ± 12 mV (k=2)")]
    [InlineData("a in mV", "5000 mV ± 12 mV (k=2)")]
    [InlineData("a in mV, 4 digits, value only", "5000 mV")]
    [InlineData("a in mV, value only", "5000 mV")]
    [InlineData("a - a", "0 V")]
    [InlineData("level", "-10.00 dBm ± 0.50 dB (k=2)")]
    [InlineData("warm in °C", "25.0 °C ± 2.0 K (k=2)")]
    [InlineData("a / 1 MOhm in nA, 3 digits", "5000 nA ± 12 nA (k=2)")]
    public void Show_WritesTheExpandedUncertaintyBesideTheValue(string show, string text) => Assert.Equal(text, Show(show).Text);

    [Theory]
    [InlineData("a, 3 digits, 4 digits")]
    [InlineData("a, value only, value only")]
    [InlineData("a, values only")]
    [InlineData("a,")]
    public void OptionThatIsNone_IsRefused(string show) =>
        Assert.Contains("or 'value only' to leave its uncertainty out", Assert.Throws<FormulaException>(() => Show(show)).Message, System.StringComparison.Ordinal);

    [Theory]
    [InlineData("3 V ± 5 %", "")]
    [InlineData("a in mV", " in mV")]
    public void WhatIsWritten_IsReadByTheLanguage(string formula, string unit)
    {
        string text = TextFormulas.Evaluate(formula, "a = 5 V ± 10 mV");
        Assert.Equal(text, TextFormulas.Evaluate($"({text}){unit}"));
    }

    [Fact]
    public void TextFormulas_KeepTheUncertaintyOfFormulaAndInputs()
    {
        Assert.Equal("3.00 V ± 170 mV (k=2)", TextFormulas.Evaluate("3 V ± 5 %"));
        Assert.Equal("2.5000 V ± 5.8 mV (k=2)", TextFormulas.Evaluate("a / 2", "a = 5 V ± 10 mV"));
        Assert.Equal("0 V", TextFormulas.Evaluate("a - a", "a = 5 V ± 10 mV"));
        Assert.Equal("2.5 V", TextFormulas.Evaluate("a / 2", "a = 5 V"));
    }

    [Fact]
    public void TextCheck_KeepsAGuardBand()
    {
        Assert.False(TextFormulas.Check("v >= 4.9 V and v <= 5.025 V", "v = 5.02 V ± 10 mV"));
        Assert.True(TextFormulas.Check("v >= 4.9 V and v <= 5.04 V", "v = 5.02 V ± 10 mV"));
        Assert.True(TextFormulas.Check("v <= 5.025 V", "v = 5.02 V"));
    }

    [Fact]
    public void ResultInWords_SaysHowFarEachLineIsKnown() =>
        Assert.Equal("   1  a = 5.000 V ± 12 mV (k=2)", Worksheet.Build("given a = 5 V ± 10 mV").Evaluate().ToString());
}
