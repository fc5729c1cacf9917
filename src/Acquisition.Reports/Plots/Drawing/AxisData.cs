using System;
using Acquisition.Core;

namespace Acquisition.Reports;

/// <summary>An axis of a plot for software: what it holds, in SI.</summary>
internal sealed class AxisData
{
    /// <summary>A picture tells a thousandth of an axis; a millionth keeps the last bits of processors out of the file.</summary>
    private const int DigitsOfSpan = 6, DigitsOfRatio = 9;

    /// <summary>Powers of ten that a double holds exactly.</summary>
    private const int MostExactPower = 22;

    private readonly double _zero;
    private readonly double _one = 1;
    private readonly int? _decimals;

    internal AxisData(Axis axis, Scale scale)
    {
        Label = axis.Label;
        IsLogarithmic = axis.IsLogarithmic;
        Unit = axis.Unit;
        if (axis.Unit.Length == 0) Kind = QuantityKind.Ratio;
        else if (Quantity.TryParse("1 " + axis.Unit, out Quantity one) && Quantity.TryParse("0 " + axis.Unit, out Quantity zero))
        {
            Kind = one.Kind;
            Unit = one.Kind.Symbol;
            (_zero, _one) = (zero.SiValue, one.SiValue);
        }
        double span = Math.Abs(Si(scale.Upper) - Si(scale.Lower));
        if (!IsLogarithmic && span > 0 && span <= double.MaxValue) _decimals = DigitsOfSpan - Exponent(span);
    }

    internal string Label { get; }

    internal bool IsLogarithmic { get; }

    /// <summary>What the values are; null where the unit is none the library knows, and the values are in that unit.</summary>
    internal QuantityKind? Kind { get; }

    /// <summary>The SI unit, or the logarithmic one.</summary>
    internal string Unit { get; }

    /// <summary>A value on the axis in SI: to a millionth of a linear axis, to nine digits on a logarithmic one.</summary>
    internal double Of(double value)
    {
        double si = Si(value);
        return si == 0 ? 0 : Rounded(si, _decimals ?? DigitsOfRatio - 1 - Exponent(Math.Abs(si)));
    }

    /// <summary>A length on the axis in SI.</summary>
    internal double Length(double value) => Of(value) - Of(0);

    private double Si(double value) => _zero == 0 && _one == 1 ? value : _zero + (value * (_one - _zero));

    private static int Exponent(double value) => (int)Math.Floor(Math.Log10(value));

    private static double Rounded(double value, int decimals)
    {
        if (Math.Abs(decimals) > MostExactPower) return value;
        double power = 1;
        for (int i = Math.Abs(decimals); i > 0; i--) power *= 10;
        double rounded = decimals >= 0 ? Math.Round(value * power) / power : Math.Round(value / power) * power;
        return Math.Abs(rounded) <= double.MaxValue ? rounded + 0.0 : value;
    }
}
