using Acquisition.Core;
using Foreign = UnitsNet;

namespace Acquisition.Interop;

/// <summary>Quantities of Acquisition.Core as quantities of UnitsNet 5, and back.</summary>
/// <remarks>
/// Values travel in the unit named for each method, so nothing is rounded on the way out; on the way in UnitsNet converts, and some of its constants hold nine digits only.
/// Kinds that UnitsNet does not tell apart (sample rate, point count, bit depth, peak, peak-to-peak and rms voltage, noise density) have no twin here, since a bridge that loses the
/// difference would undo it. Decibels keep their number; that UnitsNet adds levels as powers (20 dB + 6 dB is 20.17 dB there) is a matter of its own.
/// A value that is out of range for the strong type, such as a negative resistance or a temperature below 0 K, is refused with an <see cref="System.ArgumentOutOfRangeException"/>.
/// UnitsNet holds powers and bit rates as decimals: beyond 7.9e28 they do not convert, with an <see cref="System.OverflowException"/>.
/// </remarks>
public static class UnitsNetConversions
{
    /// <summary>The value as a UnitsNet <c>Frequency</c>, in hertz.</summary>
    public static Foreign.Frequency ToUnitsNet(this Frequency value) => Foreign.Frequency.FromHertz(value.Hertz);

    /// <summary>The value of a UnitsNet <c>Frequency</c>, read in hertz.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">The value is out of range for a <see cref="Frequency"/>.</exception>
    public static Frequency ToAcquisition(this Foreign.Frequency value) => Frequency.FromHertz(value.Hertz);

    /// <summary>The value as a UnitsNet <c>Duration</c>, in seconds.</summary>
    public static Foreign.Duration ToUnitsNet(this Duration value) => Foreign.Duration.FromSeconds(value.Seconds);

    /// <summary>The value of a UnitsNet <c>Duration</c>, read in seconds.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">The value is out of range for a <see cref="Duration"/>.</exception>
    public static Duration ToAcquisition(this Foreign.Duration value) => Duration.FromSeconds(value.Seconds);

    /// <summary>The value as a UnitsNet <c>ElectricPotential</c>, in volts.</summary>
    public static Foreign.ElectricPotential ToUnitsNet(this Voltage value) => Foreign.ElectricPotential.FromVolts(value.Volts);

    /// <summary>The value of a UnitsNet <c>ElectricPotential</c>, read in volts.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">The value is out of range for a <see cref="Voltage"/>.</exception>
    public static Voltage ToAcquisition(this Foreign.ElectricPotential value) => Voltage.FromVolts(value.Volts);

    /// <summary>The value as a UnitsNet <c>ElectricCurrent</c>, in amperes.</summary>
    public static Foreign.ElectricCurrent ToUnitsNet(this Current value) => Foreign.ElectricCurrent.FromAmperes(value.Amperes);

    /// <summary>The value of a UnitsNet <c>ElectricCurrent</c>, read in amperes.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">The value is out of range for a <see cref="Current"/>.</exception>
    public static Current ToAcquisition(this Foreign.ElectricCurrent value) => Current.FromAmperes(value.Amperes);

    /// <summary>The value as a UnitsNet <c>ElectricResistance</c>, in ohms.</summary>
    public static Foreign.ElectricResistance ToUnitsNet(this Resistance value) => Foreign.ElectricResistance.FromOhms(value.Ohms);

    /// <summary>The value of a UnitsNet <c>ElectricResistance</c>, read in ohms.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">The value is out of range for a <see cref="Resistance"/>.</exception>
    public static Resistance ToAcquisition(this Foreign.ElectricResistance value) => Resistance.FromOhms(value.Ohms);

    /// <summary>The value as a UnitsNet <c>ElectricCapacitance</c>, in farads.</summary>
    public static Foreign.ElectricCapacitance ToUnitsNet(this Capacitance value) => Foreign.ElectricCapacitance.FromFarads(value.Farads);

    /// <summary>The value of a UnitsNet <c>ElectricCapacitance</c>, read in farads.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">The value is out of range for a <see cref="Capacitance"/>.</exception>
    public static Capacitance ToAcquisition(this Foreign.ElectricCapacitance value) => Capacitance.FromFarads(value.Farads);

    /// <summary>The value as a UnitsNet <c>ElectricInductance</c>, in henries.</summary>
    public static Foreign.ElectricInductance ToUnitsNet(this Inductance value) => Foreign.ElectricInductance.FromHenries(value.Henries);

    /// <summary>The value of a UnitsNet <c>ElectricInductance</c>, read in henries.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">The value is out of range for an <see cref="Inductance"/>.</exception>
    public static Inductance ToAcquisition(this Foreign.ElectricInductance value) => Inductance.FromHenries(value.Henries);

    /// <summary>The value as a UnitsNet <c>Power</c>, in watts.</summary>
    public static Foreign.Power ToUnitsNet(this Power value) => Foreign.Power.FromWatts(value.Watts);

    /// <summary>The value of a UnitsNet <c>Power</c>, read in watts.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">The value is out of range for a <see cref="Power"/>.</exception>
    public static Power ToAcquisition(this Foreign.Power value) => Power.FromWatts((double)value.Watts);

