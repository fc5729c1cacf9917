using System;
using Acquisition.Core;
using Acquisition.Core.Literals;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Interop.Tests;

public sealed class UnitsNetConversionsTests
{
    // UnitsNet 5.75.1 is the outside source: each value is asked back in a unit of its own choosing.
    [Fact]
    public void EachKind_MeansTheSameInUnitsNet()
    {
        Assert.Equal(100, 100.MHz().ToUnitsNet().Megahertz, 12);
        Assert.Equal(3.5, 3.5.ns().ToUnitsNet().Nanoseconds, 12);
        Assert.Equal(250, 250.mV().ToUnitsNet().Millivolts, 12);
        Assert.Equal(20, 20.mA().ToUnitsNet().Milliamperes, 12);
        Assert.Equal(9, 9.MOhm().ToUnitsNet().Megaohms, 12);
        Assert.Equal(15, 15.pF().ToUnitsNet().Picofarads, 12);
        Assert.Equal(10, 10.nH().ToUnitsNet().Nanohenries, 12);
        Assert.Equal(1, 1.mW().ToUnitsNet().Milliwatts, 12);
        Assert.Equal(15, 15.mm().ToUnitsNet().Centimeters * 10, 12);
        Assert.Equal(90, 90.deg().ToUnitsNet().Degrees, 12);
        Assert.Equal(25, 25.degC().ToUnitsNet().DegreesCelsius, 9);
        Assert.Equal(5, 5.Percent().ToUnitsNet().Percent, 12);
        Assert.Equal(0.5, 0.5.VPerUs().ToUnitsNet().VoltsPerMicroseconds, 12);
        Assert.Equal(-20, 10.dBm().ToUnitsNet().DecibelWatts, 12);
        Assert.Equal(114, (-6).dBV().ToUnitsNet().DecibelMicrovolts, 9);
    }

    [Property]
    public void Frequency_ThereAndBack_KeepsItsBits(NormalFloat hertz) =>
        Assert.Equal(Frequency.FromHertz(hertz.Get), Frequency.FromHertz(hertz.Get).ToUnitsNet().ToAcquisition());

    [Property]
    public void Level_ThereAndBack_KeepsItsBits(NormalFloat decibels) =>
        Assert.Equal(PowerLevel.FromDecibelMilliwatts(decibels.Get), PowerLevel.FromDecibelMilliwatts(decibels.Get).ToUnitsNet().ToAcquisition());

    [Fact]
    public void ValueFromAnotherUnit_IsConvertedOnTheWayIn() =>
        Assert.Equal(2.54, UnitsNet.Length.FromInches(1).ToAcquisition().Meters * 100, 12);

    [Fact]
    public void ImpossibleValue_IsRefusedOnTheWayIn()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => UnitsNet.ElectricResistance.FromOhms(-1).ToAcquisition());
        Assert.Throws<ArgumentOutOfRangeException>(() => UnitsNet.Temperature.FromDegreesCelsius(-300).ToAcquisition());
    }

    /// <summary>UnitsNet holds powers and bit rates as decimals, which end at 7.9e28.</summary>
    [Fact]
    public void ValueBeyondDecimals_IsRefusedAndNotClipped()
    {
        Assert.Throws<OverflowException>(() => Power.FromWatts(1e40).ToUnitsNet().ToAcquisition());
        Assert.Equal(1e28, Power.FromWatts(1e28).ToUnitsNet().ToAcquisition().Watts);
    }
}
