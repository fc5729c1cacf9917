using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Attribution;

/// <summary>What attribution declares to the formula language.</summary>
internal static class AttributionFunctions
{
    private static readonly ValueKind ResponseModel = ValueKind.Model<Response>("response");
    private static readonly ValueKind ShapeChoice = ValueKind.Choice("edge shape", "linear", "gaussian", "exponential");

    /// <summary>The names that <see cref="All"/> declares.</summary>
    internal const string Names =
        "deembed_rise_time";

    internal static IEnumerable<FunctionDefinition> All()
    {
        yield return FunctionDefinition.Named("deembed_rise_time", "The rise time of an edge itself from the one displayed and the chain's own, by the root-sum-square rule.", "handbook 2.5")
            .Takes("displayed", QuantityKind.Duration).Takes("chain_rise_time", QuantityKind.Duration)
            .Returns(
                QuantityKind.Duration,
                (displayed, chain) => Edge(DeembeddedRiseTime.ByRootSumSquare(Duration.FromSi(displayed, nameof(displayed)), default, Duration.FromSi(chain, "chain_rise_time"), default)),
                (displayed, chain) => displayed / Math.Sqrt((displayed - chain) * (displayed + chain)),
                (displayed, chain) => -chain / Math.Sqrt((displayed - chain) * (displayed + chain)))
            .Example("deembed_rise_time(5 ns, 3 ns)", "4 ns");
        yield return FunctionDefinition.Named("deembed_rise_time", "The rise time of the edge whose computed display behind a response has the displayed rise time.", "handbook 2.5, 2.6")
            .Takes("displayed", QuantityKind.Duration).Takes("chain", ResponseModel).TakesOptional("shape", ShapeChoice, "gaussian")
            .ReturnsFromAll(QuantityKind.Duration, a => Edge(DeembeddedRiseTime.ByResponse(Duration.FromSi(a.SiValue(0), "displayed"), default, a.Model<Response>(1), default, Shape(a.Text(2)))))
            .Example("deembed_rise_time(4 ns, gaussian(200 MHz))", "3.62165 ns");
    }

    private static double Edge(DeembeddedRiseTime edge) => edge.RiseTime?.SiValue ?? throw new ArgumentException(edge.Findings[0].Message);

    private static EdgeShape Shape(string name) => name switch
    {
        "linear" => EdgeShape.Linear,
        "gaussian" => EdgeShape.Gaussian,
        _ => EdgeShape.Exponential,
    };
}
