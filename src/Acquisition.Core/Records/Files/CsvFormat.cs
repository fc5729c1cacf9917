using System;

namespace Acquisition.Core;

/// <summary>How a table of samples is written: what a reader would otherwise find out by looking at it.</summary>
/// <remarks>Immutable. Nothing need be given: <see cref="Sniffed"/> finds delimiter and decimal separator from the first rows and says so when it cannot.</remarks>
public sealed class CsvFormat
{
    private CsvFormat(char? delimiter, char? decimalSeparator, SampleRate? rate, QuantityKind kind)
    {
        Delimiter = delimiter;
        DecimalSeparator = decimalSeparator;
        SampleRate = rate;
        DefaultKind = kind;
    }

    /// <summary>Everything is found out.</summary>
    public static CsvFormat Sniffed { get; } = new(null, null, null, QuantityKind.Voltage);

    /// <summary>The character between fields; null to find it out. A space stands for any run of spaces.</summary>
    public char? Delimiter { get; }

    /// <summary>The point or comma of decimals; null to find it out.</summary>
    public char? DecimalSeparator { get; }

    /// <summary>The sample rate, which makes a column of times unnecessary and unread; null where the table has one.</summary>
    public SampleRate? SampleRate { get; }

    /// <summary>What a column without a unit in its head is: volts unless told otherwise.</summary>
    public QuantityKind DefaultKind { get; }

    /// <summary>The same format with the character between fields given.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The character is a letter, a digit, a sign, a quotation mark or a line end.</exception>
    public CsvFormat WithDelimiter(char delimiter) => char.IsLetterOrDigit(delimiter) || delimiter is '+' or '-' or '.' or '"' or '\r' or '\n'
        ? throw new ArgumentOutOfRangeException(nameof(delimiter), $"delimiter must not be a letter, digit, sign, point, quotation mark or line end; was '{delimiter}'")
        : new(delimiter, DecimalSeparator, SampleRate, DefaultKind);

    /// <summary>The same format with the decimal separator given.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The character is neither a point nor a comma.</exception>
    public CsvFormat WithDecimalSeparator(char decimalSeparator) => decimalSeparator is '.' or ','
        ? new(Delimiter, decimalSeparator, SampleRate, DefaultKind)
        : throw new ArgumentOutOfRangeException(nameof(decimalSeparator), $"decimalSeparator must be a point or a comma; was '{decimalSeparator}'");

    /// <summary>The same format with the sample rate given: for tables without times, or whose times are rounded too coarsely.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rate"/> is 0 Sa/s.</exception>
    public CsvFormat WithSampleRate(SampleRate rate)
    {
        Refuse.UnlessAboveZero(rate.SiValue, Core.SampleRate.Kind, nameof(rate));
        return new(Delimiter, DecimalSeparator, rate, DefaultKind);
    }

    /// <summary>The same format with the kind of columns without a unit given.</summary>
    public CsvFormat WithDefaultKind(QuantityKind kind) => new(Delimiter, DecimalSeparator, SampleRate, kind ?? throw new ArgumentNullException(nameof(kind)));
}
