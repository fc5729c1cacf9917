using Acquisition.Core.Functions;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core.Formulas;

/// <summary>The one place that lists which areas declare functions to the formula language.</summary>
public static class StandardFunctions
{
    /// <summary>Every function of the library.</summary>
    public static FunctionSet Set { get; } = new(
        new(MathFunctions.Names, MathFunctions.All),
        new(QuantityFunctions.Names, QuantityFunctions.All),
        new(Signals.SignalFunctions.WaveformNames, Signals.SignalFunctions.Waveforms),
        new(Signals.SignalFunctions.AmplitudeNames, Signals.SignalFunctions.Amplitudes),
        new(Signals.SignalFunctions.SpectrumNames, Signals.SignalFunctions.Spectrum),
        new(Responses.ResponseFunctions.ModelNames, Responses.ResponseFunctions.Models),
        new(Responses.ResponseFunctions.FrequencyNames, Responses.ResponseFunctions.InFrequency),
        new(Responses.ResponseFunctions.TimeNames, Responses.ResponseFunctions.InTime),
        new(Chain.ChainFunctions.Names, Chain.ChainFunctions.All),
        new(Digitizing.DigitizingFunctions.Names, Digitizing.DigitizingFunctions.All),
        new(Digitizing.VerticalFunctions.Names, Digitizing.VerticalFunctions.All),
        new(Records.RecordFunctions.Names, Records.RecordFunctions.All),
        new(Records.SineFunctions.Names, Records.SineFunctions.All),
        new(Attribution.AttributionFunctions.Names, Attribution.AttributionFunctions.All),
        new(UncertaintyFunctions.Names, UncertaintyFunctions.All),
        new(Planning.PlanningFunctions.Names, Planning.PlanningFunctions.All));
}
