using System;
using System.Collections.Generic;
using System.Threading;
using Acquisition.Core.Formulas;
using Acquisition.Core.Formulas.Worksheets;

namespace Acquisition.Core;

/// <content>How far the values of a worksheet may be trusted, and by which rule its checks are decided.</content>
public sealed partial class Worksheet
{
    /// <summary>Evaluates the worksheet; checks whose inputs are uncertain are decided by a rule of the host's choice (JCGM 106).</summary>
    /// <remarks>Without a rule, <see cref="DecisionRule.GuardedAcceptance"/> holds: a guard band as wide as the expanded uncertainty, p = 95.45 %.</remarks>
    /// <param name="overrides">Values by the names of givens, which count as exact; those left out keep what the text says.</param>
    /// <param name="rule">The rule for checks.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1, on whichever thread does the work; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentException">A name is not given in the sheet, or a value is of another kind.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public WorksheetResult Evaluate(
        IReadOnlyDictionary<string, FormulaValue> overrides, DecisionRule rule, IProgress<Ratio>? progress = null, CancellationToken cancellation = default) =>
        Evaluation(overrides, rule ?? throw new ArgumentNullException(nameof(rule))).Run(LongCall.Of(progress, cancellation));

    /// <summary>The uncertainty budget of a declared name: from all values that the sheet states with ±, up to its line.</summary>
    /// <param name="name">The name after <c>given</c> or <c>let</c>.</param>
    /// <param name="overrides">Values by the names of givens, which count as exact; null where there are none.</param>
    /// <param name="coverage">How the expanded uncertainty is formed; the usual way where null.</param>
    /// <exception cref="ArgumentException">No line declares the name, or an override is not given or of another kind.</exception>
    /// <exception cref="InvalidOperationException">The name has no value, is no quantity, or is not smooth at the estimates.</exception>
    public UncertaintyBudget Budget(string name, IReadOnlyDictionary<string, FormulaValue>? overrides = null, Coverage? coverage = null) =>
        Evaluation(overrides ?? NoOverrides, DecisionRule.GuardedAcceptance).Uncertainty(LineOf(name)).Budget(coverage ?? Coverage.Usual);

    /// <summary>Propagates the distributions of all values that the sheet states with ± to a declared name, by random trials (JCGM 101).</summary>
    /// <param name="name">The name after <c>given</c> or <c>let</c>.</param>
    /// <param name="overrides">Values by the names of givens, which count as exact; null where there are none.</param>
    /// <param name="options">Trials, seed, coverage and threads; the usual ones where null.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1, on whichever thread does the work; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentException">No line declares the name, or an override is not given or of another kind.</exception>
    /// <exception cref="InvalidOperationException">The name has no value or is no quantity, or some trials had no value.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public MonteCarloResult PropagateDistributions(
        string name, IReadOnlyDictionary<string, FormulaValue>? overrides = null, MonteCarloOptions? options = null,
        IProgress<Ratio>? progress = null, CancellationToken cancellation = default) =>
        Evaluation(overrides ?? NoOverrides, DecisionRule.GuardedAcceptance).Uncertainty(LineOf(name)).PropagateDistributions(options ?? MonteCarloOptions.Default, progress, cancellation);

    private static readonly IReadOnlyDictionary<string, FormulaValue> NoOverrides = new Dictionary<string, FormulaValue>();

    private int LineOf(string name)
    {
        for (int i = 0; i < Statements.Count; i++)
        {
            if (Statements[i].Name == name && name.Length > 0) return i;
        }
        throw new ArgumentException($"no line declares '{name}'", nameof(name));
    }
}
