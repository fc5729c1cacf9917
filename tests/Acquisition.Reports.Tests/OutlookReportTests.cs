using System;
using System.Xml.Linq;
using Acquisition.Core;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Reports.Tests;

public sealed class OutlookReportTests
{
    private static Outlook BeaconClock() => Signal.Square(24.MHz(), 3.3.Vpp(), riseTime: 2.8.ns())
        .Through(Response.Gaussian(200.MHz()).Then(Response.Gaussian(200.MHz())))
        .SampledBy(new Digitizer(1.GSaPerS(), 1.Mpts(), 8.bit()))
        .Over(20.us());

    [Fact]
    public void Report_PrintsWhatTheOutlookHolds()
    {
        Outlook outlook = BeaconClock();
        string markdown = outlook.ToReport("Beacon clock").ToMarkdown("beacon");

        Assert.Contains(outlook.ChainBandwidth!.Value.ToString("G4"), markdown, StringComparison.Ordinal);
        Assert.Contains("record length | 20 kpts |", markdown, StringComparison.Ordinal);
        Assert.Contains("| 1 | 24 MHz |", markdown, StringComparison.Ordinal);
        Assert.Contains("](<beacon-1.svg>)", markdown, StringComparison.Ordinal);
        foreach (Finding finding in outlook.Findings) Assert.Contains(finding.Code, markdown, StringComparison.Ordinal);
    }

    [Fact]
    public void Html_IsWellFormed() => Assert.NotNull(XDocument.Parse(BeaconClock().ToReport("Beacon clock").ToHtml()).Root);

    [Fact]
    public void HarmonicsThatAreNotListed_AreSaid()
    {
        Outlook outlook = BeaconClock();
        string text = outlook.ToReport("Beacon clock", 2).ToText();

        Assert.True(outlook.Harmonics.Count > 2);
        Assert.Contains($"Of {outlook.Harmonics.Count} harmonics the first 2 are listed.", text, StringComparison.Ordinal);
    }
}
