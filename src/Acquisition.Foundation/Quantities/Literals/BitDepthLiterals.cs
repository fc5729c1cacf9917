namespace Acquisition.Core.Literals;

/// <summary>Bit depth literals: <c>2.bit()</c>.</summary>
public static class BitDepthLiterals
{
    /// <summary>A bit depth in bits.</summary>
    public static BitDepth bit(this double value) => BitDepth.FromBits(value);

    /// <summary>A bit depth in bits.</summary>
    public static BitDepth bit(this int value) => BitDepth.FromBits(value);
}
