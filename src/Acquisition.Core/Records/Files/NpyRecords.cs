using System;
using System.Collections.Generic;
using System.IO;
using System.Threading;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>
/// Records in NumPy's .npy files (format versions 1 to 3; f4, f8, i1, u1, i2, u2 of both byte orders). An array of one dimension is a record; of two, each row is one.
/// Integers stay codes.
/// </summary>
public static class NpyRecords
{
    private const int MostRecords = 65536;

    /// <summary>Reads an array of volts. The file knows no rate: it is the caller's.</summary>
    /// <param name="stream">The file.</param>
    /// <param name="rate">The sample rate, above 0 Sa/s.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="RecordFormatException">The file is damaged, truncated, of another type or shape; the message names the byte. Integers need the value of a step: use the other overload.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rate"/> is 0 Sa/s.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static IReadOnlyList<Record> Read(Stream stream, SampleRate rate, IProgress<Ratio>? progress = null, CancellationToken cancellation = default) =>
        Read(stream, rate, Voltage.FromVolts(1), default, integers: false, LongCall.Of(progress, cancellation));

    /// <summary>Reads an array of codes or numbers; sample = <paramref name="atZero"/> + item × <paramref name="step"/>.</summary>
    /// <typeparam name="T">The quantity: <see cref="Voltage"/> mostly.</typeparam>
    /// <param name="stream">The file.</param>
    /// <param name="rate">The sample rate, above 0 Sa/s.</param>
    /// <param name="step">The value of one code, above zero.</param>
    /// <param name="atZero">The value of item 0.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="RecordFormatException">The file is damaged, truncated, of another type or shape; the message names the byte.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rate"/> or <paramref name="step"/> is not above zero.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static IReadOnlyList<Record> Read<T>(Stream stream, SampleRate rate, T step, T atZero, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
        where T : struct, IQuantity => Read(stream, rate, step, atZero, integers: true, LongCall.Of(progress, cancellation));

    /// <summary>Writes the samples of a record as they are kept: codes as integers of their size, numbers as f4 or f8. Rate, unit and step are not in the file.</summary>
    public static void Write(Stream stream, Record record)
    {
        _ = stream ?? throw new ArgumentNullException(nameof(stream));
        _ = record ?? throw new ArgumentNullException(nameof(record));
        SampleStore samples = record.Samples;
        string type = samples.ItemType;
        byte[] header = NpyHeader.Write((type[1] == '1' ? "|" : "<") + type, samples.Length);
        stream.Write(header, 0, header.Length);
        int itemLength = type[1] - '0', items = ByteReader.BlockLength / itemLength;
        var block = new byte[items * itemLength];
        for (int from = 0; from < samples.Length; from += items)
        {
            int count = Math.Min(items, samples.Length - from);
            samples.CopyItems(from, block, count);
            ByteReader.ToMachineOrder(block, count * itemLength, itemLength, fileIsLittleEndian: true);
            stream.Write(block, 0, count * itemLength);
        }
    }

    private static List<Record> Read<T>(Stream stream, SampleRate rate, T step, T atZero, bool integers, LongCall? call)
        where T : struct, IQuantity
    {
        Refuse.UnlessAboveZero(rate.SiValue, SampleRate.Kind, nameof(rate));
        var reader = new ByteReader(stream);
        NpyHeader header = NpyHeader.Read(reader);
        if (!integers && header.Type[0] != 'f')
            throw RecordFormatException.AtByte(10, $"the items are integers ({header.Type}): give the value of a step and of item 0");
        if (header.Shape.Count is < 1 or > 2)
            throw RecordFormatException.AtByte(10, FormattableString.Invariant($"an array of {header.Shape.Count} dimensions is no record: one dimension is, and two are a row for each record"));
        long rows = header.Shape.Count == 2 ? header.Shape[0] : 1, length = header.Shape[header.Shape.Count - 1];
        if (rows == 0 || length == 0)
            throw RecordFormatException.AtByte(10, "the array is empty");
        if (rows > MostRecords)
            throw RecordFormatException.AtByte(10, FormattableString.Invariant($"{rows} rows would be as many records; at most {MostRecords} can be: transpose the array"));
        if (length > GrowingArray<byte>.Longest)
            throw RecordFormatException.AtByte(10, FormattableString.Invariant($"the header claims {length} samples a record; at most {GrowingArray<byte>.Longest} can be"));
        List<Record> records = new ItemReader(header.Type, header.IsLittleEndian).Read(reader, (int)rows, (int)length, interleaved: header.IsFortranOrder && rows > 1, call)
            .ConvertAll(x => x.ToRecord(rate, step, atZero));
        call?.Completed();
        return records;
    }
}
