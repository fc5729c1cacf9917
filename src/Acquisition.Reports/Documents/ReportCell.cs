using System;
using System.Globalization;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>What stands in one place of a report: the text for people and, where it is a quantity, the quantity itself for machines.</summary>
/// <remarks>Immutable. Markdown, HTML and plain text print <see cref="Text"/>; CSV and JSON carry the SI value and the unit besides. The text is never computed anew from the quantity.</remarks>
public sealed class ReportCell
{
    private const double SmallestPercentage = 1e-4;

    private ReportCell(string text, Quantity? quantity, bool? truth)
    {
        Text = text;
        Quantity = quantity;
        Truth = truth;
    }

    /// <summary>Nothing to say.</summary>
    public static ReportCell Empty { get; } = new("", null, null);

    /// <summary>The text for people.</summary>
    public string Text { get; }

    /// <summary>The quantity; null where the cell holds text only.</summary>
    public Quantity? Quantity { get; }

    internal bool? Truth { get; }

    internal bool IsEmpty => Text.Length == 0 && Quantity is null;

    /// <summary>Text.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    public static ReportCell Of(string text) => new(text ?? throw new ArgumentNullException(nameof(text)), null, null);

    /// <summary>A quantity to four significant digits; a count of points in full, a ratio in percent, or in ppm below 0.01 %.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="quantity"/> is null.</exception>
    public static ReportCell Of(IQuantity quantity)
    {
        Quantity value = (quantity ?? throw new ArgumentNullException(nameof(quantity))).ToQuantity();
        string? format = value.Kind == QuantityKind.PointCount ? null : value.Kind != QuantityKind.Ratio ? "G4" : IsTiny(value) ? "G4 ppm" : "G4 %";
        return Of(value, value.ToString(format, CultureInfo.InvariantCulture));
    }

    /// <summary>A quantity with the text that another result has written it with.</summary>
    /// <param name="quantity">The quantity.</param>
    /// <param name="text">Its text, which is printed as it is.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static ReportCell Of(IQuantity quantity, string text) =>
        new(text ?? throw new ArgumentNullException(nameof(text)), (quantity ?? throw new ArgumentNullException(nameof(quantity))).ToQuantity(), null);

    /// <summary>A plain number to four significant digits, such as the points per period; where it is not finite, its text only.</summary>
    /// <param name="plainNumber">The number.</param>
    public static ReportCell Number(double plainNumber)
    {
        if (double.IsPositiveInfinity(plainNumber)) return Of("∞");
        if (!(Math.Abs(plainNumber) <= double.MaxValue)) return Of(plainNumber < 0 ? "-∞" : "not a number");
        var value = new Quantity(plainNumber, QuantityKind.Ratio);
        return Of(value, value.ToString("G4", CultureInfo.InvariantCulture));
    }

    /// <summary>A count, in full.</summary>
    /// <param name="count">The count.</param>
    public static ReportCell Count(long count) => Of(new Quantity(count, QuantityKind.Ratio), count.ToString(CultureInfo.InvariantCulture));

    /// <summary>A truth value with its text.</summary>
    internal static ReportCell Of(bool truth, string text) => new(text, null, truth);

    /// <summary>A quantity that may be missing.</summary>
    internal static ReportCell OfAny<T>(T? quantity)
        where T : struct, IQuantity => quantity is { } value ? Of(value) : Empty;

    /// <summary>Text as a cell; null is empty.</summary>
    public static implicit operator ReportCell(string? text) => text is null ? Empty : Of(text);

    /// <summary>A quantity as a cell; see <see cref="Of(IQuantity)"/>.</summary>
    public static implicit operator ReportCell(Quantity quantity) => Of(quantity);

    /// <summary>The text for people.</summary>
    public override string ToString() => Text;

    private static bool IsTiny(Quantity ratio) => ratio.SiValue != 0 && Math.Abs(ratio.SiValue) < SmallestPercentage;
}
