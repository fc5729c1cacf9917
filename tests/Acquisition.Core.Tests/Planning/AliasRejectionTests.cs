using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Acquisition.Core.Tests.Handbook;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>What a chain leaves of content that folds, at the usual ratios of rate to bandwidth (handbook 12.2).</summary>
public class AliasRejectionTests
{
    [Theory, HandbookData("SE-AL-")]
    public void GainAtHalfTheRate_IsTheHandbooks(string id) => Confirm(id, ratio => ratio / 2);

    [Theory, HandbookData("SE-AB-")]
    public void GainOfWhatFoldsOntoTheBandwidth_IsTheHandbooks(string id) => Confirm(id, ratio => ratio - 1);

    private static void Confirm(string id, System.Func<double, double> place)
    {
        CheckValue value = CheckValue.All[id];
        Response response = ResponseShape.Parse(value.Text("response").Replace('-', ' ')).At(1.GHz());
        value.Confirm(response.Gain(Frequency.FromGigahertz(place(value.Number("fs/f3")))).Decibels);
    }
}
