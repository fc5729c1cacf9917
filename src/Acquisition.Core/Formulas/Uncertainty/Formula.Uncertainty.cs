using System;
using System.Collections.Generic;
using System.Threading;
using Acquisition.Core.Formulas;
using Acquisition.Core.Formulas.Execution;

namespace Acquisition.Core;

/// <content>How far the result may be trusted: budgets (JCGM 100) and the propagation of distributions (JCGM 101).</content>
public sealed partial class Formula
{
    /// <summary>The uncertainty budget at the usual coverage probability of 95.45 %; see <see cref="Budget(Coverage, UncertainQuantity[])"/>.</summary>
    public UncertaintyBudget Budget(params UncertainQuantity[] inputs) => Budget(Coverage.Usual, inputs);

    /// <summary>The uncertainty budget of the result: from the uncertainty of the inputs, and from the values that the formula states with ±.</summary>
    /// <remarks>
    /// Sensitivities are exact (forward-mode derivatives) but where a function declares none; a finding names those. Where an input's first-order contribution vanishes,
    /// second-order terms are added (JCGM 100 5.1.2, note) and the budget says so. Each evaluation takes the values with ± as new sources.
    /// </remarks>
    /// <param name="coverage">How the expanded uncertainty is formed.</param>
    /// <param name="inputs">One value for each input, in their order; <see cref="Uncertain.Exact{T}"/> for one without uncertainty.</param>
    /// <exception cref="ArgumentException">An input is missing, or of another kind than declared, or is a text or model (use the overload with names).</exception>
    /// <exception cref="FormulaException">The formula has no value for these inputs.</exception>
    /// <exception cref="InvalidOperationException">The formula gives no quantity, or is not smooth at the estimates.</exception>
    public UncertaintyBudget Budget(Coverage coverage, params UncertainQuantity[] inputs) =>
        Uncertainty(inputs).Budget(coverage ?? throw new ArgumentNullException(nameof(coverage)));

    /// <summary>The uncertainty budget with inputs by name.</summary>
    /// <param name="uncertainInputs">The inputs that are not exactly known.</param>
    /// <param name="exactInputs">The other inputs; null where there are none.</param>
    /// <param name="coverage">How the expanded uncertainty is formed; the usual way where null.</param>
    /// <exception cref="ArgumentException">An input is missing, given twice, unknown, or of another kind than declared.</exception>
    /// <exception cref="FormulaException">The formula has no value for these inputs.</exception>
    /// <exception cref="InvalidOperationException">The formula gives no quantity, or is not smooth at the estimates.</exception>
    public UncertaintyBudget Budget(IReadOnlyDictionary<string, UncertainQuantity> uncertainInputs, IReadOnlyDictionary<string, FormulaValue>? exactInputs = null, Coverage? coverage = null) =>
        Uncertainty(uncertainInputs, exactInputs).Budget(coverage ?? Coverage.Usual);

    /// <summary>The result as an uncertain value, for further arithmetic: it stays correlated with the inputs.</summary>
    /// <param name="inputs">One value for each input, in their order.</param>
    /// <exception cref="ArgumentException">An input is missing, or of another kind than declared, or is a text or model.</exception>
    /// <exception cref="FormulaException">The formula has no value for these inputs.</exception>
    /// <exception cref="InvalidOperationException">The formula gives no quantity, or is not smooth at the estimates.</exception>
    public UncertainQuantity EvaluateUncertain(params UncertainQuantity[] inputs) => Uncertainty(inputs).Value();

    /// <summary>Propagates the distributions of the inputs, and of the values that the formula states with ±, by the usual number of random trials; see <see cref="PropagateDistributions(MonteCarloOptions, UncertainQuantity[])"/>.</summary>
    public MonteCarloResult PropagateDistributions(params UncertainQuantity[] inputs) => PropagateDistributions(MonteCarloOptions.Default, inputs);

    /// <summary>Propagates the distributions of the inputs, and of the values that the formula states with ±, by random trials.</summary>
    /// <param name="options">Trials, seed, coverage and threads; the usual ones where null.</param>
    /// <param name="inputs">One value for each input, in their order; inputs that share a source are drawn together.</param>
    /// <exception cref="ArgumentException">An input is missing, or of another kind than declared, or is a text or model.</exception>
    /// <exception cref="InvalidOperationException">The formula gives no quantity, or some trials had no value.</exception>
    public MonteCarloResult PropagateDistributions(MonteCarloOptions? options, params UncertainQuantity[] inputs) =>
        Uncertainty(inputs).PropagateDistributions(options ?? MonteCarloOptions.Default);

    /// <summary>Propagates distributions with inputs by name.</summary>
    /// <param name="uncertainInputs">The inputs that are not exactly known.</param>
    /// <param name="exactInputs">The other inputs; null where there are none.</param>
    /// <param name="options">Trials, seed, coverage and threads; the usual ones where null.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1, on whichever thread does the work; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentException">An input is missing, given twice, unknown, or of another kind than declared.</exception>
    /// <exception cref="InvalidOperationException">The formula gives no quantity, or some trials had no value.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled.</exception>
    public MonteCarloResult PropagateDistributions(
        IReadOnlyDictionary<string, UncertainQuantity> uncertainInputs, IReadOnlyDictionary<string, FormulaValue>? exactInputs = null, MonteCarloOptions? options = null,
        IProgress<Ratio>? progress = null, CancellationToken cancellation = default) =>
        Uncertainty(uncertainInputs, exactInputs).PropagateDistributions(options ?? MonteCarloOptions.Default, progress, cancellation);

