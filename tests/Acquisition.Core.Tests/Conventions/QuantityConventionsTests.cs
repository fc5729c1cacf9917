using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Text.RegularExpressions;
using Xunit;

namespace Acquisition.Core.Tests.Conventions;

/// <summary>The strong types are written by hand; these tests keep alike what must be alike.</summary>
public class QuantityConventionsTests
{
    public static TheoryData<Type> Types => new(StrongTypeList.All);

    private static string WithoutName(Type type, string source) => Regex.Replace(source, $@"\b{type.Name}\b", "X");

    [Fact]
    public void StrongTypes_AreTheTwentyFourThatTheDesignNames() => Assert.Equal(24, StrongTypeList.All.Count);

    [Theory]
    [MemberData(nameof(Types))]
    public void ConventionsFile_IsTheSameForAllTypesButForTheName(Type type)
    {
        string model = WithoutName(typeof(Frequency), StrongTypeList.Source("Frequency.Conventions.cs"));
        Assert.Equal(model, WithoutName(type, StrongTypeList.Source(type.Name + ".Conventions.cs")));
    }

    [Fact]
    public void ArithmeticFiles_AreTheSameWithinTheSignedAndTheNonNegativeGroup()
    {
        string[] files = Directory.GetFiles(Repository.PathOf("src", "Acquisition.Foundation", "Quantities"), "*.Arithmetic.cs");
        var groups = files.Select(file => Path.GetFileName(file).Split('.')[0])
            .GroupBy(name => Regex.Replace(StrongTypeList.Source(name + ".Arithmetic.cs"), $@"\b{name}\b", "X"))
            .Select(group => (IsSigned: group.Key.Contains("IUnaryNegationOperators", StringComparison.Ordinal), Names: string.Join(" ", group))).ToArray();
        Assert.True(groups.Count(group => group.IsSigned) == 1 && groups.Length == 2, string.Join(" | ", groups.Select(group => group.Names)));
    }

    [Theory]
    [MemberData(nameof(Types))]
    public void StrongType_IsEightBytes_ReadOnly_WithOnePrivateField(Type type)
    {
        Assert.Equal(8, Marshal.SizeOf(type));
        Assert.True(IsReadOnly(type));
        FieldInfo field = Assert.Single(type.GetFields(BindingFlags.Instance | BindingFlags.NonPublic | BindingFlags.Public));
        Assert.True(field.IsInitOnly && field.IsPrivate);
        Assert.DoesNotContain(type.GetProperties(), property => property.CanWrite);
        Assert.Empty(type.GetConstructors());
    }

    [Fact]
    public void Quantity_IsSmallAndReadOnly()
    {
        Assert.Equal(16, Unsafe.SizeOf<Quantity>());
        Assert.True(IsReadOnly(typeof(Quantity)));
        Assert.Equal(QuantityKind.Ratio, default(Quantity).Kind);
    }

    [Theory]
    [MemberData(nameof(Types))]
    public void Equality_AgreesWithOperatorsComparisonAndHash(Type type)
    {
        QuantityKind kind = StrongTypeList.KindOf(type);
        foreach (double left in new double[] { 0, 1, 2 })
        {
            foreach (double right in new double[] { 0, 1, 2 })
            {
                object a = StrongTypeList.FromQuantity(type, new Quantity(left, kind)), b = StrongTypeList.FromQuantity(type, new Quantity(right, kind));
                Assert.Equal(left == right, a.Equals(b));
                Assert.Equal(left == right, Operator(type, "op_Equality", a, b));
                Assert.Equal(left != right, Operator(type, "op_Inequality", a, b));
                Assert.Equal(left < right, Operator(type, "op_LessThan", a, b));
                Assert.Equal(left <= right, Operator(type, "op_LessThanOrEqual", a, b));
                Assert.Equal(left > right, Operator(type, "op_GreaterThan", a, b));
                Assert.Equal(left >= right, Operator(type, "op_GreaterThanOrEqual", a, b));
                Assert.Equal(left.CompareTo(right), ((IComparable)a).CompareTo(b));
                if (left == right) Assert.Equal(a.GetHashCode(), b.GetHashCode());
            }
        }
        object one = StrongTypeList.FromQuantity(type, new Quantity(1, kind));
        Assert.False(one.Equals(null));
        Assert.False(one.Equals("1"));
        Assert.Equal(1, ((IComparable)one).CompareTo(null));
        Assert.Throws<ArgumentException>(() => ((IComparable)one).CompareTo("1"));
    }

