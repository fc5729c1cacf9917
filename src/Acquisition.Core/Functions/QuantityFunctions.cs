using System.Collections.Generic;

namespace Acquisition.Core.Functions;

/// <summary>The functions over quantities alone.</summary>
internal static class QuantityFunctions
{
    internal static IEnumerable<FunctionDefinition> All()
    {
        yield return FunctionDefinition.Named("period", "The time of one cycle of a frequency.", "handbook 4.1")
            .Takes("frequency", QuantityKind.Frequency)
            .Returns(QuantityKind.Duration, f => (1.0 / Frequency.FromHertz(Refuse.UnlessAboveZero(f, QuantityKind.Frequency, "frequency"))).SiValue, f => -1 / (f * f))
            .Example("period(24 MHz)", "41.667 ns");

        yield return FunctionDefinition.Named("nyquist_frequency", "Half the sample rate: the highest frequency that sampling can tell apart.", "handbook 5.1")
            .Takes("sample_rate", QuantityKind.SampleRate)
            .Returns(QuantityKind.Frequency, rate => rate / 2, _ => 0.5)
            .Example("nyquist_frequency(2 GSa/s)", "1 GHz");
    }
}
