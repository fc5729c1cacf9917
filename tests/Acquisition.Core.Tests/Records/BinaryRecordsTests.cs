using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text;
using Acquisition.Core.Literals;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Records;

public sealed class BinaryRecordsTests
{
    private static readonly SampleRate Rate = 1.MSaPerS();

    public static byte[] Npy(string descr, string shape, byte[] data, int version = 1, string fortran = "False")
    {
        byte[] header = Encoding.ASCII.GetBytes($"{{'descr': '{descr}', 'fortran_order': {fortran}, 'shape': {shape}, }}\n");
        var bytes = new List<byte> { 0x93 };
        bytes.AddRange(Encoding.ASCII.GetBytes("NUMPY"));
        bytes.Add((byte)version);
        bytes.Add(0);
        bytes.AddRange(version == 1 ? BitConverter.GetBytes((ushort)header.Length) : BitConverter.GetBytes(header.Length));
        bytes.AddRange(header);
        bytes.AddRange(data);
        return bytes.ToArray();
    }

    [Theory]
    [InlineData("<i2", new byte[] { 1, 0, 0xFE, 0xFF })]
    [InlineData(">i2", new byte[] { 0, 1, 0xFF, 0xFE })]
    [InlineData("|i1", new byte[] { 1, 0xFE })]
    [InlineData("<f4", new byte[] { 0, 0, 0x80, 0x3F, 0, 0, 0, 0xC0 })]
    [InlineData(">f8", new byte[] { 0x3F, 0xF0, 0, 0, 0, 0, 0, 0, 0xC0, 0, 0, 0, 0, 0, 0, 0 })]
    public void Npy_ItemsOfEachTypeAndOrder_AreRead(string descr, byte[] data)
    {
        for (int version = 1; version <= 3; version++)
            Assert.Equal([1, -2], Assert.Single(NpyRecords.Read(new MemoryStream(Npy(descr, "(2,)", data, version)), Rate, 1.V(), 0.V())).ToSiValues());
    }

    [Fact]
    public void Npy_UnsignedCodes_AreScaled()
    {
        Assert.Equal([-1, 1.55], Assert.Single(NpyRecords.Read(new MemoryStream(Npy("|u1", "(2,)", [0, 255])), Rate, 10.mV(), -1.V())).ToSiValues().Select(x => Math.Round(x, 12)));
        Assert.Equal([0, 65535], Assert.Single(NpyRecords.Read(new MemoryStream(Npy("<u2", "(2,)", [0, 0, 255, 255])), Rate, 1.V(), 0.V())).ToSiValues());
    }

    [Fact]
    public void Npy_RowsAreRecords_InBothOrders()
    {
        byte[] data = [1, 2, 3, 4, 5, 6];
        IReadOnlyList<Record> c = NpyRecords.Read(new MemoryStream(Npy("|u1", "(2, 3)", data)), Rate, 1.V(), 0.V());
        IReadOnlyList<Record> fortran = NpyRecords.Read(new MemoryStream(Npy("|u1", "(2, 3)", data, fortran: "True")), Rate, 1.V(), 0.V());

        Assert.Equal([1, 2, 3], c[0].ToSiValues());
        Assert.Equal([4, 5, 6], c[1].ToSiValues());
        Assert.Equal([1, 3, 5], fortran[0].ToSiValues());
        Assert.Equal([2, 4, 6], fortran[1].ToSiValues());
    }

