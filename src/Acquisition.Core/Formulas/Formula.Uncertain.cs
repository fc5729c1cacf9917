using System.Collections.Generic;
using Acquisition.Core.Formulas.Execution;

namespace Acquisition.Core;

public sealed partial class Formula
{
    /// <summary>The values stated with <c>±</c>, in the order of the text.</summary>
    internal IReadOnlyList<UncertainTerm> UncertainTerms => _uncertain.Terms;

    /// <summary>The value and its derivatives with respect to the inputs and the uncertain terms.</summary>
    /// <param name="siInputs">The number inputs in SI.</param>
    /// <param name="objectInputs">The text and model inputs; null where there are none.</param>
    /// <param name="siInputScales">How far each input may move, such as its standard uncertainty; 0 where it is exact.</param>
    internal Sensitivities Sensitivities(double[] siInputs, object?[]? objectInputs, double[] siInputScales) =>
        Acquisition.Core.Formulas.Execution.Sensitivities.Of(_uncertain, _uncertainResult, siInputs, objectInputs, siInputScales);

    /// <summary>Evaluates over columns of inputs and of deviations of the uncertain terms, as Monte Carlo needs. A trial without a value gets NaN.</summary>
    /// <param name="siColumns">A column for each number input; null where one value serves all trials.</param>
    /// <param name="siFixedInputs">The values of the inputs without a column.</param>
    /// <param name="objectInputs">The text and model inputs; null where there are none.</param>
    /// <param name="siDeviations">A column for each uncertain term; null for a term that stays at its stated value.</param>
    /// <param name="siResults">Takes the results.</param>
    internal void EvaluateTrials(double[]?[] siColumns, double[] siFixedInputs, object?[]? objectInputs, double[]?[] siDeviations, double[] siResults) =>
        new ColumnRun(_uncertain, siColumns, siFixedInputs, objectInputs, siDeviations).Run(siResults.Length, _uncertainResult, siResults);
}
