using System;

namespace Acquisition.Core;

/// <summary>How a table of samples is written: what a reader would otherwise find out by looking at it.</summary>
/// <remarks>Immutable. Nothing need be given: <see cref="Sniffed"/> finds delimiter and decimal separator from the first rows and says so when it cannot.</remarks>
public sealed class CsvFormat
{
    private QuantityKind? _kind;
    private Duration? _timeUnit;

    private CsvFormat()
    {
    }

    /// <summary>Everything is found out.</summary>
    public static CsvFormat Sniffed { get; } = new();

    /// <summary>The character between fields; null to find it out. A space stands for any run of spaces.</summary>
    public char? Delimiter { get; private set; }

    /// <summary>The point or comma of decimals; null to find it out.</summary>
    public char? DecimalSeparator { get; private set; }

    /// <summary>The sample rate, which makes a column of times unnecessary and unread; null where the table has one.</summary>
    public SampleRate? SampleRate { get; private set; }

    /// <summary>What a column without a unit in its head is, in the SI unit of its kind: volts unless stated. What is not stated is assumed, and the record says so (<c>unit-assumed</c>).</summary>
    public QuantityKind DefaultKind => _kind ?? QuantityKind.Voltage;

    /// <summary>What 1 means in a column of times without a unit in its head: 1 s unless stated. What is not stated is assumed, and the record says so (<c>unit-assumed</c>).</summary>
    public Duration TimeUnit => _timeUnit ?? Duration.FromSeconds(1);

    internal bool StatesKind => _kind is not null;

    internal bool StatesTimeUnit => _timeUnit is not null;

    /// <summary>The same format with the character between fields given.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The character is a letter, a digit, a sign, a quotation mark or a line end.</exception>
    public CsvFormat WithDelimiter(char delimiter) => char.IsLetterOrDigit(delimiter) || delimiter is '+' or '-' or '.' or '"' or '\r' or '\n'
        ? throw new ArgumentOutOfRangeException(nameof(delimiter), $"delimiter must not be a letter, digit, sign, point, quotation mark or line end; was '{delimiter}'")
        : Copy(x => x.Delimiter = delimiter);

    /// <summary>The same format with the decimal separator given.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The character is neither a point nor a comma.</exception>
    public CsvFormat WithDecimalSeparator(char decimalSeparator) => decimalSeparator is '.' or ','
        ? Copy(x => x.DecimalSeparator = decimalSeparator)
        : throw new ArgumentOutOfRangeException(nameof(decimalSeparator), $"decimalSeparator must be a point or a comma; was '{decimalSeparator}'");

    /// <summary>The same format with the sample rate given: for tables without times, or whose times are rounded too coarsely.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rate"/> is 0 Sa/s.</exception>
    public CsvFormat WithSampleRate(SampleRate rate)
    {
        Refuse.UnlessAboveZero(rate.SiValue, Core.SampleRate.Kind, nameof(rate));
        return Copy(x => x.SampleRate = rate);
    }

    /// <summary>The same format with the kind of columns without a unit stated.</summary>
    public CsvFormat WithDefaultKind(QuantityKind kind)
    {
        _ = kind ?? throw new ArgumentNullException(nameof(kind));
        return Copy(x => x._kind = kind);
    }

    /// <summary>The same format with the unit of times whose head says none.</summary>
    /// <param name="unit">What 1 means, such as 1 µs; above 0 s.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="unit"/> is not above 0 s.</exception>
    public CsvFormat WithTimeUnit(Duration unit)
    {
        Refuse.UnlessAboveZero(unit.SiValue, Duration.Kind, nameof(unit));
        return Copy(x => x._timeUnit = unit);
    }

    private CsvFormat Copy(Action<CsvFormat> change)
    {
        var copy = (CsvFormat)MemberwiseClone();
        change(copy);
        return copy;
    }
}
