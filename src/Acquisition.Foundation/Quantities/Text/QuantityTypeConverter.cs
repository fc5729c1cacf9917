using System;
using System.ComponentModel;
using System.Globalization;

namespace Acquisition.Core;

/// <summary>Converts a quantity to and from text such as <c>100 MHz</c>, for configuration files, property grids and command lines.</summary>
/// <typeparam name="T">The strong type, or <see cref="Quantity"/>.</typeparam>
/// <remarks>
/// Text is invariant whatever the culture that the caller passes, because configuration must mean the same on every machine: a file written on one bench
/// is read on another. Strong types are converted to <see cref="Quantity"/> and back as well.
/// </remarks>
public sealed class QuantityTypeConverter<T> : TypeConverter
    where T : struct, IQuantity
{
    /// <inheritdoc/>
    public override bool CanConvertFrom(ITypeDescriptorContext? context, Type sourceType) =>
        sourceType == typeof(string) || sourceType == typeof(Quantity) || base.CanConvertFrom(context, sourceType);

    /// <inheritdoc/>
    public override bool CanConvertTo(ITypeDescriptorContext? context, Type? destinationType) =>
        destinationType == typeof(string) || destinationType == typeof(Quantity) || base.CanConvertTo(context, destinationType);

    /// <inheritdoc/>
    /// <exception cref="QuantityFormatException">The text is no quantity of this kind.</exception>
    public override object? ConvertFrom(ITypeDescriptorContext? context, CultureInfo? culture, object value)
    {
        if (value is Quantity quantity) return StrongType<T>.Make(quantity);
        if (value is not string text) return base.ConvertFrom(context, culture, value);
        QuantityKind? kind = StrongType<T>.KindOfText;
        if (!QuantityText.TryParse(text, kind, null, out double held, out QuantityKind? found)) throw QuantityText.Problem(text, kind, null);
        try
        {
            return StrongType<T>.Make(new Quantity(held, found!));
        }
        catch (ArgumentOutOfRangeException refusal)
        {
            throw QuantityText.NotAllowed(refusal);
        }
    }

    /// <inheritdoc/>
    public override object? ConvertTo(ITypeDescriptorContext? context, CultureInfo? culture, object? value, Type destinationType)
    {
        if (value is not T quantity) return base.ConvertTo(context, culture, value, destinationType);
        if (destinationType == typeof(string)) return quantity.ToQuantity().ToString();
        return destinationType == typeof(Quantity) ? quantity.ToQuantity() : base.ConvertTo(context, culture, value, destinationType);
    }

    /// <summary>Whether <paramref name="value"/> is such a quantity or text that reads as one.</summary>
    public override bool IsValid(ITypeDescriptorContext? context, object? value)
    {
        if (value is T) return true;
        if (value is not string text || !QuantityText.TryParse(text, StrongType<T>.KindOfText, null, out double held, out QuantityKind? found)) return false;
        try
        {
            StrongType<T>.Make(new Quantity(held, found!));
            return true;
        }
        catch (ArgumentOutOfRangeException)
        {
            return false;
        }
    }
}
