#if NET
using System;
using System.Collections.Generic;
using System.Text.Json;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Explanations;

/// <summary>What a host that hands results to JsonSerializer gets: a refusal that says what to write instead, never a loop; quantities, findings and lines of a budget are written.</summary>
public sealed class ResultJsonTests
{
    private static readonly Uncertain<Voltage> Reading = Uncertain.Of(5.V(), Spread.Bound(10.mV()), "reading");

    private static readonly Dictionary<string, Func<object>> Results = new()
    {
        ["Outlook"] = () => Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns()).Through(MeasurementChain.From(50.Ohm()).Into(FrontEnd.FiftyOhm(Response.Gaussian(200.MHz()))))
            .SampledBy(new Digitizer(2.GSaPerS(), 14.Mpts(), 8.bit())).Over(1.us()),
        ["UncertaintyBudget"] = () => Reading.Budget(),
        ["Uncertain"] = () => Reading,
        ["ConformityDecision"] = () => DecisionRule.SimpleAcceptance.Decide(Reading, ToleranceLimits.AtMost(6.V())),
        ["MonteCarloResult"] = () => Formula.Build("1 V ± 1 mV").PropagateDistributions(MonteCarloOptions.Default.WithTrials(1000)),
        ["WorksheetResult"] = () => Worksheet.Build("given a = 1 V").Evaluate(),
        ["Measured"] = () => new Measured<Duration>(1.ns()),
    };

    public static TheoryData<string> Names => new(Results.Keys);

    [Theory, MemberData(nameof(Names))]
    public void Result_IsRefusedWithWhatToWriteInstead(string name)
    {
        object result = Results[name]();
        foreach (object host in new[] { result, new { Result = result }, new[] { result } })
        {
            string message = Assert.Throws<NotSupportedException>(() => JsonSerializer.Serialize(host)).Message;
            Assert.StartsWith(name + " is not written into JSON member by member: write its report, ToReport().ToJson() of Acquisition.Reports", message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Model_IsRefused_ThoughItsStagesHoldItself() =>
        Assert.Contains("Response", Assert.Throws<NotSupportedException>(() => JsonSerializer.Serialize(new Tuple<Response>(Response.Gaussian(1.GHz())))).Message, StringComparison.Ordinal);

    [Fact]
    public void ValuesOfResults_AreWritten()
    {
        UncertaintyBudget budget = Reading.Budget();

        Assert.Equal("\"5 V\"", JsonSerializer.Serialize(budget.Value));
        Assert.Equal("Infinity", JsonDocument.Parse(JsonSerializer.Serialize(budget.Lines)).RootElement[0].GetProperty("DegreesOfFreedom").GetString());
        Assert.Equal("dominant-input-not-normal", JsonDocument.Parse(JsonSerializer.Serialize(budget.Findings)).RootElement[0].GetProperty("Code").GetString());
    }
}
#endif
