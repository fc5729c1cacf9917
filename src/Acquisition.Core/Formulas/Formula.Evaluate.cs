using System;
using System.Collections.Generic;
using System.Runtime.CompilerServices;
using Acquisition.Core.Formulas;
using Acquisition.Core.Formulas.Execution;
using Acquisition.Core.Functions;

namespace Acquisition.Core;

public sealed partial class Formula
{
    /// <summary>The registers of an everyday formula; each more costs time to clear.</summary>
    private const int FewRegisters = 16;

    /// <summary>So many registers fit the stack without a thought; a formula that needs more takes an array.</summary>
    private const int RegistersOnStack = 128;

    /// <summary>Evaluates with inputs by place. Uncertain values count as stated.</summary>
    /// <param name="inputs">One value for each input, in their order; they are not kept.</param>
    /// <exception cref="ArgumentException">An input is missing, or of another kind than declared.</exception>
    /// <exception cref="FormulaException">The formula has no value for these inputs: a division by zero, an argument out of range, a result that is not finite.</exception>
    public FormulaValue Evaluate(params FormulaValue[] inputs)
    {
        if (inputs is null) throw new ArgumentNullException(nameof(inputs));
        if (inputs.Length != Inputs.Count) throw WrongCount(inputs.Length, nameof(inputs));
        double[] numbers = new double[_program.Inputs];
        object?[] objects = _program.ObjectInputs == 0 ? Array.Empty<object?>() : new object?[_program.ObjectInputs];
        int number = 0, other = 0;
        for (int i = 0; i < inputs.Length; i++)
        {
            FormulaInput input = Inputs[i];
            if (!input.Kind.Equals(inputs[i].Kind)) throw new ArgumentException($"input {input.Name}: found a {inputs[i].Kind.Name} ({inputs[i]}), expected a {input.Kind.Name}", nameof(inputs));
            if (input.Kind.IsHeldAsNumber)
                numbers[number++] = inputs[i].Number;
            else
                objects[other++] = inputs[i].Object;
        }
        return EvaluateCore(numbers, objects);
    }

    /// <summary>Evaluates with inputs by name. Uncertain values count as stated.</summary>
    /// <param name="inputs">A value for each input; names that the formula does not know are refused.</param>
    /// <exception cref="ArgumentException">An input is missing, unknown, or of another kind than declared.</exception>
    /// <exception cref="FormulaException">The formula has no value for these inputs.</exception>
    public FormulaValue Evaluate(IReadOnlyDictionary<string, FormulaValue> inputs)
    {
        if (inputs is null) throw new ArgumentNullException(nameof(inputs));
        var ordered = new FormulaValue[Inputs.Count];
        for (int i = 0; i < ordered.Length; i++)
        {
            if (!inputs.TryGetValue(Inputs[i].Name, out ordered[i])) throw new ArgumentException($"input {Inputs[i]} is missing", nameof(inputs));
        }
        if (inputs.Count > ordered.Length)
        {
            foreach (string name in inputs.Keys)
            {
                if (FindInput(name) < 0) throw new ArgumentException($"the formula has no input '{name}'", nameof(inputs));
            }
        }
        return Evaluate(ordered);
    }

    /// <summary>Evaluates with quantities in SI, for loops: it allocates nothing unless the formula makes models.</summary>
    /// <param name="siValues">One value for each input, in their order and in the unit its kind is held in (SI; logarithmic kinds in their own unit); truth values are 1 and 0.</param>
    /// <returns>The result in the unit its kind is held in; truth values are 1 and 0.</returns>
    /// <exception cref="ArgumentException">The number of values is not that of the inputs, or an input is no number.</exception>
    /// <exception cref="InvalidOperationException">The formula gives a text or a model.</exception>
    /// <exception cref="FormulaException">The formula has no value for these inputs.</exception>
#if NET8_0_OR_GREATER
    public double EvaluateSi(params ReadOnlySpan<double> siValues)
    {
        if (!_givesNumberFromNumbers || siValues.Length != _program.Inputs) RequireNumbers(siValues.Length, nameof(siValues));
        // Operators never refuse, functions may.
        double value = _program.Calls.Length == 0 && _program.Registers <= FewRegisters ? RunWithFew(siValues) : RunGuarded(siValues);
        return Arithmetic.IsFinite(value) ? value : throw NoValue(siValues);
    }

