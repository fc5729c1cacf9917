using System;

namespace Acquisition.Core.Functions;

public sealed partial class FunctionDefinition
{
    /// <summary>A constant, written without parentheses.</summary>
    /// <param name="result">Its kind.</param>
    /// <param name="siValue">Its value in the unit that <paramref name="result"/> is held in.</param>
    public FunctionDefinition Returns(QuantityKind result, double siValue) => WithKernel(result, new ConstantKernel(siValue), 0);

    /// <summary>Computed from one quantity in SI.</summary>
    /// <param name="result">What it gives.</param>
    /// <param name="kernel">The value in SI from the argument in SI; refuses by <see cref="ArgumentException"/>.</param>
    /// <param name="derivative">The derivative with respect to the argument, where it is known.</param>
    public FunctionDefinition Returns(ValueKind result, Func<double, double> kernel, Func<double, double>? derivative = null) =>
        WithKernel(result, new KernelOf1(kernel, derivative), 1);

    /// <summary>Computed from two quantities in SI.</summary>
    /// <param name="result">What it gives.</param>
    /// <param name="kernel">The value in SI from the arguments in SI; refuses by <see cref="ArgumentException"/>.</param>
    /// <param name="partials">The partial derivatives in the order of the arguments, where they are known.</param>
    public FunctionDefinition Returns(ValueKind result, Func<double, double, double> kernel, params Func<double, double, double>[] partials) =>
        WithKernel(result, new KernelOf2(kernel, partials), 2);

    /// <summary>Computed from three quantities in SI.</summary>
    /// <param name="result">What it gives.</param>
    /// <param name="kernel">The value in SI from the arguments in SI; refuses by <see cref="ArgumentException"/>.</param>
    /// <param name="partials">The partial derivatives in the order of the arguments, where they are known.</param>
    public FunctionDefinition Returns(ValueKind result, Func<double, double, double, double> kernel, params Func<double, double, double, double>[] partials) =>
        WithKernel(result, new KernelOf3(kernel, partials), 3);

    /// <summary>Computed from four quantities in SI.</summary>
    /// <param name="result">What it gives.</param>
    /// <param name="kernel">The value in SI from the arguments in SI; refuses by <see cref="ArgumentException"/>.</param>
    /// <param name="partials">The partial derivatives in the order of the arguments, where they are known.</param>
    public FunctionDefinition Returns(ValueKind result, Func<double, double, double, double, double> kernel, params Func<double, double, double, double, double>[] partials) =>
        WithKernel(result, new KernelOf4(kernel, partials), 4);

    /// <summary>Computed from one model.</summary>
    /// <typeparam name="TModel">The type named in the parameter's kind.</typeparam>
    /// <param name="result">What it gives.</param>
    /// <param name="kernel">The value in SI; refuses by <see cref="ArgumentException"/>.</param>
    public FunctionDefinition Returns<TModel>(ValueKind result, Func<TModel, double> kernel)
        where TModel : class => WithKernel(result, new KernelOfModel<TModel>(kernel), 1);

    /// <summary>Computed from one model and one quantity in SI.</summary>
    /// <typeparam name="TModel">The type named in the first parameter's kind.</typeparam>
    /// <param name="result">What it gives.</param>
    /// <param name="kernel">The value in SI; refuses by <see cref="ArgumentException"/>.</param>
    public FunctionDefinition Returns<TModel>(ValueKind result, Func<TModel, double, double> kernel)
        where TModel : class => WithKernel(result, new KernelOfModelAndNumber<TModel>(kernel), 2);

    /// <summary>Computed from arguments of any kinds and number, as a quantity in SI or as 1 and 0 for true and false.</summary>
    /// <param name="result">What it gives: a quantity or <see cref="ValueKind.Truth"/>.</param>
    /// <param name="kernel">The value; refuses by <see cref="ArgumentException"/>.</param>
    public FunctionDefinition ReturnsFromAll(ValueKind result, NumberKernel kernel)
    {
        if (!Require(result).IsHeldAsNumber) throw new ArgumentException($"function {Name} returns a {result.Name}: declare it with ReturnsObject", nameof(result));
        return WithKernel(result, new GeneralKernel(kernel), -1);
    }

    /// <summary>Computed from arguments of any kinds and number, as a model or a text.</summary>
    /// <param name="result">What it gives: a model or a text.</param>
    /// <param name="kernel">The value, never null; refuses by <see cref="ArgumentException"/>.</param>
    public FunctionDefinition ReturnsObject(ValueKind result, ObjectKernel kernel)
    {
        if (Require(result).IsHeldAsNumber) throw new ArgumentException($"function {Name} returns a {result.Name}: declare it with Returns", nameof(result));
        return WithKernel(result, new ModelMakingKernel(kernel), -1);
    }

    /// <summary>Computed from quantities that may be of any kind, all of the same, as a quantity of that kind again.</summary>
    /// <param name="kernel">The value in the arguments' SI unit.</param>
    public FunctionDefinition ReturnsSameKind(NumberKernel kernel) => ReturnsByRule(kind => kind, new GeneralKernel(kernel), -1);

    internal FunctionDefinition ReturnsByRule(Func<QuantityKind, QuantityKind?> rule, FunctionKernel kernel, int count)
    {
        FunctionDefinition definition = WithKernel(ValueKind.AnyQuantity, kernel, count);
        definition.ResultRule = rule;
        return definition;
    }

    private FunctionDefinition WithKernel(ValueKind result, FunctionKernel kernel, int count)
    {
        if (Kernel is not null) throw new InvalidOperationException($"function {Name} says twice how it is computed");
        if (count >= 0 && Declared.Length != count) throw new ArgumentException($"function {Name} declares {Declared.Length} parameters, but its kernel takes {count}", nameof(kernel));
        for (int i = 0; i < count; i++)
        {
            FunctionParameter parameter = Declared[i];
            if (parameter.IsRepeated) throw new ArgumentException($"function {Name} has a repeated parameter: declare it with ReturnsFromAll", nameof(kernel));
            if (parameter.Kind.IsHeldAsNumber == kernel.TakesObjectAt(i)) throw new ArgumentException($"function {Name}: its kernel does not take a {parameter.Kind.Name} as argument {i + 1}", nameof(kernel));
        }
        FunctionDefinition copy = Copy();
        copy.Result = Require(result);
        copy.Kernel = kernel;
        return copy;
    }
}