    [Fact]
    public void Npy_OfDamagedFile_IsRefusedWithTheByte()
    {
        byte[] whole = Npy("<f8", "(4,)", new byte[32]);
        var truncated = Assert.Throws<RecordFormatException>(() => NpyRecords.Read(new MemoryStream(whole[..^9]), Rate));
        Assert.Equal(whole.Length - 9, truncated.ByteOffset);
        Assert.Contains("2 of 4", truncated.Message, StringComparison.Ordinal);

        Assert.Equal(0, Assert.Throws<RecordFormatException>(() => NpyRecords.Read(new MemoryStream(Encoding.ASCII.GetBytes("not a file at all")), Rate)).ByteOffset);
        foreach ((string descr, string shape) in new[] { ("|O", "(2,)"), ("<i8", "(2,)"), ("<f8", "(0,)"), ("<f8", "()"), ("<f8", "(1, 2, 3)"), ("<f8", "(9999999999999,)"), ("<f8", "(-1,)"), ("<f8", "(2") })
            Assert.Throws<RecordFormatException>(() => NpyRecords.Read(new MemoryStream(Npy(descr, shape, new byte[16])), Rate));
        Assert.Contains("step", Assert.Throws<RecordFormatException>(() => NpyRecords.Read(new MemoryStream(Npy("<i2", "(2,)", new byte[4])), Rate)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Npy_ThatPromisesMoreThanItHolds_TakesNoMemoryForThePromise()
    {
        byte[] liar = Npy("<f8", "(2000000000,)", new byte[800]);
        long before = GC.GetAllocatedBytesForCurrentThread();

        Assert.Throws<RecordFormatException>(() => NpyRecords.Read(new MemoryStream(liar), Rate));

        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 2_000_000);
    }

    [Property]
    public void Npy_WrittenAndRead_IsTheSameBits(byte[] data, bool signed)
    {
        if (data.Length < 8)
            return;
        Record[] records =
        [
            Record.FromCodes(data, Rate, 1.mV(), 2.V(), signed),
            Record.FromCodes(data.Chunk(2).Where(x => x.Length == 2).Select(x => BitConverter.ToInt16(x)).ToArray(), Rate, 1.mV(), 2.V(), signed),
            Record.FromVolts(data.Chunk(8).Where(x => x.Length == 8).Select(x => BitConverter.ToDouble(x)).ToArray(), Rate),
            Record.FromVolts(data.Chunk(4).Where(x => x.Length == 4).Select(x => BitConverter.ToSingle(x)).ToArray(), Rate),
        ];
        for (int i = 0; i < records.Length; i++)
        {
            var file = new MemoryStream();
            NpyRecords.Write(file, records[i]);
            Assert.Equal(0, file.ToArray().AsSpan().IndexOf((byte)'\n') % 64 - 63);
            file.Position = 0;
            Record read = Assert.Single(i < 2 ? NpyRecords.Read(file, Rate, 1.mV(), 2.V()) : NpyRecords.Read(file, Rate));
            var (want, got) = (new byte[8 * records[i].Samples.Length], new byte[8 * records[i].Samples.Length]);
            records[i].Samples.CopyItems(0, want, records[i].Samples.Length);
            read.Samples.CopyItems(0, got, read.Samples.Length);
            Assert.Equal(records[i].Samples.ItemType, read.Samples.ItemType);
            Assert.Equal(want, got);
        }
    }

    public static byte[] Wav(int tag, int bits, int channels, byte[] data, int? claimed = null, bool extensible = false)
    {
        var file = new MemoryStream();
        using var w = new BinaryWriter(file);
        w.Write(Encoding.ASCII.GetBytes("RIFF"));
        w.Write(0);
        w.Write(Encoding.ASCII.GetBytes("WAVELIST"));
        w.Write(3);
        w.Write(new byte[4]);
        w.Write(Encoding.ASCII.GetBytes("fmt "));
        w.Write(extensible ? 40 : 16);
        w.Write((ushort)(extensible ? 0xFFFE : tag));
        w.Write((ushort)channels);
        w.Write(48000);
        w.Write(48000 * channels * bits / 8);
        w.Write((ushort)(channels * bits / 8));
        w.Write((ushort)bits);
        if (extensible)
        {
            w.Write((ushort)22);
            w.Write((ushort)bits);
            w.Write(0);
            w.Write((ushort)tag);
            w.Write([0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xAA, 0, 0x38, 0x9B, 0x71]);
        }
        w.Write(Encoding.ASCII.GetBytes("data"));
        w.Write(claimed ?? data.Length);
        w.Write(data);
        return file.ToArray();
    }

    [Theory]
    [InlineData(1, 8, new byte[] { 128, 192, 0 })]
    [InlineData(1, 16, new byte[] { 0, 0, 0, 0x40, 0, 0x80 })]
    [InlineData(1, 24, new byte[] { 0, 0, 0, 0, 0, 0x40, 0, 0, 0x80 })]
    [InlineData(1, 32, new byte[] { 0, 0, 0, 0, 0, 0, 0, 0x40, 0, 0, 0, 0x80 })]
    [InlineData(3, 32, new byte[] { 0, 0, 0, 0, 0, 0, 0, 0x3F, 0, 0, 0x80, 0xBF })]
    [InlineData(3, 64, new byte[] { 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0xE0, 0x3F, 0, 0, 0, 0, 0, 0, 0xF0, 0xBF })]
    public void Wav_OfEachCoding_IsReadInItsFullScale(int tag, int bits, byte[] data)
    {
        foreach (bool extensible in new[] { false, true })
        {
            Record record = Assert.Single(WavRecords.Read(new MemoryStream(Wav(tag, bits, 1, data, extensible: extensible)), 2.V()));
            Assert.Equal([0, 1, -2], record.ToSiValues());
            Assert.Equal(48000, record.SampleRate.SamplesPerSecond);
        }
    }

    [Fact]
    public void Wav_ChannelsTakeTurns_AndAnUnknownLengthReadsToTheEnd()
    {
        byte[] data = [129, 127, 130, 126];
        foreach (int? claimed in new int?[] { null, 0, -1 })
        {
            IReadOnlyList<Record> records = WavRecords.Read(new MemoryStream(Wav(1, 8, 2, data, claimed)), 128.V());
            Assert.Equal([1, 2], records[0].ToSiValues());
            Assert.Equal([-1, -2], records[1].ToSiValues());
        }
    }

    /// <summary>The format chunk begins at byte 32: its frame stands 12 bytes on, the tail of its sub-format 26.</summary>
    [Fact]
    public void Wav_WhoseFormatContradictsItself_IsRefusedWithTheByte()
    {
        byte[] frame = Wav(1, 16, 2, new byte[40]), coding = Wav(1, 16, 2, new byte[40], extensible: true);
        frame[32 + 12] = 3;
        coding[32 + 26 + 5] ^= 1;

        var ofFrame = Assert.Throws<RecordFormatException>(() => WavRecords.Read(new MemoryStream(frame)));
        Assert.Equal(44, ofFrame.ByteOffset);
        Assert.Contains("a frame of 3 bytes does not hold 2 channels of 16 bits", ofFrame.Message, StringComparison.Ordinal);
        var ofCoding = Assert.Throws<RecordFormatException>(() => WavRecords.Read(new MemoryStream(coding)));
        Assert.Equal(63, ofCoding.ByteOffset);
        Assert.Contains("sub-format", ofCoding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Wav_OfDamagedFile_IsRefusedWithTheByte()
    {
        byte[] whole = Wav(1, 16, 2, new byte[40]);

        Assert.Contains("8 of 10", Assert.Throws<RecordFormatException>(() => WavRecords.Read(new MemoryStream(whole[..^7]))).Message, StringComparison.Ordinal);
        Assert.Throws<RecordFormatException>(() => WavRecords.Read(new MemoryStream(Wav(2, 4, 1, new byte[4]))));
        Assert.Throws<RecordFormatException>(() => WavRecords.Read(new MemoryStream(Wav(1, 16, 0, new byte[4]))));
        Assert.Throws<RecordFormatException>(() => WavRecords.Read(new MemoryStream(Wav(1, 16, 1, new byte[5]))));
        Assert.Throws<RecordFormatException>(() => WavRecords.Read(new MemoryStream(Wav(1, 16, 1, []))));
        Assert.Equal(0, Assert.Throws<RecordFormatException>(() => WavRecords.Read(new MemoryStream(new byte[64]))).ByteOffset);
    }

    [Theory]
    [InlineData("npy")]
    [InlineData("wav")]
    [InlineData("csv")]
    public void DamagedFiles_AreReadOrRefused_NeverAnythingElse(string format)
    {
        var random = new System.Random(20260214);
        byte[][] seeds = format switch
        {
            "npy" => [Npy("<f8", "(4,)", new byte[32]), Npy(">i2", "(2, 3)", new byte[12], 2), Npy("|u1", "(3, 4)", new byte[12], 3, "True")],
            "wav" => [Wav(1, 16, 2, new byte[40]), Wav(3, 32, 1, new byte[16], extensible: true), Wav(1, 24, 3, new byte[18])],
            _ => [Encoding.UTF8.GetBytes("# interval = 1E-06 s\r\ntime/s,\"a (V)\"\r\n0,1.5\r\n1e-6,2\r\n2e-6,3\r\n"), Encoding.UTF8.GetBytes("t;x_mV\n0;1,5\n1;2,5\n2;3,5\n")],
        };
        for (int round = 0; round < 4000; round++)
        {
            List<byte> bytes = [.. seeds[random.Next(seeds.Length)]];
            for (int change = random.Next(1, 5); change > 0 && bytes.Count > 0; change--)
            {
                int at = random.Next(bytes.Count);
                switch (random.Next(5))
                {
                    case 0: bytes[at] = (byte)random.Next(256); break;
                    case 1: bytes[at] ^= (byte)(1 << random.Next(8)); break;
                    case 2: bytes.RemoveRange(at, random.Next(1, bytes.Count - at + 1)); break;
                    case 3: bytes.InsertRange(at, bytes.Skip(random.Next(bytes.Count)).Take(random.Next(1, 40)).ToArray()); break;
                    default: bytes.Insert(at, (byte)",;.\"\n\r e-+9(){}':"[random.Next(17)]); break;
                }
            }
            byte[] file = [.. bytes];
            long before = GC.GetAllocatedBytesForCurrentThread();
            try
            {
                IReadOnlyList<Record> records = format switch
                {
                    "npy" => NpyRecords.Read(new MemoryStream(file), Rate, 1.V(), 0.V()),
                    "wav" => WavRecords.Read(new MemoryStream(file)),
                    _ => CsvRecords.Read(new MemoryStream(file)),
                };
                Assert.All(records, x => Assert.True(x.Count.Points > 0));
            }
            catch (RecordFormatException refusal)
            {
                Assert.True(refusal.Line is not null || refusal.ByteOffset is not null);
            }
            // Many records of few samples are an array of readers; a file of 200 bytes takes no gigabytes.
            Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 30_000_000);
        }
    }

    [Fact]
    public void Builder_MakesOneRecordOfTheChunks()
    {
        RecordBuilder builder = RecordBuilder.OfByteCodes(1.GSaPerS(), 1.mV(), 0.V(), signed: true, expected: 4.pts());
        builder.Append([1, 2, 3], 1, 2).Append(new byte[] { 255 }, 0, 1);
        Assert.Throws<InvalidOperationException>(() => builder.Append([1.0], 0, 1));

        Record record = builder.Build();

        Assert.Equal([2e-3, 3e-3, -1e-3], record.ToSiValues());
        Assert.Throws<InvalidOperationException>(() => builder.Build());
        Assert.Throws<InvalidOperationException>(() => RecordBuilder.OfValues(1.GSaPerS()).Build());
    }
}
