using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using UnitsNet.Units;
using Xunit;
using U = UnitsNet;

namespace Acquisition.Core.Tests.Quantities;

/// <summary>
/// Every unit that UnitsNet 5.75.1 has too must mean the same there (general-purpose library from the registry). Its neper, its dBu and its ampere hour hold nine to twelve digits, hence
/// the tolerances; its sums of decibels add powers, which is not what a cascade means, so sums are not compared.
/// </summary>
public class UnitsNetOracleTests
{
    private const double Exact = 4e-16;
    private const double NineDigits = 1e-8;

    public static IEnumerable<object[]> Shared()
    {
        object[] Row(string unit, IConvertible si, double tolerance = Exact) => [unit, si.ToDouble(CultureInfo.InvariantCulture), tolerance];
        yield return Row("Hz", U.Frequency.From(1, FrequencyUnit.Hertz).Hertz);
        yield return Row("mHz", U.Frequency.From(1, FrequencyUnit.Millihertz).Hertz);
        yield return Row("kHz", U.Frequency.From(1, FrequencyUnit.Kilohertz).Hertz);
        yield return Row("MHz", U.Frequency.From(1, FrequencyUnit.Megahertz).Hertz);
        yield return Row("GHz", U.Frequency.From(1, FrequencyUnit.Gigahertz).Hertz);
        yield return Row("THz", U.Frequency.From(1, FrequencyUnit.Terahertz).Hertz);
        yield return Row("ns", U.Duration.From(1, DurationUnit.Nanosecond).Seconds);
        yield return Row("µs", U.Duration.From(1, DurationUnit.Microsecond).Seconds);
        yield return Row("ms", U.Duration.From(1, DurationUnit.Millisecond).Seconds);
        yield return Row("min", U.Duration.From(1, DurationUnit.Minute).Seconds);
        yield return Row("h", U.Duration.From(1, DurationUnit.Hour).Seconds);
        yield return Row("nV", U.ElectricPotential.From(1, ElectricPotentialUnit.Nanovolt).Volts);
        yield return Row("µV", U.ElectricPotential.From(1, ElectricPotentialUnit.Microvolt).Volts);
        yield return Row("mV", U.ElectricPotential.From(1, ElectricPotentialUnit.Millivolt).Volts);
        yield return Row("kV", U.ElectricPotential.From(1, ElectricPotentialUnit.Kilovolt).Volts);
        yield return Row("MV", U.ElectricPotential.From(1, ElectricPotentialUnit.Megavolt).Volts);
        yield return Row("pA", U.ElectricCurrent.From(1, ElectricCurrentUnit.Picoampere).Amperes);
        yield return Row("nA", U.ElectricCurrent.From(1, ElectricCurrentUnit.Nanoampere).Amperes);
        yield return Row("mA", U.ElectricCurrent.From(1, ElectricCurrentUnit.Milliampere).Amperes);
        yield return Row("kA", U.ElectricCurrent.From(1, ElectricCurrentUnit.Kiloampere).Amperes);
        yield return Row("µΩ", U.ElectricResistance.From(1, ElectricResistanceUnit.Microohm).Ohms);
        yield return Row("mΩ", U.ElectricResistance.From(1, ElectricResistanceUnit.Milliohm).Ohms);
        yield return Row("kΩ", U.ElectricResistance.From(1, ElectricResistanceUnit.Kiloohm).Ohms);
        yield return Row("MΩ", U.ElectricResistance.From(1, ElectricResistanceUnit.Megaohm).Ohms);
        yield return Row("mS", U.ElectricConductance.From(1, ElectricConductanceUnit.Millisiemens).Siemens);
        yield return Row("µS", U.ElectricConductance.From(1, ElectricConductanceUnit.Microsiemens).Siemens);
        yield return Row("pF", U.ElectricCapacitance.From(1, ElectricCapacitanceUnit.Picofarad).Farads);
        yield return Row("nF", U.ElectricCapacitance.From(1, ElectricCapacitanceUnit.Nanofarad).Farads);
        yield return Row("µF", U.ElectricCapacitance.From(1, ElectricCapacitanceUnit.Microfarad).Farads);
        yield return Row("nH", U.ElectricInductance.From(1, ElectricInductanceUnit.Nanohenry).Henries);
        yield return Row("µH", U.ElectricInductance.From(1, ElectricInductanceUnit.Microhenry).Henries);
        yield return Row("mH", U.ElectricInductance.From(1, ElectricInductanceUnit.Millihenry).Henries);
        yield return Row("nW", U.Power.From(1, PowerUnit.Nanowatt).Watts);
        yield return Row("mW", U.Power.From(1, PowerUnit.Milliwatt).Watts);
        yield return Row("kW", U.Power.From(1, PowerUnit.Kilowatt).Watts);
        yield return Row("kJ", U.Energy.From(1, EnergyUnit.Kilojoule).Joules);
        yield return Row("W·h", U.Energy.From(1, EnergyUnit.WattHour).Joules);
        yield return Row("A·h", U.ElectricCharge.From(1, ElectricChargeUnit.AmpereHour).Coulombs, NineDigits);
        yield return Row("kg", U.Mass.From(1, MassUnit.Kilogram).Kilograms);
        yield return Row("mm", U.Length.From(1, LengthUnit.Millimeter).Meters);
        yield return Row("cm", U.Length.From(1, LengthUnit.Centimeter).Meters);
        yield return Row("km", U.Length.From(1, LengthUnit.Kilometer).Meters);
        yield return Row("in", U.Length.From(1, LengthUnit.Inch).Meters);
        yield return Row("km/h", U.Speed.From(1, SpeedUnit.KilometerPerHour).MetersPerSecond);
        yield return Row("m/s^2", U.Acceleration.From(1, AccelerationUnit.MeterPerSecondSquared).MetersPerSecondSquared);
        yield return Row("°", U.Angle.From(1, AngleUnit.Degree).Radians);
        yield return Row("mrad", U.Angle.From(1, AngleUnit.Milliradian).Radians);
        yield return Row("rad/s", U.RotationalSpeed.From(1, RotationalSpeedUnit.RadianPerSecond).RadiansPerSecond);
        yield return Row("%", U.Ratio.From(1, RatioUnit.Percent).DecimalFractions);
        yield return Row("ppm", U.Ratio.From(1, RatioUnit.PartPerMillion).DecimalFractions);
        yield return Row("ppb", U.Ratio.From(1, RatioUnit.PartPerBillion).DecimalFractions);
        yield return Row("°C", U.Temperature.From(1, TemperatureUnit.DegreeCelsius).Kelvins);
        yield return Row("K", U.Temperature.From(1, TemperatureUnit.Kelvin).Kelvins);
        yield return Row("kbit", U.Information.From(1, InformationUnit.Kilobit).Bits);
        yield return Row("Mibit", U.Information.From(1, InformationUnit.Mebibit).Bits);
        yield return Row("kB", U.Information.From(1, InformationUnit.Kilobyte).Bits);
        yield return Row("GiB", U.Information.From(1, InformationUnit.Gibibyte).Bits);
        yield return Row("Mbit/s", U.BitRate.From(1, BitRateUnit.MegabitPerSecond).BitsPerSecond);
        yield return Row("GB/s", U.BitRate.From(1, BitRateUnit.GigabytePerSecond).BitsPerSecond);
        yield return Row("dB", U.Level.From(1, LevelUnit.Decibel).Decibels);
        yield return Row("Np", U.Level.From(1, LevelUnit.Neper).Decibels, NineDigits);
        yield return Row("dBW", U.PowerRatio.From(1, PowerRatioUnit.DecibelWatt).DecibelMilliwatts);
        yield return Row("dBm", U.PowerRatio.From(1, PowerRatioUnit.DecibelMilliwatt).DecibelMilliwatts);
        yield return Row("dBV", U.AmplitudeRatio.From(1, AmplitudeRatioUnit.DecibelVolt).DecibelVolts);
        yield return Row("dBmV", U.AmplitudeRatio.From(1, AmplitudeRatioUnit.DecibelMillivolt).DecibelVolts);
        yield return Row("dBµV", U.AmplitudeRatio.From(1, AmplitudeRatioUnit.DecibelMicrovolt).DecibelVolts);
        yield return Row("dBu", U.AmplitudeRatio.From(1, AmplitudeRatioUnit.DecibelUnloaded).DecibelVolts, NineDigits);
    }

