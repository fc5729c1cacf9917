using System;

namespace Acquisition.Core;

/// <summary>What a quantity is a product of: powers, possibly half ones, of base dimensions.</summary>
/// <remarks>
/// Beside the SI's length, mass, time, current and temperature, what the trade keeps apart is a base dimension of its own: plane angle, sample, bit,
/// graticule division, symbol, unit interval, octave and decade. So a sample rate and a frequency cannot meet by accident. The default value is no dimension (a plain number).
/// </remarks>
public readonly struct Dimension : IEquatable<Dimension>
{
    /// <summary>Exponents, doubled so that half powers are whole, in one byte each.</summary>
    private readonly long _siExponents;
    private readonly long _countExponents;

    private Dimension(long siExponents, long countExponents)
    {
        _siExponents = siExponents;
        _countExponents = countExponents;
    }

    /// <summary>A plain number.</summary>
    public static Dimension None => default;

    /// <summary>Length, metre.</summary>
    public static readonly Dimension Length = new(Exponent.Length, 0);

    /// <summary>Mass, kilogram.</summary>
    public static readonly Dimension Mass = new(Exponent.Mass, 0);

    /// <summary>Time, second.</summary>
    public static readonly Dimension Time = new(Exponent.Time, 0);

    /// <summary>Electric current, ampere.</summary>
    public static readonly Dimension Current = new(Exponent.Current, 0);

    /// <summary>Thermodynamic temperature, kelvin.</summary>
    public static readonly Dimension Temperature = new(Exponent.Temperature, 0);

    /// <summary>Plane angle, radian.</summary>
    public static readonly Dimension Angle = new(Exponent.Angle, 0);

    /// <summary>Samples, that is points of a record.</summary>
    public static readonly Dimension Sample = new(0, Exponent.Sample);

    /// <summary>Bits.</summary>
    public static readonly Dimension Bit = new(0, Exponent.Bit);

    /// <summary>Divisions of a graticule.</summary>
    public static readonly Dimension Division = new(0, Exponent.Division);

    /// <summary>Symbols sent on a line (baud is symbols per second).</summary>
    public static readonly Dimension Symbol = new(0, Exponent.Symbol);

    /// <summary>Unit intervals, the nominal duration of one bit.</summary>
    public static readonly Dimension UnitInterval = new(0, Exponent.UnitInterval);

    /// <summary>Octaves, that is doublings of a frequency.</summary>
    public static readonly Dimension Octave = new(0, Exponent.Octave);

    /// <summary>Decades, that is tenfold steps of a frequency.</summary>
    public static readonly Dimension Decade = new(0, Exponent.Decade);

    /// <summary>The dimension of sums of <see cref="Exponent"/>, those of the SI and those of what is counted.</summary>
    internal static Dimension Of(long si, long counts)
    {
        // A negative exponent has borrowed from its neighbour; with 128 more each byte stands alone, and the exclusive or takes the 128 away again.
        const long Upper = unchecked((long)0x8080808080808080);
        return new Dimension(unchecked(si + Upper) ^ Upper, unchecked(counts + Upper) ^ Upper);
    }

    /// <summary>Whether this is a plain number.</summary>
    public bool IsNone => _siExponents == 0 && _countExponents == 0;

    /// <summary>The dimension of a product.</summary>
    /// <exception cref="OverflowException">An exponent leaves the range from -63 to 63.</exception>
    public static Dimension operator *(Dimension left, Dimension right) =>
        TryMultiply(left, right, out Dimension product) ? product : throw OutOfRange();

    /// <summary>The dimension of a quotient.</summary>
    /// <exception cref="OverflowException">An exponent leaves the range from -63 to 63.</exception>
    public static Dimension operator /(Dimension left, Dimension right) =>
        right.TryPower(-2, out Dimension inverse) && TryMultiply(left, inverse, out Dimension quotient) ? quotient : throw OutOfRange();

    /// <summary>This dimension to a power that is a whole number of halves.</summary>
    /// <param name="halves">Twice the exponent: 1 for a square root, 4 for a square.</param>
    /// <param name="result">The dimension, where it exists with half powers.</param>
    /// <returns>False where an exponent would be no multiple of one half or leave the range from -63 to 63.</returns>
    public bool TryPower(int halves, out Dimension result)
    {
        long si = 0, count = 0;
        result = default;
        for (int place = 0; place < 64; place += 8)
        {
            if (!TryScale(_siExponents, place, halves, ref si) || !TryScale(_countExponents, place, halves, ref count)) return false;
        }
        result = new Dimension(si, count);
        return true;
    }

    /// <inheritdoc/>
    public bool Equals(Dimension other) => _siExponents == other._siExponents && _countExponents == other._countExponents;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Dimension other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => (_siExponents * 397 ^ _countExponents).GetHashCode();

    /// <summary>Whether the two are the same.</summary>
    public static bool operator ==(Dimension left, Dimension right) => left.Equals(right);

    /// <summary>Whether the two differ.</summary>
    public static bool operator !=(Dimension left, Dimension right) => !left.Equals(right);

    /// <summary>The exponents in base symbols, such as <c>m^2 kg s^-3 A^-1</c>; <c>1</c> for a plain number.</summary>
    public override string ToString()
    {
        string text = "";
        for (int i = 0; i < BaseSymbols.Length; i++)
        {
            int halves = Halves(i);
            if (halves == 0) continue;
            string exponent = halves == 2 ? "" : "^" + (halves / 2.0).ToString(System.Globalization.CultureInfo.InvariantCulture);
            text += (text.Length == 0 ? "" : " ") + BaseSymbols[i] + exponent;
        }
        return text.Length == 0 ? "1" : text;
    }

    private const int SiCount = 6;

    /// <summary>The symbols of the base dimensions, in the order of their places; the unit table reads each of them.</summary>
    internal static readonly string[] BaseSymbols = { "m", "kg", "s", "A", "K", "rad", "Sa", "bit", "div", "symbol", "UI", "octave", "decade" };

    /// <summary>The dimension of a product; false where an exponent leaves the range from -63 to 63.</summary>
    internal static bool TryMultiply(Dimension left, Dimension right, out Dimension product)
    {
        bool fits = TryAdd(left._siExponents, right._siExponents, out long si) & TryAdd(left._countExponents, right._countExponents, out long count);
        product = fits ? new Dimension(si, count) : default;
        return fits;
    }

    /// <summary>Twice the exponent of the base dimension at a place of <see cref="BaseSymbols"/>.</summary>
    internal int Halves(int place) => (sbyte)((place < SiCount ? _siExponents >> 8 * place : _countExponents >> 8 * (place - SiCount)) & 0xFF);

    /// <summary>Adds eight bytes at once: the upper bits apart, so that no carry crosses from one exponent into the next.</summary>
    private static bool TryAdd(long left, long right, out long sum)
    {
        const long Upper = unchecked((long)0x8080808080808080);
        sum = ((left & ~Upper) + (right & ~Upper)) ^ ((left ^ right) & Upper);
        return ((left ^ sum) & (right ^ sum) & Upper) == 0;
    }

    private static OverflowException OutOfRange() => new("an exponent of the dimension leaves the range from -63 to 63");

    private static bool TryScale(long exponents, int place, int halves, ref long result)
    {
        long doubled = (long)(sbyte)(exponents >> place & 0xFF) * halves;
        long exponent = doubled / 2;
        if (doubled % 2 != 0 || exponent < -126 || exponent > 126) return false;
        result |= (exponent & 0xFF) << place;
        return true;
    }
}

/// <summary>The exponent 1 of each base dimension, to be added, subtracted and multiplied as constants; see <see cref="Dimension.Of"/>.</summary>
internal static class Exponent
{
    internal const long Length = 2L;
    internal const long Mass = 2L << 8;
    internal const long Time = 2L << 16;
    internal const long Current = 2L << 24;
    internal const long Temperature = 2L << 32;
    internal const long Angle = 2L << 40;

    internal const long Sample = 2L;
    internal const long Bit = 2L << 8;
    internal const long Division = 2L << 16;
    internal const long Symbol = 2L << 24;
    internal const long UnitInterval = 2L << 32;
    internal const long Octave = 2L << 40;
    internal const long Decade = 2L << 48;
}
