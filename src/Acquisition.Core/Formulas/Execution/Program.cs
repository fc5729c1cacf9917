using System;
using Acquisition.Core.Functions;
#if NET8_0_OR_GREATER
using Numbers = System.Span<double>;
#else
using Numbers = double[];
#endif

namespace Acquisition.Core.Formulas.Execution;

/// <summary>
/// A formula or worksheet as a flat list of instructions over registers: inputs first, then constants, then what is computed. Immutable, so any number of
/// threads may run it, each with registers of its own.
/// </summary>
internal sealed partial class Program
{
    internal Program(Instruction[] code, CallSite[] calls, double[] constants, object?[] objects, int inputs, int objectInputs, int registers, int objectRegisters, UncertainTerm[] terms,
        System.Collections.Generic.IReadOnlyDictionary<int, double>? roundings = null)
    {
        Code = code;
        Calls = calls;
        Constants = constants;
        Objects = objects;
        Inputs = inputs;
        ObjectInputs = objectInputs;
        Registers = registers;
        ObjectRegisters = objectRegisters;
        Terms = terms;
        Roundings = roundings;
        for (int i = 0; i < code.Length; i++)
        {
            Operation operation = code[i].Operation;
            HasJumps |= operation is Operation.Jump or Operation.JumpUnless or Operation.JumpUnlessForObject;
            WritesObjects |= operation is Operation.CallForObject or Operation.CopyObject or Operation.SelectObject;
        }
    }

    internal readonly Instruction[] Code;

    internal readonly CallSite[] Calls;

    internal readonly double[] Constants;

    /// <summary>The object registers with their constants in place.</summary>
    internal readonly object?[] Objects;

    internal readonly int Inputs;

    internal readonly int ObjectInputs;

    internal readonly int Registers;

    internal readonly int ObjectRegisters;

    internal readonly UncertainTerm[] Terms;

    /// <summary>What constants that were computed have lost to rounding, by their places among the constants; null where none was.</summary>
    internal readonly System.Collections.Generic.IReadOnlyDictionary<int, double>? Roundings;

    internal readonly bool HasJumps;

    internal readonly bool WritesObjects;

    /// <summary>Object registers for one evaluation: the constants alone are shared, anything else is copied.</summary>
    internal object?[] NewObjects(object?[]? inputs)
    {
        if (ObjectInputs == 0 && !WritesObjects) return Objects;
        var objects = (object?[])Objects.Clone();
        if (inputs is not null) Array.Copy(inputs, objects, ObjectInputs);
        return objects;
    }

    /// <summary>This program with stretches of it replaced by values: what a host gives instead of what the text says.</summary>
    internal Program With(System.Collections.Generic.IReadOnlyList<Replacement> replacements)
    {
        if (replacements.Count == 0) return this;
        var code = (Instruction[])Code.Clone();
        var constants = (double[])Constants.Clone();
        var objects = (object?[])Objects.Clone();
        foreach (Replacement each in replacements)
        {
            Instruction place = code[each.From];
            code[each.From] = new Instruction { Operation = each.IsNumber ? Operation.Copy : Operation.CopyObject, Target = each.Target, A = each.Slot, B = each.Slot, Start = place.Start, End = place.End };
            if (each.To > each.From + 1) code[each.From + 1] = new Instruction { Operation = Operation.Jump, B = each.To, Start = place.Start, End = place.End };
            if (each.IsNumber)
                constants[each.Slot - Inputs] = each.Number;
            else
                objects[each.Slot] = each.Object;
        }
        return new Program(code, Calls, constants, objects, Inputs, ObjectInputs, Registers, ObjectRegisters, Terms, Roundings);
    }

    /// <summary>The stretches of this program that are asked for, one after the other; jumps must stay within theirs.</summary>
    /// <param name="stretches">First instructions and ends, in ascending order.</param>
    internal Program Only(System.Collections.Generic.IReadOnlyList<(int From, int To)> stretches)
    {
        int length = 0;
        foreach ((int from, int to) in stretches) length += to - from;
        var code = new Instruction[length];
        int at = 0;
        foreach ((int from, int to) in stretches)
        {
            int moved = from - at;
            for (int i = from; i < to; i++, at++)
            {
                code[at] = Code[i];
                if (code[at].Operation is not (Operation.Jump or Operation.JumpUnless or Operation.JumpUnlessForObject)) continue;
                code[at].B -= moved;
                code[at].C -= moved;
            }
        }
        return new Program(code, Calls, Constants, Objects, Inputs, ObjectInputs, Registers, ObjectRegisters, Terms, Roundings);
    }

    /// <summary>Puts the constants where the instructions expect them.</summary>
    internal void LoadConstants(Numbers numbers)
    {
        double[] constants = Constants;
        for (int i = 0; i < constants.Length; i++) numbers[Inputs + i] = constants[i];
    }

