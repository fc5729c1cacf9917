using System;
using System.IO;

namespace Acquisition.Core.Records;

/// <summary>Reads a binary stream and knows where it is; a stream that ends too early is a refusal with the place.</summary>
internal sealed class ByteReader
{
    internal const int BlockLength = 1 << 16;

    private readonly Stream _stream;

    internal ByteReader(Stream stream)
    {
        _stream = stream ?? throw new ArgumentNullException(nameof(stream));
        if (!stream.CanRead)
            throw new ArgumentException("the stream cannot be read", nameof(stream));
    }

    internal long Position { get; private set; }

    /// <summary>So many bytes, or fewer at the end of the stream.</summary>
    internal int ReadUpTo(byte[] block, int count)
    {
        int total = 0;
        while (total < count)
        {
            int read = _stream.Read(block, total, count - total);
            if (read <= 0)
                break;
            total += read;
        }
        Position += total;
        return total;
    }

    internal byte[] Read(int count, string what)
    {
        var bytes = new byte[count];
        if (ReadUpTo(bytes, count) < count)
            throw RecordFormatException.AtByte(Position, $"the file ends within {what}");
        return bytes;
    }

    internal void Skip(long count, string what)
    {
        var block = new byte[Math.Min(count, BlockLength)];
        while (count > 0)
        {
            int wanted = (int)Math.Min(count, block.Length);
            if (ReadUpTo(block, wanted) < wanted)
                throw RecordFormatException.AtByte(Position, $"the file ends within {what}");
            count -= wanted;
        }
    }

    internal static int UInt16(byte[] bytes, int at) => bytes[at] | bytes[at + 1] << 8;

    internal static long UInt32(byte[] bytes, int at) => (uint)(bytes[at] | bytes[at + 1] << 8 | bytes[at + 2] << 16 | bytes[at + 3] << 24);

    /// <summary>Turns the bytes of each item around where the file's order is not the machine's.</summary>
    internal static void ToMachineOrder(byte[] bytes, int count, int itemLength, bool fileIsLittleEndian)
    {
        if (itemLength == 1 || fileIsLittleEndian == BitConverter.IsLittleEndian)
            return;
        for (int i = 0; i + itemLength <= count; i += itemLength)
            Array.Reverse(bytes, i, itemLength);
    }
}
