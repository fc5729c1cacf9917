using System;
using System.IO;
using System.Linq;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Xunit;

namespace Acquisition.Core.Tests.Conventions;

/// <summary>What the trade keeps apart does not compile; each line is compiled in memory and must fail with that very diagnostic.</summary>
public class MustNotCompileTests
{
    private static readonly MetadataReference[] References =
        ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
            .Where(path => Path.GetFileName(path).StartsWith("System.", StringComparison.Ordinal) || Path.GetFileName(path).StartsWith("netstandard", StringComparison.Ordinal))
            .Append(typeof(Frequency).Assembly.Location).Append(typeof(Outlook).Assembly.Location)
            .Select(path => (MetadataReference)MetadataReference.CreateFromFile(path)).ToArray();

    private static string[] ErrorsOf(string line)
    {
        string program = "using Acquisition.Core; using Acquisition.Core.Literals; class P { static void M() { " + line + " } }";
        var compilation = CSharpCompilation.Create("p", [CSharpSyntaxTree.ParseText(program)], References, new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary));
        return compilation.GetDiagnostics().Where(diagnostic => diagnostic.Severity == DiagnosticSeverity.Error).Select(diagnostic => diagnostic.Id).ToArray();
    }

    [Theory]
    [InlineData("_ = 1.GSaPerS() + 1.MHz();", "CS0019")]
    [InlineData("_ = 1.GSaPerS() > 1.MHz();", "CS0019")]
    [InlineData("_ = PowerLevel.Parse(\"0 dBm\") + PowerLevel.Parse(\"0 dBm\");", "CS0019")]
    [InlineData("_ = PowerLevel.Parse(\"0 dBm\") - VoltageLevel.Parse(\"0 dBV\");", "CS0019")]
    [InlineData("_ = PowerLevel.Parse(\"0 dBm\") * 2.0;", "CS0019")]
    [InlineData("Frequency f = 20e6;", "CS0029")]
    [InlineData("double f = 20.MHz();", "CS0029")]
    [InlineData("RmsVoltage rms = PeakToPeakVoltage.FromVolts(1);", "CS0029")]
    [InlineData("_ = PeakToPeakVoltage.FromVolts(1) + RmsVoltage.FromVolts(1);", "CS0019")]
    [InlineData("_ = PointCount.FromPoints(1000) * 1.5;", "CS0019")]
    [InlineData("Ratio r = DecibelRatio.FromDecibels(3);", "CS0029")]
    [InlineData("_ = DecibelRatio.FromDecibels(3) * DecibelRatio.FromDecibels(3);", "CS0019")]
    [InlineData("_ = Temperature.FromKelvins(290) + Temperature.FromKelvins(290);", "CS0019")]
    [InlineData("_ = Voltage.FromVolts(1) * Voltage.FromVolts(1);", "CS0019")]
    [InlineData("var f = new Frequency(20e6);", "CS1729")]
    [InlineData("20.MHz().Hertz = 3;", "CS0200")]
    public void Mixture_ThatTheTradeKeepsApart_DoesNotCompile(string line, string diagnostic) => Assert.Equal([diagnostic], ErrorsOf(line).Distinct());

    /// <summary>The program of a host with C# 7.3, which the documentation quotes and which is run on both runtimes.</summary>
    [Fact]
    public void ProgramOfAnOldCompiler_Compiles()
    {
        string program = File.ReadAllText(Repository.PathOf("tests", "Acquisition.Embedding.Tests", "Consumer", "Program.cs"));
        SyntaxTree tree = CSharpSyntaxTree.ParseText(program, new CSharpParseOptions(LanguageVersion.CSharp7_3));
        var compilation = CSharpCompilation.Create("host", [tree], References, new CSharpCompilationOptions(OutputKind.ConsoleApplication));
        Assert.Empty(compilation.GetDiagnostics().Where(diagnostic => diagnostic.Severity == DiagnosticSeverity.Error).Select(diagnostic => diagnostic.ToString()));
    }

    [Theory]
    [InlineData("PointCount points = 2.GSaPerS() * 100.ms();")]
    [InlineData("DecibelRatio gain = PowerLevel.Parse(\"3 dBm\") - PowerLevel.Parse(\"0 dBm\");")]
    [InlineData("Duration period = 1.0 / 24.MHz();")]
    [InlineData("Ratio change = 1.GSaPerS() / 500.MSaPerS();")]
    public void Mixture_ThatMakesSense_Compiles(string line) => Assert.Empty(ErrorsOf(line));
}
