using System.Collections.Generic;

namespace Acquisition.Core;

public sealed partial class QuantityKind
{
    /// <summary>Every kind that has a name in the trade; filled by the initialisers below and never changed afterwards.</summary>
    internal static readonly List<QuantityKind> Named = new(64);

    /// <summary>The same kinds by a hash of their dimension, those of one place linked by <see cref="_next"/>: a formula asks for the kind of every product.</summary>
    private static readonly QuantityKind?[] ByDimension = new QuantityKind?[128];

    private QuantityKind? _next;

    // Exponents instead of dimensions: constants, so that the first quantity of a process does not wait until the arithmetic of sixty dimensions is compiled and done.
    private const long Metre = Exponent.Length;
    private const long Kilogram = Exponent.Mass;
    private const long Second = Exponent.Time;
    private const long Ampere = Exponent.Current;
    private const long Kelvin = Exponent.Temperature;
    private const long Radian = Exponent.Angle;
    private const long Watt = 2 * Metre + Kilogram - 3 * Second;
    private const long Volt = Watt - Ampere;

    /// <summary>A frequency, in hertz.</summary>
    public static readonly QuantityKind Frequency = Add("frequency", "Hz", -Second);

    /// <summary>How fast a frequency is swept, in hertz per second.</summary>
    public static readonly QuantityKind SweepRate = Add("sweep rate", "Hz/s", -2 * Second);

    /// <summary>A time interval, in seconds.</summary>
    public static readonly QuantityKind Duration = Add("duration", "s", Second);

    /// <summary>A sample rate, in samples per second.</summary>
    public static readonly QuantityKind SampleRate = Add("sample rate", "Sa/s", -Second, counts: Exponent.Sample);

    /// <summary>A count of points of a record.</summary>
    public static readonly QuantityKind PointCount = Add("point count", "pts", 0, prefix: WrittenPrefix.Multiples, counts: Exponent.Sample);

    /// <summary>A bit rate, in bits per second.</summary>
    public static readonly QuantityKind BitRate = Add("bit rate", "bit/s", -Second, counts: Exponent.Bit);

    /// <summary>Bits: of vertical resolution, or of data.</summary>
    public static readonly QuantityKind BitDepth = Add("bit depth", "bit", 0, prefix: WrittenPrefix.None, counts: Exponent.Bit);

    /// <summary>A voltage, in volts.</summary>
    public static readonly QuantityKind Voltage = Add("voltage", "V", Volt);

    /// <summary>A voltage from mean to peak.</summary>
    public static readonly QuantityKind PeakVoltage = Add("peak voltage", "Vpk", Volt, QuantityNature.Peak);

    /// <summary>A voltage from peak to peak.</summary>
    public static readonly QuantityKind PeakToPeakVoltage = Add("peak-to-peak voltage", "Vpp", Volt, QuantityNature.PeakToPeak);

    /// <summary>A root-mean-square voltage.</summary>
    public static readonly QuantityKind RmsVoltage = Add("rms voltage", "Vrms", Volt, QuantityNature.Rms);

    /// <summary>A noise voltage density, in volts per root hertz.</summary>
    public static readonly QuantityKind NoiseDensity = Add("noise density", "V/√Hz", Volt + Second / 2);

    /// <summary>The square of a noise voltage density, in volts squared per hertz.</summary>
    public static readonly QuantityKind SquaredNoiseDensity = Add("squared noise density", "V²/Hz", 2 * Volt + Second, prefix: WrittenPrefix.None);

    /// <summary>A slope of a voltage, in volts per second.</summary>
    public static readonly QuantityKind SlewRate = Add("slew rate", "V/s", Volt - Second);

    /// <summary>An electric current, in amperes.</summary>
    public static readonly QuantityKind Current = Add("current", "A", Ampere);

    /// <summary>An electric charge, in ampere seconds.</summary>
    public static readonly QuantityKind Charge = Add("charge", "A·s", Ampere + Second);

    /// <summary>A current from mean to peak.</summary>
    public static readonly QuantityKind PeakCurrent = Add("peak current", "Apk", Ampere, QuantityNature.Peak);

