using System;
using System.Numerics;
using Acquisition.Core.Literals;
using Acquisition.Core.Responses;
using Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>The open Touchstone format, versions 1 and 2.0 (from memory of the standard): texts of our own.</summary>
public class TouchstoneTests
{
    [Fact]
    public void ATwoPort_OfVersion1_IsRead_WithItsOddOrderOfParameters()
    {
        TouchstoneData data = TouchstoneData.Parse(
            "! a pad\n# mhz s ma r 75 ! anything in any case\n10 0.1 0 0.5 -90 0.4 -80 0.2 180\n! between\n20 0.1 0 0.25 -180 0.2 -160 0.2 180\n");
        Assert.Equal(2, data.PortCount);
        Assert.Equal(75, data.ReferenceResistance.Ohms);
        Assert.Equal(20.MHz(), data.FrequencyAt(1));
        Near(new Complex(0, -0.5), data.S(2, 1, 0));
        Near(Complex.FromPolarCoordinates(0.4, -80 * Math.PI / 180), data.S(1, 2, 0));
        Near(-0.2, data.S(2, 2, 0));
        Near(0.1, data.S(1, 1, 1));
    }

    [Fact]
    public void AOnePort_InDecibels_IsRead_AndDefaultsToGigahertz()
    {
        TouchstoneData data = TouchstoneData.Parse("# DB\n1 -20 90\n2 -6.020599913279624 0\n");
        Assert.Equal(1, data.PortCount);
        Assert.Equal(2.GHz(), data.FrequencyAt(1));
        Near(new Complex(0, 0.1), data.S(1, 1, 0));
        Near(0.5, data.S(1, 1, 1));
    }

    [Theory]
    [InlineData("12_21", 0.3, 0.7)]
    [InlineData("21_12", 0.7, 0.3)]
    public void Version2_StatesItsOrder_AndMayBreakLines(string order, double s21, double s12)
    {
        TouchstoneData data = TouchstoneData.Parse(
            "[Version] 2.0\n# Hz S RI R 50\n[Number of Ports] 2\n[Two-Port Data Order] " + order + "\n[Number of Frequencies] 2\n[Reference]\n50 50\n" +
            "[Begin Information]\n[Anything] 1\nwords\n[End Information]\n[Network Data]\n1e6 0 0 0.7 0\n 0.3 0 0 0\n2e6 0 0 0.7 0 0.3 0 0 0\n[Noise Data]\n1 2 3 4 5\n[End]\nrubbish\n");
        Assert.Equal(2, data.Count);
        // The second number pair is what the stated order says it is.
        Near(order == "21_12" ? s21 : s12, order == "21_12" ? data.S(2, 1, 0) : data.S(1, 2, 0));
        Assert.Equal(order == "21_12" ? 0.7 : 0.3, data.S(2, 1, 1).Real);
    }

    [Fact]
    public void ALowerMatrix_OfVersion2_IsReciprocal()
    {
        TouchstoneData data = TouchstoneData.Parse(
            "[Version] 2.0\n# GHz S RI\n[Number of Ports] 2\n[Two-Port Data Order] 21_12\n[Number of Frequencies] 1\n[Matrix Format] Lower\n[Network Data]\n1 0.1 0 0.5 0 0.2 0\n[End]");
        Near(0.5, data.S(2, 1, 0));
        Near(0.5, data.S(1, 2, 0));
        Near(0.2, data.S(2, 2, 0));
    }

    [Fact]
    public void NoiseParameters_AfterTheData_AreLeftOut() =>
        Assert.Equal(2, TouchstoneData.Parse("# GHz S RI\n1 0 0 1 0 1 0 0 0\n2 0 0 1 0 1 0 0 0\n1 1.5 0.3 20 0.4\n2 1.6 0.3 25 0.4\n").Count);

    [Theory]
    [InlineData("1 2 3\n", "line 1: expected an option line")]
    [InlineData("# GHz Z RI\n1 2 3\n", "line 1: the data are Z parameters; only S parameters are read")]
    [InlineData("# GHz S RI R\n", "line 1: expected a resistance after R")]
    [InlineData("# GHz S XY\n", "line 1: found 'XY' in the option line")]
    [InlineData("# GHz S RI\n1 2\n", "line 2: found 2 numbers; expected 3 (one port) or 9 (two ports)")]
    [InlineData("# GHz S RI\n1 0 0\n\n! note\n1 0 0\n", "line 5: frequencies must be at least 0 and rise")]
    [InlineData("# GHz S RI\n1 0 o\n", "line 2: found 'o', expected a number")]
    [InlineData("# GHz S RI\n1 0 NaN\n", "line 2: found 'NaN', expected a number")]
    [InlineData("# GHz S RI\n", "line 1: there are no data")]
    [InlineData("[Version] 3.0\n", "line 1: found version '3.0'")]
    [InlineData("[Version] 2.0\n# GHz S RI\n[Number of Ports] 4\n", "line 3: found 4 ports; one or two are read")]
    [InlineData("[Version] 2.0\n# GHz S RI\n[Number of Ports] 1\n[Number of Frequencies] 2\n[Network Data]\n1 0 0\n[End]", "line 7: [Number of Frequencies] says 2, found 1")]
    [InlineData("[Version] 2.0\n# GHz S RI\n[Number of Ports] 1\n[Mixed-Mode Order] D1,2\n", "line 4: found keyword [Mixed-Mode Order], which is not read")]
    [InlineData("[Version] 2.0\n# GHz S RI\n[Number of Ports] 1\n[Network Data]\n1 0\n[End]", "line 6: the data end within a record: 2 of 3 numbers")]
    public void WhatIsNotUnderstood_IsRefused_WithItsLine(string text, string message) =>
        Assert.StartsWith(message, Assert.Throws<TouchstoneFormatException>(() => TouchstoneData.Parse(text)).Message, StringComparison.Ordinal);

    private static void Near(Complex expected, Complex actual) => Assert.True(Complex.Abs(expected - actual) < 1e-12, $"expected {expected}, was {actual}");
}
