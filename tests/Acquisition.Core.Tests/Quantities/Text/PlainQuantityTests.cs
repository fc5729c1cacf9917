using System;
using System.Linq;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Quantities.Text;

/// <summary>The short way and the full reader: whatever the short way accepts, the full reader accepts too and gives the same bits.</summary>
public class PlainQuantityTests
{
    private static readonly QuantityKind[] Kinds = QuantityKind.Named.Where(kind => kind != QuantityKind.TemperatureDifference).ToArray();

    private static readonly string[] Prefixes = UnitPrefix.All.Select(prefix => prefix.Symbol).Concat(["", "", "", "", "\u03BC", "u", "x", "K"]).ToArray();

    private static bool Agree(string text, QuantityKind kind)
    {
        bool isPlain = PlainQuantity.TryRead(text, kind, out double plain);
        if (!isPlain) return false;
        Assert.True(QuantityReader.TryRead(text, kind, '.', out QuantityReading full, out TextProblem problem), $"'{text}' as {kind.Name}: {problem.Fault}");
        Assert.True(BitConverter.DoubleToInt64Bits(full.SiValue) == BitConverter.DoubleToInt64Bits(plain), $"'{text}': {plain:R} beside {full.SiValue:R}");
        return true;
    }

    [Property(MaxTest = 5000)]
    public void TextPutTogetherFromItsParts_IsReadAlike(NonNegativeInt digits, NonNegativeInt point, NonNegativeInt prefix, NonNegativeInt place)
    {
        QuantityKind kind = Kinds[place.Get % Kinds.Length];
        string number = (digits.Get * 7919L % 100_000_000).ToString(System.Globalization.CultureInfo.InvariantCulture);
        if (point.Get % 3 == 0) number = number.Insert(point.Get % (number.Length + 1), ".");
        string space = (place.Get / 5 % 4) switch { 0 => "", 1 => "  ", _ => " " };
        Agree(number + space + Prefixes[prefix.Get % Prefixes.Length] + kind.Symbol, kind);
        Agree(number + space + Prefixes[prefix.Get % Prefixes.Length] + Kinds[digits.Get % Kinds.Length].Symbol, kind);
    }

    [Property(MaxTest = 5000)]
    public void TextWithALetterChanged_IsReadAlike(NonNegativeInt digits, NonNegativeInt place, NonNegativeInt at, char letter)
    {
        QuantityKind kind = Kinds[place.Get % Kinds.Length];
        char[] text = new Quantity(digits.Get / 8.0, kind).ToString().ToCharArray();
        text[at.Get % text.Length] = at.Get % 2 == 0 ? letter : "0123456789.,eE -+kmM^/"[letter % 22];
        Agree(new string(text), kind);
    }

    [Fact]
    public void EverydayText_OfEveryKindInEveryPrefixItTakes_GoesTheShortWay()
    {
        foreach (QuantityKind kind in Kinds)
        {
            Assert.True(Agree("7 " + kind.Symbol, kind), kind.Symbol);
            if (kind.Prefix != WrittenPrefix.Engineering) continue;
            foreach (UnitPrefix prefix in UnitPrefix.All.Where(prefix => prefix.Symbol.Length == 1 && Math.Abs(prefix.PowerOfTen) < 22))
            {
                Assert.True(Agree("12.5 " + prefix.Symbol + kind.Symbol, kind), prefix.Symbol + kind.Symbol);
                Assert.True(Agree("100" + prefix.Symbol + kind.Symbol, kind), prefix.Symbol + kind.Symbol);
            }
        }
    }

    private const string Alphabet = "0123456789..,_ eE+-×^/*()kmMsVdBHzµΩ°%√²⁻ain\u00A0\u0663";

    private static string TextOf(int[] letters) => new(letters.Take(12).Select(letter => Alphabet[(int)((uint)letter % Alphabet.Length)]).ToArray());

    [Property(MaxTest = 20_000)]
    public void ANumberReadTheShortWay_IsTheOneThatTheFullReaderFinds(int[] letters, bool embedded, bool isComma)
    {
        string text = "1" + TextOf(letters);
        char mark = isComma ? ',' : '.';
        if (!NumberReader.TryReadPlain(text, 0, mark, out DecimalNumber plain)) return;
        Assert.True(NumberReader.TryReadAny(text, 0, mark, embedded, out DecimalNumber full, out TextProblem problem), $"'{text}': {problem.Fault}");
        Assert.Equal((full.Mantissa, full.Exponent, full.Start, full.DigitsEnd, full.End, full.IsNegative, full.HasMoreDigits), (plain.Mantissa, plain.Exponent, plain.Start, plain.DigitsEnd, plain.End, plain.IsNegative, plain.HasMoreDigits));
    }

    private static readonly string[] Symbols = UnitTable.All.Select(unit => unit.Symbol).ToArray();

    [Property(MaxTest = 20_000)]
    public void AUnitReadTheShortWay_IsTheOneThatTheFullReaderFinds(NonNegativeInt prefix, NonNegativeInt symbol, int[] letters, bool embedded)
    {
        string text = Prefixes[prefix.Get % Prefixes.Length] + Symbols[symbol.Get % Symbols.Length] + TextOf(letters.Take(letters.Length % 4).ToArray());
        if (!UnitReader.TryReadSymbol(text, 0, out UnitReading plain)) return;
        Assert.True(UnitReader.TryReadExpression(text, 0, embedded, out UnitReading full, out TextProblem problem), $"'{text}': {problem.Fault}");
        Assert.Same(full.Kind, plain.Kind);
        Assert.Equal((full.Scale, full.OffsetInHundredths, full.Constant, full.End), (plain.Scale, plain.OffsetInHundredths, plain.Constant, plain.End));
    }

    [Fact]
    public void EverySymbolOfTheTable_IsReadTheShortWay() => Assert.All(Symbols, symbol => Assert.True(UnitReader.TryReadSymbol(symbol + " ", 0, out _), symbol));

    [Theory]
    [InlineData("")]
    [InlineData("Hz")]
    [InlineData(".5 Hz")]
    [InlineData("5. Hz")]
    [InlineData("1.2.3 Hz")]
    [InlineData("-5 Hz")]
    [InlineData("1e3 Hz")]
    [InlineData("1 000 Hz")]
    [InlineData("5 MHz ")]
    [InlineData("5 MMHz")]
    [InlineData("5 KHz")]
    [InlineData("12345678901234567 Hz")]
    [InlineData("1 QHz")]
    [InlineData("5 ms")]
    public void TextThatIsNotPlain_IsLeftToTheFullReader(string text) => Assert.False(PlainQuantity.TryRead(text, QuantityKind.Frequency, out _));
}
