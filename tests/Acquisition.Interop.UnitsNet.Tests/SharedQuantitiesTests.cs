using System;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using Acquisition.Core;
using Xunit;

namespace Acquisition.Interop.Tests;

/// <summary>Every strong type of the library is either converted both ways or stands here with the reason why not.</summary>
public sealed class SharedQuantitiesTests
{
    private static readonly Dictionary<Type, string> NoTwin = new()
    {
        [typeof(SampleRate)] = "UnitsNet has frequencies only",
        [typeof(PointCount)] = "UnitsNet has plain numbers only",
        [typeof(BitDepth)] = "UnitsNet's information is an amount of data, not bits per sample",
        [typeof(PeakVoltage)] = "UnitsNet does not tell peak from rms",
        [typeof(PeakToPeakVoltage)] = "UnitsNet does not tell peak-to-peak from rms",
        [typeof(RmsVoltage)] = "UnitsNet's alternating potential does not say whether it is rms",
        [typeof(NoiseDensity)] = "UnitsNet has no roots of units",
    };

    private static readonly Type[] StrongTypes = typeof(Frequency).Assembly.GetExportedTypes().Where(type => type.IsValueType && typeof(IQuantity).IsAssignableFrom(type) && type != typeof(Quantity)).ToArray();

    private static MethodInfo? Out(Type ours) => typeof(UnitsNetConversions).GetMethod("ToUnitsNet", [ours]);

    private static MethodInfo? In(Type ours) => typeof(UnitsNetConversions).GetMethods().SingleOrDefault(method => method.Name == "ToAcquisition" && method.ReturnType == ours);

    [Fact]
    public void EachStrongType_IsConvertedBothWays_OrHasNoTwin()
    {
        Assert.True(StrongTypes.Length >= 24);
        foreach (Type type in StrongTypes)
        {
            bool isConverted = Out(type) is not null && In(type) is not null && Out(type)!.ReturnType == In(type)!.GetParameters()[0].ParameterType;
            Assert.True(isConverted != NoTwin.ContainsKey(type), type.Name + (isConverted ? " is converted and said to have no twin" : " is neither converted both ways nor said to have no twin"));
        }
    }

    [Fact]
    public void QuantityOfTheSameNameInUnitsNet_IsNotMissed()
    {
        var theirs = UnitsNet.Quantity.Infos.Select(info => info.Name).ToHashSet();
        foreach (Type type in StrongTypes.Where(type => theirs.Contains(type.Name) || theirs.Contains("Electric" + type.Name))) Assert.DoesNotContain(type, NoTwin.Keys);
    }

    public static TheoryData<Type> Shared => new(StrongTypes.Where(type => !NoTwin.ContainsKey(type)));

    [Theory]
    [MemberData(nameof(Shared))]
    public void EachSharedQuantity_GoesThereAndBack(Type type)
    {
        foreach (double si in new[] { 0, 1, 1e-12, 0.1, 1.0 / 3, 4.7e11, 1e20 })
        {
            object ours = type.GetMethod("FromQuantity", [typeof(Quantity)])!.Invoke(null, [new Quantity(si, KindOf(type))])!;
            var back = (IQuantity)In(type)!.Invoke(null, [Out(type)!.Invoke(null, [ours])])!;
            Assert.InRange(back.ToQuantity().SiValue, si * (1 - 1e-15), si * (1 + 1e-15));
        }
    }

    private static QuantityKind KindOf(Type type) => ((IQuantity)Activator.CreateInstance(type)!).ToQuantity().Kind;
}
