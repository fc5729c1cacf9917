using System;
using System.Linq;
using Acquisition.Core.Formulas;
using Xunit;

namespace Acquisition.Core.Tests.Formulas;

public sealed class FormulaEvaluationTests
{
    /// <summary>A formula, and what it gives as a quantity that is written by hand.</summary>
    [Theory]
    [InlineData("1 + 2 * 3", "7")]
    [InlineData("(1 + 2) * 3", "9")]
    [InlineData("2 ^ 3 ^ 2", "512")]
    [InlineData("-2 ^ 2", "-4")]
    [InlineData("(-2) ^ 2", "4")]
    [InlineData("2 ^ -1", "0.5")]
    [InlineData("10 - 2 - 3", "5")]
    [InlineData("100 / 10 / 2", "5")]
    [InlineData("--3", "3")]
    [InlineData("2 - -3", "5")]
    [InlineData("10:1", "10")]
    [InlineData("5 %", "0.05")]
    [InlineData("0.35 / 100 MHz", "3.5 ns")]
    [InlineData("0.35 / 100 MHz in ps", "3.5 ns")]
    [InlineData("1 / 2 GSa/s", "500 ps/Sa")]
    [InlineData("2 GSa/s * 100 ms", "200 Mpts")]
    [InlineData("10 ms/div * 14 div", "140 ms")]
    [InlineData("20 mV / div", "20 mV/div")]
    [InlineData("100 MSa / s", "100 MSa/s")]
    [InlineData("20 mV / div * 8 div", "160 mV")]
    [InlineData("-174 dBm / Hz", "-174 dBm/Hz")]
    [InlineData("5 in in mm", "127 mm")]
    [InlineData("127 mm in in", "127 mm")]
    [InlineData("20 dB + 6 dB", "26 dB")]
    [InlineData("-40 dBm + 10 dB", "-30 dBm")]
    [InlineData("10 dB + -40 dBm", "-30 dBm")]
    [InlineData("-30 dBm - -40 dBm", "10 dB")]
    [InlineData("-70 dBc - -60 dBc", "-10 dB")]
    [InlineData("2 * 3 dB", "6 dB")]
    [InlineData("3 dB / 2", "1.5 dB")]
    [InlineData("0.5 dB/m * 10 m", "5 dB")]
    [InlineData("10 m * 0.5 dB/m", "5 dB")]
    [InlineData("-20 dB/decade * 2 decade", "-40 dB")]
    [InlineData("6 dB / 2 octave", "3 dB/octave")]
    [InlineData("-174 dBm/Hz * 1 MHz", "-114 dBm")]
    [InlineData("1 MHz * -174 dBm/Hz", "-114 dBm")]
    [InlineData("-20 °C + 30 K", "10 °C")]
    [InlineData("(25 °C - 20 °C) / 1 V", "5 K/V")]
    [InlineData("1 Vpp / 2", "0.5 Vpp")]
    [InlineData("1 Vpp / 50 Ω", "20 mApp")]
    [InlineData("1 Vrms * 1 Arms", "1 W")]
    [InlineData("(1 Vrms)^2 / 50 Ω", "20 mW")]
    [InlineData("sine_rms(1 Vpk)^2 / 50 Ω in mW", "10 mW")]
    [InlineData("+5.02 V", "5.02 V")]
    [InlineData("+5.02E+00 V - +2 V in V", "3.02 V")]
    [InlineData("1 Vpk / 20 mApk", "50 Ω")]
    [InlineData("2 * 1 Vpk * 100 Hz", "200 V/s")]
    [InlineData("1.414 Vpk / 1 Vrms", "1.414")]
    [InlineData("5 nV/√Hz * sqrt(100 MHz)", "50 µV")]
    [InlineData("5 nV/√Hz * (100 MHz)^0.5", "50 µV")]
    [InlineData("sqrt((3 ns)^2 + (4 ns)^2)", "5 ns")]
    [InlineData("sqrt(4 V^2)", "2 V")]
    [InlineData("(8 V^3)^(1/3 * 3 / 1)", "8 V^3")]
    [InlineData("if 1 GHz > 500 MHz then 1 ns else 2 ns", "1 ns")]
    [InlineData("if 1 == 2 then 1 else 1 / 1", "1")]
    [InlineData("if false then 1 / 0 else 2", "2")]
    [InlineData("if true then nyquist_frequency(2 GSa/s) else 1 / (1 s - 1 s)", "1 GHz")]
    [InlineData("period(frequency: 24 MHz)", "41.666666666666664 ns")]
    [InlineData("min(3 V, 1 V, 2 V)", "1 V")]
    [InlineData("max(-3 dBm, -5 dBm)", "-3 dBm")]
    [InlineData("100 MHz ± 5 %", "100 MHz")]
    [InlineData("100 MHz ± 5 % (k=2)", "100 MHz")]
    [InlineData("100 MHz +/- 1 MHz", "100 MHz")]
    [InlineData("-3 dBm ± 0.5 dB", "-3 dBm")]
    [InlineData("25 °C ± 2 K", "25 °C")]
    [InlineData("2 * pi * 1 kHz", "6283.185307179586 Hz")]
    [InlineData("1.5×10^6 Hz", "1.5 MHz")]
    [InlineData("14 000 pts", "14 kpts")]
    [InlineData("1 V/Ω", "1 A")]
    [InlineData("3 V / 2", "1.5 V")]
    [InlineData("3 V/2", "1.5 V")]
    public void Formula_GivesTheQuantity(string text, string expected)
    {
        FormulaValue value = Formula.Build(text).Evaluate();
        Quantity wanted = Quantity.Parse(expected);
        Assert.Equal(wanted.Kind, value.Quantity.Kind);
        Assert.Equal(wanted.SiValue, value.SiValue, Math.Abs(wanted.SiValue) * 1e-14);
    }

