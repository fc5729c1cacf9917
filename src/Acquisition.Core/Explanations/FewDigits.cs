using System.Globalization;

namespace Acquisition.Core;

/// <summary>Values in the sentences of findings: as few digits as a reader can use, with their unit.</summary>
internal static class FewDigits
{
    internal static string InWords<T>(this T value, int digits = 4)
        where T : struct, IQuantity
    {
        Quantity quantity = value.ToQuantity();
        string rounded = quantity.SiValue.ToString("E" + (digits - 1).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return QuantityText.Format(double.Parse(rounded, CultureInfo.InvariantCulture), quantity.Kind, null, null);
    }
}
