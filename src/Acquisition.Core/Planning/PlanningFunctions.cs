using System.Collections.Generic;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Planning;

/// <summary>Planning in the formula language: each function calls the method of the same meaning.</summary>
internal static class PlanningFunctions
{
    /// <summary>The names that <see cref="All"/> declares.</summary>
    internal const string Names =
        "bandwidth_for_amplitude bandwidth_for_rise_time bandwidth_for_edge system_rise_time fastest_edge rate_for_edge";

    internal static IEnumerable<FunctionDefinition> All()
    {
        yield return FunctionDefinition.Named("bandwidth_for_amplitude", "The chain bandwidth at which the amplitude at a frequency is short by no more than a tolerance.", "handbook 12.1, 4.6")
            .Takes("frequency", QuantityKind.Frequency).Takes("tolerance", QuantityKind.Ratio).Takes("shape", ValueKind.Text)
            .ReturnsFromAll(QuantityKind.Frequency, a => NeededBandwidth.ForAmplitude(Frequency.FromSi(a.SiValue(0), "frequency"), Ratio.FromSi(a.SiValue(1), "tolerance"), Shape(a, 2)).SiValue)
            .Example("bandwidth_for_amplitude(200 MHz, 3 %, \"Gaussian\")", "674.634 MHz");
        yield return FunctionDefinition.Named("bandwidth_for_rise_time", "The bandwidth of a chain of this shape with this rise time.", "handbook 2.2")
            .Takes("rise_time", QuantityKind.Duration).Takes("shape", ValueKind.Text)
            .ReturnsFromAll(QuantityKind.Frequency, a => NeededBandwidth.ForRiseTime(Duration.FromSi(a.SiValue(0), "rise_time"), Shape(a, 1)).SiValue)
            .Example("bandwidth_for_rise_time(0.32 ns, \"Gaussian\")", "1.06133 GHz");
        yield return FunctionDefinition.Named("bandwidth_for_edge", "The chain bandwidth at which a straight edge is shown slower by no more than a tolerance, computed from the step response.", "handbook 12.1, 2.6")
            .Takes("rise_time", QuantityKind.Duration).Takes("tolerance", QuantityKind.Ratio).Takes("shape", ValueKind.Text)
            .ReturnsFromAll(QuantityKind.Frequency, a => NeededBandwidth.ForEdge(new Edge(Duration.FromSi(a.SiValue(0), "rise_time")), Ratio.FromSi(a.SiValue(1), "tolerance"), Shape(a, 2)).SiValue)
            .Example("bandwidth_for_edge(1 ns, 5 %, \"Gaussian\")", "1 GHz");
        yield return FunctionDefinition.Named("system_rise_time", "The rise time a chain may have so that an edge is shown slower by no more than a tolerance, by the root-sum-square rule.", "handbook 12.1")
            .Takes("rise_time", QuantityKind.Duration).Takes("tolerance", QuantityKind.Ratio)
            .Returns(QuantityKind.Duration, (rise, tolerance) => NeededBandwidth.SystemRiseTime(Duration.FromSi(rise, "rise_time"), Ratio.FromSi(tolerance, "tolerance")).SiValue)
            .Example("system_rise_time(1 ns, 5 %)", "320.156 ps");
        yield return FunctionDefinition.Named("fastest_edge", "The fastest edge a chain shows slower by no more than a tolerance, by the root-sum-square rule.", "handbook 12.8")
            .Takes("system_rise_time", QuantityKind.Duration).Takes("tolerance", QuantityKind.Ratio)
            .Returns(QuantityKind.Duration, (rise, tolerance) => NeededBandwidth.FastestEdge(Duration.FromSi(rise, "system_rise_time"), Ratio.FromSi(tolerance, "tolerance")).SiValue)
            .Example("fastest_edge(1 ns, 5 %)", "3.12348 ns");
        yield return FunctionDefinition.Named("rate_for_edge", "The sample rate that puts so many intervals on an edge; 3 to 5 are common practice.", "handbook 5.13, 12.2")
            .Takes("rise_time", QuantityKind.Duration).Takes("intervals", ValueKind.Number)
            .Returns(QuantityKind.SampleRate, (rise, intervals) => NeededSampling.RateForEdge(Duration.FromSi(rise, "rise_time"), intervals).SiValue)
            .Example("rate_for_edge(1 ns, 5)", "5 GSa/s");
    }

    private static ResponseShape Shape(FunctionArguments arguments, int index) =>
        ResponseShape.TryParse(arguments.Text(index), out ResponseShape? shape) ? shape! : throw new System.ArgumentException($"found \"{arguments.Text(index)}\", expected single pole, Gaussian, Butterworth 1 to 10, or Bessel 1 to 10", nameof(arguments));
}
