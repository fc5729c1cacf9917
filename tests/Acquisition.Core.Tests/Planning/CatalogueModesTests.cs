using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>Rate and memory of a catalogue's instrument by the channels in use, up to the number that is stated.</summary>
public sealed class CatalogueModesTests
{
    // A mode holds for as many channels as it says and for fewer, down to the mode before it.
    [Theory]
    [InlineData(1, 1000, 1)]
    [InlineData(2, 500, 0.5)]
    [InlineData(3, 250, 0.25)]
    [InlineData(4, 250, 0.25)]
    public void ModesOfChannels_ReachDownToTheOneBefore(int channels, double rate, double memory)
    {
        var modes = new CatalogueInstrument("box", Stated.Typical(100.MHz()), ResponseShape.Gaussian, 8.bit(), [new ChannelMode(1, 1.GSaPerS(), 1.Mpts()), new ChannelMode(2, 500.MSaPerS(), 500.kpts()), new ChannelMode(4, 250.MSaPerS(), 250.kpts())],
            [new InputRange(1.Vpp())], [new InputTermination(1.MOhm(), 14.pF(), 50.V())]);
        Digitizer digitizer = CatalogueChain.Digitizer(modes);
        Assert.Equal(rate * 1e6, digitizer.TimebaseFor(1.us(), channels).Rate.SamplesPerSecond, 1e-3);
        Assert.Equal(memory * 1e6, digitizer.Memory(channels).Points, 1e-3);
        Assert.Equal(4, digitizer.StatedChannels);
    }

    // Stated for four, used with four: nothing is left open. With five the catalogue says nothing.
    [Fact]
    public void AsManyChannelsAsAreStated_AreNotSaidToBeTooMany()
    {
        CatalogueInstrument four = new("box", Stated.Typical(100.MHz()), ResponseShape.Gaussian, 8.bit(), [new ChannelMode(1, 1.GSaPerS(), 1.Mpts()), new ChannelMode(4, 500.MSaPerS(), 500.kpts())],
            [new InputRange(1.Vpp())], [new InputTermination(1.MOhm(), 14.pF(), 50.V())]);
        CatalogueProbe probe = new CatalogueProbe("stick", 10, Stated.Claimed(100.MHz()), ResponseShape.Gaussian, 10.MOhm(), 8.pF(), 1.MOhm()).WithMaximumVoltage(400.V());
        bool Said(int channels) => Shortlist.Of(new Requirement(Signal.Sine(1.MHz(), 1.Vpk())).WithAmplitudeTolerance(10.Percent()).WithWindow(1.us()).WithChannels(channels), new Catalogue([four], [probe]))
            .Candidates[0].Outlook!.Findings.Any(finding => finding.Code == "channels-not-stated");
        Assert.False(Said(2));
        Assert.False(Said(4));
        Assert.True(Said(5));
    }

    // A digitizer is stated for 64 channels at most; a catalogue may list more.
    [Theory]
    [InlineData(1)]
    [InlineData(80)]
    public void AnInstrumentOfAHundredChannels_IsRead(int first)
    {
        CatalogueInstrument many = new("rack", Stated.Typical(1.MHz()), ResponseShape.Gaussian, 16.bit(), [new ChannelMode(first, 2.MSaPerS(), 1.Mpts()), new ChannelMode(100, 1.MSaPerS(), 1.Mpts())],
            [new InputRange(1.Vpp())], [new InputTermination(1.MOhm(), 14.pF(), 50.V())]);
        Digitizer digitizer = CatalogueChain.Digitizer(many);
        Assert.Equal(64, digitizer.StatedChannels);
        Assert.Equal(first == 1 ? 1e6 : 2e6, digitizer.TimebaseFor(1.us(), 64).Rate.SamplesPerSecond, 1e-3);
        Assert.Equal(2e6, digitizer.TimebaseFor(1.us(), 1).Rate.SamplesPerSecond, 1e-3);
    }
}
