using System;
using System.Linq;
using Acquisition.Core.Literals;
using FsCheck;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Records.Pulses;

public sealed class OtherStatesTests
{
    private static Record Make(int count, Func<int, double> volts) => Record.FromVolts(Enumerable.Range(0, count).Select(volts).ToArray(), 1.GSaPerS());

    private static Finding? More(Record record, PulseSettings? settings = null) => PulseMeasurement.Of(record, settings ?? PulseSettings.Default).Findings.SingleOrDefault(x => x.Code == "more-than-two-states");

    [Theory]
    [InlineData(0.0, 1.0, 2.0)]
    [InlineData(-1.0, 0.0, 1.0)]
    [InlineData(0.0, 0.5, 2.0)]
    public void ThreeLevels_AreSaidToBeMoreThanTwo(double first, double second, double third)
    {
        double[] levels = [first, second, third];

        Finding finding = More(Make(6000, i => levels[i / 100 % 3]))!;

        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.StartsWith("2000 samples rest around", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void RingingAndSlowEdges_AreNoFurtherState()
    {
        Assert.Null(More(Make(10_000, i => (i / 500 % 2) + ((i / 500 % 2) - 0.5) * Math.Exp(-(i % 500) / 40.0) * Math.Cos(0.3 * (i % 500)))));
        Assert.Null(More(Make(10_000, i => Math.Min(1, Math.Max(0, (Math.Abs((i % 1000) - 500.0) - 150) / 200)))));
    }

    [Fact]
    public void GivenLevels_AreTheUsersMatter() =>
        Assert.Null(More(Make(6000, i => i / 100 % 3), PulseSettings.Default.WithStateLevels(0.V(), 2.V())));

    /// <summary>Two levels, whatever their populations, scale and place, are two.</summary>
    [Property]
    public void TwoLevels_AreTwo(byte width, NonZeroInt scale, short offset)
    {
        int high = 60 + width % 80;
        Assert.Null(More(Make(4000, i => offset + (i % 200 < high ? scale.Get : 0))));
    }
}
