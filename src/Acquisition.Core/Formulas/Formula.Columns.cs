using System;
using System.Threading;
using Acquisition.Core.Formulas;
using Acquisition.Core.Formulas.Execution;

namespace Acquisition.Core;

public sealed partial class Formula
{
    /// <summary>Evaluates over columns: row by row the same bits as <see cref="EvaluateSi(double[])"/>, at the speed of a loop written by hand.</summary>
    /// <param name="columnsInSi">One array for each input, in their order, in the unit its kind is held in; all as long as <paramref name="resultsInSi"/>.</param>
    /// <param name="resultsInSi">Takes the results; may be none of the inputs.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentException">There are not as many columns as inputs, or they differ in length.</exception>
    /// <exception cref="InvalidOperationException">The formula takes or gives a text or a model.</exception>
    /// <exception cref="FormulaException">The formula has no value for a row; the message names the first such row, from 0.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled; part of the results is written.</exception>
    public void EvaluateColumns(double[][] columnsInSi, double[] resultsInSi, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        if (columnsInSi is null) throw new ArgumentNullException(nameof(columnsInSi));
        if (resultsInSi is null) throw new ArgumentNullException(nameof(resultsInSi));
        RequireNumbers(columnsInSi.Length, nameof(columnsInSi));
        for (int i = 0; i < columnsInSi.Length; i++)
        {
            if (columnsInSi[i] is null || columnsInSi[i].Length != resultsInSi.Length)
                throw new ArgumentException(FormattableString.Invariant($"the column of {Inputs[i].Name} has {columnsInSi[i]?.Length ?? 0} values, expected {resultsInSi.Length}"), nameof(columnsInSi));
            if (ReferenceEquals(columnsInSi[i], resultsInSi)) throw new ArgumentException("the results would overwrite an input", nameof(resultsInSi));
        }
        LongCall? call = LongCall.Of(progress, cancellation);
        new ColumnRun(_program, columnsInSi, Array.Empty<double>(), null, null).Run(resultsInSi.Length, _result, resultsInSi, call);
        RequireValues(columnsInSi, resultsInSi);
        call?.Completed();
    }

    private void RequireValues(double[][] columnsInSi, double[] resultsInSi)
    {
        double sum = 0;
        for (int row = 0; row < resultsInSi.Length; row++) sum += resultsInSi[row] - resultsInSi[row];
        if (sum == 0) return;
        for (int row = 0; row < resultsInSi.Length; row++)
        {
            if (Arithmetic.IsFinite(resultsInSi[row])) continue;
            FormulaException reason = Diagnosis.Of(this, _program, Array.ConvertAll(columnsInSi, column => column[row]), null);
            throw new FormulaException(FormattableString.Invariant($"row {row}: {reason.Message}"), reason);
        }
    }

#if NET8_0_OR_GREATER
    /// <summary>Evaluates a formula of one input over a column.</summary>
    /// <param name="siValues">The input.</param>
    /// <param name="resultsInSi">Takes the results, as many as there are values.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentException">The formula has not one input, or the lengths differ.</exception>
    /// <exception cref="FormulaException">The formula has no value for a row.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled; part of the results is written.</exception>
    public void EvaluateColumn(ReadOnlySpan<double> siValues, Span<double> resultsInSi, IProgress<Ratio>? progress = null, CancellationToken cancellation = default) =>
        EvaluateSpans(siValues, default, default, 1, resultsInSi, LongCall.Of(progress, cancellation));

    /// <summary>Evaluates a formula of two inputs over columns.</summary>
    /// <param name="firstSiValues">The first input.</param>
    /// <param name="secondSiValues">The second input.</param>
    /// <param name="resultsInSi">Takes the results, as many as there are values.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentException">The formula has not two inputs, or the lengths differ.</exception>
    /// <exception cref="FormulaException">The formula has no value for a row.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled; part of the results is written.</exception>
    public void EvaluateColumns(
        ReadOnlySpan<double> firstSiValues, ReadOnlySpan<double> secondSiValues, Span<double> resultsInSi, IProgress<Ratio>? progress = null, CancellationToken cancellation = default) =>
        EvaluateSpans(firstSiValues, secondSiValues, default, 2, resultsInSi, LongCall.Of(progress, cancellation));

    /// <summary>Evaluates a formula of three inputs over columns.</summary>
    /// <param name="firstSiValues">The first input.</param>
    /// <param name="secondSiValues">The second input.</param>
    /// <param name="thirdSiValues">The third input.</param>
    /// <param name="resultsInSi">Takes the results, as many as there are values.</param>
    /// <param name="progress">Is told the part that is done, from 0 to 1; null where nobody asks.</param>
    /// <param name="cancellation">Cancels the call.</param>
    /// <exception cref="ArgumentException">The formula has not three inputs, or the lengths differ.</exception>
    /// <exception cref="FormulaException">The formula has no value for a row.</exception>
    /// <exception cref="OperationCanceledException">The call was cancelled; part of the results is written.</exception>
    public void EvaluateColumns(
        ReadOnlySpan<double> firstSiValues, ReadOnlySpan<double> secondSiValues, ReadOnlySpan<double> thirdSiValues, Span<double> resultsInSi, IProgress<Ratio>? progress = null, CancellationToken cancellation = default) =>
        EvaluateSpans(firstSiValues, secondSiValues, thirdSiValues, 3, resultsInSi, LongCall.Of(progress, cancellation));

    /// <summary>Spans cannot be kept in arrays, so stretches of them are copied; a stretch is large against the cost of starting a run.</summary>
    private void EvaluateSpans(ReadOnlySpan<double> first, ReadOnlySpan<double> second, ReadOnlySpan<double> third, int count, Span<double> results, LongCall? call)
    {
        const int Stretch = 8192;
        RequireNumbers(count, "siValues");
        if (first.Length != results.Length || (count > 1 && second.Length != results.Length) || (count > 2 && third.Length != results.Length))
            throw new ArgumentException("columns and results differ in length", nameof(results));
        int size = Math.Min(Stretch, results.Length);
        var columns = new double[count][];
        for (int i = 0; i < count; i++) columns[i] = new double[size];
        var part = new double[size];
        var run = new ColumnRun(_program, columns, [], null, null);
        for (int start = 0; start < results.Length; start += size)
        {
            int length = Math.Min(size, results.Length - start);
            first.Slice(start, length).CopyTo(columns[0]);
            if (count > 1) second.Slice(start, length).CopyTo(columns[1]);
            if (count > 2) third.Slice(start, length).CopyTo(columns[2]);
            run.Run(length, _result, part, call?.Part((double)start / results.Length, (double)(start + length) / results.Length));
            part.AsSpan(0, length).CopyTo(results.Slice(start, length));
            for (int row = 0; row < length; row++)
            {
                if (Arithmetic.IsFinite(part[row])) continue;
                FormulaException reason = Diagnosis.Of(this, _program, Array.ConvertAll(columns, column => column[row]), null);
                throw new FormulaException(FormattableString.Invariant($"row {start + row}: {reason.Message}"), reason);
            }
        }
        call?.Completed();
    }
#endif
}
