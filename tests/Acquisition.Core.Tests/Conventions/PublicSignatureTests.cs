using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using System.Text.RegularExpressions;
using Xunit;

namespace Acquisition.Core.Tests.Conventions;

/// <summary>What a user's code can see: strong types, plain numbers only with their unit in the name, no type of another library.</summary>
public sealed class PublicSignatureTests
{
    /// <summary>Words that tell what a plain number is: a unit, or a number that has none.</summary>
    private static readonly Regex NamesItsUnit = new(
        "(^si|hertz|seconds|volts|amperes|ohms|farads|henries|watts|kelvins|celsius|met(er|re)s|inches|radians|degrees|bits|samples|points|pts|decibel|nepers|milliwatts|" +
        "fraction|percent|permillion|factor|divisor|cycles|codes?|readings?|si(value)?s?$|ratios?$|probabilit|confidence|coverage|quantile|exponent|halves|correlation|freedom|weight|share|" +
        "gain|damping|order|quality|shape|trials|seed|bins?$|chisquared|dimensionless|variance|number|intervals|price|numerator|denominator)",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant);

    /// <summary>Kernels behind formulas take and return plain numbers in the SI unit of their declared kinds; that is the contract of this namespace.</summary>
    private const string KernelContract = "Acquisition.Core.Functions.";

    private static readonly Type[] PublicTypes = [.. typeof(Frequency).Assembly.GetExportedTypes(), .. typeof(Outlook).Assembly.GetExportedTypes()];

    [Fact]
    public void NoPublicSignature_ShowsATypeOfAnotherLibrary()
    {
        var foreign = from member in Signatures()
                      where member.Type.Assembly.GetName().Name is "MathNet.Numerics" or "UnitsNet"
                      select $"{member.Place} shows {member.Type}";

        Assert.True(!foreign.Any(), string.Join("\n", foreign));
    }

    [Fact]
    public void NoPublicSignature_HasAPlainNumberWithoutItsUnitInTheName()
    {
        var bare = from member in Signatures()
                   where member.Type == typeof(double) || member.Type == typeof(float)
                   where !member.Place.StartsWith(KernelContract, StringComparison.Ordinal)
                   where !NamesItsUnit.IsMatch(member.Name)
                   select $"{member.Place}: {member.Name}";

        Assert.True(!bare.Any(), string.Join("\n", bare.Distinct().Order()));
    }

    private static IEnumerable<(string Place, string Name, Type Type)> Signatures()
    {
        const BindingFlags Declared = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        foreach (Type type in PublicTypes)
        {
            foreach (MethodBase method in type.GetMethods(Declared).Cast<MethodBase>().Concat(type.GetConstructors(Declared)))
            {
                // Where the unit is an argument of its own, it is named.
                if (method.GetParameters().Any(parameter => parameter.Name == "unit" && parameter.ParameterType == typeof(string))) continue;
                if (method.IsSpecialName && (method.Name.StartsWith("get_", StringComparison.Ordinal) || method.Name.StartsWith("set_", StringComparison.Ordinal))) continue;
                string place = $"{type.FullName}.{method.Name}";
                bool isLiteral = type.Namespace == "Acquisition.Core.Literals";
                foreach (ParameterInfo parameter in method.GetParameters())
                {
                    string name = isLiteral ? method.Name + "Factor" : parameter.Name!;
                    foreach (Type part in Parts(parameter.ParameterType)) yield return (place, name, part);
                }
                // A method over plain numbers gives back the unit it was given.
                bool keepsUnit = method.GetParameters().Any(parameter => Parts(parameter.ParameterType).Contains(typeof(double)) && NamesItsUnit.IsMatch(parameter.Name!));
                if (method is MethodInfo info && !keepsUnit)
                {
                    foreach (Type part in Parts(info.ReturnType)) yield return (place, method.Name, part);
                }
            }
            foreach (PropertyInfo property in type.GetProperties(Declared))
            {
                foreach (Type part in Parts(property.PropertyType)) yield return ($"{type.FullName}.{property.Name}", property.Name, part);
            }
            foreach (FieldInfo field in type.GetFields(Declared))
            {
                foreach (Type part in Parts(field.FieldType)) yield return ($"{type.FullName}.{field.Name}", field.Name, part);
            }
        }
    }

    private static IEnumerable<Type> Parts(Type type)
    {
        if (type.HasElementType) return Parts(type.GetElementType()!);
        return type.IsGenericType ? type.GetGenericArguments().SelectMany(Parts).Append(type.GetGenericTypeDefinition()) : [type];
    }
}
