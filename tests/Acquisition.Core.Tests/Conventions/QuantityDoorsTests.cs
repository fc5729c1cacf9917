using System;
using System.Globalization;
using System.Reflection;
using System.Text;
using Xunit;

namespace Acquisition.Core.Tests.Conventions;

/// <summary>Every door of every strong type - text, span, UTF-8, culture, comparison without a type - leads to the same value.</summary>
public sealed class QuantityDoorsTests
{
    private static readonly CultureInfo German = CultureInfo.GetCultureInfo("de-DE");

    public static TheoryData<Type> Types => new(StrongTypeList.All);

    [Theory, MemberData(nameof(Types))]
    public void AllDoorsOfAType_LeadToTheSameValue(Type type) =>
        typeof(QuantityDoorsTests).GetMethod(nameof(Doors), BindingFlags.NonPublic | BindingFlags.Static)!.MakeGenericMethod(type).Invoke(null, null);

    private static void Doors<T>()
        where T : struct, IQuantity, IComparable<T>, IComparable, IEquatable<T>, ISpanParsable<T>, IUtf8SpanParsable<T>, ISpanFormattable, IUtf8SpanFormattable
    {
        QuantityKind kind = StrongTypeList.KindOf(typeof(T));
        // Counts are whole.
        T small = (T)StrongTypeList.FromQuantity(typeof(T), new Quantity(12, kind)), large = (T)StrongTypeList.FromQuantity(typeof(T), new Quantity(typeof(T) == typeof(PointCount) ? 13 : 12.5, kind));
        string text = large.ToString()!;
        byte[] utf8 = Encoding.UTF8.GetBytes(text);
        Assert.Equal(large, T.Parse(text, null));
        Assert.Equal(large, T.Parse(text.AsSpan(), null));
        Assert.Equal(large, T.Parse(utf8, null));
        Assert.Equal(large, T.Parse(large.ToString(null, German), German));
        Assert.True(T.TryParse(text, null, out T read) && read.Equals(large));
        Assert.True(T.TryParse(text.AsSpan(), null, out read) && read.Equals(large));
        Assert.True(T.TryParse(utf8, null, out read) && read.Equals(large));
        Assert.False(T.TryParse("nothing of the kind", null, out read) || !read.Equals(default));
        Assert.False(T.TryParse("nothing of the kind".AsSpan(), null, out _) || T.TryParse("nothing"u8, null, out _) || T.TryParse((string?)null, null, out _));
        Assert.Throws<QuantityFormatException>(() => T.Parse("nothing of the kind", null));
        Assert.Throws<QuantityFormatException>(() => T.Parse("9e999 " + kind.Symbol, null));

        var characters = new char[64];
        var bytes = new byte[128];
        Assert.True(large.TryFormat(characters, out int written, default, null));
        Assert.Equal(text, new string(characters, 0, written));
        Assert.True(large.TryFormat(bytes, out written, default, null));
        Assert.Equal(text, Encoding.UTF8.GetString(bytes, 0, written));
        Assert.False(large.TryFormat(new char[1], out _, default, null));
        Assert.False(large.TryFormat(new byte[1], out _, default, null));
        Assert.Equal(text, string.Format(CultureInfo.InvariantCulture, "{0}", large));

        Assert.Equal(1, ((IComparable)large).CompareTo(null));
        Assert.True(((IComparable)large).CompareTo(small) > 0 && small.CompareTo(large) < 0);
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => ((IComparable)large).CompareTo("12"));
        Assert.Contains(kind.Name, refusal.Message, StringComparison.Ordinal);
        Assert.False(large.Equals("12") || large.Equals((object)small) || !large.Equals((object)large));

        object Static(string name, params object[] arguments) => typeof(T).GetMethod(name, [typeof(T), typeof(T)])!.Invoke(null, arguments)!;
        Assert.Equal(small, Static("Min", large, small));
        Assert.Equal(large, Static("Max", small, large));
        Assert.Equal(true, Static("op_Inequality", small, large));
        Assert.Equal(true, Static("op_LessThanOrEqual", small, large));
        Assert.Equal(false, Static("op_GreaterThanOrEqual", small, large));
    }
}
