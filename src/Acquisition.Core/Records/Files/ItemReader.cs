using System;
using System.Collections.Generic;
using System.IO;

namespace Acquisition.Core.Records;

/// <summary>Reads binary items block by block into the stores they will stay in.</summary>
internal sealed class ItemReader
{
    private readonly string _type;
    private readonly int _itemLength;
    private readonly bool _littleEndian;

    /// <param name="type">Letter and size in bytes: f4, f8, i1, u1, i2, u2, and i3 and i4 that become numbers.</param>
    /// <param name="littleEndian">The byte order of the file.</param>
    internal ItemReader(string type, bool littleEndian)
    {
        _type = type;
        _itemLength = type[1] - '0';
        _littleEndian = littleEndian;
    }

    /// <summary>So many records of so many items, one after the other or item by item in turn.</summary>
    /// <param name="reader">Where the items begin.</param>
    /// <param name="records">How many records.</param>
    /// <param name="length">Items a record; null to read until the file ends.</param>
    /// <param name="interleaved">Whether the records take turns item by item.</param>
    /// <param name="call">Who watches; null where nobody does.</param>
    internal List<ItemColumn> Read(ByteReader reader, int records, int? length, bool interleaved, LongCall? call)
    {
        var columns = new List<ItemColumn>();
        for (int i = 0; i < records; i++)
            columns.Add(new ItemColumn(_type));
        int frame = _itemLength * (interleaved ? records : 1);
        long start = reader.Position;
        var block = new byte[Math.Max(1, ByteReader.BlockLength / frame) * frame];
        for (int first = 0; first < (interleaved ? 1 : records); first++)
        {
            for (long left = length is { } n ? (long)n * frame : long.MaxValue; left > 0;)
            {
                int wanted = (int)Math.Min(left, block.Length), read = reader.ReadUpTo(block, wanted);
                if (read < wanted && (length is not null || read % frame != 0))
                {
                    throw RecordFormatException.AtByte(reader.Position, length is { } promised
                        ? FormattableString.Invariant($"the file ends after {columns[first].Count + read / frame} of {promised} samples")
                        : "the file ends within a sample");
                }
                ByteReader.ToMachineOrder(block, read, _itemLength, _littleEndian);
                if (columns[0].IsFull)
                    throw RecordFormatException.AtByte(reader.Position, FormattableString.Invariant($"more than {GrowingArray<byte>.Longest} samples a record"));
                for (int i = 0; i < (interleaved ? records : 1); i++)
                    columns[first + i].Add(block, i * _itemLength, read, frame);
                left -= read;
                call?.Reached(reader.Position - start, length is { } all ? (double)all * _itemLength * records : 0);
                if (read < wanted)
                    break;
            }
        }
        if (columns[0].Count == 0)
            throw RecordFormatException.AtByte(reader.Position, "the file holds no sample");
        return columns;
    }
}

/// <summary>The items of one record while they are read.</summary>
internal sealed class ItemColumn
{
    private readonly string _type;
    private readonly GrowingArray<byte>? _bytes;
    private readonly GrowingArray<short>? _shorts;
    private readonly GrowingArray<float>? _floats;
    private readonly GrowingArray<double>? _doubles;

    internal ItemColumn(string type)
    {
        _type = type;
        switch (type)
        {
            case "i1" or "u1":
                _bytes = new GrowingArray<byte>();
                break;
            case "i2" or "u2":
                _shorts = new GrowingArray<short>();
                break;
            case "f4":
                _floats = new GrowingArray<float>();
                break;
            default:
                _doubles = new GrowingArray<double>();
                break;
        }
    }

    internal int Count => _bytes?.Count ?? _shorts?.Count ?? _floats?.Count ?? _doubles!.Count;

    internal bool IsFull => Count > GrowingArray<byte>.Longest - ByteReader.BlockLength;

    internal void Add(byte[] block, int from, int length, int frame)
    {
        if (_bytes is not null && frame == 1)
        {
            _bytes.Add(block, from, length - from);
            return;
        }
        for (int at = from; at < length; at += frame)
        {
            switch (_type)
            {
                case "i1" or "u1":
                    _bytes!.Add(block[at]);
                    break;
                case "i2" or "u2":
                    _shorts!.Add(BitConverter.ToInt16(block, at));
                    break;
                case "f4":
                    _floats!.Add(BitConverter.ToSingle(block, at));
                    break;
                case "f8":
                    _doubles!.Add(BitConverter.ToDouble(block, at));
                    break;
                case "i3":
                    _doubles!.Add((block[at] << 8 | block[at + 1] << 16 | block[at + 2] << 24) >> 8);
                    break;
                default:
                    _doubles!.Add(BitConverter.ToInt32(block, at));
                    break;
            }
        }
    }

    internal Record ToRecord<T>(SampleRate rate, T step, T atZero)
        where T : struct, IQuantity
    {
        Quantity one = step.ToQuantity();
        double scale = Refuse.UnlessAboveZero(one.SiValue, one.Kind, nameof(step)), offset = atZero.ToQuantity().Require(one.Kind, nameof(atZero));
        bool plain = scale == 1 && offset == 0;
        SampleStore samples =
            _bytes is not null ? new ByteCodes(_bytes.Items, _type == "i1", scale, offset)
            : _shorts is not null ? new ShortCodes(_shorts.Items, _type == "i2", scale, offset)
            : _floats is not null && plain ? NumberSamples.Of(_floats.Items)
            : NumberSamples.Of(Scaled(scale, offset));
        return Record.OfRate(samples.Slice(0, Count), one.Kind, rate.SiValue);
    }

    private double[] Scaled(double scale, double offset)
    {
        if (_doubles is not null && scale == 1 && offset == 0)
            return _doubles.Items;
        var values = new double[Count];
        for (int i = 0; i < values.Length; i++)
            values[i] = offset + (_doubles is not null ? _doubles[i] : _floats![i]) * scale;
        return values;
    }
}
