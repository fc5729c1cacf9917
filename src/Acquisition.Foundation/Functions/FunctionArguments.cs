using System;

namespace Acquisition.Core.Functions;

/// <summary>The arguments of one call, in the order of the function's parameters, defaults filled in.</summary>
/// <remarks>Lives on the stack for the time of the call only, so that calling costs no allocation.</remarks>
public readonly ref struct FunctionArguments
{
#if NET8_0_OR_GREATER
    private readonly ReadOnlySpan<double> _numbers;

    internal FunctionArguments(ReadOnlySpan<double> numbers, object?[] objects, int[] slots)
#else
    private readonly double[] _numbers;

    internal FunctionArguments(double[] numbers, object?[] objects, int[] slots)
#endif
    {
        _numbers = numbers;
        _objects = objects;
        _slots = slots;
    }

    private readonly object?[] _objects;
    private readonly int[] _slots;

    /// <summary>How many arguments there are, those of a repeated parameter counted one by one.</summary>
    public int Count => _slots.Length;

    /// <summary>The value of a quantity argument in SI (logarithmic kinds in their own unit). Finite.</summary>
    /// <param name="index">The place of the argument, from 0.</param>
    public double SiValue(int index) => _numbers[_slots[index]];

    /// <summary>Whether a truth argument is true.</summary>
    /// <param name="index">The place of the argument, from 0.</param>
    public bool IsTrue(int index) => _numbers[_slots[index]] != 0;

    /// <summary>A text argument.</summary>
    /// <param name="index">The place of the argument, from 0.</param>
    public string Text(int index) => (string)_objects[_slots[index]]!;

    /// <summary>A model argument.</summary>
    /// <typeparam name="T">The type named in the parameter's kind.</typeparam>
    /// <param name="index">The place of the argument, from 0.</param>
    public T Model<T>(int index)
        where T : class => (T)_objects[_slots[index]]!;
}

/// <summary>A kernel that gives a quantity in SI, or 1 and 0 for true and false, from arguments of any kind.</summary>
/// <param name="arguments">The arguments.</param>
public delegate double NumberKernel(FunctionArguments arguments);

/// <summary>A kernel that gives a model or a text from arguments of any kind.</summary>
/// <param name="arguments">The arguments.</param>
public delegate object ObjectKernel(FunctionArguments arguments);
