using System;
using Acquisition.Core.Formulas.Execution;
using Acquisition.Core.Uncertainty;

namespace Acquisition.Core.Formulas;

/// <summary>The terms stated with ± in a text, each as an uncertain value.</summary>
internal static class StatedTerms
{
    /// <summary>Each term as the deviation from its stated value: an uncertain zero. Null where the evaluation does not come to it, or its half-width is zero. Terms that other results of the same evaluation have come to are taken, and added to, so that results are correlated by them.</summary>
    internal static UncertainValue?[] Of(Program program, string text, double[] halfWidths, double[] siInputs, object?[]? objectInputs, UncertainValue?[]? shared, System.Collections.Generic.List<Finding> findings)
    {
        var terms = new UncertainValue?[program.Terms.Length];
        if (terms.Length == 0) return terms;
        double[] stated = Values(program, siInputs, objectInputs);
        for (int i = 0; i < terms.Length; i++)
        {
            UncertainTerm term = program.Terms[i];
            double width = halfWidths[i];
            if (double.IsNaN(stated[i])) continue;
            if (term.IsRelative && stated[i] == 0)
            {
                findings.Add(new Finding(
                    "part-of-zero", Severity.Warning,
                    $"{text.Substring(term.Start, term.End - term.Start)} is a part of {new Quantity(0, term.ValueKind)} here: it adds no uncertainty, which a data sheet hardly means",
                    $"state the half-width in {term.DeviationKind.Symbol}, such as percent of the range", "JCGM 100 4.3.7"));
            }
            if (!(width > 0) || !Arithmetic.IsFinite(width)) continue;
            if ((terms[i] = shared?[i]) is not null) continue;
            Distribution distribution = term.CoverageFactor is { } k ? new NormalDistribution(width / k) : new RectangularDistribution(width);
            string name = text.Substring(term.Start, term.End - term.Start);
            string statement = "± " + new Quantity(width, term.DeviationKind) + (term.CoverageFactor is { } factor
                ? FormattableString.Invariant($" (expanded, k = {factor:0.####})") : " (limits, rectangular)");
            // Of a deviation the budget shows the value that deviates, in its own unit: -10 dBm deviates by dB.
            var source = new UncertaintySource(name, new Quantity(stated[i], term.ValueKind), distribution, statement);
            terms[i] = new UncertainValue(0, term.DeviationKind, LinearCombination.Of(source));
            if (shared is not null) shared[i] = terms[i];
        }
        return terms;
    }

    /// <summary>What each term deviates from; not a number where the evaluation does not come to it.</summary>
    private static double[] Values(Program program, double[] siInputs, object?[]? objectInputs)
    {
        var stated = new double[program.Terms.Length];
        for (int i = 0; i < stated.Length; i++) stated[i] = double.NaN;
        var numbers = new double[program.Registers];
        Array.Copy(siInputs, numbers, siInputs.Length);
        program.LoadConstants(numbers);
        object?[] objects = program.NewObjects(objectInputs);
        for (int at = 0; at < program.Code.Length;)
        {
            Instruction instruction = program.Code[at];
            if (instruction.Operation == Operation.Deviate) stated[instruction.B] = numbers[instruction.A];
            at = program.Run(at, at + 1, numbers, objects, null);
        }
        return stated;
    }
}
