using System;
using System.Collections.Generic;
using System.Globalization;
using System.Text;

namespace Acquisition.Core.Records;

/// <summary>What a .npy file says about its array (NumPy Enhancement Proposal 1, format versions 1 to 3).</summary>
internal sealed class NpyHeader
{
    /// <summary>Headers are some hundred bytes; one beyond this is damaged or hostile.</summary>
    private const int LongestHeader = 1 << 16;

    private static readonly byte[] Magic = { 0x93, (byte)'N', (byte)'U', (byte)'M', (byte)'P', (byte)'Y' };

    private NpyHeader(string type, bool littleEndian, bool fortranOrder, IReadOnlyList<long> shape)
    {
        Type = type;
        IsLittleEndian = littleEndian;
        IsFortranOrder = fortranOrder;
        Shape = shape;
    }

    /// <summary>Letter and size: <c>f8</c>, <c>i2</c> ...</summary>
    internal string Type { get; }

    internal bool IsLittleEndian { get; }

    internal bool IsFortranOrder { get; }

    internal IReadOnlyList<long> Shape { get; }

    internal static NpyHeader Read(ByteReader reader)
    {
        byte[] start = reader.Read(8, "the .npy signature");
        for (int i = 0; i < Magic.Length; i++)
        {
            if (start[i] != Magic[i])
                throw RecordFormatException.AtByte(i, "not a .npy file: the signature \\x93NUMPY is missing");
        }
        int version = start[6];
        if (version is < 1 or > 3)
            throw RecordFormatException.AtByte(6, FormattableString.Invariant($"format version {version} is not known: 1, 2 and 3 are"));
        long length = version == 1 ? ByteReader.UInt16(reader.Read(2, "the header length"), 0) : ByteReader.UInt32(reader.Read(4, "the header length"), 0);
        if (length > LongestHeader)
            throw RecordFormatException.AtByte(8, FormattableString.Invariant($"the header claims {length} bytes; {LongestHeader} are allowed"));
        long at = reader.Position;
        return Parse(Encoding.UTF8.GetString(reader.Read((int)length, "the header")), at);
    }

    /// <summary>The header of a one-dimensional array in this machine-independent (little-endian) order, padded to a multiple of 64 bytes.</summary>
    internal static byte[] Write(string descr, int count)
    {
        string dictionary = "{'descr': '" + descr + "', 'fortran_order': False, 'shape': (" + count.ToString(CultureInfo.InvariantCulture) + ",), }";
        int length = (10 + dictionary.Length + 1 + 63) / 64 * 64;
        var bytes = new byte[length];
        Magic.CopyTo(bytes, 0);
        bytes[6] = 1;
        bytes[8] = (byte)(length - 10);
        bytes[9] = (byte)(length - 10 >> 8);
        for (int i = 10; i < length - 1; i++)
            bytes[i] = (byte)(i - 10 < dictionary.Length ? dictionary[i - 10] : ' ');
        bytes[length - 1] = (byte)'\n';
        return bytes;
    }

    /// <summary>Reads the Python dictionary of the header: three keys, of a string, a truth value and a tuple.</summary>
    private static NpyHeader Parse(string text, long start)
    {
        int at = 0;
        string? descr = null;
        bool? fortran = null;
        List<long>? shape = null;
        Expect('{');
        while (!Next('}'))
        {
            string key = Quoted();
            Expect(':');
            switch (key)
            {
                case "descr":
                    descr = Quoted();
                    break;
                case "fortran_order":
                    fortran = Word() switch { "True" => true, "False" => false, _ => throw Damaged("'fortran_order' must be True or False") };
                    break;
                case "shape":
                    shape = Tuple();
                    break;
                default:
                    throw Damaged($"the key '{key}' is not known");
            }
            if (!Next(','))
            {
                Expect('}');
                break;
            }
        }
        if (descr is null || fortran is null || shape is null)
            throw Damaged("'descr', 'fortran_order' and 'shape' must all be given");
        if (descr.Length != 3 || "<>|=".IndexOf(descr[0]) < 0 || descr.Substring(1) is not ("f4" or "f8" or "i1" or "u1" or "i2" or "u2"))
            throw RecordFormatException.AtByte(start, $"items of type '{descr}' cannot be read; f4, f8, i1, u1, i2 and u2 can: convert with astype");
        bool little = descr[0] == '<' || descr[0] != '>' && BitConverter.IsLittleEndian;
        return new NpyHeader(descr.Substring(1), little, fortran.Value, shape);

        RecordFormatException Damaged(string message) => RecordFormatException.AtByte(start + at, "the header is damaged: " + message);

        void Blanks()
        {
            while (at < text.Length && char.IsWhiteSpace(text[at]))
                at++;
        }

        bool Next(char c)
        {
            Blanks();
            if (at >= text.Length || text[at] != c)
                return false;
            at++;
            return true;
        }

        void Expect(char c)
        {
            if (!Next(c))
                throw Damaged($"'{c}' is missing");
        }

        string Quoted()
        {
            Blanks();
            char quote = at < text.Length ? text[at] : ' ';
            if (quote is not ('\'' or '"'))
                throw Damaged("a quoted text is missing");
            int end = text.IndexOf(quote, at + 1);
            if (end < 0)
                throw Damaged("a quotation has no end");
            string inside = text.Substring(at + 1, end - at - 1);
            at = end + 1;
            return inside;
        }

        string Word()
        {
            Blanks();
            int from = at;
            while (at < text.Length && char.IsLetterOrDigit(text[at]))
                at++;
            return text.Substring(from, at - from);
        }

        List<long> Tuple()
        {
            var lengths = new List<long>();
            Expect('(');
            while (!Next(')'))
            {
                string word = Word();
                if (!long.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out long length))
                    throw Damaged($"'{word}' is not a length");
                lengths.Add(length);
                if (lengths.Count > 32)
                    throw Damaged("more than 32 dimensions");
                if (!Next(','))
                {
                    Expect(')');
                    break;
                }
            }
            return lengths;
        }
    }
}