    /// <summary>Runs instructions from <paramref name="from"/> until <paramref name="to"/>.</summary>
    /// <param name="from">The first instruction.</param>
    /// <param name="to">The instruction before which to stop.</param>
    /// <param name="numbers">The registers, inputs and constants loaded.</param>
    /// <param name="objects">The object registers.</param>
    /// <param name="deviations">How far each uncertain term lies from its stated value; null for not at all.</param>
    /// <returns>The instruction that would be next.</returns>
    internal int Run(int from, int to, Numbers numbers, object?[] objects, double[]? deviations)
    {
        Instruction[] code = Code;
        int at = from;
        while (at < to)
        {
            ref readonly Instruction i = ref code[at++];
            switch (i.Operation)
            {
                case Operation.Copy: numbers[i.Target] = numbers[i.A]; break;
                case Operation.Negate: numbers[i.Target] = -numbers[i.A]; break;
                case Operation.Add: numbers[i.Target] = numbers[i.A] + numbers[i.B]; break;
                case Operation.Subtract: numbers[i.Target] = numbers[i.A] - numbers[i.B]; break;
                case Operation.Multiply: numbers[i.Target] = numbers[i.A] * numbers[i.B]; break;
                case Operation.Divide: numbers[i.Target] = Arithmetic.Divide(numbers[i.A], numbers[i.B]); break;
                case Operation.Square: numbers[i.Target] = numbers[i.A] * numbers[i.A]; break;
                case Operation.SquareRoot: numbers[i.Target] = Math.Sqrt(numbers[i.A]); break;
                case Operation.Absolute: numbers[i.Target] = Math.Abs(numbers[i.A]); break;
                case Operation.Select: numbers[i.Target] = Arithmetic.Select(numbers[i.A], numbers[i.B], numbers[i.C]); break;
                case Operation.Deviate: numbers[i.Target] = deviations is null ? numbers[i.A] : numbers[i.A] + deviations[i.B]; break;
                case Operation.Jump: at = i.B; break;
                case Operation.JumpUnless:
                    if (numbers[i.A] == 1) break;
                    if (numbers[i.A] != 0) numbers[i.Target] = double.NaN;
                    at = numbers[i.A] == 0 ? i.B : i.C;
                    break;
                case Operation.JumpUnlessForObject:
                    if (numbers[i.A] == 1) break;
                    if (numbers[i.A] != 0) objects[i.Target] = null;
                    at = numbers[i.A] == 0 ? i.B : i.C;
                    break;
                case Operation.Call1: numbers[i.Target] = Call1(i, numbers); break;
                case Operation.Call2: numbers[i.Target] = Call2(i, numbers); break;
                case Operation.Call: numbers[i.Target] = Call(i, numbers, objects); break;
                case Operation.CallForObject: objects[i.Target] = CallForObject(i, numbers, objects); break;
                case Operation.CopyObject: objects[i.Target] = objects[i.A]; break;
                case Operation.SelectObject: objects[i.Target] = numbers[i.A] == 1 ? objects[i.B] : numbers[i.A] == 0 ? objects[i.C] : null; break;
                case Operation.TextsEqual: numbers[i.Target] = string.Equals(objects[i.A] as string, objects[i.B] as string, StringComparison.Ordinal) ? 1 : 0; break;
                default: numbers[i.Target] = Arithmetic.Apply(i.Operation, numbers[i.A], numbers[i.B]); break;
            }
        }
        return at;
    }

    private double Call1(in Instruction i, Numbers numbers)
    {
        double a = numbers[i.A];
        return Arithmetic.IsFinite(a) ? ((KernelOf1)Calls[i.C].Kernel).Function(a) : double.NaN;
    }

    private double Call2(in Instruction i, Numbers numbers)
    {
        double a = numbers[i.A], b = numbers[i.B];
        return Arithmetic.IsFinite(a) && Arithmetic.IsFinite(b) ? ((KernelOf2)Calls[i.C].Kernel).Function(a, b) : double.NaN;
    }

    private double Call(in Instruction i, Numbers numbers, object?[] objects)
    {
        CallSite site = Calls[i.C];
        return ArgumentsExist(site, numbers, objects) ? site.Kernel.Number(numbers, objects, site.Slots) : double.NaN;
    }

    private object? CallForObject(in Instruction i, Numbers numbers, object?[] objects)
    {
        CallSite site = Calls[i.C];
        return ArgumentsExist(site, numbers, objects) ? site.Kernel.Object(numbers, objects, site.Slots) : null;
    }

    /// <summary>A function is never asked about a value that does not exist.</summary>
    private static bool ArgumentsExist(CallSite site, Numbers numbers, object?[] objects)
    {
        for (int j = 0; j < site.Slots.Length; j++)
        {
            if (site.IsNumber[j] ? !Arithmetic.IsFinite(numbers[site.Slots[j]]) : objects[site.Slots[j]] is null) return false;
        }
        return true;
    }
}

/// <summary>A value that takes the place of some instructions.</summary>
internal readonly struct Replacement(int from, int to, int target, int slot, bool isNumber, double number, object? value)
{
    internal readonly int From = from;

    internal readonly int To = to;

    internal readonly int Target = target;

    /// <summary>The register of the constant that was kept open for it.</summary>
    internal readonly int Slot = slot;

    internal readonly bool IsNumber = isNumber;

    internal readonly double Number = number;

    internal readonly object? Object = value;
}
