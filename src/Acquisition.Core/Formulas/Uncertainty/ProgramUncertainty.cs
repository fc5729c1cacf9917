using System;
using System.Collections.Generic;
using System.Threading;
using Acquisition.Core.Formulas.Execution;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core.Formulas;

/// <summary>One number of a program - the result of a formula, a line of a worksheet - with the uncertainty of what it is computed from: inputs of the host, and terms stated with ± in the text.</summary>
internal sealed class ProgramUncertainty
{
    /// <summary>A contribution that is this small a part of the largest is one that vanishes to first order, up to rounding.</summary>
    private const double Vanishing = 1e-9;

    /// <summary>A bend of a tenth of the standard uncertainty moves the ends of an interval in their second digit.</summary>
    private const double NoticeableBend = 0.1;

    /// <summary>The corners of so many limits are looked at one by one.</summary>
    private const int MostWithLimits = 4;

    private readonly Program _program;
    private readonly int _result;
    private readonly QuantityKind _kind;
    private readonly object?[]? _objectInputs;
    private readonly UncertainQuantity[] _inputs;
    private readonly UncertainValue?[] _terms;
    private readonly double[] _siInputs;
    private readonly double[] _scales;
    private readonly Sensitivities _sensitivities;
    private readonly LinearCombination _combination;
    private readonly List<Finding> _findings = new();

    /// <param name="program">The program, compiled so that uncertain terms may deviate.</param>
    /// <param name="result">The register of the number.</param>
    /// <param name="kind">What the number is.</param>
    /// <param name="text">The text that the program was compiled from.</param>
    /// <param name="inputs">The number inputs.</param>
    /// <param name="objectInputs">The text and model inputs; null where there are none.</param>
    /// <param name="sharedTerms">The terms that other results of the same evaluation have come to; null for one result alone.</param>
    internal ProgramUncertainty(Program program, int result, QuantityKind kind, string text, UncertainQuantity[] inputs, object?[]? objectInputs, UncertainValue?[]? sharedTerms = null)
    {
        _program = program;
        _result = result;
        _kind = kind;
        _inputs = inputs;
        _objectInputs = objectInputs;
        _siInputs = Array.ConvertAll(inputs, input => input.SiEstimate);
        _scales = Array.ConvertAll(inputs, input => input.SiStandardUncertainty);
        _sensitivities = Sensitivities.Of(program, result, _siInputs, objectInputs, _scales);
        _terms = StatedTerms.Of(program, text, _sensitivities.HalfWidths, _siInputs, objectInputs, sharedTerms, _findings);
        LinearCombination combination = LinearCombination.Exact;
        for (int i = 0; i < inputs.Length; i++) combination = With(combination, inputs[i].Combination, _sensitivities.Derivatives[i]);
        for (int i = 0; i < _terms.Length; i++)
        {
            if (_terms[i] is { } term) combination = With(combination, term.Combination, _sensitivities.Derivatives[inputs.Length + i]);
        }
        _combination = WithoutStrangers(combination);
    }

    /// <summary>Whether the number has a value at the estimates.</summary>
    internal bool HasValue => Arithmetic.IsFinite(_sensitivities.Value);

    /// <summary>The value in SI at the estimates.</summary>
    internal double SiValue => _sensitivities.Value;

    internal bool IsUncertain => _combination.Sources.Length > 0;

    internal UncertainQuantity Value() => new UncertainValue(_sensitivities.Value, _kind, Defined(_combination));

    /// <summary>The budget; where an input's first-order contribution vanishes, with the second-order terms of JCGM 100 5.1.2.</summary>
    internal UncertaintyBudget Budget(Coverage coverage)
    {
        LinearCombination combination = Defined(_combination);
        var findings = new List<Finding>(_findings);
        AddNumericalFinding(findings);
        double second = HasVanishingContribution(combination) ? SecondOrderVariance(combination, findings) : 0;
        return new UncertaintyBudget(new Quantity(_sensitivities.Value, _kind), combination.Sources, combination.Sensitivities, coverage, second, findings, Nonlinearity, second == 0 ? () => Reach(combination) : null);
    }

