using System;
#if NET8_0_OR_GREATER
using Numbers = System.Span<double>;
#else
using Numbers = double[];
#endif

namespace Acquisition.Core.Functions;

/// <summary>How a function is computed from registers: one class per shape, so that the frequent shapes are called without packing their arguments.</summary>
internal abstract class FunctionKernel
{
    internal virtual bool HasPartials => false;

    /// <summary>Whether the kernel wants argument <paramref name="index"/> as an object.</summary>
    internal virtual bool TakesObjectAt(int index) => false;

    /// <summary>The value as a number.</summary>
    internal virtual double Number(Numbers numbers, object?[] objects, int[] slots) => throw new InvalidOperationException();

    /// <summary>The value as an object; only for functions that return models or texts.</summary>
    internal virtual object Object(Numbers numbers, object?[] objects, int[] slots) => throw new InvalidOperationException();

    /// <summary>The partial derivative with respect to argument <paramref name="index"/>; only where <see cref="HasPartials"/>.</summary>
    internal virtual double Partial(int index, Numbers numbers, int[] slots) => throw new InvalidOperationException();

    private protected static T[] Checked<T>(T[]? partials, int count)
    {
        if (partials is null || partials.Length == 0) return Array.Empty<T>();
        return partials.Length == count ? (T[])partials.Clone() : throw new ArgumentException($"declare all {count} partial derivatives, or none; found {partials.Length}", nameof(partials));
    }
}

internal sealed class ConstantKernel(double siValue) : FunctionKernel
{
    internal override double Number(Numbers numbers, object?[] objects, int[] slots) => siValue;
}

internal sealed class KernelOf1(Func<double, double> kernel, Func<double, double>? derivative) : FunctionKernel
{
    internal Func<double, double> Function { get; } = kernel ?? throw new ArgumentNullException(nameof(kernel));

    internal override bool HasPartials => derivative is not null;

    internal override double Number(Numbers numbers, object?[] objects, int[] slots) => Function(numbers[slots[0]]);

    internal override double Partial(int index, Numbers numbers, int[] slots) => derivative!(numbers[slots[0]]);
}

internal sealed class KernelOf2(Func<double, double, double> kernel, Func<double, double, double>[]? partials) : FunctionKernel
{
    private readonly Func<double, double, double>[] _partials = Checked(partials, 2);

    internal Func<double, double, double> Function { get; } = kernel ?? throw new ArgumentNullException(nameof(kernel));

    internal override bool HasPartials => _partials.Length > 0;

    internal override double Number(Numbers numbers, object?[] objects, int[] slots) => Function(numbers[slots[0]], numbers[slots[1]]);

    internal override double Partial(int index, Numbers numbers, int[] slots) => _partials[index](numbers[slots[0]], numbers[slots[1]]);
}

internal sealed class KernelOf3(Func<double, double, double, double> kernel, Func<double, double, double, double>[]? partials) : FunctionKernel
{
    private readonly Func<double, double, double, double> _kernel = kernel ?? throw new ArgumentNullException(nameof(kernel));
    private readonly Func<double, double, double, double>[] _partials = Checked(partials, 3);

    internal override bool HasPartials => _partials.Length > 0;

    internal override double Number(Numbers numbers, object?[] objects, int[] slots) => _kernel(numbers[slots[0]], numbers[slots[1]], numbers[slots[2]]);

    internal override double Partial(int index, Numbers numbers, int[] slots) => _partials[index](numbers[slots[0]], numbers[slots[1]], numbers[slots[2]]);
}

internal sealed class KernelOf4(Func<double, double, double, double, double> kernel, Func<double, double, double, double, double>[]? partials) : FunctionKernel
{
    private readonly Func<double, double, double, double, double> _kernel = kernel ?? throw new ArgumentNullException(nameof(kernel));
    private readonly Func<double, double, double, double, double>[] _partials = Checked(partials, 4);

    internal override bool HasPartials => _partials.Length > 0;

    internal override double Number(Numbers numbers, object?[] objects, int[] slots) => _kernel(numbers[slots[0]], numbers[slots[1]], numbers[slots[2]], numbers[slots[3]]);

    internal override double Partial(int index, Numbers numbers, int[] slots) =>
        _partials[index](numbers[slots[0]], numbers[slots[1]], numbers[slots[2]], numbers[slots[3]]);
}

internal sealed class KernelOfModel<TModel>(Func<TModel, double> kernel) : FunctionKernel
    where TModel : class
{
    private readonly Func<TModel, double> _kernel = kernel ?? throw new ArgumentNullException(nameof(kernel));

    internal override bool TakesObjectAt(int index) => true;

    internal override double Number(Numbers numbers, object?[] objects, int[] slots) => _kernel((TModel)objects[slots[0]]!);
}

internal sealed class KernelOfModelAndNumber<TModel>(Func<TModel, double, double> kernel) : FunctionKernel
    where TModel : class
{
    private readonly Func<TModel, double, double> _kernel = kernel ?? throw new ArgumentNullException(nameof(kernel));

    internal override bool TakesObjectAt(int index) => index == 0;

    internal override double Number(Numbers numbers, object?[] objects, int[] slots) => _kernel((TModel)objects[slots[0]]!, numbers[slots[1]]);
}

internal sealed class GeneralKernel(NumberKernel kernel) : FunctionKernel
{
    private readonly NumberKernel _kernel = kernel ?? throw new ArgumentNullException(nameof(kernel));

    internal override double Number(Numbers numbers, object?[] objects, int[] slots) => _kernel(new FunctionArguments(numbers, objects, slots));
}

internal sealed class ModelMakingKernel(ObjectKernel kernel) : FunctionKernel
{
    private readonly ObjectKernel _kernel = kernel ?? throw new ArgumentNullException(nameof(kernel));

    internal override object Object(Numbers numbers, object?[] objects, int[] slots) =>
        _kernel(new FunctionArguments(numbers, objects, slots)) ?? throw new InvalidOperationException("the function gave nothing");
}
