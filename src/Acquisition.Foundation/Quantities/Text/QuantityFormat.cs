using System;
using System.Globalization;

namespace Acquisition.Core;

/// <summary>How a quantity is written: digits, unit, symbols, space. Immutable; each <c>With</c> method gives a changed copy.</summary>
/// <remarks>
/// The starting point is a format text (docs/notation.md): a digit format of .NET (<c>R</c>, <c>G4</c>, <c>F2</c>, <c>E3</c>) or a count of significant
/// digits (<c>4</c>), then, after a space, the unit to write in: <c>"G4 MHz"</c>, <c>"3 ns"</c>, <c>"dBµV"</c>.
/// </remarks>
public sealed class QuantityFormat
{
    private readonly NumberStyle _number;
    private readonly string _unit;
    private readonly bool _isAscii;
    private readonly bool _hasNoBreakSpace;
    private readonly IFormatProvider? _provider;

    private QuantityFormat(NumberStyle number, string unit, bool isAscii, bool hasNoBreakSpace, IFormatProvider? provider)
    {
        _number = number;
        _unit = unit;
        _isAscii = isAscii;
        _hasNoBreakSpace = hasNoBreakSpace;
        _provider = provider;
    }

    /// <summary>A format given as text; null or empty for the shortest form that reads back to the same bits.</summary>
    /// <exception cref="FormatException"><paramref name="format"/> is not known.</exception>
    public QuantityFormat(string? format)
    {
        FormatText.Split(format ?? "", out _number, out int unit);
        _unit = (format ?? "").Substring(unit);
    }

    /// <summary>The shortest form that reads back to the same bits, with the engineering prefix.</summary>
    public static QuantityFormat RoundTrip { get; } = new(null);

    /// <summary>So many significant digits, zeros at the end kept: 999.96 MHz at 4 digits is 1.000 GHz.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="digits"/> is not from 1 to 30.</exception>
    public static QuantityFormat SignificantDigits(int digits) => digits is >= 1 and <= NumberStyle.MostDigits
        ? new QuantityFormat(new NumberStyle(NumberStyleKind.Significant, digits), "", false, false, null)
        : throw new ArgumentOutOfRangeException(nameof(digits), digits, $"digits must be from 1 to {NumberStyle.MostDigits}");

    /// <summary>The same, in a fixed unit such as <c>MHz</c>; empty for the engineering prefix.</summary>
    public QuantityFormat WithUnit(string unit) => new(_number, (unit ?? throw new ArgumentNullException(nameof(unit))).Trim(), _isAscii, _hasNoBreakSpace, _provider);

    /// <summary>The same, with symbols in ASCII: us, Ohm, degC, V/sqrt(Hz).</summary>
    public QuantityFormat WithAsciiSymbols() => new(_number, _unit, true, _hasNoBreakSpace, _provider);

    /// <summary>The same, with a no-break space (U+00A0) between number and unit.</summary>
    public QuantityFormat WithNoBreakSpace() => new(_number, _unit, _isAscii, true, _provider);

    /// <summary>The same, with the decimal separator of a culture; null for a point.</summary>
    public QuantityFormat WithCulture(IFormatProvider? provider) => new(_number, _unit, _isAscii, _hasNoBreakSpace, provider);

    /// <summary>Writes a quantity.</summary>
    /// <exception cref="FormatException">The unit of the format is no unit of the quantity.</exception>
    public string Format(Quantity quantity)
    {
        CharBuffer buffer = new char[QuantityWriter.BufferLength];
        int length = QuantityWriter.Write(buffer, quantity.SiValue, quantity.Kind, Options());
        return QuantityText.ToText(buffer, length);
    }

    /// <summary>Writes a quantity of any strong type.</summary>
    /// <exception cref="FormatException">The unit of the format is no unit of the quantity.</exception>
    public string Format(IQuantity quantity) => Format((quantity ?? throw new ArgumentNullException(nameof(quantity))).ToQuantity());

    private WritingOptions Options() => new()
    {
        Number = _number,
        Unit = _unit,
        UnitStart = 0,
        IsAscii = _isAscii,
        HasNoBreakSpace = _hasNoBreakSpace,
        DecimalMark = QuantityText.DecimalMark(_provider),
    };
}