    /// <summary>Where the result bends over one standard uncertainty of an input by a noticeable part of its own, first order is not enough (JCGM 100 5.1.2, JCGM 101 5.8).</summary>
    private Finding? Nonlinearity(UncertaintyBudget budget)
    {
        UncertaintySource[] sources = budget.Sources;
        double u = budget.SiStandardUncertainty, worst = 0;
        if (u == 0) return null;
        string name = "";
        double[] x = new double[sources.Length], gradient = new double[sources.Length];
        for (int j = 0; j < sources.Length; j++)
        {
            x[j] = sources[j].StandardUncertainty;
            double above = Follow(sources, x, gradient);
            x[j] = -x[j];
            double below = Follow(sources, x, gradient);
            x[j] = 0;
            double bend = Math.Abs(above / 2 + below / 2 - _sensitivities.Value) / u;
            if (bend <= worst) continue;
            worst = bend;
            name = sources[j].Name;
        }
        if (!(worst > NoticeableBend)) return null;
        return new Finding(
            "nonlinear-model", Severity.Warning,
            string.Format(System.Globalization.CultureInfo.InvariantCulture, "over ± one standard uncertainty of {0} the result bends by {1:P0} of its standard uncertainty: it is not linear enough for first order", name, worst),
            "propagate distributions (JCGM 101) and compare", "JCGM 100 5.1.2 note; JCGM 101 5.8");
    }

    /// <summary>
    /// How far the result can lie from its value: the farthest of the corners of all stated limits (JCGM 100 4.3.7: beyond them there is nothing). Infinite where an input has no limits, where there are more
    /// than a few, and where the result bends so that it need not be farthest in a corner.
    /// </summary>
    private double Reach(LinearCombination combination)
    {
        UncertaintySource[] sources = combination.Sources;
        if (sources.Length == 0 || sources.Length > MostWithLimits || Array.Exists(sources, source => source.Set is not null || double.IsInfinity(source.Distribution.HalfWidth))) return double.PositiveInfinity;
        double straight = 0, farthest = 0;
        for (int j = 0; j < sources.Length; j++) straight += Math.Abs(combination.Sensitivities[j]) * sources[j].Distribution.HalfWidth;
        double[] x = new double[sources.Length], gradient = new double[sources.Length];
        for (int corner = 0; corner < 1 << sources.Length; corner++)
        {
            for (int j = 0; j < x.Length; j++) x[j] = (corner >> j & 1) == 0 ? sources[j].Distribution.HalfWidth : -sources[j].Distribution.HalfWidth;
            farthest = Math.Max(farthest, Math.Abs(Follow(sources, x, gradient) - _sensitivities.Value));
        }
        return Math.Abs(farthest - straight) <= NoticeableBend * straight ? Math.Max(farthest, straight) : double.PositiveInfinity;
    }

    /// <summary>Trials over columns of draws (JCGM 101).</summary>
    internal MonteCarloResult PropagateDistributions(MonteCarloOptions options, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        var drawn = new List<UncertainQuantity>();
        int[] inputColumn = new int[_inputs.Length], termColumn = new int[_terms.Length];
        for (int i = 0; i < _inputs.Length; i++) inputColumn[i] = Place(_inputs[i].Combination.Sources.Length > 0 ? _inputs[i] : null);
        for (int i = 0; i < _terms.Length; i++) termColumn[i] = Place(_terms[i]);

        return MonteCarlo.Run(
            drawn,
            (columns, results, count) =>
                new ColumnRun(_program, Picked(columns, inputColumn), _siInputs, _objectInputs, Picked(columns, termColumn)).Run(count, _result, results),
            _kind, options, progress, cancellation);

        int Place(UncertainQuantity? quantity)
        {
            if (quantity is null) return -1;
            drawn.Add(quantity);
            return drawn.Count - 1;
        }

        static double[]?[] Picked(double[][] columns, int[] places) => Array.ConvertAll(places, place => place < 0 ? null : columns[place]);
    }

    private static LinearCombination With(LinearCombination combination, LinearCombination part, double factor) =>
        part.Sources.Length == 0 ? combination : LinearCombination.Sum(combination, 1, part, factor);

    /// <summary>Refuses a sensitivity that does not exist rather than passing it on.</summary>
    private static LinearCombination Defined(LinearCombination combination)
    {
        for (int i = 0; i < combination.Sources.Length; i++)
        {
            if (!Arithmetic.IsFinite(combination.Sensitivities[i]))
                throw new InvalidOperationException($"the result has no sensitivity to {combination.Sources[i].Name}: it is not smooth there; propagate distributions instead");
        }
        return combination;
    }

    private void AddNumericalFinding(List<Finding> findings)
    {
        var names = new List<string>();
        for (int i = 0; i < _sensitivities.IsNumerical.Length; i++)
        {
            if (!_sensitivities.IsNumerical[i]) continue;
            UncertainQuantity? of = i < _inputs.Length ? _inputs[i] : _terms[i - _inputs.Length];
            if (of is null) continue;
            foreach (UncertaintySource source in of.Combination.Sources)
            {
                if (!names.Contains(source.Name)) names.Add(source.Name);
            }
        }
        if (names.Count == 0) return;
        findings.Add(new Finding(
            "numerical-sensitivity", Severity.Note,
            $"the sensitivity to {string.Join(", ", names)} passes through a function that declares no derivative; it was found by extrapolated differences (Ridders)",
            null, "handbook 11.2"));
    }

