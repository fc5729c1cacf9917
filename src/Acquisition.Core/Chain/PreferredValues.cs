using System;

namespace Acquisition.Core;

/// <summary>A series of preferred numbers for resistors (IEC 60063): so many values in a decade.</summary>
/// <remarks>Immutable and thread-safe. E6 to E24 as the standard lists them (from memory), with their historical roundings; E48 and E96 are 10^(k/n) rounded to three digits.</remarks>
public sealed class PreferredValues
{
    private static readonly double[] TwentyFour = { 1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2, 9.1 };

    private readonly string _name;
    private readonly double[] _values;

    private PreferredValues(string name, double[] values)
    {
        _name = name;
        _values = values;
    }

    /// <summary>Twelve values in a decade.</summary>
    public static PreferredValues E12 { get; } = new("E12", Every(2));

    /// <summary>Twenty-four values in a decade.</summary>
    public static PreferredValues E24 { get; } = new("E24", TwentyFour);

    /// <summary>Forty-eight values in a decade.</summary>
    public static PreferredValues E48 { get; } = new("E48", Geometric(48));

    /// <summary>Ninety-six values in a decade.</summary>
    public static PreferredValues E96 { get; } = new("E96", Geometric(96));

    /// <summary>The value of the series nearest to a resistance, on a logarithmic scale.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="resistance"/> is 0 Ω.</exception>
    public Resistance Nearest(Resistance resistance)
    {
        double ohms = Refuse.UnlessAboveZero(resistance.SiValue, Resistance.Kind, nameof(resistance)), best = 0, distance = double.PositiveInfinity;
        double decade = Math.Floor(Math.Log10(ohms));
        for (double power = decade - 1; power <= decade + 1; power++)
        {
            double scale = Math.Pow(10, Math.Abs(power));
            foreach (double value in _values)
            {
                double candidate = power >= 0 ? value * scale : value / scale, off = Math.Abs(Math.Log(candidate / ohms));
                if (off < distance)
                    (best, distance) = (candidate, off);
            }
        }
        return Resistance.FromSi(best, nameof(resistance));
    }

    /// <summary>The name of the series.</summary>
    public override string ToString() => _name;

    private static double[] Every(int step)
    {
        var values = new double[TwentyFour.Length / step];
        for (int i = 0; i < values.Length; i++)
            values[i] = TwentyFour[i * step];
        return values;
    }

    private static double[] Geometric(int count)
    {
        var values = new double[count];
        for (int i = 0; i < count; i++)
            values[i] = Math.Round(100 * Math.Pow(10, (double)i / count)) / 100;
        return values;
    }
}