    [Theory]
    [InlineData("1 MHz < 2 MHz", true)]
    [InlineData("1 MHz <= 1000 kHz", true)]
    [InlineData("1 MHz ≥ 1000 kHz", true)]
    [InlineData("not 1 > 2", true)]
    [InlineData("not 1 > 2 and 3 == 3", true)]
    [InlineData("true or false and false", true)]
    [InlineData("\"sinc\" == \"linear\"", false)]
    [InlineData("\"a\"\"b\" != \"ab\"", true)]
    [InlineData("true == false", false)]
    [InlineData("true or period(0 Hz) > 1 s", true)]
    [InlineData("false and period(0 Hz) > 1 s", false)]
    [InlineData("290 K > 0 °C", true)]
    public void Formula_GivesTheTruth(string text, bool expected) => Assert.Equal(expected, Formula.Build(text).Evaluate().IsTrue);

    [Fact]
    public void Inputs_AreGivenByPlaceByNameAndInSi()
    {
        FormulaContext context = FormulaContext.Standard.WithInput("bandwidth", QuantityKind.Frequency).WithInput("factor", QuantityKind.Ratio);
        Formula formula = context.Build("factor / bandwidth in ns");
        Quantity bandwidth = Quantity.Parse("100 MHz"), factor = Quantity.Parse("0.35");
        Assert.Equal(3.5e-9, formula.Evaluate(bandwidth, factor).SiValue, 1e-24);
        Assert.Equal(3.5e-9, formula.EvaluateSi(100e6, 0.35), 1e-24);
        var named = new[] { ("factor", factor), ("bandwidth", bandwidth) }.ToDictionary(pair => pair.Item1, pair => (FormulaValue)pair.Item2);
        Assert.Equal(3.5e-9, formula.Evaluate(named).SiValue, 1e-24);
        Assert.Equal("duration", formula.ResultKind.Name);
        Assert.Equal(["bandwidth: frequency", "factor: ratio"], formula.Inputs.Select(input => input.ToString()));
    }

    [Fact]
    public void InputOfAnotherKind_IsRefusedByName()
    {
        Formula formula = FormulaContext.Standard.WithInput("rate", QuantityKind.SampleRate).Build("nyquist_frequency(rate)");
        var refusal = Assert.Throws<ArgumentException>(() => formula.Evaluate(Quantity.Parse("1 GHz")));
        Assert.StartsWith("input rate: found a frequency (1 GHz), expected a sample rate", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void UnitOfTheHostsOwn_CountsAndConverts()
    {
        FormulaContext context = FormulaContext.Standard.WithUnit("tick", "10 ns");
        Assert.Equal(2.5e-7, context.Build("25 tick").Evaluate().SiValue, 1e-22);
        Assert.Equal(1e8, context.Build("1 / tick").Evaluate().SiValue, 1e-6);
        Assert.Equal("4.2 tick", context.Build("42 ns in tick").Evaluate().ToString("2"));
    }

    [Theory]
    [InlineData("fs", "'fs' is a unit and cannot be a name; did you mean fs_value?")]
    [InlineData("then", "'then' is a word of the formula language and cannot be a name")]
    [InlineData("pi", "'pi' is a constant and cannot be a name; did you mean pi_value?")]
    [InlineData("2nd", "'2nd' is no name: letters, digits and underscores, a letter first")]
    [InlineData("clock", "'clock' is declared already")]
    public void NameThatIsTaken_IsRefusedWhenDeclared(string name, string message)
    {
        FormulaContext context = FormulaContext.Standard.WithInput("clock", QuantityKind.Frequency);
        var refusal = Assert.Throws<ArgumentException>(() => context.WithInput(name, QuantityKind.Frequency));
        Assert.StartsWith(message, refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ModelsTextsAndChoicesAreValues()
    {
        FormulaContext context = FormulaContext.Standard.WithFunctions(Sketches.All);
        Assert.Equal(30, context.Build("width(line(\"dashed\", 10, thickness: 3))").Evaluate().SiValue);
        Assert.Equal(10, context.Build("width(if 1 > 2 then line(\"plain\", 20) else line(\"dashed\", 10))").Evaluate().SiValue);
        Formula made = context.WithInput("length", QuantityKind.Ratio).Build("line(\"plain\", length)");
        Assert.Equal("line", made.ResultKind.Name);
        Assert.Equal(7, made.Evaluate(Quantity.Parse("7")).Model<Sketches.Line>().Length);
    }

    [Fact]
    public void ChoiceOfAModelByInput_MakesOnlyTheChosenOne()
    {
        FormulaContext context = FormulaContext.Standard.WithFunctions(Sketches.All).WithInput("x", QuantityKind.Ratio);
        Formula formula = context.Build("width(if x > 2 then line(\"plain\", x) else line(\"dashed\", -x))");
        Assert.Equal(3, formula.EvaluateSi(3));
        var refusal = Assert.Throws<FormulaException>(() => formula.EvaluateSi(1));
        Assert.Equal("column 43: line: length must be above 0; was -1", refusal.Message);
    }
}
