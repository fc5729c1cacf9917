namespace Acquisition.Core;

/// <summary>A decimal prefix of the SI (SI Brochure, 9th edition, table 7, with those of 2022) or a binary one (IEC 80000-13).</summary>
internal readonly struct UnitPrefix
{
    internal static readonly UnitPrefix None = new("", 0);

    internal readonly string Symbol;
    internal readonly int PowerOfTen;
    internal readonly int PowerOfTwo;

    private UnitPrefix(string symbol, int powerOfTen, int powerOfTwo = 0)
    {
        Symbol = symbol;
        PowerOfTen = powerOfTen;
        PowerOfTwo = powerOfTwo;
    }

    /// <summary>Every prefix, in the spelling that is written; micro is read as u, U+00B5 and U+03BC alike.</summary>
    internal static readonly UnitPrefix[] All =
    {
        new("q", -30), new("r", -27), new("y", -24), new("z", -21), new("a", -18), new("f", -15), new("p", -12), new("n", -9), new("µ", -6), new("m", -3),
        new("c", -2), new("d", -1), new("da", 1), new("h", 2),
        new("k", 3), new("M", 6), new("G", 9), new("T", 12), new("P", 15), new("E", 18), new("Z", 21), new("Y", 24), new("R", 27), new("Q", 30),
        new("Ki", 0, 10), new("Mi", 0, 20), new("Gi", 0, 30), new("Ti", 0, 40), new("Pi", 0, 50), new("Ei", 0, 60), new("Zi", 0, 70), new("Yi", 0, 80),
    };

    internal bool IsBinary => PowerOfTwo != 0;

    /// <summary>The prefix that is written for a power of ten which is a multiple of three from -30 to 30, as one character; none for 0.</summary>
    internal static char? Engineering(int powerOfTen) => powerOfTen == 0 ? null : "qryzafpnµm kMGTPEZYRQ"[powerOfTen / 3 + 10];

    /// <summary>Whether the prefix goes with units of a set.</summary>
    internal bool IsIn(UnitPrefixes allowed) => allowed switch
    {
        UnitPrefixes.None => false,
        UnitPrefixes.Decimal => !IsBinary,
        UnitPrefixes.DecimalAndBinary => true,
        _ => IsBinary || PowerOfTen >= 3,
    };

    /// <summary>The prefix of one letter; micro comes as u.</summary>
    internal static bool TryFind(char letter, out UnitPrefix prefix)
    {
        int place = letter switch
        {
            'q' => 0, 'r' => 1, 'y' => 2, 'z' => 3, 'a' => 4, 'f' => 5, 'p' => 6, 'n' => 7, 'u' => 8, 'm' => 9, 'c' => 10, 'd' => 11, 'h' => 13,
            'k' => 14, 'M' => 15, 'G' => 16, 'T' => 17, 'P' => 18, 'E' => 19, 'Z' => 20, 'Y' => 21, 'R' => 22, 'Q' => 23,
            _ => -1,
        };
        prefix = place < 0 ? None : All[place];
        return place >= 0;
    }

    /// <summary>The prefix of two letters: da, and the binary ones.</summary>
    internal static bool TryFind(char first, char second, out UnitPrefix prefix)
    {
        int place = (first, second) switch
        {
            ('d', 'a') => 12, ('K', 'i') => 24, ('M', 'i') => 25, ('G', 'i') => 26, ('T', 'i') => 27, ('P', 'i') => 28, ('E', 'i') => 29, ('Z', 'i') => 30, ('Y', 'i') => 31,
            _ => -1,
        };
        prefix = place < 0 ? None : All[place];
        return place >= 0;
    }
}

/// <summary>Which prefixes go with a unit.</summary>
internal enum UnitPrefixes : byte
{
    /// <summary>None: min, h, in, °, %, decibels.</summary>
    None,

    /// <summary>All decimal ones.</summary>
    Decimal,

    /// <summary>Decimal and binary ones: Sa, bit.</summary>
    DecimalAndBinary,

    /// <summary>Decimal ones from k upwards and binary ones: what is counted whole.</summary>
    Multiples,
}
