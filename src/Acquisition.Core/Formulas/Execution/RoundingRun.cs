using System;

namespace Acquisition.Core.Formulas.Execution;

/// <summary>
/// Runs a program as <see cref="Program.Run"/> does, with the same values, and keeps beside each how far rounding may have moved it. Two values that differ by no more than that compare as equal, so that a
/// value exactly at its limit is at it, however the two were computed (24.0012 MHz / 24 MHz - 1 is 50 ppm). A limit belongs to what it allows (JCGM 106 8.2).
/// </summary>
internal sealed class RoundingRun
{
    private readonly Program _program;

    internal RoundingRun(Program program)
    {
        _program = program;
        Roundings = new double[program.Registers];
        for (int i = 0; i < program.Constants.Length; i++)
            Roundings[program.Inputs + i] = Rounding.Least(program.Constants[i], program.Roundings is { } stated && stated.TryGetValue(i, out double rounding) ? rounding : 0);
    }

    /// <summary>How far rounding may have moved each register.</summary>
    internal double[] Roundings { get; }

    internal void Run(int from, int to, double[] numbers, object?[] objects)
    {
        for (int at = from; at < to;)
        {
            Instruction i = _program.Code[at];
            switch (i.Operation)
            {
                case Operation.Less or Operation.LessOrEqual or Operation.Equal or Operation.NotEqual:
                    bool isTie = Math.Abs(numbers[i.A] - numbers[i.B]) <= Roundings[i.A] + Roundings[i.B];
                    at = _program.Run(at, at + 1, numbers, objects, null);
                    if (isTie) numbers[i.Target] = i.Operation is Operation.LessOrEqual or Operation.Equal ? 1 : 0;
                    Roundings[i.Target] = 0;
                    break;
                case Operation.Jump or Operation.JumpUnless or Operation.JumpUnlessForObject or Operation.CallForObject or Operation.CopyObject or Operation.SelectObject:
                    at = _program.Run(at, at + 1, numbers, objects, null);
                    break;
                default:
                    double rounding = After(at, i, numbers, objects);
                    at = _program.Run(at, at + 1, numbers, objects, null);
                    Roundings[i.Target] = rounding;
                    break;
            }
        }
    }

    private double After(int at, in Instruction i, double[] numbers, object?[] objects)
    {
        switch (i.Operation)
        {
            case Operation.Copy or Operation.Negate or Operation.Absolute or Operation.Deviate:
                return Roundings[i.A];
            case Operation.Select:
                return Roundings[numbers[i.A] == 1 ? i.B : i.C];
            case Operation.And or Operation.Or or Operation.Not or Operation.TextsEqual:
                return 0;
            case Operation.Add or Operation.Subtract:
                double sum = i.Operation == Operation.Add ? numbers[i.A] + numbers[i.B] : numbers[i.A] - numbers[i.B];
                return Roundings[i.A] + Roundings[i.B] + Rounding.LastPlace * Math.Abs(sum);
            case Operation.Call:
                return AfterMoving(at, i.Target, _program.Calls[i.C].NumberSlots(), Rounding.OfFunctions, numbers, objects);
            case Operation.Call1:
                return AfterMoving(at, i.Target, new[] { i.A }, Rounding.OfFunctions, numbers, objects);
            case Operation.Call2:
                return AfterMoving(at, i.Target, new[] { i.A, i.B }, Rounding.OfFunctions, numbers, objects);
            default:
                return Rounding.Of(i.Operation, numbers[i.A], Roundings[i.A], numbers[i.B], Roundings[i.B]);
        }
    }

    /// <summary>Calls a function once more for each argument, moved. What the function refuses then is nothing that rounding could bring about by itself.</summary>
    private double AfterMoving(int at, int target, int[] arguments, double ownRounding, double[] numbers, object?[] objects)
    {
        double before = numbers[target];
        double value = Value();
        double rounding = ownRounding * Math.Abs(value);
        foreach (int argument in arguments)
        {
            double kept = numbers[argument], moved = kept + Rounding.Magnified * Roundings[argument];
            if (moved == kept) continue;
            numbers[argument] = moved;
            rounding += Rounding.Carried(value, Value());
            numbers[argument] = kept;
        }
        return rounding;

        double Value()
        {
            try
            {
                _program.Run(at, at + 1, numbers, objects, null);
                return numbers[target];
            }
            catch (Exception refusal) when (refusal is not (OutOfMemoryException or OperationCanceledException))
            {
                return double.NaN;
            }
            finally
            {
                numbers[target] = before;
            }
        }
    }
}
