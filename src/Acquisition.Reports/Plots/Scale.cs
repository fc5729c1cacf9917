using System;
using System.Collections.Generic;
using System.Globalization;

namespace Acquisition.Reports;

/// <summary>An <see cref="Axis"/> with its range: places values along it, and knows its ticks and their texts.</summary>
internal sealed class Scale
{
    private const string Prefixes = "qryzafpnµm kMGTPEZYRQ";

    private readonly Axis _axis;
    private readonly double _lower;
    private readonly double _upper;

    private Scale(Axis axis, double lower, double upper, IReadOnlyList<KeyValuePair<double, string>> ticks, string title)
    {
        _axis = axis;
        _lower = lower;
        _upper = upper;
        Ticks = ticks;
        Title = title;
    }

    /// <summary>Values with a tick, and the text of each; an empty text is a tick without one.</summary>
    internal IReadOnlyList<KeyValuePair<double, string>> Ticks { get; }

    /// <summary>What to write along the axis: quantity and unit, as ISO 80000-1 writes the quotient.</summary>
    internal string Title { get; }

    /// <summary>Where a value lies: 0 at the lower end, 1 at the upper one.</summary>
    internal double PlaceOf(double value) => _axis.IsLogarithmic
        ? (Math.Log10(value) - Math.Log10(_lower)) / (Math.Log10(_upper) - Math.Log10(_lower))
        : (value - _lower) / (_upper - _lower);

    internal static Scale Between(Axis axis, double lower, double upper) =>
        axis.IsLogarithmic ? Decades(axis, lower, upper) : Steps(axis, lower, upper, StepFor(upper - lower));

    internal static Scale Around(Axis axis, double lower, double upper)
    {
        if (axis.IsLogarithmic)
        {
            double low = Power(Math.Floor(Math.Log10(lower) + 1e-9)), high = Power(Math.Ceiling(Math.Log10(upper) - 1e-9));
            return Decades(axis, low, high > low ? high : low * 10);
        }
        if (upper == lower)
        {
            double margin = lower == 0 ? 1 : Math.Abs(lower) * 0.1;
            (lower, upper) = (lower - margin, upper + margin);
        }
        double step = StepFor(upper - lower);
        return Steps(axis, Math.Floor(lower / step + 1e-9) * step, Math.Ceiling(upper / step - 1e-9) * step, step);
    }

    private static Scale Decades(Axis axis, double lower, double upper)
    {
        var ticks = new List<KeyValuePair<double, string>>();
        int first = (int)Math.Floor(Math.Log10(lower) + 1e-9), last = (int)Math.Ceiling(Math.Log10(upper) - 1e-9);
        bool isShort = last - first <= 2;
        int every = Math.Max(1, (last - first + 8) / 9);
        for (int exponent = first; exponent <= last; exponent++)
        {
            for (int digit = 1; digit <= 9; digit++)
            {
                double value = exponent >= 0 ? digit * Power(exponent) : digit / Power(-exponent);
                if (value < lower * (1 - 1e-9) || value > upper * (1 + 1e-9)) continue;
                bool hasText = digit == 1 ? (exponent - first) % every == 0 : isShort && (digit == 2 || digit == 5);
                ticks.Add(new KeyValuePair<double, string>(value, hasText ? WithPrefix(digit, exponent) : ""));
            }
        }
        return new Scale(axis, lower, upper, ticks, TitleOf(axis, ""));
    }

    private static Scale Steps(Axis axis, double lower, double upper, double step)
    {
        double largest = Math.Max(Math.Abs(lower), Math.Abs(upper));
        bool takesPrefix = axis.Unit.Length > 0 && axis.Unit != "%" && !axis.Unit.StartsWith("dB", StringComparison.Ordinal) && axis.Unit != "°";
        int thousands = takesPrefix && largest > 0 ? Clamp((int)Math.Floor(Math.Log10(largest * (1 + 1e-9)) / 3), -10, 10) : 0;
        double unit = Power(3 * Math.Abs(thousands));
        double shownStep = thousands >= 0 ? step / unit : step * unit;
        int decimals = Clamp((int)Math.Ceiling(-Math.Log10(shownStep) - 1e-9), 0, 12);
        var ticks = new List<KeyValuePair<double, string>>();
        for (long i = (long)Math.Ceiling(lower / step - 1e-9); i * step <= upper + step * 1e-9; i++)
        {
            double shown = i * shownStep;
            string text = (shown == 0 ? 0 : shown).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
            ticks.Add(new KeyValuePair<double, string>(i * step, text.Replace('-', '\u2212')));
        }
        return new Scale(axis, lower, upper, ticks, TitleOf(axis, thousands == 0 ? "" : Prefixes[thousands + 10].ToString()));
    }

    private static string TitleOf(Axis axis, string prefix) => axis.Unit.Length == 0 ? axis.Label : $"{axis.Label} / {prefix}{axis.Unit}";

    private static string WithPrefix(int digit, int exponent)
    {
        int thousands = Clamp((int)Math.Floor(exponent / 3.0), -10, 10);
        string number = (digit * Power(exponent - 3 * thousands)).ToString(CultureInfo.InvariantCulture);
        return thousands == 0 ? number : number + " " + Prefixes[thousands + 10];
    }

    /// <summary>The step among 1, 2, 5 times a power of ten that makes four to nine ticks.</summary>
    private static double StepFor(double span)
    {
        double raw = span / 8;
        double decade = Power(Math.Floor(Math.Log10(raw)));
        double fraction = raw / decade;
        return decade * (fraction <= 1 ? 1 : fraction <= 2 ? 2 : fraction <= 5 ? 5 : 10);
    }

    private static double Power(double exponent) => double.Parse("1e" + ((int)exponent).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private static int Clamp(int value, int lower, int upper) => Math.Min(Math.Max(value, lower), upper);
}
