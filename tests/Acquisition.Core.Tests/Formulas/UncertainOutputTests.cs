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

    // U = 2 * 10 mV/√3 = 11.547 mV, as above; of the square of 0 ± 0.4 V, √2 u² to second order: U = 2√2 (0.4/√3)² V² = 0.1508 V² (JCGM 100 5.1.2, note).
    [Theory]
    [InlineData("{{ a }}", "5.000 V ± 12 mV (k=2)")]
    [InlineData("{{ a : G4 mV }}", "5000 mV ± 12 mV (k=2)")]
    [InlineData("{{ a in mV }} and {{ a : 3, value only }}", "5000 mV ± 12 mV (k=2) and 5.00 V")]
    [InlineData("{{ a , value  only }}", "5 V")]
    [InlineData("{{ 2 * a - b }} {{ a - a }} {{ b - a : G3 }}", "0 V 0 V 5 V ± 12 mV (k=2)")]
    [InlineData("{{ 3 V ± 5 % }} {{ exact }} {{ a > 3 V }}", "3.00 V ± 170 mV (k=2) 2 V true")]
    [InlineData("{{ square }}", "0 V² ± 0.15 V² (k=2)")]
    public void Templates_WriteTheExpandedUncertaintyAsShowDoes(string template, string expected)
    {
        const string Sheet = "given a = 5 V ± 10 mV\nlet b = 2 * a\ngiven exact = 2 V\ngiven zero = 0 V ± 0.4 V\nlet square = zero^2";
        Worksheet sheet = Worksheet.Build(Sheet);

        Assert.Equal(expected, TextTemplate.Build(template, FormulaContext.Standard.WithNamesOf(sheet)).Fill(sheet.Evaluate().Values));
        Assert.Equal(expected, TextFormulas.Fill(template, Sheet.Replace("given ", "", System.StringComparison.Ordinal).Replace("let ", "", System.StringComparison.Ordinal).Split('\n')));
    }

    [Theory]
    [InlineData("{{ a, 3 digits }}", "line 1, column 6: found ' 3 digits ', expected 'value only', which leaves the uncertainty out, or nothing")]
    [InlineData("{{ a : G3, values }}", "line 1, column 11: found ' values ', expected 'value only', which leaves the uncertainty out, or nothing")]
    public void OptionOfATemplateThatIsNone_IsRefused(string template, string expected)
    {
        TextTemplate.TryBuild(template, FormulaContext.Standard.WithInput("a", QuantityKind.Voltage), out _, out System.Collections.Generic.IReadOnlyList<FormulaProblem> problems);
        Assert.Equal(expected, problems.Single().ToString());
    }

    [Fact]
    public void AnOverride_IsExactInATemplateToo()
    {
        Worksheet sheet = Worksheet.Build("given a = 5 V ± 10 mV\nlet b = 2 * a");
        WorksheetResult result = sheet.Evaluate(new System.Collections.Generic.Dictionary<string, FormulaValue> { ["a"] = Quantity.Parse("4 V") });

        Assert.Equal("4 V 8 V", TextTemplate.Build("{{ a }} {{ b }}", FormulaContext.Standard.WithNamesOf(sheet)).Fill(result.Values));
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
        Assert.Equal("   1  a = 5 V ± 10 mV\n   2  b = 10.000 V ± 23 mV (k=2)", Worksheet.Build("given a = 5 V ± 10 mV\nlet b = 2 * a").Evaluate().ToString());

    // 2 K/√3 with k = 2 is 2.3 K; the value ends where its second digit does (JCGM 100 7.2.6).
    [Theory]
    [InlineData("298.16 K ± 2 K", "298.2 K ± 2.3 K (k=2)")]
    [InlineData("25 °C ± 2 K in °C", "25.0 °C ± 2.3 K (k=2)")]
    public void ATemperature_EndsWhereItsUncertaintyDoes(string formula, string text) => Assert.Equal(text, TextFormulas.Evaluate(formula));
}
