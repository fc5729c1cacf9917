namespace Acquisition.Core.Formulas.Execution;

/// <summary>The value of a formula, or of a line of a worksheet, with what a budget needs: how it follows each input and each uncertain term.</summary>
internal sealed class Sensitivities
{
    private Sensitivities(double value, double[] derivatives, bool[] isNumerical, double[] halfWidths)
    {
        Value = value;
        Derivatives = derivatives;
        IsNumerical = isNumerical;
        HalfWidths = halfWidths;
    }

    /// <summary>Evaluates a register of a program with its derivatives.</summary>
    /// <param name="program">The program, compiled so that uncertain terms may deviate.</param>
    /// <param name="result">The register.</param>
    /// <param name="inputs">The number inputs in SI.</param>
    /// <param name="objectInputs">The object inputs.</param>
    /// <param name="inputScales">How far each input may move, such as its standard uncertainty; 0 where it is exact.</param>
    /// <param name="deviations">How far each uncertain term lies from its stated value; null for not at all.</param>
    internal static Sensitivities Of(Program program, int result, double[] inputs, object?[]? objectInputs, double[] inputScales, double[]? deviations = null)
    {
        var run = new DerivativeRun(program, inputs, objectInputs, inputScales, deviations);
        double value = run.Run(result, out double[] derivatives);
        return new Sensitivities(value, derivatives, run.IsNumerical, run.HalfWidths);
    }

    /// <summary>The value in SI.</summary>
    internal double Value { get; }

    /// <summary>The derivatives in SI: by input first, then by term.</summary>
    internal double[] Derivatives { get; }

    /// <summary>Whether a derivative is numerical, in the same order.</summary>
    internal bool[] IsNumerical { get; }

    /// <summary>The half-width of each term at these inputs, in SI; expanded where the term has a coverage factor.</summary>
    internal double[] HalfWidths { get; }
}
