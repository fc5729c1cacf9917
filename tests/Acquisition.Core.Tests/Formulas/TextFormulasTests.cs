using System.Text.Json;
using Acquisition.Core.Formulas;
using Xunit;

namespace Acquisition.Core.Tests.Formulas;

public sealed class TextFormulasTests
{
    [Fact]
    public void Formula_GivesTextAndNumbersInAnyUnit()
    {
        Assert.Equal("3.5 ns", TextFormulas.Evaluate("0.35 / b in ns", "b = 100 MHz"));
        Assert.Equal(3.5, TextFormulas.EvaluateNumber("ns", "0.35 / 100 MHz"));
        Assert.Equal(273.15, TextFormulas.EvaluateNumber("K", "0 °C"));
        Assert.Equal(0.1, TextFormulas.EvaluateNumber("dBm", "0.1 dBm"));
        Assert.Equal(20, TextFormulas.EvaluateNumber("°C", "10 °C + 10 K"), 1e-12);
        Assert.Equal(-40, TextFormulas.EvaluateNumber("dBW", "-10 dBm"), 1e-12);
        Assert.Equal(50, TextFormulas.EvaluateNumber("%", "1 / 2"), 1e-12);
        Assert.Equal(0.5, TextFormulas.EvaluateNumber("", "1 / 2"), 1e-15);
    }

    [Fact]
    public void Conditions_AreChecked()
    {
        Assert.True(TextFormulas.Check("seen <= 1.1 * edge", "seen = 3 ns", "edge = 2.8 ns"));
        Assert.True(TextFormulas.CheckValue(2.9, "ns", "value >= 2 ns and value <= 3 ns"));
        Assert.False(TextFormulas.CheckValue(3.1, "ns", "value >= 2 ns and value <= 3 ns"));
    }

    [Fact]
    public void CheckedValues_ThatAreNoNumbers_AndLimitsWithoutALeftSide_AreExplained()
    {
        Assert.StartsWith("the value to check is not a number", Assert.Throws<FormulaException>(() => TextFormulas.CheckValue(double.NaN, "ns", "value <= 3 ns")).Message, System.StringComparison.Ordinal);
        Assert.StartsWith("the value to check is not finite", Assert.Throws<FormulaException>(() => TextFormulas.CheckValue(double.NegativeInfinity, "ns", "value <= 3 ns")).Message, System.StringComparison.Ordinal);
        Assert.Equal("the limit '<= 3.5 ns' has nothing on its left; write value <= 3.5 ns", Assert.Throws<FormulaException>(() => TextFormulas.CheckValue(3.47, "ns", "<= 3.5 ns")).Message);
    }

    [Fact]
    public void ForwardReference_NamesTheLineThatDeclaresIt()
    {
        using JsonDocument sheet = JsonDocument.Parse(TextFormulas.RunWorksheet("given a = 1 V\nlet b = w + a\nlet w = 2 V"));

        Assert.Equal("'w' is declared in line 3, below; a line uses the ones above it", sheet.RootElement.GetProperty("problems")[0].GetProperty("message").GetString());
    }

    [Fact]
    public void Template_IsFilled() => Assert.Equal("edge 2.80 ns", TextFormulas.Fill("edge {{ edge : 3 ns }}", "edge = 2.8 ns"));

    [Fact]
    public void Worksheet_RunsToJson()
    {
        using JsonDocument good = JsonDocument.Parse(TextFormulas.RunWorksheet("given a = 1 V\ncheck a > 2 V", "a = 3 V"));
        Assert.True(good.RootElement.GetProperty("hasPassed").GetBoolean());
        using JsonDocument bad = JsonDocument.Parse(TextFormulas.RunWorksheet("given a = 1 Vx"));
        Assert.Equal(13, bad.RootElement.GetProperty("problems")[0].GetProperty("column").GetInt32());
    }

    [Theory]
    [InlineData("b", "input 'b' is not written as name = formula")]
    [InlineData("fs = 3 ns", "input 'fs = 3 ns': 'fs' is a unit and cannot be a name; did you mean fs_value?")]
    [InlineData("b = 3 nx", "input b: column 4: 'nx' is not a unit")]
    public void InputThatIsWrong_IsRefused(string input, string message) => Assert.StartsWith(message, Assert.Throws<FormulaException>(() => TextFormulas.Evaluate("1", input)).Message, System.StringComparison.Ordinal);

    [Fact]
    public void UnitOfAnotherKind_IsRefused() =>
        Assert.Equal("found a duration, expected a frequency for the unit 'MHz'", Assert.Throws<FormulaException>(() => TextFormulas.EvaluateNumber("MHz", "3 ns")).Message);
}
