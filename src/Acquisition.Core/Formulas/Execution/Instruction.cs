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
    internal FunctionDefinition Function { get; } = function;

    internal FunctionKernel Kernel { get; } = kernel;

    internal int[] Slots { get; } = slots;

    /// <summary>Whether each argument sits in a number register.</summary>
    internal bool[] IsNumber { get; } = isNumber;
}

/// <summary>A value that is known within limits only: <c>a ± b</c> in the text.</summary>
internal sealed class UncertainTerm(int start, int end, QuantityKind deviationKind, double? coverageFactor, int halfWidthRegister)
{
    internal int Start { get; } = start;

    internal int End { get; } = end;

    /// <summary>What the deviation is: the kind of the value, decibels for a level, a difference for a temperature.</summary>
    internal QuantityKind DeviationKind { get; } = deviationKind;

    internal double? CoverageFactor { get; } = coverageFactor;

    /// <summary>Where the program leaves the half-width.</summary>
    internal int HalfWidthRegister { get; set; } = halfWidthRegister;
}
