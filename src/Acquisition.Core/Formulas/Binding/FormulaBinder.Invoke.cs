using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Formulas.Execution;
using Acquisition.Core.Formulas.Syntax;
using Acquisition.Core.Functions;

namespace Acquisition.Core.Formulas.Binding;

// A call whose function and arguments are settled.
internal sealed partial class FormulaBinder
{
    private Operand Invoke(FunctionDefinition function, CallNode node, Operand[] arguments, int[] order, bool isInOrder, (int Numbers, int Objects) mark)
    {
        Operand[] ordered = arguments;
        if (!isInOrder)
        {
            ordered = new Operand[order.Length];
            for (int j = 0; j < order.Length; j++) ordered[j] = order[j] < 0 ? Default(function.Declared[j]) : arguments[order[j]];
        }
        ValueKind result = function.Result;
        if (function.ResultRule is not null)
        {
            QuantityKind first = ordered[0].Kind!.Quantity!;
            QuantityKind? kind = function.ResultRule(first);
            if (kind is null) return Refuse(node.Arguments[0].Value, arguments[0], $"a quantity that {function.Name} can take (no logarithm and no point on a scale)");
            result = ReferenceEquals(kind, first) ? ordered[0].Kind! : kind;
        }
        switch (function.Intrinsic)
        {
            case Intrinsic.SquareRoot: return Emit(Operation.SquareRoot, node, result, mark, ordered[0]);
            case Intrinsic.Absolute: return Emit(Operation.Absolute, node, result, mark, ordered[0]);
            case Intrinsic.Minimum or Intrinsic.Maximum:
                Operand best = ordered[0];
                for (int j = 1; j < ordered.Length; j++) best = Emit(function.Intrinsic == Intrinsic.Minimum ? Operation.Minimum : Operation.Maximum, node, result, mark, best, ordered[j]);
                return best;
        }
        bool isKnown = true;
        foreach (Operand operand in ordered) isKnown &= operand.IsKnown;
        if (isKnown && TryCompute(function, ordered, result, out Operand known)) return known;
        if (_program.CallCount - _callsBefore >= _context.Limits.Calls)
        {
            _problems.Add(node.Start, node.End, FormattableString.Invariant($"more than {_context.Limits.Calls} function calls"));
            return Operand.Unknown;
        }
        var slots = new int[ordered.Length];
        var isNumber = new bool[ordered.Length];
        for (int j = 0; j < ordered.Length; j++)
        {
            slots[j] = Register(ordered[j]);
            isNumber[j] = ordered[j].Kind!.IsHeldAsNumber;
        }
        int site = _program.Add(new CallSite(function, function.Kernel!, slots, isNumber));
        _program.Release(mark);
        if (!result.IsHeldAsNumber)
        {
            int made = _program.Object();
            _program.Add(Operation.CallForObject, node, made, 0, 0, site);
            return Operand.In(made, result);
        }
        int target = _program.Number();
        switch (function.Kernel)
        {
            case KernelOf1: _program.Add(Operation.Call1, node, target, slots[0], 0, site); break;
            case KernelOf2: _program.Add(Operation.Call2, node, target, slots[0], slots[1], site); break;
            default: _program.Add(Operation.Call, node, target, 0, 0, site); break;
        }
        return Operand.In(target, result);
    }

    private static Operand Default(FunctionParameter parameter) => parameter.DefaultValue switch
    {
        double number => Operand.Known(parameter.Kind, number),
        object value => Operand.KnownObject(parameter.Kind, value),
        _ => Operand.Unknown,
    };

    /// <summary>Computes a call of known arguments now. A refusal waits until evaluation: it may be in a branch that is never taken.</summary>
    private static bool TryCompute(FunctionDefinition function, Operand[] arguments, ValueKind result, out Operand known)
    {
        known = default;
        var numbers = new double[arguments.Length];
        var objects = new object?[arguments.Length];
        for (int i = 0; i < arguments.Length; i++)
        {
            numbers[i] = arguments[i].Number;
            objects[i] = arguments[i].Object;
        }
        int[] slots = InOrder(arguments.Length);
        try
        {
            if (!result.IsHeldAsNumber)
            {
                object made = function.Kernel!.Object(numbers, objects, slots);
                known = Operand.KnownObject(result, made);
                return result.Admits(made);
            }
            double value = function.Kernel!.Number(numbers, objects, slots);
            known = Operand.Known(result, value);
            return Arithmetic.IsFinite(value);
        }
        catch (Exception refusal) when (refusal is not (OutOfMemoryException or OperationCanceledException))
        {
            return false;
        }
    }
}