    [Theory]
    [MemberData(nameof(Shared))]
    public void SharedUnit_MeansTheSame(string unit, double si, double tolerance)
    {
        double ours = Quantity.Parse("1 " + unit).SiValue;
        Assert.True(Math.Abs(ours - si) <= tolerance * Math.Max(Math.Abs(si), 1e-300), FormattableString.Invariant($"1 {unit}: ours {ours:R}, theirs {si:R}"));
    }

    [Fact]
    public void Logarithms_LeaveAsThere()
    {
        foreach (double level in new[] { -30.0, 0, 7, 20 })
        {
            Assert.Equal((double)U.PowerRatio.FromDecibelMilliwatts(level).ToPower().Watts, PowerLevel.FromDecibelMilliwatts(level).ToPower().Watts, 1e-12);
            Assert.Equal(U.AmplitudeRatio.FromDecibelVolts(level).ToElectricPotential().Volts, VoltageLevel.FromDecibelVolts(level).ToRmsVoltage().Volts, 1e-12);
        }
    }

    /// <summary>What is different on purpose: gains one after the other add (handbook 1.4); a sum of powers is asked for by name.</summary>
    [Fact]
    public void SumOfDecibels_IsACascadeHere_AndASumOfPowersThere()
    {
        Assert.Equal(26.0, (DecibelRatio.FromDecibels(20) + DecibelRatio.FromDecibels(6)).Decibels);
        Assert.Equal(20.17, (U.Level.FromDecibels(20) + U.Level.FromDecibels(6)).Decibels, 0.01);
        Assert.Equal(20.17, PowerLevel.FromDecibelMilliwatts(20).CombinedWith(PowerLevel.FromDecibelMilliwatts(6)).DecibelMilliwatts, 0.01);
    }
}
