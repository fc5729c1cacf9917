using System;
using Acquisition.Core.Formulas;
using Xunit;

namespace Acquisition.Core.Tests.Formulas;

/// <summary>What people of the trade write and the language does not read: the refusal says what to write instead.</summary>
public sealed class TextLanguageRemediesTests
{
    [Theory]
    [InlineData("1 V rms", "column 5: found 'rms', expected how the amplitude is stated in its unit; did you mean Vrms?")]
    [InlineData("20 mV RMS * 2", "column 7: found 'RMS', expected how the amplitude is stated in its unit; did you mean mVrms?")]
    [InlineData("3.3 V p-p", "column 7: found 'p-p', expected how the amplitude is stated in its unit; did you mean Vpp?")]
    [InlineData("1 A peak", "column 5: found 'peak', expected how the amplitude is stated in its unit; did you mean Apk?")]
    [InlineData("5 % of 3 V", "column 5: found 'of', expected an operator; did you mean *?")]
    [InlineData("0 dBm in V", "column 1: found a power level (0 dBm), expected a voltage before 'in V'; a power has a voltage only across a resistance: rms_voltage(level, resistance), in Vrms")]
    [InlineData("1 dBV in dBm", "column 1: found a voltage level (1 dBV), expected a power level before 'in dBm'; a voltage has a power only across a resistance: power_level(rms_voltage(level), resistance)")]
    [InlineData("0 dBm in dBV", "a power has a voltage only across a resistance: voltage_level(rms_voltage(level, resistance))")]
    [InlineData("77 °F", "expected °C or K (degrees Fahrenheit are not read: (t - 32)/1.8 are the degrees Celsius, so 77 are 25)")]
    [InlineData("77 degF", "found 'degF', expected °C or K (degrees Fahrenheit are not read")]
    public void SpellingOfTheTrade_IsRefusedWithWhatToWrite(string formula, string expected) =>
        Assert.Contains(expected, Assert.Throws<FormulaException>(() => Formula.Build(formula)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("power_level(rms_voltage(1 dBV), 50 Ω) in dBm", "14.010299956")]
    [InlineData("voltage_level(rms_voltage(0 dBm, 50 Ω)) in dBV", "-13.010299956")]
    [InlineData("5 % * 3 V in mV", "150 mV")]
    public void WhatTheRefusalSays_IsRead(string formula, string expected) => Assert.StartsWith(expected, TextFormulas.Evaluate(formula), StringComparison.Ordinal);

    [Theory]
    [InlineData("1 V rms", "did you mean Vrms?")]
    [InlineData("77 °F", "degrees Fahrenheit are not read")]
    [InlineData("77 degF", "degrees Fahrenheit are not read")]
    public void QuantityThatIsSpeltSo_IsRefusedInTheSameWay(string text, string expected) =>
        Assert.Contains(expected, Assert.Throws<QuantityFormatException>(() => Quantity.Parse(text)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("Gaussian")]
    [InlineData("GAUSSIAN")]
    [InlineData("gausian")]
    public void ChoiceSpeltOtherwise_IsRefusedWithTheRightOne(string shape) =>
        Assert.EndsWith("did you mean \"gaussian\"?", Assert.Throws<FormulaException>(() => Formula.Build($"deembed_rise_time(4 ns, gaussian(200 MHz), \"{shape}\")")).Message, StringComparison.Ordinal);

    [Fact]
    public void FaradIsNoFahrenheit() => Assert.Equal("77 F", TextFormulas.Evaluate("77 F"));
}
