using Acquisition.Core.Literals;
using Acquisition.Core.Tests.Handbook;
using Xunit;

namespace Acquisition.Core.Tests.Responses;

/// <summary>Where a reader with a literal 3 dB criterion finds the bandwidth, re the half-power one (handbook 1.2).</summary>
public sealed class LiteralThreeDecibelTests
{
    [Theory]
    [HandbookData("DB-013", "DB-014")]
    public void LiteralThreeDecibels_LieJustBelowHalfPower(string id)
    {
        CheckValue value = CheckValue.All[id];
        Response response = id == "DB-013" ? Response.SinglePole(1.MHz()) : Response.Gaussian(1.MHz());

        value.Confirm(response.BandwidthAt((-3).dB()).Megahertz);
    }
}