    [Theory]
    [MemberData(nameof(Types))]
    public void ZeroOfEitherSign_IsEqualAndHashesAlike(Type type)
    {
        QuantityKind kind = StrongTypeList.KindOf(type);
        object plus = StrongTypeList.FromQuantity(type, new Quantity(0.0, kind)), minus = StrongTypeList.FromQuantity(type, new Quantity(-0.0, kind));
        Assert.Equal(plus, minus);
        Assert.Equal(plus.GetHashCode(), minus.GetHashCode());
    }

    [Theory]
    [MemberData(nameof(Types))]
    public void Quantity_GoesThereAndBack_AndOtherKindsAreRefused(Type type)
    {
        QuantityKind kind = StrongTypeList.KindOf(type);
        var quantity = new Quantity(3, kind);
        Assert.Equal(quantity, ((IQuantity)StrongTypeList.FromQuantity(type, quantity)).ToQuantity());
        Type other = StrongTypeList.All.First(candidate => StrongTypeList.KindOf(candidate) != kind);
        Assert.Throws<ArgumentException>(() => StrongTypeList.FromQuantity(type, new Quantity(3, StrongTypeList.KindOf(other))));
    }

    [Theory]
    [MemberData(nameof(Types))]
    public void NotANumberAndInfinity_AreNeverHeld(Type type)
    {
        foreach (double value in new[] { double.NaN, double.PositiveInfinity, double.NegativeInfinity })
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => new Quantity(value, StrongTypeList.KindOf(type)));
            foreach (MethodInfo factory in type.GetMethods(BindingFlags.Static | BindingFlags.Public).Where(method => method.Name.StartsWith("From", StringComparison.Ordinal) && method.GetParameters() is [{ ParameterType: var parameter }] && parameter == typeof(double)))
                Assert.IsType<ArgumentOutOfRangeException>(Assert.Throws<TargetInvocationException>(() => factory.Invoke(null, [value])).InnerException);
        }
    }

    [Theory]
    [MemberData(nameof(Types))]
    public void TextOfEachType_ReadsBack(Type type)
    {
        object value = StrongTypeList.FromQuantity(type, new Quantity(1234, StrongTypeList.KindOf(type)));
        Assert.Equal(value, type.GetMethod("Parse", [typeof(string)])!.Invoke(null, [value.ToString()]));
    }

    [Fact]
    public void StrongTypesMadeByConverters_AreAllOfThem()
    {
        foreach (Type type in StrongTypeList.All.Append(typeof(Quantity)))
        {
            MethodInfo make = typeof(StrongType<>).MakeGenericType(type).GetMethod("Make", BindingFlags.Static | BindingFlags.NonPublic)!;
            QuantityKind kind = StrongTypeList.KindOf(type);
            Assert.IsType(type, make.Invoke(null, [new Quantity(3, kind)]));
        }
    }

    private static bool Operator(Type type, string name, object a, object b) => (bool)type.GetMethod(name, [type, type])!.Invoke(null, [a, b])!;

    /// <summary>By name: on .NET Framework the compiler writes an attribute of that name into each assembly.</summary>
    private static bool IsReadOnly(Type type) => type.CustomAttributes.Any(attribute => attribute.AttributeType.FullName == "System.Runtime.CompilerServices.IsReadOnlyAttribute");
}
