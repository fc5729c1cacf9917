namespace Acquisition.Core;

/// <summary>What a quantity is: its name in the trade, its dimension, how it behaves, and the unit it is held and written in.</summary>
/// <remarks>Immutable. Two kinds are the same when dimension, nature and reference are; the name is for people.</remarks>
public sealed class QuantityKind
{
    private QuantityKind(string name, string symbol, Dimension dimension, QuantityNature nature = QuantityNature.Linear)
    {
        Name = name;
        Symbol = symbol;
        Dimension = dimension;
        Nature = nature;
    }

    /// <summary>The name in the trade, such as <c>sample rate</c>.</summary>
    public string Name { get; }

    /// <summary>The symbol of the unit without prefix that the value is held in, such as <c>Sa/s</c>.</summary>
    public string Symbol { get; }

    /// <summary>The dimension.</summary>
    public Dimension Dimension { get; }

    /// <summary>How a value of this kind behaves.</summary>
    public QuantityNature Nature { get; }

    private static readonly Dimension Volt = Dimension.Length * Dimension.Length * Dimension.Mass / (Dimension.Time * Dimension.Time * Dimension.Time * Dimension.Current);
    private static readonly Dimension PerSecond = Dimension.None / Dimension.Time;

    /// <summary>A frequency, in hertz.</summary>
    public static QuantityKind Frequency { get; } = new("frequency", "Hz", PerSecond);

    /// <summary>A time interval, in seconds.</summary>
    public static QuantityKind Duration { get; } = new("duration", "s", Dimension.Time);

    /// <summary>A sample rate, in samples per second.</summary>
    public static QuantityKind SampleRate { get; } = new("sample rate", "Sa/s", Dimension.Sample / Dimension.Time);

    /// <summary>A count of points of a record.</summary>
    public static QuantityKind PointCount { get; } = new("point count", "pts", Dimension.Sample);

    /// <summary>A bit rate, in bits per second.</summary>
    public static QuantityKind BitRate { get; } = new("bit rate", "bit/s", Dimension.Bit / Dimension.Time);

    /// <summary>Bits of vertical resolution.</summary>
    public static QuantityKind BitDepth { get; } = new("bit depth", "bit", Dimension.Bit);

    /// <summary>A voltage, in volts.</summary>
    public static QuantityKind Voltage { get; } = new("voltage", "V", Volt);

    /// <summary>A voltage from mean to peak.</summary>
    public static QuantityKind PeakVoltage { get; } = new("peak voltage", "Vpk", Volt, QuantityNature.Peak);

    /// <summary>A voltage from peak to peak.</summary>
    public static QuantityKind PeakToPeakVoltage { get; } = new("peak-to-peak voltage", "Vpp", Volt, QuantityNature.PeakToPeak);

    /// <summary>A root-mean-square voltage.</summary>
    public static QuantityKind RmsVoltage { get; } = new("rms voltage", "Vrms", Volt, QuantityNature.Rms);

    /// <summary>A noise voltage density, in volts per root hertz.</summary>
    public static QuantityKind NoiseDensity { get; } = new("noise density", "V/√Hz", Volt * HalfPowerOf(Dimension.Time));

    /// <summary>A slope of a voltage, in volts per second.</summary>
    public static QuantityKind SlewRate { get; } = new("slew rate", "V/s", Volt / Dimension.Time);

    /// <summary>An electric current, in amperes.</summary>
    public static QuantityKind Current { get; } = new("current", "A", Dimension.Current);

    /// <summary>A resistance, in ohms.</summary>
    public static QuantityKind Resistance { get; } = new("resistance", "Ω", Volt / Dimension.Current);

    /// <summary>A capacitance, in farads.</summary>
    public static QuantityKind Capacitance { get; } = new("capacitance", "F", Dimension.Current * Dimension.Time / Volt);

    /// <summary>An inductance, in henries.</summary>
    public static QuantityKind Inductance { get; } = new("inductance", "H", Volt * Dimension.Time / Dimension.Current);

    /// <summary>A power, in watts.</summary>
    public static QuantityKind Power { get; } = new("power", "W", Volt * Dimension.Current);

    /// <summary>A thermodynamic temperature, in kelvins.</summary>
    public static QuantityKind Temperature { get; } = new("temperature", "K", Dimension.Temperature, QuantityNature.Point);

    /// <summary>A length, in metres.</summary>
    public static QuantityKind Length { get; } = new("length", "m", Dimension.Length);

    /// <summary>A plane angle, in radians.</summary>
    public static QuantityKind Angle { get; } = new("angle", "rad", Dimension.Angle);

    /// <summary>A plain ratio, as a fraction.</summary>
    public static QuantityKind Ratio { get; } = new("ratio", "", Dimension.None);

    /// <summary>A gain or loss, in decibels.</summary>
    public static QuantityKind DecibelRatio { get; } = new("decibel ratio", "dB", Dimension.None, QuantityNature.DecibelRatio);

    /// <summary>A level re 1 mW, in dBm.</summary>
    public static QuantityKind PowerLevel { get; } = new("power level", "dBm", Volt * Dimension.Current, QuantityNature.Level);

    /// <summary>A level re 1 V rms, in dBV.</summary>
    public static QuantityKind VoltageLevel { get; } = new("voltage level", "dBV", Volt, QuantityNature.Level);

    /// <inheritdoc/>
    public override string ToString() => Name;

    private static Dimension HalfPowerOf(Dimension dimension)
    {
        dimension.TryPower(1, out Dimension root);
        return root;
    }
}
