namespace Acquisition.Core;

/// <summary>A decimal prefix of the SI (SI Brochure, 9th edition, table 7, with those of 2022) or a binary one (IEC 80000-13).</summary>
internal readonly struct UnitPrefix
{
    internal static UnitPrefix None => default;

    internal readonly int PowerOfTen;
    internal readonly int PowerOfTwo;

    private UnitPrefix(int powerOfTen, int powerOfTwo)
    {
        PowerOfTen = powerOfTen;
        PowerOfTwo = powerOfTwo;
    }

    private const string BinaryLetters = "KMGTPEZY";

    /// <summary>Every prefix; a reader finds one by its letters instead, which costs a first text less than this list.</summary>
    internal static readonly UnitPrefix[] All = System.Array.ConvertAll(
        new[] { "q", "r", "y", "z", "a", "f", "p", "n", "u", "m", "c", "d", "da", "h", "k", "M", "G", "T", "P", "E", "Z", "Y", "R", "Q", "Ki", "Mi", "Gi", "Ti", "Pi", "Ei", "Zi", "Yi" },
        symbol => (symbol.Length == 1 ? TryFind(symbol[0], out UnitPrefix prefix) : TryFind(symbol[0], symbol[1], out prefix)) ? prefix : throw new System.InvalidOperationException(symbol));

    /// <summary>The spelling that is written; micro is read as u, U+00B5 and U+03BC alike.</summary>
    internal string Symbol => IsBinary ? BinaryLetters[PowerOfTwo / 10 - 1] + "i" : PowerOfTen switch
    {
        -2 => "c",
        -1 => "d",
        1 => "da",
        2 => "h",
        _ => Engineering(PowerOfTen)?.ToString() ?? "",
    };

    internal bool IsBinary => PowerOfTwo != 0;

    /// <summary>The prefix that is written for a power of ten which is a multiple of three from -30 to 30, as one character; none for 0.</summary>
    internal static char? Engineering(int powerOfTen) => powerOfTen == 0 ? null : "qryzafpnµm kMGTPEZYRQ"[powerOfTen / 3 + 10];

    /// <summary>Whether the prefix goes with units of a set.</summary>
    internal bool IsIn(UnitPrefixes allowed) => allowed switch
    {
        UnitPrefixes.None => false,
        UnitPrefixes.Decimal => PowerOfTwo == 0,
        UnitPrefixes.DecimalAndBinary => true,
        _ => PowerOfTwo != 0 || PowerOfTen >= 3,
    };

    /// <summary>The power of ten that a prefix of one letter stands for; 0 for any other letter.</summary>
    internal static int PowerOf(char letter) => letter switch
    {
        'q' => -30, 'r' => -27, 'y' => -24, 'z' => -21, 'a' => -18, 'f' => -15, 'p' => -12, 'n' => -9, 'u' or '\u00B5' or '\u03BC' => -6, 'm' => -3, 'c' => -2, 'd' => -1,
        'h' => 2, 'k' => 3, 'M' => 6, 'G' => 9, 'T' => 12, 'P' => 15, 'E' => 18, 'Z' => 21, 'Y' => 24, 'R' => 27, 'Q' => 30,
        _ => 0,
    };

    /// <summary>The prefix of one letter.</summary>
    internal static bool TryFind(char letter, out UnitPrefix prefix)
    {
        int power = PowerOf(letter);
        prefix = new UnitPrefix(power, 0);
        return power != 0;
    }

    /// <summary>The prefix of two letters: da, and the binary ones.</summary>
    internal static bool TryFind(char first, char second, out UnitPrefix prefix)
    {
        bool isDeca = first == 'd' && second == 'a';
        int place = second == 'i' ? BinaryLetters.IndexOf(first) : -1;
        prefix = new UnitPrefix(isDeca ? 1 : 0, 10 * (place + 1));
        return isDeca || place >= 0;
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
