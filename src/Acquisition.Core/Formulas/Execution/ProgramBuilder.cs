using System;
using System.Collections.Generic;
using Acquisition.Core.Formulas.Syntax;

namespace Acquisition.Core.Formulas.Execution;

/// <summary>
/// Gathers instructions. Registers are numbered within their group (inputs, constants, kept, passing) until the groups' sizes are known, then all are
/// renumbered. Passing registers follow a stack: what an operator read is free again when it writes.
/// </summary>
/// <param name="inputs">How many inputs are numbers.</param>
/// <param name="objectInputs">How many inputs are texts or models.</param>
/// <param name="expected">How many instructions are expected; it takes more.</param>
internal sealed class ProgramBuilder(int inputs, int objectInputs, int expected)
{
    private const int GroupShift = 24;
    private const int Constant = 1 << GroupShift;
    private const int Kept = 2 << GroupShift;
    private const int Passing = 3 << GroupShift;

    /// <summary>Looking for an equal constant is worth it among the first few.</summary>
    private const int MostCompared = 16;

    private static readonly long Open = BitConverter.DoubleToInt64Bits(double.NaN);

    private Instruction[] _code = new Instruction[expected];
    private double[] _constants = [];
    private int _constantCount;
    private Dictionary<int, double>? _roundings;
    private List<CallSite>? _calls;
    private List<UncertainTerm>? _terms;
    private List<object?>? _objectConstants;
    private Registers _numbers;
    private Registers _objects;

    /// <summary>How many passing registers of a kind are in use.</summary>
    private struct Registers
    {
        internal int Top;
        internal int Highest;
        internal int Kept;

        internal int Push()
        {
            if (++Top > Highest) Highest = Top;
            return Passing + Top - 1;
        }
    }

    internal int Length { get; private set; }

    private int ObjectConstants => _objectConstants?.Count ?? 0;

    internal int CallCount { get; private set; }

    /// <summary>The state of the passing registers, to return to when an operator has read its operands.</summary>
    internal (int Numbers, int Objects) Mark => (_numbers.Top, _objects.Top);

    internal void Release((int Numbers, int Objects) mark)
    {
        _numbers.Top = mark.Numbers;
        _objects.Top = mark.Objects;
    }

    internal int Number() => _numbers.Push();

    internal int Object() => _objects.Push();

    internal int KeptNumber() => Kept + _numbers.Kept++;

    internal int KeptObject() => Kept + _objects.Kept++;

    /// <param name="value">The value.</param>
    /// <param name="rounding">What it has lost to rounding, where that is more than its own last place.</param>
    internal int ConstantNumber(double value, double rounding = 0)
    {
        if (rounding > 0)
        {
            int constant = AddConstant(value);
            (_roundings ??= new Dictionary<int, double>())[constant - Constant] = rounding;
            return constant;
        }
        long bits = BitConverter.DoubleToInt64Bits(value);
        for (int i = 0; i < _constantCount && i < MostCompared; i++)
        {
            if (BitConverter.DoubleToInt64Bits(_constants[i]) == bits && bits != Open) return Constant + i;
        }
        return AddConstant(value);
    }

    /// <summary>A constant of its own that is filled in later.</summary>
    internal int OpenConstant() => AddConstant(double.NaN);

    private int AddConstant(double value)
    {
        if (_constantCount == _constants.Length) _constants = _constantCount == 0 ? new double[1] : WithLength(_constants, 2 * _constantCount);
        _constants[_constantCount] = value;
        return Constant + _constantCount++;
    }

    /// <summary>A copy; unlike a generic resize it is compiled already when the first formula needs it.</summary>
    private static double[] WithLength(double[] values, int length)
    {
        var copy = new double[length];
        Array.Copy(values, copy, Math.Min(length, values.Length));
        return copy;
    }

    internal int ConstantObject(object? value)
    {
        (_objectConstants ??= new List<object?>()).Add(value);
        return Constant + ObjectConstants - 1;
    }

    internal int Add(Operation operation, FormulaNode place, int target, int a = 0, int b = 0, int c = 0)
    {
        if (Length == _code.Length) Array.Resize(ref _code, Math.Max(8, 2 * Length));
        _code[Length] = new Instruction { Operation = operation, Target = target, A = a, B = b, C = c, Start = place.Start, End = place.End };
        return Length++;
    }

