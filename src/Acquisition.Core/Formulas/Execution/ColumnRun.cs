using System;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Formulas.Execution;

/// <summary>
/// Runs a program over columns: chunk by chunk, each instruction over a whole chunk, so that reading instructions costs next to nothing and the chunk
/// stays near the processor. Programs that branch or make models run row by row. A row without a value gets NaN.
/// </summary>
internal sealed class ColumnRun
{
    /// <summary>A chunk of each of a dozen registers fits the first-level cache.</summary>
    private const int Chunk = 256;

    private readonly Program _program;
    private readonly double[]?[] _columns;
    private readonly double[] _fixedInputs;
    private readonly double[]?[]? _deviations;
    private readonly object?[] _objects;

    /// <summary>Prepares a run.</summary>
    /// <param name="program">The program.</param>
    /// <param name="columns">A column for each number input; null where one value serves all rows.</param>
    /// <param name="fixedInputs">The values of the inputs that have no column.</param>
    /// <param name="objectInputs">The object inputs.</param>
    /// <param name="deviations">A column for each uncertain term; null for none.</param>
    internal ColumnRun(Program program, double[]?[] columns, double[] fixedInputs, object?[]? objectInputs, double[]?[]? deviations)
    {
        _program = program;
        _columns = columns;
        _fixedInputs = fixedInputs;
        _deviations = deviations;
        _objects = program.NewObjects(objectInputs);
    }

    internal void Run(int count, int result, double[] results, LongCall? call = null)
    {
        if (_program.HasJumps || _program.WritesObjects)
            RunRows(count, result, results, call);
        else
            RunChunks(count, result, results, call);
    }

    private void RunRows(int count, int result, double[] results, LongCall? call)
    {
        var numbers = new double[_program.Registers];
        double[]? deviations = _deviations is null ? null : new double[_deviations.Length];
        _program.LoadConstants(numbers);
        for (int row = 0; row < count; row++)
        {
            call?.Reached(row, count);
            for (int i = 0; i < _program.Inputs; i++) numbers[i] = _columns[i] is { } column ? column[row] : _fixedInputs[i];
            for (int i = 0; deviations is not null && i < deviations.Length; i++) deviations[i] = _deviations![i] is { } column ? column[row] : 0;
            try
            {
                _program.Run(0, _program.Code.Length, numbers, _objects, deviations);
                results[row] = numbers[result];
            }
            catch (Exception refusal) when (refusal is not (OutOfMemoryException or OperationCanceledException))
            {
                results[row] = double.NaN;
            }
        }
    }

    private void RunChunks(int count, int result, double[] results, LongCall? call)
    {
        int size = Math.Min(Chunk, count);
        var rows = new Row[_program.Registers];
        var work = new double[_program.Registers * size];
        for (int register = 0; register < rows.Length; register++) rows[register] = new Row(work, register * size);
        for (int i = 0; i < _program.Inputs; i++)
        {
            if (_columns[i] is null) Fill(rows[i], _fixedInputs[i], size);
        }
        for (int i = 0; i < _program.Constants.Length; i++) Fill(rows[_program.Inputs + i], _program.Constants[i], size);
        bool isComputed = result >= _program.Inputs + _program.Constants.Length;
        for (int start = 0; start < count; start += size)
        {
            call?.Reached(start, count);
            int length = Math.Min(size, count - start);
            for (int i = 0; i < _program.Inputs; i++)
            {
                if (_columns[i] is { } column) rows[i] = new Row(column, start);
            }
            // The last instruction writes where the result is wanted.
            if (isComputed) rows[result] = new Row(results, start);
            foreach (Instruction instruction in _program.Code) Apply(instruction, rows, start, length);
            if (!isComputed) Array.Copy(rows[result].Values, rows[result].Offset, results, start, length);
        }
    }

    private void Apply(in Instruction instruction, Row[] rows, int start, int length)
    {
        Row target = rows[instruction.Target];
        switch (instruction.Operation)
        {
            case Operation.Deviate:
                if (_deviations?[instruction.B] is { } column)
                    ColumnArithmetic.TryApply(Operation.Add, rows[instruction.A], new Row(column, start), target, length);
                else
                    ColumnArithmetic.TryApply(Operation.Copy, rows[instruction.A], default, target, length);
                return;
            case Operation.Select:
                Row test = rows[instruction.A], whenTrue = rows[instruction.B], whenFalse = rows[instruction.C];
                for (int i = 0; i < length; i++)
                    target.Values[target.Offset + i] = Arithmetic.Select(test.Values[test.Offset + i], whenTrue.Values[whenTrue.Offset + i], whenFalse.Values[whenFalse.Offset + i]);
                return;
            case Operation.TextsEqual:
                Fill(target, string.Equals(_objects[instruction.A] as string, _objects[instruction.B] as string, StringComparison.Ordinal) ? 1 : 0, length);
                return;
            case Operation.Call1 or Operation.Call2 or Operation.Call:
                Call(_program.Calls[instruction.C], rows, target, length);
                return;
        }
        Row a = rows[instruction.A], b = rows[instruction.B];
        if (ColumnArithmetic.TryApply(instruction.Operation, a, b, target, length)) return;
        for (int i = 0; i < length; i++) target.Values[target.Offset + i] = Arithmetic.Apply(instruction.Operation, a.Values[a.Offset + i], b.Values[b.Offset + i]);
    }

    private void Call(CallSite site, Row[] rows, Row target, int length)
    {
        var numbers = new double[site.Slots.Length];
        var slots = new int[site.Slots.Length];
        for (int j = 0; j < slots.Length; j++) slots[j] = site.IsNumber[j] ? j : site.Slots[j];
        for (int i = 0; i < length; i++)
        {
            bool exists = true;
            for (int j = 0; j < slots.Length; j++)
            {
                if (!site.IsNumber[j])
                {
                    exists &= _objects[slots[j]] is not null;
                    continue;
                }
                Row row = rows[site.Slots[j]];
                numbers[j] = row.Values[row.Offset + i];
                exists &= Arithmetic.IsFinite(numbers[j]);
            }
            double value = double.NaN;
            try
            {
                if (exists) value = site.Kernel.Number(numbers, _objects, slots);
            }
            catch (Exception refusal) when (refusal is not (OutOfMemoryException or OperationCanceledException))
            {
                // The row has no value; whoever needs to know why evaluates it alone.
            }
            target.Values[target.Offset + i] = value;
        }
    }

    private static void Fill(Row row, double value, int count)
    {
        for (int i = 0; i < count; i++) row.Values[row.Offset + i] = value;
    }
}
