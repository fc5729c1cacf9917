using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Reflection;
using System.Text;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Documents;

/// <summary>docs/units.md is written from the unit table, the named kinds and the literals: a new unit is a new line in review.</summary>
public sealed class UnitsPageTests
{
    [Fact]
    public void UnitsPage_IsTheOneOfTheTables()
    {
        string computed = Page();
        if (Environment.GetEnvironmentVariable("ACQUISITION_WRITE_DOCS") == "1") File.WriteAllText(Repository.PathOf("docs", "units.md"), computed);

        Assert.Equal(Repository.Read("docs", "units.md"), computed);
    }

    [Fact]
    public void EveryUnitOfTheTable_IsReadAsItsKind() =>
        Assert.All(UnitTable.All, unit => Assert.Equal(unit.Kind, Read("1 " + unit.Symbol).Kind));

    private static string Page()
    {
        var text = new StringBuilder();
        text.Append("# Units and kinds\n\n");
        text.Append("Every unit that text may name, every kind of quantity that has a name, and every prefix; how they are written and combined is in [notation.md](notation.md).\n");
        text.Append("A test writes this page from the tables of the code: `ACQUISITION_WRITE_DOCS=1 dotnet test`.\n\n");
        text.Append("Sources: SI Brochure 9th edition; IEC 80000-13 (bit, byte, binary prefixes); IEC 60027-3 (decibel, neper); handbook 1.3 and 13.2. Samples, points, divisions, symbols and unit intervals are the trade's.\n\n");
        text.Append("## Kinds\n\n");
        text.Append("A kind says what a quantity is; formulas check it. The kinds with a type of their own are checked by the compiler too; their literals need `using Acquisition.Core.Literals;`.\n\n");
        text.Append("| kind | unit | behaves as | C# type | literals |\n|---|---|---|---|---|\n");
        foreach (QuantityKind kind in QuantityKind.Named)
        {
            Type? type = StrongTypes.FirstOrDefault(candidate => ((IQuantity)Activator.CreateInstance(candidate)!).ToQuantity().Kind.Equals(kind));
            text.Append(CultureInfo.InvariantCulture, $"| {kind.Name} | {Code(kind.Symbol)} | {InWords(kind.Nature)} | {(type is null ? "" : Code(type.Name))} | {(type is null ? "" : string.Join(", ", LiteralsOf(type).Select(Code)))} |\n");
        }
        text.Append("\nWhatever has no name is a kind all the same, named by its unit: `V·s`, `W/(m²·K)`.\n\n");
        text.Append("## Units\n\n");
        text.Append("| symbol | kind | prefixes | one of it |\n|---|---|---|---|\n");
        foreach (Unit unit in UnitTable.All)
        {
            Quantity one = Read("1 " + unit.Symbol);
            string held = one.SiValue.ToString("G12", CultureInfo.InvariantCulture) + (one.Kind.Symbol.Length > 0 ? " " + one.Kind.Symbol : "");
            text.Append(CultureInfo.InvariantCulture, $"| {Code(unit.Symbol)} | {unit.Kind.Name} | {InWords(unit.Prefixes)} | {held} |\n");
        }
        text.Append("\nThe last column is what `Quantity.Parse(\"1 ...\").SiValue` gives, to twelve digits.\n\n");
        text.Append("## Prefixes\n\n");
        text.Append("| prefix | factor |\n|---|---|\n");
        foreach (UnitPrefix prefix in UnitPrefix.All)
            text.Append(CultureInfo.InvariantCulture, $"| {Code(prefix.Symbol)} | {(prefix.IsBinary ? "2^" + prefix.PowerOfTwo.ToString(CultureInfo.InvariantCulture) : "10^" + prefix.PowerOfTen.ToString(CultureInfo.InvariantCulture))} |\n");
        text.Append("\n`u`, µ (U+00B5) and μ (U+03BC) are read alike; U+00B5 is written.\n");
        return text.ToString();
    }

    private static IEnumerable<Type> StrongTypes { get; } =
        typeof(Frequency).Assembly.GetExportedTypes().Where(type => type.IsValueType && typeof(IQuantity).IsAssignableFrom(type) && type != typeof(Quantity)).OrderBy(type => type.Name, StringComparer.Ordinal).ToArray();

    private static IEnumerable<string> LiteralsOf(Type type) =>
        typeof(FrequencyLiterals).Assembly.GetExportedTypes().Where(host => host.Namespace == typeof(FrequencyLiterals).Namespace)
            .SelectMany(host => host.GetMethods(BindingFlags.Public | BindingFlags.Static)).Where(method => method.ReturnType == type).Select(method => method.Name).Distinct();

    private static Quantity Read(string text) => Quantity.Parse(text, CultureInfo.InvariantCulture);

    private static string Code(string symbol) => symbol.Length > 0 ? "`" + symbol + "`" : "";

    private static string InWords(QuantityNature nature) => nature switch
    {
        QuantityNature.Linear => "linear",
        QuantityNature.Peak => "amplitude, mean to peak",
        QuantityNature.PeakToPeak => "amplitude, peak to peak",
        QuantityNature.Rms => "amplitude, rms",
        QuantityNature.Point => "point on a scale",
        QuantityNature.DecibelRatio => "decibel ratio",
        QuantityNature.Level => "level",
        QuantityNature.DecibelSlope => "decibels per unit",
        _ => "level per bandwidth",
    };

    private static string InWords(UnitPrefixes prefixes) => prefixes switch
    {
        UnitPrefixes.None => "none",
        UnitPrefixes.Decimal => "decimal",
        UnitPrefixes.DecimalAndBinary => "decimal and binary",
        _ => "k and above, binary",
    };
}
