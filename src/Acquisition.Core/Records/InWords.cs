using System.Globalization;

namespace Acquisition.Core.Records;

/// <summary>Values in the sentences of findings: few digits, with their unit.</summary>
internal static class InWords
{
    internal static string Of(double value, QuantityKind kind, int digits = 4)
    {
        double rounded = double.Parse(value.ToString("E" + (digits - 1).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return QuantityText.Format(rounded, kind, null, null);
    }

    internal static string Hertz(double value, int digits = 6) => Of(value, QuantityKind.Frequency, digits);

    internal static string Seconds(double value, int digits = 4) => Of(value, QuantityKind.Duration, digits);

    internal static string Volts(double value, int digits = 4) => Of(value, QuantityKind.Voltage, digits);

    /// <summary>Decibels with a sign and the digits that a reader can use: two decimals.</summary>
    internal static string Decibels(double value, int decimals = 2) =>
        System.Math.Round(value, decimals).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture) + " dB";

    internal static string Number(double value, int digits = 4) => value.ToString("G" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
