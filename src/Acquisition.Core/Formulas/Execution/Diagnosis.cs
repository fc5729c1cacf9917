using System;
using System.Collections.Generic;
using Acquisition.Core.Formulas.Syntax;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Formulas.Execution;

/// <summary>
/// Why an evaluation gave no value. Evaluating itself checks nothing on the way; when it fails, the program is run once more, instruction by instruction,
/// to find the first that went wrong and the part of the text it comes from.
/// </summary>
internal static class Diagnosis
{
    internal static FormulaException Of(Formula formula, Program program, double[] inputs, object?[]? objectInputs) =>
        Of(formula.Text, formula.Inputs, program, inputs, objectInputs, 0, program.Code.Length, null, out _);

    /// <summary>Runs instructions one by one until one fails.</summary>
    internal static FormulaException Of(string text, IReadOnlyList<FormulaInput> names, Program program, double[] inputs, object?[]? objectInputs, int from, int to, double[]? registers, out FormulaProblem problem)
    {
        var problems = new ProblemList(text);
        int input = 0;
        foreach (FormulaInput each in names)
        {
            if (!each.Kind.IsHeldAsNumber) continue;
            if (!Arithmetic.IsFinite(inputs[input++]))
            {
                problem = problems.At(0, 0, FormattableString.Invariant($"input {each.Name} is {inputs[input - 1]}, expected a finite value"));
                return new FormulaException(new[] { problem });
            }
        }
        double[] numbers = registers ?? new double[program.Registers];
        if (registers is null)
        {
            Array.Copy(inputs, numbers, Math.Min(inputs.Length, numbers.Length));
            program.LoadConstants(numbers);
        }
        object?[] objects = program.NewObjects(objectInputs);
        for (int at = from; at < to;)
        {
            Instruction instruction = program.Code[at];
            string? reason = null;
            Exception? cause = null;
            try
            {
                int next = program.Run(at, at + 1, numbers, objects, null);
                reason = Failure(program, instruction, numbers, objects);
                at = next;
            }
            catch (Exception refusal) when (refusal is not (OutOfMemoryException or OperationCanceledException))
            {
                CallSite site = program.Calls[instruction.C];
                reason = site.Function.Name + ": " + MessageOf(refusal);
                cause = refusal;
            }
            if (reason is null) continue;
            problem = problems.At(instruction.Start, instruction.End, reason);
            return new FormulaException(new[] { problem }, cause);
        }
        problem = problems.At(0, text.Length, "the formula has no finite value");
        return new FormulaException(new[] { problem });
    }

    private static string? Failure(Program program, in Instruction instruction, double[] numbers, object?[] objects)
    {
        switch (instruction.Operation)
        {
            case Operation.Jump or Operation.JumpUnless or Operation.JumpUnlessForObject or Operation.CopyObject or Operation.SelectObject:
                return null;
            case Operation.CallForObject:
                return objects[instruction.Target] is null ? program.Calls[instruction.C].Function.Name + " gives nothing for these arguments" : null;
        }
        double value = numbers[instruction.Target];
        if (Arithmetic.IsFinite(value)) return null;
        return instruction.Operation switch
        {
            Operation.Divide => "division by zero",
            Operation.SquareRoot => "square root of a negative value",
            Operation.Power => "the power has no finite real value",
            Operation.LevelInBandwidth or Operation.LevelPerBandwidth => "the bandwidth must be above 0 Hz",
            Operation.Call or Operation.Call1 or Operation.Call2 => program.Calls[instruction.C].Function.Name + " has no finite value for these arguments",
            _ => "the value is too large",
        };
    }

    /// <summary>The message without the note that the framework adds about the parameter.</summary>
    internal static string MessageOf(Exception refusal)
    {
        string message = refusal.Message;
        int note = message.IndexOf(" (Parameter '", StringComparison.Ordinal);
        if (note < 0) note = message.IndexOf(Environment.NewLine + "Parameter name:", StringComparison.Ordinal);
        return note > 0 ? message.Substring(0, note) : message;
    }
}