    /// <summary>A current from peak to peak.</summary>
    public static readonly QuantityKind PeakToPeakCurrent = Add("peak-to-peak current", "App", Ampere, QuantityNature.PeakToPeak);

    /// <summary>A root-mean-square current.</summary>
    public static readonly QuantityKind RmsCurrent = Add("rms current", "Arms", Ampere, QuantityNature.Rms);

    /// <summary>A noise current density, in amperes per root hertz.</summary>
    public static readonly QuantityKind CurrentNoiseDensity = Add("current noise density", "A/√Hz", Ampere + Second / 2);

    /// <summary>A resistance, in ohms.</summary>
    public static readonly QuantityKind Resistance = Add("resistance", "Ω", Volt - Ampere);

    /// <summary>A conductance, in siemens.</summary>
    public static readonly QuantityKind Conductance = Add("conductance", "S", Ampere - Volt);

    /// <summary>A capacitance, in farads.</summary>
    public static readonly QuantityKind Capacitance = Add("capacitance", "F", Ampere + Second - Volt);

    /// <summary>An inductance, in henries.</summary>
    public static readonly QuantityKind Inductance = Add("inductance", "H", Volt + Second - Ampere);

    /// <summary>A power, in watts.</summary>
    public static readonly QuantityKind Power = Add("power", "W", Watt);

    /// <summary>An energy, in joules.</summary>
    public static readonly QuantityKind Energy = Add("energy", "J", Watt + Second);

    /// <summary>A thermodynamic temperature, in kelvins.</summary>
    public static readonly QuantityKind Temperature = Add("temperature", "K", Kelvin, QuantityNature.Point);

    /// <summary>A difference of temperatures, in kelvins.</summary>
    public static readonly QuantityKind TemperatureDifference = Add("temperature difference", "K", Kelvin);

    /// <summary>A mass, in kilograms.</summary>
    public static readonly QuantityKind Mass = Add("mass", "kg", Kilogram, prefix: WrittenPrefix.None);

    /// <summary>A length, in metres.</summary>
    public static readonly QuantityKind Length = Add("length", "m", Metre);

    /// <summary>A plane angle, in radians.</summary>
    public static readonly QuantityKind Angle = Add("angle", "rad", Radian);

    /// <summary>An angular frequency, in radians per second: 2π times a frequency.</summary>
    public static readonly QuantityKind AngularFrequency = Add("angular frequency", "rad/s", Radian - Second);

    /// <summary>A plain ratio, as a fraction.</summary>
    public static readonly QuantityKind Ratio = Add("ratio", "", 0, prefix: WrittenPrefix.None);

    /// <summary>A vertical scale, in volts per division of the graticule.</summary>
    public static readonly QuantityKind VoltagePerDivision = Add("voltage per division", "V/div", Volt, counts: -Exponent.Division);

    /// <summary>A vertical scale, in amperes per division of the graticule.</summary>
    public static readonly QuantityKind CurrentPerDivision = Add("current per division", "A/div", Ampere, counts: -Exponent.Division);

    /// <summary>A time scale, in seconds per division of the graticule.</summary>
    public static readonly QuantityKind TimePerDivision = Add("time per division", "s/div", Second, counts: -Exponent.Division);

    /// <summary>The time from one sample to the next.</summary>
    public static readonly QuantityKind SampleInterval = Add("sample interval", "s/Sa", Second, counts: -Exponent.Sample);

    /// <summary>A rate of symbols, in baud.</summary>
    public static readonly QuantityKind SymbolRate = Add("symbol rate", "Bd", -Second, counts: Exponent.Symbol);

    /// <summary>A count of symbols sent on a line.</summary>
    public static readonly QuantityKind Symbols = Add("symbols", "symbol", 0, prefix: WrittenPrefix.None, counts: Exponent.Symbol);

    /// <summary>A time as a multiple of the nominal duration of one bit.</summary>
    public static readonly QuantityKind UnitIntervals = Add("unit intervals", "UI", 0, prefix: WrittenPrefix.None, counts: Exponent.UnitInterval);