    /// <summary>Evaluates with inputs by name, some of which may carry their uncertainty.</summary>
    /// <param name="values">A value for each input; names that the formula does not know are ignored.</param>
    /// <param name="budget">How far the value is known; null where nothing in it is uncertain, where it is no quantity, and where it is not smooth.</param>
    /// <exception cref="ArgumentException">An input is missing, or of another kind than declared.</exception>
    /// <exception cref="FormulaException">The formula has no value for these inputs.</exception>
    internal FormulaValue Evaluate(IReadOnlyDictionary<string, FormulaValue> values, out UncertaintyBudget? budget)
    {
        var inputs = new FormulaValue[Inputs.Count];
        for (int i = 0; i < inputs.Length; i++)
        {
            if (!values.TryGetValue(Inputs[i].Name, out inputs[i])) throw new ArgumentException($"input {Inputs[i]} is missing", nameof(values));
        }
        FormulaValue value = Evaluate(inputs);
        budget = null;
        if (!value.Kind.IsQuantity || (_uncertain.Terms.Length == 0 && !Array.Exists(inputs, input => input.Combination is not null))) return value;
        var numbers = new List<UncertainQuantity>();
        var objects = new List<object?>();
        for (int i = 0; i < inputs.Length; i++)
        {
            if (Inputs[i].Kind.IsHeldAsNumber) numbers.Add(new Core.Uncertainty.UncertainValue(inputs[i].Number, Inputs[i].Kind.Quantity ?? QuantityKind.Ratio, inputs[i].Combination ?? Core.Uncertainty.LinearCombination.Exact));
            else objects.Add(inputs[i].Object);
        }
        try
        {
            ProgramUncertainty found = Uncertainty(numbers.ToArray(), objects.Count == 0 ? null : objects.ToArray());
            if (found.IsUncertain) budget = found.Budget(Coverage.Usual);
        }
        catch (InvalidOperationException)
        {
            return value;
        }
        return budget is null ? value : value.Carrying(budget);
    }

    private ProgramUncertainty Uncertainty(UncertainQuantity[] inputs)
    {
        if (inputs is null) throw new ArgumentNullException(nameof(inputs));
        if (inputs.Length != Inputs.Count) throw WrongCount(inputs.Length, nameof(inputs));
        for (int i = 0; i < inputs.Length; i++) RequireKind(Inputs[i], inputs[i], nameof(inputs));
        return Uncertainty((UncertainQuantity[])inputs.Clone(), null);
    }

    private ProgramUncertainty Uncertainty(IReadOnlyDictionary<string, UncertainQuantity> uncertain, IReadOnlyDictionary<string, FormulaValue>? exact)
    {
        if (uncertain is null) throw new ArgumentNullException(nameof(uncertain));
        var numbers = new List<UncertainQuantity>();
        var objects = new List<object?>();
        int used = 0;
        foreach (FormulaInput input in Inputs)
        {
            FormulaValue value = default;
            bool isExact = exact is not null && exact.TryGetValue(input.Name, out value);
            bool isUncertain = uncertain.TryGetValue(input.Name, out UncertainQuantity? quantity);
            if (!isExact && !isUncertain) throw new ArgumentException($"input {input} is missing", nameof(uncertain));
            if (isExact && isUncertain) throw new ArgumentException($"input {input} is given twice", nameof(exact));
            used++;
            if (isUncertain)
            {
                RequireKind(input, quantity!, nameof(uncertain));
                numbers.Add(quantity!);
                continue;
            }
            if (!input.Kind.Equals(value.Kind)) throw new ArgumentException($"input {input.Name}: found a {value.Kind.Name} ({value}), expected a {input.Kind.Name}", nameof(exact));
            if (input.Kind.IsHeldAsNumber) numbers.Add(new Core.Uncertainty.UncertainValue(value.Number, input.Kind.Quantity ?? QuantityKind.Ratio, Core.Uncertainty.LinearCombination.Exact));
            else objects.Add(value.Object);
        }
        if (uncertain.Count + (exact?.Count ?? 0) > used)
        {
            foreach (string name in uncertain.Keys) RequireInput(name, nameof(uncertain));
            foreach (string name in exact?.Keys ?? Array.Empty<string>()) RequireInput(name, nameof(exact));
        }
        return Uncertainty(numbers.ToArray(), objects.Count == 0 ? null : objects.ToArray());
    }

    private ProgramUncertainty Uncertainty(UncertainQuantity[] numbers, object?[]? objects)
    {
        QuantityKind kind = ResultKind.Quantity ?? throw new InvalidOperationException($"the formula gives a {ResultKind.Name}; only a quantity has an uncertainty");
        ProgramUncertainty uncertainty;
        double[] estimates = Array.ConvertAll(numbers, number => number.SiEstimate);
        try
        {
            uncertainty = new ProgramUncertainty(_uncertain, _uncertainResult, kind, _text, numbers, objects);
        }
        catch (ArgumentException)
        {
            throw Diagnosis.Of(this, _program, estimates, objects);
        }
        return uncertainty.HasValue ? uncertainty : throw Diagnosis.Of(this, _program, estimates, objects);
    }

    private void RequireInput(string name, string argument)
    {
        if (FindInput(name) < 0) throw new ArgumentException($"the formula has no input '{name}'", argument);
    }

    private static void RequireKind(FormulaInput input, UncertainQuantity? quantity, string argument)
    {
        if (quantity is null) throw new ArgumentNullException(argument);
        if (!input.Kind.Equals(Functions.ValueKind.Of(quantity.Kind))) throw new ArgumentException($"input {input.Name}: found a {quantity.Kind.Name} ({quantity}), expected a {input.Kind.Name}", argument);
    }
}
