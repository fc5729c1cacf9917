using System;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>Makes a record from chunks as they arrive, without a second copy of the samples.</summary>
/// <remarks>Not thread-safe. One builder makes one record.</remarks>
public sealed class RecordBuilder
{
    private readonly GrowingArray<double>? _values;
    private readonly GrowingArray<byte>? _bytes;
    private readonly GrowingArray<short>? _shorts;
    private readonly double _rate, _step, _atZero;
    private readonly bool _signed;
    private readonly QuantityKind _kind;
    private bool _built;

    private RecordBuilder(SampleRate rate, QuantityKind kind, GrowingArray<double>? values, GrowingArray<byte>? bytes, GrowingArray<short>? shorts, double step, double atZero, bool signed)
    {
        _rate = Refuse.UnlessAboveZero(rate.SiValue, SampleRate.Kind, nameof(rate));
        _kind = kind;
        _values = values;
        _bytes = bytes;
        _shorts = shorts;
        _step = step;
        _atZero = atZero;
        _signed = signed;
    }

    /// <summary>A builder of a record of numbers.</summary>
    /// <param name="rate">The sample rate, above 0 Sa/s.</param>
    /// <param name="kind">What the numbers are; volts where null.</param>
    /// <param name="expected">How many samples are expected: room for them is made at once. None: the room grows as samples arrive.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rate"/> is 0 Sa/s.</exception>
    public static RecordBuilder OfValues(SampleRate rate, QuantityKind? kind = null, PointCount expected = default) =>
        new(rate, kind ?? QuantityKind.Voltage, new GrowingArray<double>(expected.Points), null, null, 1, 0, false);

    /// <summary>A builder of a record of 8-bit codes (see <see cref="Record.FromCodes{T}(byte[], SampleRate, T, T, bool, bool)"/>).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rate"/> or <paramref name="step"/> is not above zero.</exception>
    public static RecordBuilder OfByteCodes<T>(SampleRate rate, T step, T atZero, bool signed = false, PointCount expected = default)
        where T : struct, IQuantity
    {
        Quantity one = step.ToQuantity();
        return new(rate, one.Kind, null, new GrowingArray<byte>(expected.Points), null, Refuse.UnlessAboveZero(one.SiValue, one.Kind, nameof(step)), atZero.ToQuantity().Require(one.Kind, nameof(atZero)), signed);
    }

    /// <summary>A builder of a record of codes of up to 16 bits (see <see cref="Record.FromCodes{T}(short[], SampleRate, T, T, bool, bool)"/>).</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rate"/> or <paramref name="step"/> is not above zero.</exception>
    public static RecordBuilder OfShortCodes<T>(SampleRate rate, T step, T atZero, bool signed = true, PointCount expected = default)
        where T : struct, IQuantity
    {
        Quantity one = step.ToQuantity();
        return new(rate, one.Kind, null, null, new GrowingArray<short>(expected.Points), Refuse.UnlessAboveZero(one.SiValue, one.Kind, nameof(step)), atZero.ToQuantity().Require(one.Kind, nameof(atZero)), signed);
    }

    /// <summary>How many samples have arrived.</summary>
    public PointCount Count => PointCount.FromPoints(_values?.Count ?? _bytes?.Count ?? _shorts!.Count);

    /// <summary>Adds a chunk of numbers in the SI unit of the kind.</summary>
    /// <exception cref="InvalidOperationException">The builder takes codes, has built its record, or would hold more than 2 147 483 591 samples.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The chunk is not within the array.</exception>
    public RecordBuilder Append(double[] siValues, int offset, int count) => Add(_values, siValues, offset, count);

    /// <summary>Adds a chunk of 8-bit codes.</summary>
    /// <exception cref="InvalidOperationException">The builder takes something else, has built its record, or would hold more than 2 147 483 591 samples.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The chunk is not within the array.</exception>
    public RecordBuilder Append(byte[] codes, int offset, int count) => Add(_bytes, codes, offset, count);

    /// <summary>Adds a chunk of 16-bit codes.</summary>
    /// <exception cref="InvalidOperationException">The builder takes something else, has built its record, or would hold more than 2 147 483 591 samples.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The chunk is not within the array.</exception>
    public RecordBuilder Append(short[] codes, int offset, int count) => Add(_shorts, codes, offset, count);

    /// <summary>The record of what has arrived. The builder is then done.</summary>
    /// <exception cref="InvalidOperationException">No sample has arrived, or the record was built before.</exception>
    public Record Build()
    {
        RequireOpen();
        int count = (int)Count.Points;
        if (count == 0)
            throw new InvalidOperationException("no sample has arrived: a record holds at least one");
        _built = true;
        SampleStore samples = _values is not null ? NumberSamples.Of(_values.Items)
            : _bytes is not null ? new ByteCodes(_bytes.Items, _signed, _step, _atZero)
            : new ShortCodes(_shorts!.Items, _signed, _step, _atZero);
        return Record.OfRate(samples.Slice(0, count), _kind, _rate);
    }

    private RecordBuilder Add<T>(GrowingArray<T>? samples, T[] chunk, int offset, int count)
    {
        RequireOpen();
        _ = chunk ?? throw new ArgumentNullException(nameof(chunk));
        if (samples is null)
            throw new InvalidOperationException($"this builder takes {(_values is not null ? "numbers" : _bytes is not null ? "8-bit codes" : "16-bit codes")}");
        if (offset < 0 || count < 0 || offset > chunk.Length - count)
            throw new ArgumentOutOfRangeException(nameof(offset), FormattableString.Invariant($"offset and count must name a block within the array of {chunk.Length}; were {offset} and {count}"));
        samples.Add(chunk, offset, count);
        return this;
    }

    private void RequireOpen()
    {
        if (_built)
            throw new InvalidOperationException("the record was built; make another builder for the next one");
    }
}
