using System;
using System.Collections.Generic;
using System.IO;
using System.Threading;
using Acquisition.Core.Records;

namespace Acquisition.Core;

/// <summary>
/// Records in RIFF/WAVE files: PCM of 8, 16, 24 and 32 bits, floating point of 32 and 64 bits, plain or extensible headers, any number of channels, one record each
/// (Multimedia Programming Interface and Data Specifications 1.0, 1991; from memory).
/// </summary>
public static class WavRecords
{
    private static readonly byte[] SubFormatTail = { 0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xAA, 0, 0x38, 0x9B, 0x71 };

    /// <summary>Reads the channels as plain ratios of full scale: -1 to 1.</summary>
    /// <param name="stream">The file.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="RecordFormatException">The file is damaged, truncated or of an unknown coding; the message names the byte.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static IReadOnlyList<Record> Read(Stream stream, IProgress<Ratio>? progress = null, CancellationToken cancellation = default) =>
        Read(stream, Ratio.FromFraction(1), progress, cancellation);

    /// <summary>Reads the channels with the quantity that full scale stands for.</summary>
    /// <typeparam name="T">The quantity: <see cref="Voltage"/> mostly.</typeparam>
    /// <param name="stream">The file.</param>
    /// <param name="fullScale">What a sample of 1 (floating point) or just above the highest code (PCM) stands for, above zero.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="RecordFormatException">The file is damaged, truncated or of an unknown coding; the message names the byte.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="fullScale"/> is not above zero.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public static IReadOnlyList<Record> Read<T>(Stream stream, T fullScale, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
        where T : struct, IQuantity
    {
        Quantity full = fullScale.ToQuantity();
        Refuse.UnlessAboveZero(full.SiValue, full.Kind, nameof(fullScale));
        LongCall? call = LongCall.Of(progress, cancellation);
        var reader = new ByteReader(stream);
        byte[] riff = reader.Read(12, "the RIFF header");
        if (Name(riff, 0) != "RIFF" || Name(riff, 8) != "WAVE")
            throw RecordFormatException.AtByte(0, Name(riff, 0) is "RF64" or "RIFX" ? $"{Name(riff, 0)} files cannot be read; RIFF can" : "not a WAVE file: RIFF and WAVE are missing");
        (string type, int channels, long rate)? format = null;
        while (true)
        {
            byte[] chunk = reader.Read(8, "the file before its data chunk");
            string name = Name(chunk, 0);
            long length = ByteReader.UInt32(chunk, 4);
            if (name == "fmt ")
            {
                format = Format(reader, length);
            }
            else if (name == "data")
            {
                if (format is not { } f)
                    throw RecordFormatException.AtByte(reader.Position - 8, "the data come before their format");
                List<Record> records = Data(reader, f, length, full, call);
                call?.Completed();
                return records;
            }
            else
            {
                reader.Skip(length + (length & 1), $"the chunk '{name}'");
            }
        }
    }

    private static List<Record> Data(ByteReader reader, (string Type, int Channels, long Rate) format, long length, Quantity full, LongCall? call)
    {
        int itemLength = format.Type[1] - '0';
        long frame = (long)itemLength * format.Channels;
        // Programs that write to a pipe do not know the length beforehand and leave it at 0 or at the largest number.
        bool unknown = length is 0 or 0xFFFFFFFF;
        if (!unknown && length % frame != 0)
            throw RecordFormatException.AtByte(reader.Position - 4, FormattableString.Invariant($"{length} bytes of data are no whole number of {frame}-byte frames"));
        if (!unknown && length / frame > GrowingArray<byte>.Longest)
            throw RecordFormatException.AtByte(reader.Position - 4, FormattableString.Invariant($"more than {GrowingArray<byte>.Longest} samples a channel"));
        List<ItemColumn> columns = new ItemReader(format.Type, littleEndian: true).Read(reader, format.Channels, unknown ? null : (int)(length / frame), interleaved: true, call);
        double codes = format.Type switch { "u1" => 128, "i2" => 32768, "i3" => 8388608, "i4" => 2147483648, _ => 1 };
        var step = new Quantity(full.SiValue / codes, full.Kind);
        var atZero = new Quantity(format.Type == "u1" ? -full.SiValue : 0, full.Kind);
        var records = new List<Record>();
        for (int i = 0; i < columns.Count; i++)
        {
            Record record = columns[i].ToRecord(SampleRate.FromSi(format.Rate, "rate"), step, atZero).WithName(FormattableString.Invariant($"channel {i + 1}"));
            if (codes > 1)
                record = record.WithResolution(step).WithLimits(new Quantity(-full.SiValue, full.Kind), new Quantity(full.SiValue - step.SiValue, full.Kind));
            records.Add(record);
        }
        return records;
    }

    private static (string Type, int Channels, long Rate) Format(ByteReader reader, long length)
    {
        long start = reader.Position;
        if (length is < 16 or > 4096)
            throw RecordFormatException.AtByte(start - 4, FormattableString.Invariant($"a format chunk of {length} bytes; 16 to 4096 are allowed"));
        byte[] f = reader.Read((int)(length + (length & 1)), "the format chunk");
        int tag = ByteReader.UInt16(f, 0), channels = ByteReader.UInt16(f, 2), align = ByteReader.UInt16(f, 12), bits = ByteReader.UInt16(f, 14);
        long rate = ByteReader.UInt32(f, 4);
        if (tag == 0xFFFE)
        {
            if (length < 40)
                throw RecordFormatException.AtByte(start, "an extensible format chunk needs 40 bytes");
            for (int i = 0; i < SubFormatTail.Length; i++)
            {
                if (f[26 + i] != SubFormatTail[i])
                    throw RecordFormatException.AtByte(start + 26 + i, "the sub-format is not known");
            }
            tag = ByteReader.UInt16(f, 24);
        }
        string? type = (tag, bits) switch
        {
            (1, 8) => "u1",
            (1, 16) => "i2",
            (1, 24) => "i3",
            (1, 32) => "i4",
            (3, 32) => "f4",
            (3, 64) => "f8",
            _ => null,
        };
        if (type is null)
            throw RecordFormatException.AtByte(start, FormattableString.Invariant($"coding {tag} of {bits} bits cannot be read; PCM of 8, 16, 24, 32 bits and floating point of 32, 64 bits can"));
        if (channels is < 1 or > 1024)
            throw RecordFormatException.AtByte(start + 2, FormattableString.Invariant($"{channels} channels; 1 to 1024 are allowed"));
        if (rate == 0)
            throw RecordFormatException.AtByte(start + 4, "a sample rate of 0 Sa/s");
        if (align != channels * bits / 8)
            throw RecordFormatException.AtByte(start + 12, FormattableString.Invariant($"a frame of {align} bytes does not hold {channels} channels of {bits} bits"));
        return (type, channels, rate);
    }

    private static string Name(byte[] bytes, int at)
    {
        var name = new char[4];
        for (int i = 0; i < 4; i++)
            name[i] = bytes[at + i] is >= 32 and < 127 ? (char)bytes[at + i] : '?';
        return new string(name);
    }
}