    private double RunGuarded(ReadOnlySpan<double> siValues)
    {
        try
        {
            int registers = _program.Registers;
            return registers <= FewRegisters ? RunWithFew(siValues)
                : registers <= RegistersOnStack ? RunOnStack(siValues)
                : RunIn(new double[registers], siValues);
        }
        catch (Exception refusal) when (refusal is not (FormulaException or OutOfMemoryException))
        {
            return double.NaN;
        }
    }

    private FormulaException NoValue(ReadOnlySpan<double> siValues) => Diagnosis.Of(this, _program, siValues.ToArray(), null);

    /// <inheritdoc cref="EvaluateSi(ReadOnlySpan{double})"/>
    public double EvaluateSi(params double[] siValues) => EvaluateSi(new ReadOnlySpan<double>(siValues ?? throw new ArgumentNullException(nameof(siValues))));

    // Not inlined: the registers of both would be cleared for either.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private double RunWithFew(ReadOnlySpan<double> siValues) => RunIn(stackalloc double[FewRegisters], siValues);

    [MethodImpl(MethodImplOptions.NoInlining)]
    private double RunOnStack(ReadOnlySpan<double> siValues) => RunIn(stackalloc double[RegistersOnStack], siValues);

    private double RunIn(Span<double> numbers, ReadOnlySpan<double> siValues)
    {
        for (int i = 0; i < siValues.Length; i++) numbers[i] = siValues[i];
        _program.LoadConstants(numbers);
        int length = _program.Code.Length;
        // A formula without inputs was computed when it was built.
        if (length > 0) _program.Run(0, length, numbers, _program.NewObjects(null), null);
        return numbers[_result];
    }
#else
    public double EvaluateSi(params double[] siValues)
    {
        if (siValues is null) throw new ArgumentNullException(nameof(siValues));
        RequireNumbers(siValues.Length, nameof(siValues));
        double[] numbers = System.Threading.Interlocked.Exchange(ref _spare, null) ?? new double[_program.Registers];
        Array.Copy(siValues, numbers, siValues.Length);
        double value;
        try
        {
            _program.LoadConstants(numbers);
            _program.Run(0, _program.Code.Length, numbers, _program.NewObjects(null), null);
            value = numbers[_result];
        }
        catch (Exception refusal) when (refusal is not (FormulaException or OutOfMemoryException))
        {
            value = double.NaN;
        }
        _spare = numbers;
        return Arithmetic.IsFinite(value) ? value : throw Diagnosis.Of(this, _program, siValues, null);
    }

    /// <summary>Registers of an evaluation that has ended, for the next one: without a stack to put them on, this keeps loops free of allocations. Taken by one thread at a time.</summary>
    private double[]? _spare;
#endif

    internal int FindInput(string name)
    {
        for (int i = 0; i < Inputs.Count; i++)
        {
            if (Inputs[i].Name == name) return i;
        }
        return -1;
    }

    private FormulaValue EvaluateCore(double[] inputs, object?[] objectInputs)
    {
        var numbers = new double[_program.Registers];
        Array.Copy(inputs, numbers, inputs.Length);
        _program.LoadConstants(numbers);
        object?[] objects = _program.NewObjects(objectInputs);
        try
        {
            _program.Run(0, _program.Code.Length, numbers, objects, null);
        }
        catch (Exception refusal) when (refusal is not (FormulaException or OutOfMemoryException))
        {
            throw Diagnosis.Of(this, _program, inputs, objectInputs);
        }
        if (ResultKind.IsHeldAsNumber)
            return Arithmetic.IsFinite(numbers[_result]) ? new FormulaValue(ResultKind, numbers[_result], null, _unit, _unitFactor) : throw Diagnosis.Of(this, _program, inputs, objectInputs);
        return objects[_result] is { } value ? new FormulaValue(ResultKind, 0, value) : throw Diagnosis.Of(this, _program, inputs, objectInputs);
    }

    private void RequireNumbers(int count, string argument)
    {
        if (count != Inputs.Count) throw WrongCount(count, argument);
        if (_program.ObjectInputs > 0) throw new ArgumentException("an input of the formula is a text or a model: use Evaluate", argument);
        if (!ResultKind.IsHeldAsNumber) throw new InvalidOperationException($"the formula gives a {ResultKind.Name}: use Evaluate");
    }

    private ArgumentException WrongCount(int count, string argument) =>
        new(FormattableString.Invariant($"found {count} inputs, expected {Inputs.Count}: {string.Join(", ", Inputs)}"), argument);
}
