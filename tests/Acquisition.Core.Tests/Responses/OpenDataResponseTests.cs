using System;
using System.Globalization;
using System.IO;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Responses;
using Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>Open measured responses by others (origin and licence in the folder's README), against values found from the same files by NumPy.</summary>
public class OpenDataResponseTests
{
    [OpenDataFact("rf/coax-cables.s2p")]
    public void Cables_FallThroughMinus3DecibelsThreeTimes_AndAllAreReported()
    {
        Response cables = Read("rf/coax-cables.s2p", OutsideBand.Refuse);
        // The gain at DC is not measured; the first point, 45 MHz, is held. Levels here are absolute, as stated.
        DecibelRatio drop = -3.dB() - cables.ReferenceGain;
        PassBand band = cables.PassBand(drop);
        double[] gigahertz = band.Crossings.Where(crossing => crossing.IsFalling).Select(crossing => crossing.Frequency.Gigahertz).ToArray();
        Assert.Equal(new[] { 3.8042, 3.9046, 3.9959 }, gigahertz.Select(f => Math.Round(f, 4)));
        Assert.Equal(5, band.Crossings.Count);
        Assert.Equal(gigahertz[0], band.Upper!.Value.Gigahertz);
        Assert.Contains(band.Findings, finding => finding.Code == "several-crossings");
        // 0.36 of a turn per point: unwrapping works, and says how close it was to failing.
        double[] delays = Enumerable.Range(0, 46).Select(i => cables.GroupDelay((0.5 + 0.1 * i).GHz()).Nanoseconds).ToArray();
        Assert.Equal(14.406, delays.Average(), 0.05);
    }

    [OpenDataFact("rf/attenuator-20db.s2p")]
    public void Attenuator_HasItsMeanGain()
    {
        Response pad = Read("rf/attenuator-20db.s2p", OutsideBand.Refuse);
        double mean = Enumerable.Range(0, 951).Select(i => pad.Gain((0.5 + 0.01 * i).GHz()).Decibels).Average();
        Assert.Equal(-20.123, mean, 0.005);
    }

    [OpenDataFact("rf/coax-cables-plus-attenuator.s2p")]
    public void Cascade_OfMeasuredParts_IsTheSumOfTheirDecibels_WhichTheMeasuredChainIsNot()
    {
        Response sum = Read("rf/coax-cables.s2p", OutsideBand.Refuse).Then(Read("rf/attenuator-20db.s2p", OutsideBand.Refuse)), chain = Read("rf/coax-cables-plus-attenuator.s2p", OutsideBand.Refuse);
        foreach (var (gigahertz, parts, measured) in new[] { (5.0088, -23.811, -23.782), (9.9976, -30.264, -27.197) })
        {
            // The stated values are those of the nearest point: a few kilohertz away.
            Assert.Equal(parts, sum.Gain(gigahertz.GHz()).Decibels, 0.01);
            Assert.Equal(measured, chain.Gain(gigahertz.GHz()).Decibels, 0.01);
        }
    }

    [OpenDataFact("rf/microstrip-100mm.s2p")]
    public void MicrostripLine_HasTwoMinus3DecibelCrossings_AndRingsWhenCutOffAt10Gigahertz()
    {
        Response line = Read("rf/microstrip-100mm.s2p", OutsideBand.Zero);
        double[] gigahertz = line.Crossings(-3.dB() - line.ReferenceGain).Where(crossing => crossing.IsFalling && crossing.Frequency < 9.99.GHz()).Select(crossing => crossing.Frequency.Gigahertz).ToArray();
        Assert.Equal(7.960, gigahertz[0], 0.001);
        Assert.Equal(8.495, gigahertz[1], 0.01);
        // Stated: 62 ps and 9 % of overshoot from the sharp end of the data; in steps of 10 MHz, so that a percent or two is theirs.
        Assert.Equal(62, line.RiseTime.Picoseconds, 2.0);
        Assert.InRange(line.Overshoot.Percent, 7, 11);
    }

    [OpenDataFact("responses/rc-lowpass.csv")]
    public void RcLowPass_FallsToHalfPowerWhereItsPointsSay()
    {
        FrequencyPoint[] points = Rows("responses/rc-lowpass.csv").Select(c => new FrequencyPoint(c[0].Hz(), c[1].dB(), c[2].deg())).ToArray();
        Response measured = Response.Measured("RC low-pass", points);
        double f3 = measured.BandwidthAt(-3.dB() - measured.ReferenceGain).Hertz;
        Assert.Equal(271.8, f3, 0.2);
    }

    [OpenDataFact("responses/rc-coupled-amplifier.csv")]
    public void CoupledAmplifier_HasTwoEdges()
    {
        FrequencyPoint[] points = Rows("responses/rc-coupled-amplifier.csv").Select(c => new FrequencyPoint(c[0].Hz(), DecibelRatio.FromAmplitudeRatio(Ratio.FromFraction(c[1])))).ToArray();
        Response amplifier = Response.Measured("RC-coupled amplifier", points, OutsideBand.ExtendSlope, OutsideBand.ExtendSlope);
        // Stated re the mid-band gain of 7.30 and for -3.000 dB.
        double drop = 20 * Math.Log10(7.30) - 3 - amplifier.ReferenceGain.Decibels;
        PassBand band = amplifier.PassBand(drop.dB());
        Assert.False(amplifier.PassesDc);
        Assert.Equal(39.58, band.Lower!.Value.Hertz, 0.3);
        Assert.Equal(339.4, band.Upper!.Value.Kilohertz, 3.0);
    }

    private static Response Read(string file, OutsideBand above)
    {
        using StreamReader reader = new(OpenData.Path(file));
        return TouchstoneData.Read(reader).ToResponse(file, to: 2, from: 1, OutsideBand.Hold, above);
    }

    private static double[][] Rows(string file) =>
        File.ReadLines(OpenData.Path(file)).Where(line => line.Length > 0 && (char.IsDigit(line[0]) || line[0] == '-'))
            .Select(line => line.Split(',').Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray()).ToArray();
}
