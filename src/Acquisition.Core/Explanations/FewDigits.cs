using System.Globalization;

namespace Acquisition.Core;

/// <summary>Values in the sentences of findings: as few digits as a reader can use, with their unit.</summary>
internal static class FewDigits
{
    internal static string InWords<T>(this T value, int digits = 4)
        where T : struct, IQuantity =>
        value.ToQuantity().ToString("G" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
