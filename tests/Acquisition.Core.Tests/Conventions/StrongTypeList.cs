using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;

namespace Acquisition.Core.Tests.Conventions;

/// <summary>The strong quantity types, found by what they are, and their source files.</summary>
internal static class StrongTypeList
{
    internal static IReadOnlyList<Type> All { get; } = typeof(Frequency).Assembly.GetExportedTypes()
        .Where(type => type.IsValueType && typeof(IQuantity).IsAssignableFrom(type) && type != typeof(Quantity))
        .OrderBy(type => type.Name, StringComparer.Ordinal).ToArray();

    internal static QuantityKind KindOf(Type type) => ((IQuantity)Activator.CreateInstance(type)!).ToQuantity().Kind;

    internal static object FromQuantity(Type type, Quantity quantity)
    {
        try
        {
            return type.GetMethod("FromQuantity")!.Invoke(null, [quantity])!;
        }
        catch (TargetInvocationException refusal) when (refusal.InnerException is not null)
        {
            throw refusal.InnerException;
        }
    }

    internal static string Source(string file) => Repository.Read("src", "Acquisition.Foundation", "Quantities", file);
}