    /// <summary>Tells a jump where it leads, now that the place is known.</summary>
    internal void Lead(int jump, Operation operation, int target, int destination, int whenMissing)
    {
        ref Instruction instruction = ref _code[jump];
        instruction.Operation = operation;
        instruction.Target = target;
        instruction.B = destination;
        instruction.C = whenMissing;
    }

    /// <summary>Drops the instructions from a place on; nothing before it may lead there.</summary>
    internal void Forget(int from) => Length = from;

    internal int Add(CallSite call)
    {
        (_calls ??= new List<CallSite>()).Add(call);
        return CallCount++;
    }

    internal int Add(UncertainTerm term)
    {
        (_terms ??= new List<UncertainTerm>()).Add(term);
        return _terms.Count - 1;
    }

    internal Program Build()
    {
        Instruction[] code = _code;
        if (Length < code.Length)
        {
            code = new Instruction[Length];
            Array.Copy(_code, code, Length);
        }
        double[] constants = _constantCount == _constants.Length ? _constants : WithLength(_constants, _constantCount);
        for (int i = 0; i < code.Length; i++) Renumber(ref code[i]);
        CallSite[] calls = _calls is null ? Array.Empty<CallSite>() : Renumbered(_calls);
        UncertainTerm[] terms = _terms is null ? Array.Empty<UncertainTerm>() : Renumbered(_terms);
        int objectRegisters = objectInputs + ObjectConstants + _objects.Kept + _objects.Highest;
        object?[] objects = objectRegisters == 0 ? Array.Empty<object?>() : new object?[objectRegisters];
        _objectConstants?.CopyTo(objects, objectInputs);
        return new Program(code, calls, constants, objects, inputs, objectInputs,
            inputs + _constantCount + _numbers.Kept + _numbers.Highest, objectRegisters, terms, _roundings);
    }

    /// <summary>Where a number register ends up; valid once nothing is added any more.</summary>
    internal int Place(int register) => (register >> GroupShift) switch
    {
        0 => register,
        1 => register - Constant + inputs,
        2 => register - Kept + inputs + _constantCount,
        _ => register - Passing + inputs + _constantCount + _numbers.Kept,
    };

    /// <summary>Where an object register ends up; valid once nothing is added any more.</summary>
    internal int ObjectPlace(int register) => (register >> GroupShift) switch
    {
        0 => register,
        1 => register - Constant + objectInputs,
        2 => register - Kept + objectInputs + ObjectConstants,
        _ => register - Passing + objectInputs + ObjectConstants + _objects.Kept,
    };

    private CallSite[] Renumbered(List<CallSite> calls)
    {
        foreach (CallSite call in calls)
        {
            for (int j = 0; j < call.Slots.Length; j++) call.Slots[j] = call.IsNumber[j] ? Place(call.Slots[j]) : ObjectPlace(call.Slots[j]);
        }
        return calls.ToArray();
    }

    private UncertainTerm[] Renumbered(List<UncertainTerm> terms)
    {
        foreach (UncertainTerm term in terms) term.HalfWidthRegister = Place(term.HalfWidthRegister);
        return terms.ToArray();
    }

    private void Renumber(ref Instruction i)
    {
        switch (i.Operation)
        {
            case Operation.Jump:
                return;
            case Operation.CopyObject:
                i.Target = ObjectPlace(i.Target);
                i.A = ObjectPlace(i.A);
                return;
            case Operation.TextsEqual:
                i.Target = Place(i.Target);
                i.A = ObjectPlace(i.A);
                i.B = ObjectPlace(i.B);
                return;
            case Operation.CallForObject:
                i.Target = ObjectPlace(i.Target);
                return;
            case Operation.Call:
                i.Target = Place(i.Target);
                return;
            case Operation.JumpUnless or Operation.Deviate or Operation.Call1:
                i.Target = Place(i.Target);
                i.A = Place(i.A);
                return;
            case Operation.JumpUnlessForObject:
                i.Target = ObjectPlace(i.Target);
                i.A = Place(i.A);
                return;
            case Operation.SelectObject:
                i.Target = ObjectPlace(i.Target);
                i.A = Place(i.A);
                i.B = ObjectPlace(i.B);
                i.C = ObjectPlace(i.C);
                return;
            case Operation.Select:
                i.C = Place(i.C);
                break;
        }
        i.Target = Place(i.Target);
        i.A = Place(i.A);
        i.B = Place(i.B);
    }
}