    /// <summary>A distance on the graticule, in divisions.</summary>
    public static readonly QuantityKind Divisions = Add("divisions", "div", 0, prefix: WrittenPrefix.None, counts: Exponent.Division);

    /// <summary>A ratio of frequencies, in doublings.</summary>
    public static readonly QuantityKind Octaves = Add("octaves", "octave", 0, prefix: WrittenPrefix.None, counts: Exponent.Octave);

    /// <summary>A ratio of frequencies, in tenfold steps.</summary>
    public static readonly QuantityKind Decades = Add("decades", "decade", 0, prefix: WrittenPrefix.None, counts: Exponent.Decade);

    /// <summary>A gain or loss, in decibels.</summary>
    public static readonly QuantityKind DecibelRatio = Add("decibel ratio", "dB", 0, QuantityNature.DecibelRatio);

    /// <summary>A ratio in decibels to the carrier of the same signal.</summary>
    public static readonly QuantityKind CarrierRatio = Add("ratio to the carrier", "dBc", 0, QuantityNature.DecibelRatio, LevelReference.Carrier);

    /// <summary>A ratio in decibels to a full-scale sine.</summary>
    public static readonly QuantityKind FullScaleRatio = Add("ratio to full scale", "dBFS", 0, QuantityNature.DecibelRatio, LevelReference.FullScale);

    /// <summary>A level re 1 mW, in dBm.</summary>
    public static readonly QuantityKind PowerLevel = Add("power level", "dBm", Watt, QuantityNature.Level, LevelReference.Milliwatt);

    /// <summary>A level re 1 V rms, in dBV.</summary>
    public static readonly QuantityKind VoltageLevel = Add("voltage level", "dBV", Volt, QuantityNature.Level, LevelReference.Volt);

    /// <summary>A gain or loss per length, in decibels per metre.</summary>
    public static readonly QuantityKind LossPerLength = Add("decibels per length", "dB/m", -Metre, QuantityNature.DecibelSlope);

    /// <summary>A slope of a frequency response, in decibels per octave.</summary>
    public static readonly QuantityKind SlopePerOctave = Add("decibels per octave", "dB/octave", 0, QuantityNature.DecibelSlope, counts: -Exponent.Octave);

    /// <summary>A slope of a frequency response, in decibels per decade.</summary>
    public static readonly QuantityKind SlopePerDecade = Add("decibels per decade", "dB/decade", 0, QuantityNature.DecibelSlope, counts: -Exponent.Decade);

    /// <summary>A level re 1 mW in a bandwidth of 1 Hz, in dBm/Hz.</summary>
    public static readonly QuantityKind PowerLevelDensity = Add("power level density", "dBm/Hz", Watt + Second, QuantityNature.LevelDensity, LevelReference.Milliwatt);

    /// <summary>A ratio to the carrier in a bandwidth of 1 Hz, in dBc/Hz: phase noise.</summary>
    public static readonly QuantityKind CarrierRatioDensity = Add("density re carrier", "dBc/Hz", Second, QuantityNature.LevelDensity, LevelReference.Carrier);

    /// <summary>A ratio to a full-scale sine in a bandwidth of 1 Hz, in dBFS/Hz.</summary>
    public static readonly QuantityKind FullScaleRatioDensity = Add("density re full scale", "dBFS/Hz", Second, QuantityNature.LevelDensity, LevelReference.FullScale);

    private static QuantityKind Add(string name, string symbol, long exponents, QuantityNature nature = QuantityNature.Linear, LevelReference reference = LevelReference.None, WrittenPrefix prefix = WrittenPrefix.Engineering, long counts = 0)
    {
        var kind = new QuantityKind(name, symbol, Dimension.Of(exponents, counts), nature, reference, prefix);
        Named.Add(kind);
        ref QuantityKind? first = ref ByDimension[PlaceOf(kind.Dimension)];
        kind._next = first;
        first = kind;
        return kind;
    }

    private static int PlaceOf(Dimension dimension)
    {
        int hash = dimension.GetHashCode();
        return (hash ^ hash >> 8 ^ hash >> 16 ^ hash >> 24) & 127;
    }
}
