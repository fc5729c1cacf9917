using System;
using System.ComponentModel;
using System.Globalization;

namespace Acquisition.Core;

/// <summary>Converts a strong quantity to and from text such as <c>100 MHz</c>, for configuration files, property grids and command lines.</summary>
/// <typeparam name="T">The strong quantity type.</typeparam>
public sealed class QuantityTypeConverter<T> : TypeConverter
    where T : struct, IQuantity
{
    /// <inheritdoc/>
    public override bool CanConvertFrom(ITypeDescriptorContext? context, Type sourceType) => sourceType == typeof(string) || base.CanConvertFrom(context, sourceType);
}
