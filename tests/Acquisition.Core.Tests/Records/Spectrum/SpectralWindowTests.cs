using System;
using System.Globalization;
using System.IO;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Handbook;
using Xunit;

namespace Acquisition.Core.Tests.Records.Spectra;

public sealed class SpectralWindowTests
{
    internal static SpectralWindow Named(string name) => name switch
    {
        "RECT" => SpectralWindow.Rectangular,
        "HANN" => SpectralWindow.Hann,
        "HAMMING" => SpectralWindow.Hamming,
        "BLACKMAN" => SpectralWindow.Blackman,
        "BH4" => SpectralWindow.BlackmanHarris,
        "BNUTTALL" => SpectralWindow.BlackmanNuttall,
        "FT-ISO18431" => SpectralWindow.FlatTopIso18431,
        "FT-5TERM" => SpectralWindow.FlatTopFiveTerm,
        "FT-SRS" => SpectralWindow.FlatTopThreeDigit,
        "HFT70" => SpectralWindow.Hft70,
        "HFT95" => SpectralWindow.Hft95,
        "HFT116D" => SpectralWindow.Hft116D,
        "HFT144D" => SpectralWindow.Hft144D,
        _ when name.StartsWith("KAISER", StringComparison.Ordinal) => SpectralWindow.Kaiser(double.Parse(name["KAISER".Length..], CultureInfo.InvariantCulture)),
        _ => throw new InvalidOperationException(name),
    };

    [Theory, HandbookData("WN-")]
    public void Constants_AgreeWithTheHandbook(string id)
    {
        CheckValue value = CheckValue.All[id];
        int last = id.LastIndexOf('-');
        SpectralWindow window = Named(id[3..last]);
        value.Confirm(id[(last + 1)..] switch
        {
            "CG" => window.CoherentGain.Fraction,
            "ENBW" => window.EquivalentNoiseBandwidthInBins,
            "SL" => window.ScallopingLoss.Decibels,
            "PSL" => window.HighestSideLobe.Decibels,
            _ => throw new InvalidOperationException(id),
        });
    }

    [Fact]
    public void Constants_AreThoseOfTheWeightsThemselves()
    {
        foreach (SpectralWindow window in SpectralWindow.All.Append(SpectralWindow.Kaiser(9)))
        {
            double[] w = window.Weights(4096);
            Assert.Equal(window.CoherentGain.Fraction, w.Sum() / 4096, 1e-3);
            Assert.Equal(window.EquivalentNoiseBandwidthInBins, 4096 * w.Sum(v => v * v) / (w.Sum() * w.Sum()), 1e-3);
            Assert.Equal(1, w.Max(), 1e-12);
        }
    }

    [Fact]
    public void MainLobe_OfACosineSum_IsAsManyBinsAsItHasTerms()
    {
        Assert.Equal(1, SpectralWindow.Rectangular.MainLobeHalfWidthInBins);
        Assert.Equal(2, SpectralWindow.Hann.MainLobeHalfWidthInBins);
        Assert.Equal(7, SpectralWindow.Hft144D.MainLobeHalfWidthInBins);
        Assert.Equal(3, SpectralWindow.Kaiser(8.6).MainLobeHalfWidthInBins);
    }

    /// <summary>Half-power width of the Hann window: 1.4406 bins (Harris 1978, table 1: 1.44).</summary>
    [Fact]
    public void HalfPowerWidth_OfHann_Is144Bins() => Assert.Equal(1.4406, SpectralWindow.Hann.WidthInBins(-DecibelRatio.HalfPower), 1e-4);

    [Fact]
    public void ImpossibleWindows_AreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SpectralWindow.Kaiser(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => SpectralWindow.Kaiser(double.NaN));
        Assert.Throws<ArgumentException>(() => SpectralWindow.OfCosines("none"));
        Assert.Throws<ArgumentException>(() => SpectralWindow.OfCosines("negative", 0.5, -0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => SpectralWindow.Hann.Weights(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => SpectralWindow.Hann.WidthInBins(-3.dB()));
    }

    /// <summary>Published table by Heinzel, Ruediger and Schilling (2002), read from the open data folder where it is present.</summary>
    [OpenDataFact("reference/window-properties.csv")]
    public void Constants_AgreeWithThePublishedTable()
    {
        foreach (string line in File.ReadLines(OpenData.Path("reference/window-properties.csv")).Skip(1))
        {
            string[] cells = line.Split(',');
            double[] terms = cells[6].Split(' ').Select(c => double.Parse(c, CultureInfo.InvariantCulture)).ToArray();
            SpectralWindow window = SpectralWindow.OfCosines(cells[0], terms);
            double Published(int column) => double.Parse(cells[column], CultureInfo.InvariantCulture);
            // One printed decimal, cut off in one row (98.17 dB is printed as 98.1).
            Assert.Equal(-Published(1), window.HighestSideLobe.Decibels, 0.1);
            Assert.Equal(Published(2), window.EquivalentNoiseBandwidthInBins, 1.01e-4);
            Assert.Equal(Published(3), window.WidthInBins(3.dB()), 2.1e-4);
        }
    }
}
