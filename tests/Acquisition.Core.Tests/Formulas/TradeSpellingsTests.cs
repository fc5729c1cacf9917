using System;
using System.Collections.Generic;
using Acquisition.Core.Formulas;
using Xunit;

namespace Acquisition.Core.Tests.Formulas;

public sealed class TradeSpellingsTests
{
    [Theory]
    [InlineData("2 * π", "6.28318530717959")]
    [InlineData("π == pi", "true")]
    [InlineData("mean(2 ns, 3 ns, 7 ns)", "4 ns")]
    [InlineData("0.35 / (2 μs) in kHz", "175 kHz")]
    public void SpellingOfTheTrade_IsRead(string formula, string result) => Assert.Equal(result, TextFormulas.Evaluate(formula));

    [Fact]
    public void GreekLetters_AreNames() => Assert.Equal("6.6 ns", TextFormulas.Evaluate("2.2 * τ + 0 * Δt", "τ = 3 ns", "Δt = 1 ns"));

    [Theory]
    [InlineData("log10(100)", "did you mean lg?")]
    [InlineData("log(100)", "did you mean lg?")]
    [InlineData("average(1, 2)", "did you mean mean?")]
    [InlineData("1 Msps", "did you mean MSa/s?")]
    [InlineData("8 bits", "did you mean bit?")]
    public void OtherSpelling_IsRefusedWithTheOneThatIsRead(string formula, string suggestion) =>
        Assert.EndsWith(suggestion, Assert.Throws<FormulaException>(() => TextFormulas.Evaluate(formula)).Message, StringComparison.Ordinal);

    [Fact]
    public void ConstantPi_CannotBeDeclared() =>
        Assert.Contains("'π' is a constant", Assert.Throws<FormulaException>(() => TextFormulas.Evaluate("1", "π = 3")).Message, StringComparison.Ordinal);

    // Bidirectional controls and what cannot be seen (Unicode categories Cc, Cf, Zl, Zp, Cs) are spelt out wherever text of a user comes back in a message.
    [Theory]
    [InlineData("1 V\u202E", "U+202E")]
    [InlineData("\u2066x\u2069 + 1", "U+2066")]
    [InlineData("1 M\u200BHz", "U+200B")]
    [InlineData("\"a\u0007\" + 1 V", "U+0007")]
    [InlineData("1 \uDB40\uDC41", "U+DB40")]
    public void HiddenCharacters_AreSpeltOutInMessages(string formula, string spelt)
    {
        string message = Assert.Throws<FormulaException>(() => TextFormulas.Evaluate(formula)).Message;
        Assert.Contains(spelt, message, StringComparison.Ordinal);
        Assert.DoesNotContain(message, c => IsHidden(c));
    }

    [Fact]
    public void HiddenCharacters_AreSpeltOutInMessagesAboutNamesUnitsAndFormats()
    {
        var messages = new List<string>
        {
            Assert.Throws<FormulaException>(() => TextFormulas.Evaluate("1", "a\u202E = 1")).Message,
            Assert.Throws<FormulaException>(() => TextFormulas.Evaluate("1", "a\u202E")).Message,
            Assert.Throws<FormulaException>(() => TextFormulas.CheckValue(1, "V", "< \u202E")).Message,
            Assert.Throws<QuantityFormatException>(() => Quantity.Parse("1 \u202EHz")).Message,
            Assert.Throws<FormatException>(() => Quantity.Parse("1 Hz").ToString("G4 \u202EHz")).Message,
        };
        Assert.All(messages, message => Assert.Contains("U+202E", message, StringComparison.Ordinal));
    }

    private static bool IsHidden(char c) => c is '\u202E' or '\u2066' or '\u2069' or '\u200B' or '\u0007' || char.IsSurrogate(c);
}
