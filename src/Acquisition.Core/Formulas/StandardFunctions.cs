using Acquisition.Core.Functions;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core.Formulas;

/// <summary>The one place that lists which areas declare functions to the formula language.</summary>
public static class StandardFunctions
{
    /// <summary>Every function of the library.</summary>
    public static FunctionCatalog Catalog { get; } = FunctionCatalog.Deferred(All);

    private static FunctionCatalog All() => FunctionCatalog.Empty
        .With(MathFunctions.All())
        .With(QuantityFunctions.All())
        .With(Signals.SignalFunctions.All())
        .With(Responses.ResponseFunctions.All())
        .With(Chain.ChainFunctions.All())
        .With(Digitizing.DigitizingFunctions.All())
        .With(Records.RecordFunctions.All())
        .With(Records.SineFunctions.All())
        .With(Attribution.AttributionFunctions.All())
        .With(UncertaintyFunctions.All())
        .With(Planning.PlanningFunctions.All())
        ;
}
