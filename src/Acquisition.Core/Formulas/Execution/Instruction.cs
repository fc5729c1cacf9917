using Acquisition.Core.Functions;

namespace Acquisition.Core.Formulas.Execution;

/// <summary>One step of a program: an operation, the registers it reads and the one it writes, and the part of the text it comes from.</summary>
internal struct Instruction
{
    internal Operation Operation;
    internal int Target;
    internal int A;
    internal int B;
    internal int C;
    internal int Start;
    internal int End;
}

/// <summary>A call of a function whose arguments sit in registers: number registers for numbers and truth values, object registers for the rest.</summary>
internal sealed class CallSite(FunctionDefinition function, FunctionKernel kernel, int[] slots, bool[] isNumber)
{
    internal readonly FunctionDefinition Function = function;

    internal readonly FunctionKernel Kernel = kernel;

    internal readonly int[] Slots = slots;

    /// <summary>Whether each argument sits in a number register.</summary>
    internal readonly bool[] IsNumber = isNumber;

    /// <summary>The registers of the arguments that are numbers.</summary>
    internal int[] NumberSlots()
    {
        var found = new System.Collections.Generic.List<int>();
        for (int j = 0; j < Slots.Length; j++)
        {
            if (IsNumber[j] && !found.Contains(Slots[j])) found.Add(Slots[j]);
        }
        return found.ToArray();
    }
}

/// <summary>A value that is known within limits only: <c>a ± b</c> in the text.</summary>
internal sealed class UncertainTerm(int start, int end, QuantityKind valueKind, QuantityKind deviationKind, double? coverageFactor, bool isRelative, int halfWidthRegister)
{
    internal readonly int Start = start;

    internal readonly int End = end;

    /// <summary>What the value is.</summary>
    internal readonly QuantityKind ValueKind = valueKind;

    /// <summary>What the deviation is: the kind of the value, decibels for a level, a difference for a temperature.</summary>
    internal readonly QuantityKind DeviationKind = deviationKind;

    internal readonly double? CoverageFactor = coverageFactor;

    /// <summary>Whether the half-width is a part of the value.</summary>
    internal readonly bool IsRelative = isRelative;

    /// <summary>Where the program leaves the half-width.</summary>
    internal int HalfWidthRegister = halfWidthRegister;
}
