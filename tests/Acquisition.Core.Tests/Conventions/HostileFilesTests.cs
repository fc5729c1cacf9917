using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;
using Acquisition.Core.Formulas;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Acquisition.Core.Responses;
using Acquisition.Core.Tests.Planning;
using Xunit;

namespace Acquisition.Core.Tests.Conventions;

/// <summary>
/// Files that were damaged on purpose, with a fixed seed: every reader takes them or refuses them in its documented way, in memory that goes with the length of the file, and without hanging.
/// ACQUISITION_FUZZ_FILES asks for another number of files for each reader, for longer runs.
/// </summary>
public sealed class HostileFilesTests
{
    private const int Seed = 20_260_301;

    /// <summary>What reading a small file may take beside a share for each byte: tables, dictionaries, messages. A bench file is also computed: the library's own largest tables.</summary>
    private const long FixedBytes = 8_000_000, FixedBytesOfABench = 200_000_000, BytesPerByte = 4000;

    private static readonly string[] TextPieces =
    [
        "\"", "\"\"", "{", "}", "[", "]", ",", ";", ":", "\t", "\n", "\r", "\0", " ", "#", "!", "%", "-", "+", ".", "e", "1e999", "-1e-999", "NaN", "Infinity", "null", "true", "0", "-0",
        "99999999999999999999999999", "0.000000000000000000000000000001", "2147483648", "1e308 GHz", "0 V", "-3 dB", "µ", "\uD83D", "\uFEFF", "é", "\\u0000", "\\", "±", "[Version] 2.0", "# GHz S DB R 50",
        "given", "let", "check", "show", "else", "{{", "in V", "1e5", "((((((((((((((((", "[[[[[[[[[[[[[[[[", "{\"a\":{\"a\":{\"a\":",
    ];

    private static readonly Dictionary<string, (int Files, byte[][] Seeds, Action<byte[]> Read, Type[] Refusals)> Readers = new()
    {
        ["CSV"] = (6000, Texts(
            "time/s,ch1 (V)\n0,1\n1e-6,2\n2e-6,3\n3e-6,4\n", "# comment\nTime (us);CH1 (mV);CH2 (mV)\n0,0;1,5;2\n0,5;1,6;3\n1,0;1,7;4\n", "0\t1\n1\t2\n2\t3\n", "time_us ch1\n0 \"1\"\n1 \"2\"\n2 3\n"),
            file => { foreach (Record record in CsvRecords.Read(new MemoryStream(file))) _ = record.ToSiValues(); }, [typeof(RecordFormatException)]),
        ["sweeps"] = (6000, Texts(
            "f/MHz;direct (dB);u (dB);probe A [mV]\r\n100;-0,31;0,1;966\r\n10;0,00;0,1;1000\r\n", "# bench\nfreq (Hz),out (dBm)\n1e6,-3\n2e6,-4.5\n", "frequency\tP/mW\tu(P)/uW\n1\t2\t3\n2\t3\t4\n"),
            file => { foreach (Sweep sweep in CsvSweeps.Read(new MemoryStream(file))) _ = sweep.Points; }, [typeof(RecordFormatException)]),
        ["npy"] = (8000, [Npy(Record.FromVolts([1.0, 2, 3, 4], 1.MSaPerS())), Npy(Record.FromCodes(new byte[] { 1, 2, 3 }, 1.MSaPerS(), 1.mV(), 0.V())), NpyRows()],
            file => { foreach (Record record in NpyRecords.Read(new MemoryStream(file), 1.MSaPerS(), 1.mV(), 0.V())) _ = record.ToSiValues(); }, [typeof(RecordFormatException)]),
        ["WAV"] = (8000, [Wav(1, 16), Wav(1, 8), Wav(1, 24), Wav(3, 32)],
            file => { foreach (Record record in WavRecords.Read(new MemoryStream(file))) _ = record.ToSiValues(); }, [typeof(RecordFormatException)]),
        ["Touchstone"] = (8000, Texts(
            "! pad\n# MHz S MA R 50\n10 0.1 0 0.5 -90 0.4 -80 0.2 180\n20 0.1 0 0.25 -180 0.2 -160 0.2 180\n", "# DB\n1 -20 90\n2 -6 0\n",
            "[Version] 2.0\n# GHz S RI R 50\n[Number of Ports] 2\n[Two-Port Data Order] 12_21\n[Number of Frequencies] 1\n[Network Data]\n1 0 0 1 0 1 0 0 0\n[End]\n"),
            file =>
            {
                TouchstoneData data = TouchstoneData.Parse(Text(file));
                if (data.Count > 1)
                    _ = data.ToResponse("file", 1, 1, OutsideBand.Hold, OutsideBand.Hold).AmplitudeRatio(15.MHz());
            }, [typeof(TouchstoneFormatException)]),
        ["bench"] = (800, Texts(DocumentFiles.Read("examples", "lantern-buoy.json")),
            file => _ = Bench.Parse(Text(file)).ToString(), [typeof(DocumentFormatException)]),
        ["catalogue"] = (400, Texts(DocumentFiles.Read("examples", "workshop-catalogue.json")),
            file => _ = Catalogue.Parse(Text(file)), [typeof(DocumentFormatException)]),
        ["worksheet"] = (1500, Texts(
            "given clock = 24 MHz ± 50 ppm\nlet t = 1 / clock\ncheck t < 50 ns else \"too slow\"\nshow t in ns, 3 digits\n", "# only a comment\ngiven u = 1 V ± 10 mV (k=2)\nlet p = power_level(u^2 / 50 ohm)\nshow p in dBm\n"),
            file => _ = string.Join("|", Worksheet.Build(Text(file)).Evaluate().Entries), [typeof(FormulaException)]),
        ["template"] = (6000, Texts("The clock is {{ 24 MHz }} and its period {{ 1 / 24 MHz in ns, 3 digits }}.", "{{ if 1 < 2 then 1 V else 2 V }} {{"),
            file => _ = TextTemplate.TryBuild(Text(file), FormulaContext.Standard, out _, out _), []),
        ["quantity"] = (10_000, Texts("100 MHz", "-174 dBm/Hz", "1 234.5 µV", "5 nV/√Hz", "3.3 Vpp", "20 °C", "1e-9 s"),
            file => _ = Quantity.Parse(Text(file)), [typeof(QuantityFormatException)]),
        ["spread"] = (8000, Texts("± 1 % (k=2)", "± 10 mV", "± 3 mV (rectangular)"), file => _ = Spread.Parse(Text(file)), [typeof(QuantityFormatException)]),
    };

