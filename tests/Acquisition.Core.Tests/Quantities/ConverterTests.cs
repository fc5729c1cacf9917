using System;
using System.Collections.Generic;
using System.ComponentModel;
using System.Globalization;
using System.Text.Json;
using Acquisition.Core.Tests.Conventions;
using Xunit;

namespace Acquisition.Core.Tests.Quantities;

public class ConverterTests
{
    public static TheoryData<Type> Types => new(StrongTypeList.All);

#if NET
    private sealed record Bench(Frequency Bandwidth, Duration? RiseTime, SampleRate Rate, PointCount[] Depths);

    [Fact]
    public void Json_CarriesQuantitiesAsText()
    {
        var bench = new Bench(Frequency.FromMegahertz(200), null, SampleRate.FromGigasamplesPerSecond(2), [PointCount.FromPoints(14000)]);
        string json = JsonSerializer.Serialize(bench);
        Assert.Equal("""{"Bandwidth":"200 MHz","RiseTime":null,"Rate":"2 GSa/s","Depths":["14 kpts"]}""", json);
        Bench read = JsonSerializer.Deserialize<Bench>(json)!;
        Assert.Equal((bench.Bandwidth, bench.RiseTime, bench.Rate, bench.Depths[0]), (read.Bandwidth, read.RiseTime, read.Rate, read.Depths[0]));
    }

    [Fact]
    public void Json_CarriesQuantitiesAsDictionaryKeys()
    {
        var gain = new Dictionary<Frequency, DecibelRatio> { [Frequency.FromMegahertz(24)] = DecibelRatio.FromDecibels(-0.5) };
        string json = JsonSerializer.Serialize(gain);
        Assert.Equal("""{"24 MHz":"-0.5 dB"}""", json);
        Assert.Equal(gain, JsonSerializer.Deserialize<Dictionary<Frequency, DecibelRatio>>(json));
        var any = new Dictionary<Quantity, Quantity> { [Quantity.Parse("1 V")] = Quantity.Parse("2 mV/div") };
        Assert.Equal(any, JsonSerializer.Deserialize<Dictionary<Quantity, Quantity>>(JsonSerializer.Serialize(any)));
    }

    [Theory]
    [InlineData("""{"Bandwidth":"200 MHZ"}""", "$.Bandwidth", "column 5: found 'MHZ', expected the unit of a frequency; did you mean MHz or mHz?")]
    [InlineData("""{"Bandwidth":200}""", "$.Bandwidth", "found a JSON number, expected a text such as \"100 MHz\" for a Frequency")]
    [InlineData("""{"Bandwidth":true}""", "$.Bandwidth", "found a JSON truth value, expected a text such as \"100 MHz\" for a Frequency")]
    [InlineData("""{"Depths":["1 pts","1.5 pts"]}""", "$.Depths[1]", "column 1: value must be a whole number of points; was 1.5 pts")]
    [InlineData("""{"Bandwidth":"200M"}""", "$.Bandwidth", "column 4: found 'M', expected the unit of a frequency; did you mean MHz?")]
    [InlineData("""{"Rate":"2 GHz"}""", "$.Rate", "column 1: found a frequency (2 GHz), expected a sample rate; did you mean 2 GSa/s?")]
    public void Json_ThatIsNoQuantity_IsRefusedWithItsPath(string json, string path, string message)
    {
        var problem = Assert.Throws<JsonException>(() => JsonSerializer.Deserialize<Bench>(json));
        Assert.Equal(path, problem.Path);
        Assert.Equal(message, problem.Message);
    }

    [Fact]
    public void JsonNull_IsRefusedUnlessThePropertyMayBeMissing()
    {
        Assert.Equal("$.Bandwidth", Assert.Throws<JsonException>(() => JsonSerializer.Deserialize<Bench>("""{"Bandwidth":null}""")).Path);
        Assert.Null(JsonSerializer.Deserialize<Bench>("""{"RiseTime":null}""")!.RiseTime);
    }
#endif

    [Theory]
    [MemberData(nameof(Types))]
    public void EachType_PassesThroughJsonAndItsTypeConverter(Type type)
    {
        object value = StrongTypeList.FromQuantity(type, new Quantity(1250, StrongTypeList.KindOf(type)));
#if NET
        Assert.Equal(value, JsonSerializer.Deserialize(JsonSerializer.Serialize(value, type), type));
#endif
        TypeConverter converter = TypeDescriptor.GetConverter(type);
        Assert.True(converter.CanConvertFrom(typeof(string)) && converter.CanConvertTo(typeof(string)) && converter.CanConvertFrom(typeof(Quantity)) && converter.CanConvertTo(typeof(Quantity)));
        string text = (string)converter.ConvertTo(null, CultureInfo.GetCultureInfo("de-DE"), value, typeof(string))!;
        Assert.Equal(value.ToString(), text);
        Assert.Equal(value, converter.ConvertFrom(null, CultureInfo.GetCultureInfo("de-DE"), text));
        Assert.Equal(((IQuantity)value).ToQuantity(), converter.ConvertTo(value, typeof(Quantity)));
        Assert.Equal(value, converter.ConvertFrom(((IQuantity)value).ToQuantity()));
        Assert.True(converter.IsValid(text) && converter.IsValid(value));
        Assert.False(converter.IsValid("5 lanterns"));
        Assert.False(converter.IsValid(5));
    }

    [Fact]
    public void TypeConverter_RefusesAsParseDoes()
    {
        TypeConverter converter = TypeDescriptor.GetConverter(typeof(SampleRate));
        Assert.Equal("column 1: value must be a finite sample rate of at least 0 Sa/s; was -5 Sa/s", Assert.Throws<QuantityFormatException>(() => converter.ConvertFrom("-5 Sa/s")).Message);
        Assert.False(converter.IsValid("-5 Sa/s"));
        Assert.Throws<QuantityFormatException>(() => converter.ConvertFrom("5 Hz"));
        Assert.Throws<NotSupportedException>(() => converter.ConvertFrom(5.0));
        Assert.Throws<NotSupportedException>(() => converter.ConvertTo(SampleRate.FromGigasamplesPerSecond(1), typeof(double)));
        Assert.Equal(Quantity.Parse("5 mV/div"), TypeDescriptor.GetConverter(typeof(Quantity)).ConvertFrom("5 mV/div"));
    }

    [Fact]
    public void DebuggerDisplay_ShowsTheText() =>
        Assert.All(StrongTypeList.All, type => Assert.Equal("{ToString(),nq}", Assert.IsType<System.Diagnostics.DebuggerDisplayAttribute>(Attribute.GetCustomAttribute(type, typeof(System.Diagnostics.DebuggerDisplayAttribute))).Value));
}