    /// <summary>The value as a UnitsNet <c>Length</c>, in metres.</summary>
    public static Foreign.Length ToUnitsNet(this Length value) => Foreign.Length.FromMeters(value.Meters);

    /// <summary>The value of a UnitsNet <c>Length</c>, read in metres.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">The value is out of range for a <see cref="Length"/>.</exception>
    public static Length ToAcquisition(this Foreign.Length value) => Length.FromMeters(value.Meters);

    /// <summary>The value as a UnitsNet <c>Angle</c>, in radians.</summary>
    public static Foreign.Angle ToUnitsNet(this Angle value) => Foreign.Angle.FromRadians(value.Radians);

    /// <summary>The value of a UnitsNet <c>Angle</c>, read in radians.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">The value is out of range for an <see cref="Angle"/>.</exception>
    public static Angle ToAcquisition(this Foreign.Angle value) => Angle.FromRadians(value.Radians);

    /// <summary>The value as a UnitsNet <c>Temperature</c>, in kelvins.</summary>
    public static Foreign.Temperature ToUnitsNet(this Temperature value) => Foreign.Temperature.FromKelvins(value.Kelvins);

    /// <summary>The value of a UnitsNet <c>Temperature</c>, read in kelvins.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">The value is out of range for a <see cref="Temperature"/>.</exception>
    public static Temperature ToAcquisition(this Foreign.Temperature value) => Temperature.FromKelvins(value.Kelvins);

    /// <summary>The value as a UnitsNet <c>Ratio</c>, in fractions.</summary>
    public static Foreign.Ratio ToUnitsNet(this Ratio value) => Foreign.Ratio.FromDecimalFractions(value.Fraction);

    /// <summary>The value of a UnitsNet <c>Ratio</c>, read in fractions.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">The value is out of range for a <see cref="Ratio"/>.</exception>
    public static Ratio ToAcquisition(this Foreign.Ratio value) => Ratio.FromFraction(value.DecimalFractions);

    /// <summary>The value as a UnitsNet <c>ElectricPotentialChangeRate</c>, in volts per second.</summary>
    public static Foreign.ElectricPotentialChangeRate ToUnitsNet(this SlewRate value) => Foreign.ElectricPotentialChangeRate.FromVoltsPerSeconds(value.VoltsPerSecond);

    /// <summary>The value of a UnitsNet <c>ElectricPotentialChangeRate</c>, read in volts per second.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">The value is out of range for a <see cref="SlewRate"/>.</exception>
    public static SlewRate ToAcquisition(this Foreign.ElectricPotentialChangeRate value) => SlewRate.FromVoltsPerSecond(value.VoltsPerSeconds);

    /// <summary>The value as a UnitsNet <c>PowerRatio</c>, in dBm.</summary>
    public static Foreign.PowerRatio ToUnitsNet(this PowerLevel value) => Foreign.PowerRatio.FromDecibelMilliwatts(value.DecibelMilliwatts);

    /// <summary>The value of a UnitsNet <c>PowerRatio</c>, read in dBm.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">The value is out of range for a <see cref="PowerLevel"/>.</exception>
    public static PowerLevel ToAcquisition(this Foreign.PowerRatio value) => PowerLevel.FromDecibelMilliwatts(value.DecibelMilliwatts);

    /// <summary>The value as a UnitsNet <c>AmplitudeRatio</c>, in dBV.</summary>
    public static Foreign.AmplitudeRatio ToUnitsNet(this VoltageLevel value) => Foreign.AmplitudeRatio.FromDecibelVolts(value.DecibelVolts);

    /// <summary>The value of a UnitsNet <c>AmplitudeRatio</c>, read in dBV.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">The value is out of range for a <see cref="VoltageLevel"/>.</exception>
    public static VoltageLevel ToAcquisition(this Foreign.AmplitudeRatio value) => VoltageLevel.FromDecibelVolts(value.DecibelVolts);

    /// <summary>The value as a UnitsNet <c>BitRate</c>, in bits per second.</summary>
    public static Foreign.BitRate ToUnitsNet(this BitRate value) => Foreign.BitRate.FromBitsPerSecond(value.BitsPerSecond);

    /// <summary>The value of a UnitsNet <c>BitRate</c>, read in bits per second.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">The value is out of range for a <see cref="BitRate"/>.</exception>
    public static BitRate ToAcquisition(this Foreign.BitRate value) => BitRate.FromBitsPerSecond((double)value.BitsPerSecond);

    /// <summary>The value as a UnitsNet <c>Level</c>, in decibels.</summary>
    public static Foreign.Level ToUnitsNet(this DecibelRatio value) => Foreign.Level.FromDecibels(value.Decibels);

    /// <summary>The value of a UnitsNet <c>Level</c>, read in decibels.</summary>
    /// <exception cref="System.ArgumentOutOfRangeException">The value is out of range for a <see cref="DecibelRatio"/>.</exception>
    public static DecibelRatio ToAcquisition(this Foreign.Level value) => DecibelRatio.FromDecibels(value.Decibels);
}
