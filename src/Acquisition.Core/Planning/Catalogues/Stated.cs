using System;

namespace Acquisition.Core.Planning;

/// <summary>A value as a maker states it: claimed, typical, guaranteed, or more than one of them.</summary>
/// <typeparam name="T">The quantity type of the value.</typeparam>
/// <remarks>Immutable. <see cref="Value"/> is the one to count on: the best assured of those stated.</remarks>
public sealed class Stated<T>
    where T : struct, IQuantity
{
    /// <summary>A value with what is stated of it; see <see cref="Stated"/> for a single one.</summary>
    /// <exception cref="ArgumentException">None of the three is given.</exception>
    public Stated(T? claimed, T? typical, T? guaranteed)
    {
        if (claimed is null && typical is null && guaranteed is null)
            throw new ArgumentException("one of claimed, typical and guaranteed must be given", nameof(claimed));
        Claimed = claimed;
        Typical = typical;
        Guaranteed = guaranteed;
    }

    /// <summary>The claimed value; null where none is stated.</summary>
    public T? Claimed { get; }

    /// <summary>The typical value; null where none is stated.</summary>
    public T? Typical { get; }

    /// <summary>The guaranteed value; null where none is stated.</summary>
    public T? Guaranteed { get; }

    /// <summary>The best assured of the stated values.</summary>
    public T Value => Guaranteed ?? Typical ?? Claimed!.Value;

    /// <summary>How well <see cref="Value"/> is assured.</summary>
    public Assurance Assurance => Guaranteed is not null ? Assurance.Guaranteed : Typical is not null ? Assurance.Typical : Assurance.Claimed;

    /// <summary>Value and assurance, such as <c>200 MHz (typical)</c>.</summary>
    public override string ToString() => $"{Value} ({Stated.Word(Assurance)})";
}

/// <summary>Makes stated values.</summary>
public static class Stated
{
    /// <summary>A value that is claimed and no more.</summary>
    public static Stated<T> Claimed<T>(T value)
        where T : struct, IQuantity => new(value, null, null);

    /// <summary>A typical value.</summary>
    public static Stated<T> Typical<T>(T value)
        where T : struct, IQuantity => new(null, value, null);

    /// <summary>A guaranteed value.</summary>
    public static Stated<T> Guaranteed<T>(T value)
        where T : struct, IQuantity => new(null, null, value);

    internal static string Word(Assurance assurance) => assurance switch
    {
        Assurance.Guaranteed => "guaranteed",
        Assurance.Typical => "typical",
        _ => "claimed",
    };
}