    public static TheoryData<string> Names => new(Readers.Keys);

    [Theory, MemberData(nameof(Names))]
    public void ADamagedFile_IsReadOrRefused_AndCostsNoMoreThanItsLength(string reader)
    {
        (int files, byte[][] seeds, Action<byte[]> read, Type[] refusals) = Readers[reader];
        if (int.TryParse(Environment.GetEnvironmentVariable("ACQUISITION_FUZZ_FILES"), NumberStyles.Integer, CultureInfo.InvariantCulture, out int wanted))
            files = wanted;
        var random = new Random(Seed);
        int taken = 0;
        foreach (byte[] seed in seeds)
            read(seed);
        byte[] file = [];
        int i = 0;
        HangGuard.Run(() => { for (; i < files; i++) ReadOne(); }, () => $"{reader}: file {i}, {Convert.ToBase64String(file)}");
        Assert.True(taken > files / 1000, $"{reader}: only {taken} of {files} files were read: the test does not test much");

        void ReadOne()
        {
            file = Damaged(random, seeds);
            long before = GC.GetAllocatedBytesForCurrentThread();
            try
            {
                read(file);
                taken++;
            }
            catch (Exception refusal) when (refusals.Contains(refusal.GetType()))
            {
                Assert.NotEmpty(refusal.Message);
            }
            catch (Exception other)
            {
                Assert.Fail($"{reader}: {other.GetType().Name} for file {i}, {Convert.ToBase64String(file)}\n{Text(file)}\n{other}");
            }
            long bytes = GC.GetAllocatedBytesForCurrentThread() - before;
            Assert.True(bytes <= (reader == "bench" ? FixedBytesOfABench : FixedBytes) + BytesPerByte * file.Length, $"{reader}: {bytes} bytes for file {i} of {file.Length} bytes, {Convert.ToBase64String(file)}");
        }
    }

    private static byte[] Damaged(Random random, byte[][] seeds)
    {
        var file = new List<byte>(seeds[random.Next(seeds.Length)]);
        int changes = 1 + random.Next(random.Next(4) == 0 ? 20 : 3);
        for (int i = 0; i < changes; i++)
        {
            int at = random.Next(file.Count + 1), length = Math.Min(file.Count - at, 1 + random.Next(8));
            switch (random.Next(8))
            {
                case 0:
                    file.RemoveRange(at, length);
                    break;
                case 1:
                    file.InsertRange(at, file.GetRange(at, length));
                    break;
                case 2:
                    for (int k = 0; k < length; k++)
                        file[at + k] = (byte)random.Next(256);
                    break;
                case 3:
                    // Lengths, counts and offsets: very large, or all bits set.
                    for (int k = 0; k < length; k++)
                        file[at + k] = random.Next(2) == 0 ? (byte)0xFF : (byte)0x7F;
                    break;
                case 4 when at < file.Count:
                    file[at] ^= (byte)(1 << random.Next(8));
                    break;
                case 5 when random.Next(4) == 0:
                    file.RemoveRange(at, file.Count - at);
                    break;
                case 6:
                    byte[] other = seeds[random.Next(seeds.Length)];
                    int from = random.Next(other.Length);
                    file.InsertRange(at, other.Skip(from).Take(random.Next(40)));
                    break;
                default:
                    file.InsertRange(at, Encoding.UTF8.GetBytes(TextPieces[random.Next(TextPieces.Length)]));
                    break;
            }
        }
        return file.ToArray();
    }

    private static byte[][] Texts(params string[] texts) => Array.ConvertAll(texts, Encoding.UTF8.GetBytes);

    private static string Text(byte[] file) => Encoding.UTF8.GetString(file);

    private static byte[] Npy(Record record)
    {
        var stream = new MemoryStream();
        NpyRecords.Write(stream, record);
        return stream.ToArray();
    }

    private static byte[] NpyRows()
    {
        const string header = "{'descr': '>i2', 'fortran_order': True, 'shape': (2, 3), }                                          \n";
        return [0x93, (byte)'N', (byte)'U', (byte)'M', (byte)'P', (byte)'Y', 1, 0, (byte)header.Length, 0, .. Encoding.ASCII.GetBytes(header), 0, 1, 0, 2, 0, 3, 0, 4, 0, 5, 0, 6];
    }

    private static byte[] Wav(short coding, short bits)
    {
        var stream = new MemoryStream();
        var writer = new BinaryWriter(stream);
        writer.Write("RIFF"u8);
        writer.Write(36 + 48);
        writer.Write("WAVEfmt "u8);
        writer.Write(16);
        writer.Write(coding);
        writer.Write((short)2);
        writer.Write(48_000);
        writer.Write(48_000 * 2 * bits / 8);
        writer.Write((short)(2 * bits / 8));
        writer.Write(bits);
        writer.Write("data"u8);
        writer.Write(48);
        writer.Write(new byte[48]);
        return stream.ToArray();
    }
}