    private static bool HasVanishingContribution(LinearCombination combination)
    {
        double largest = 0;
        for (int i = 0; i < combination.Sources.Length; i++) largest = Math.Max(largest, Math.Abs(combination.Sensitivities[i] * combination.Sources[i].StandardUncertainty));
        for (int i = 0; i < combination.Sources.Length; i++)
        {
            UncertaintySource source = combination.Sources[i];
            if (source.StandardUncertainty > 0 && Math.Abs(combination.Sensitivities[i] * source.StandardUncertainty) <= Vanishing * largest) return true;
        }
        return false;
    }

    private double SecondOrderVariance(LinearCombination combination, List<Finding> findings)
    {
        UncertaintySource[] sources = combination.Sources;
        if (Array.Exists(sources, source => source.Set is not null))
        {
            findings.Add(new Finding(
                "second-order-not-evaluated", Severity.Warning,
                "an input has no first-order contribution, and inputs are correlated, for which the second-order terms of JCGM 100 do not hold",
                "propagate distributions (JCGM 101)", "JCGM 100 5.1.2 note"));
            return 0;
        }
        double variance = SecondOrder.Variance(
            (x, gradient) => Follow(sources, x, gradient), new double[sources.Length], Array.ConvertAll(sources, source => source.StandardUncertainty));
        if (variance >= 0 && Arithmetic.IsFinite(variance)) return variance;
        findings.Add(new Finding(
            "second-order-not-evaluated", Severity.Warning,
            "an input has no first-order contribution, and the second-order terms could not be found: the result has a kink at the estimates, or no value within the inputs' uncertainties",
            "propagate distributions (JCGM 101)", "JCGM 100 5.1.2 note"));
        return 0;
    }

    /// <summary>Drops the sources that the result has nothing to do with, such as terms of other lines: moving one changes neither the value nor any sensitivity. (At a product of zeros it changes the other sensitivity.)</summary>
    private LinearCombination WithoutStrangers(LinearCombination combination)
    {
        int n = combination.Sources.Length, kept = 0;
        double[] x = new double[n], here = new double[n], there = new double[n];
        double value = Array.IndexOf(combination.Sensitivities, 0.0) < 0 ? 0 : Follow(combination.Sources, x, here);
        var sources = new UncertaintySource[n];
        var sensitivities = new double[n];
        for (int j = 0; j < n; j++)
        {
            if (combination.Sensitivities[j] == 0)
            {
                x[j] = combination.Sources[j].StandardUncertainty;
                bool isStranger = Follow(combination.Sources, x, there).Equals(value) && Same(here, there);
                x[j] = 0;
                if (isStranger) continue;
            }
            sources[kept] = combination.Sources[j];
            sensitivities[kept++] = combination.Sensitivities[j];
        }
        if (kept == n) return combination;
        Array.Resize(ref sources, kept);
        Array.Resize(ref sensitivities, kept);
        return new LinearCombination(sources, sensitivities);
    }

    private static bool Same(double[] left, double[] right)
    {
        for (int i = 0; i < left.Length; i++)
        {
            if (!left[i].Equals(right[i])) return false;
        }
        return true;
    }

    /// <summary>The result and its derivatives by the sources when these deviate: the inputs and terms follow the sources, the result follows those.</summary>
    private double Follow(UncertaintySource[] sources, double[] deviationsOfSources, double[] gradient)
    {
        var inputs = new double[_inputs.Length];
        var deviations = new double[_terms.Length];
        for (int i = 0; i < inputs.Length; i++) inputs[i] = _siInputs[i] + Moved(_inputs[i].Combination);
        for (int i = 0; i < deviations.Length; i++) deviations[i] = _terms[i] is { } term ? Moved(term.Combination) : 0;
        Sensitivities found = Sensitivities.Of(_program, _result, inputs, _objectInputs, _scales, deviations);
        Array.Clear(gradient, 0, gradient.Length);
        for (int i = 0; i < inputs.Length; i++) Gather(_inputs[i].Combination, found.Derivatives[i]);
        for (int i = 0; i < deviations.Length; i++)
        {
            if (_terms[i] is { } term) Gather(term.Combination, found.Derivatives[inputs.Length + i]);
        }
        return found.Value;

        double Moved(LinearCombination of)
        {
            double sum = 0;
            for (int i = 0; i < of.Sources.Length; i++)
            {
                int place = Array.IndexOf(sources, of.Sources[i]);
                if (place >= 0) sum += of.Sensitivities[i] * deviationsOfSources[place];
            }
            return sum;
        }

        void Gather(LinearCombination of, double slope)
        {
            for (int i = 0; i < of.Sources.Length; i++)
            {
                int place = Array.IndexOf(sources, of.Sources[i]);
                if (place >= 0) gradient[place] += slope * of.Sensitivities[i];
            }
        }
    }
}
