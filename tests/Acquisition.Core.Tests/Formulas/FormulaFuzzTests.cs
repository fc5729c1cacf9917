using System;
using System.Collections.Generic;
using System.Globalization;
using System.Text;
using System.Threading.Tasks;
using Acquisition.Core.Formulas;
using Acquisition.Core.Formulas.Syntax;
using Acquisition.Core.Tests.Conventions;
using Xunit;

namespace Acquisition.Core.Tests.Formulas;

/// <summary>Any text is a formula or a list of problems: never another exception, never a hang. What is accepted prints as text of the same tree.</summary>
public sealed class FormulaFuzzTests
{
    /// <summary>Mutated texts per run; ACQUISITION_FUZZ_TEXTS asks for another number, for longer runs.</summary>
    private const int Texts = 2_000_000;

    private const int Seed = 20_260_101;

    private static readonly string[] Seeds =
    [
        "0.35 / 100 MHz in ns", "sqrt(edge^2 + (0.34 / clock)^2)", "if clock > 50 MHz then 1 V else 2 V", "-174 dBm/Hz * 1 MHz + 3 dB", "100 MHz ± 5 % (k=2)",
        "min(1 ns, 2 ns, edge)", "period(frequency: clock)", "not (n > 1 and n < 3) or true", "\"a\"\"b\" == \"c\"", "10:1 * 5 mV/div", "-20 °C + 3 K", "2 ^ -n ^ 2", "1 / 2 GSa/s",
        "5 in in mm", "5 nV/√Hz * sqrt(clock)", "hypot(3 ns, 4 ns) <= edge", "1.5×10^6 Hz", "14 000 pts", "abs(-(3 dB - 2 dB)) * n", "10 V/(s * n) + 1 V*s/(s^2)",
    ];

    private static readonly string[] Pieces =
    [
        " ", "(", ")", "+", "-", "*", "/", "^", "±", "<", ">", "=", "==", "!=", ",", ":", "\"", ".", "1", "0", "9e99", "1e-400", "in", "if", "then", "else", "and", "or", "not", "MHz", "ns", "V", "dBm", "dB/m", "°C",
        "%", "√", "µ", "Ω", "clock", "edge", "n", "min", "sqrt", "(k=2)", "#", "\n", "\t", "\0", "\uD83D", "\uDE00", "²", "×", "−", "\u00A0", "é", "٣", "@", "'", "&&", "pi", "true", "_", "Sa/s",
    ];

    private static readonly FormulaContext Context = FormulaContext.Standard
        .WithInput("clock", QuantityKind.Frequency).WithInput("edge", QuantityKind.Duration).WithInput("n", QuantityKind.Ratio).WithUnit("tick", "10 ns");

    [Fact]
    public void MutatedTexts_AreRefusedOrPrintBackToTheSameTree()
    {
        int texts = int.TryParse(Environment.GetEnvironmentVariable("ACQUISITION_FUZZ_TEXTS"), NumberStyles.Integer, CultureInfo.InvariantCulture, out int wanted) ? wanted : Texts;
        int workers = Environment.ProcessorCount, accepted = 0;
        Parallel.For(0, workers, worker =>
        {
            int found = 0;
            var random = new Random(Seed + worker);
            for (int i = worker; i < texts; i += workers) found += TryOne(Mutated(random), evaluate: i % 8 == 0);
            System.Threading.Interlocked.Add(ref accepted, found);
        });
        Assert.True(accepted > texts / 1000, $"only {accepted} of {texts} texts were formulas: the test does not test much");
    }

    private static int TryOne(string text, bool evaluate)
    {
        try
        {
            if (!Context.TryBuild(text, out Formula? formula, out IReadOnlyList<FormulaProblem> problems))
            {
                Assert.NotEmpty(problems);
                return 0;
            }
            string printed = formula!.ToString();
            Assert.True(Context.TryBuild(printed, out Formula? again, out problems), $"'{text}' was printed as '{printed}': {string.Join("; ", problems)}");
            Assert.True(FormulaComparer.AreSame(formula.Root, again!.Root), $"'{text}' was printed as '{printed}', which is another tree");
            if (evaluate) Evaluate(formula);
            return 1;
        }
        catch (Exception failure) when (failure is not (Xunit.Sdk.XunitException or FormulaException))
        {
            throw new InvalidOperationException($"'{text}' ended in {failure.GetType().Name}: {failure.Message}", failure);
        }
    }

    private static void Evaluate(Formula formula)
    {
        try
        {
            FormulaValue value = formula.Evaluate(Quantity.Parse("24 MHz"), Quantity.Parse("2.8 ns"), Quantity.Parse("2"));
            Assert.Equal(formula.ResultKind, value.Kind);
        }
        catch (FormulaException)
        {
            // A formula may have no value for these inputs.
        }
    }

    private static string Mutated(Random random)
    {
        var text = new StringBuilder(Seeds[random.Next(Seeds.Length)]);
        int changes = random.Next(1, 4);
        for (int i = 0; i < changes; i++)
        {
            int at = random.Next(text.Length + 1);
            switch (random.Next(5))
            {
                case 0: text.Insert(at, Pieces[random.Next(Pieces.Length)]); break;
                case 1 when at < text.Length: text.Remove(at, Math.Min(random.Next(1, 4), text.Length - at)); break;
                case 2 when at < text.Length: text[at] = (char)random.Next(32, 127); break;
                case 3: text.Insert(at, Seeds[random.Next(Seeds.Length)]); break;
                default: text.Insert(at, Pieces[random.Next(Pieces.Length)]).Insert(random.Next(text.Length), Pieces[random.Next(Pieces.Length)]); break;
            }
        }
        return text.ToString();
    }

    public static TheoryData<string> Hostile() => new()
    {
        { new string('(', 100_000) },
        { new string('9', 1_000_000) },
        { "1" + new string('0', 10_000) },
        { string.Concat(System.Linq.Enumerable.Repeat("if 1 > 2 then 1 else ", 600)) + "1" },
        { string.Concat(System.Linq.Enumerable.Repeat("-", 10_000)) + "1" },
        { string.Concat(System.Linq.Enumerable.Repeat("2^", 5_000)) + "1" },
        { string.Concat(System.Linq.Enumerable.Repeat("min(", 3_000)) },
        { "1e99999999999999999999" },
        { "(1 V)^1e300" },
        { string.Concat(System.Linq.Enumerable.Repeat("(1 m^9)^9 * ", 100)) + "1" },
        { string.Concat(System.Linq.Enumerable.Repeat("1 m*", 500)) + "1" },
        { new string('"', 9_999) },
        { new string('x', 16_000) + " + 1" },
        { string.Concat(System.Linq.Enumerable.Repeat("x+", 8_000)) + "1" },
        { string.Concat(System.Linq.Enumerable.Repeat("not ", 4_000)) + "true" },
        { string.Concat(System.Linq.Enumerable.Repeat("@", 16_000)) },
        { string.Concat(System.Linq.Enumerable.Repeat("1 ± ", 4_000)) + "1" },
        { string.Concat(System.Linq.Enumerable.Repeat("a:", 8_000)) },
        { string.Concat(System.Linq.Enumerable.Repeat("f(a:", 4_000)) },
    };

    [Theory]
    [MemberData(nameof(Hostile))]
    public void HostileText_IsRefusedWithWorkThatGoesWithItsLength(string text)
    {
        HangGuard.Run(
            () =>
            {
                Formula.TryBuild(text, out _, out _);
#if NET
                // What is read, and what is said about it, is allocated: work that goes with the square of the length would show.
                long before = GC.GetAllocatedBytesForCurrentThread();
#endif
                Assert.False(Formula.TryBuild(text, out _, out IReadOnlyList<FormulaProblem> problems));
                Assert.NotEmpty(problems);
#if NET
                long bytes = GC.GetAllocatedBytesForCurrentThread() - before;
                Assert.True(bytes <= FixedBytes + BytesPerLetter * text.Length, $"{bytes} bytes for {text.Length} letters");
#endif
            },
            () => text);
    }

#if NET
    private const long FixedBytes = 100_000, BytesPerLetter = 200;
#endif

    /// <summary>256 kB is the stack of a worker in a web server; what overflows it ends the process.</summary>
    [Theory]
    [InlineData("1 ± ", 4_000, "1", false)]
    [InlineData("1 s in ns ", 1, "in ns in ns in ns", true)]
    [InlineData("in ns ", 2_500, "in ns", false)]
    [InlineData("and sqrt(1) > 0 ", 800, "and true", true)]
    [InlineData("+ 1 ", 2_000, "+ 1", true)]
    public void LongChain_DoesNotOverflowASmallStack(string link, int count, string end, bool isFormula)
    {
        string start = link[0] == 'i' ? "1 s " : link[0] == 'a' ? "true " : link[0] == '+' ? "1 " : "";
        string text = start + string.Concat(System.Linq.Enumerable.Repeat(link, count)) + end;
        bool? isBuilt = null;
        var thread = new System.Threading.Thread(() => isBuilt = Formula.TryBuild(text, out Formula? formula, out _) && formula!.Evaluate().ToString() is not null && formula.ToString().Length > 0, 256 * 1024);
        thread.Start();
        thread.Join();
        Assert.Equal(isFormula, isBuilt);
    }

    [Fact]
    public void LongSum_IsBuiltWithoutDepth()
    {
        string text = "0" + string.Concat(System.Linq.Enumerable.Repeat(" + 1", 2000));
        Formula formula = Formula.Build(text);
        Assert.Equal(2000, formula.EvaluateSi());
        Assert.Equal(text, formula.ToString());
        Formula lazy = Formula.Build("true" + string.Concat(System.Linq.Enumerable.Repeat(" and 1 Hz < 1 / period(2 Hz)", 150)));
        Assert.True(lazy.Evaluate().IsTrue);
    }

    [Fact]
    public void LimitsThatAHostLowers_AreKept()
    {
        Assert.False(FormulaContext.Standard.WithLimits(FormulaLimits.Default.WithNesting(3)).TryBuild("((((1))))", out _, out IReadOnlyList<FormulaProblem> problems));
        Assert.Equal("column 4: more than 3 levels of nesting; the formula is not read further", problems[0].ToString());
        Assert.False(FormulaContext.Standard.WithLimits(FormulaLimits.Default.WithNodes(3)).TryBuild("1 + 2 + 3", out _, out problems));
        Assert.Contains("more than 3 numbers, names and operators", problems[0].Message, StringComparison.Ordinal);
        Assert.False(FormulaContext.Standard.WithLimits(FormulaLimits.Default.WithLength(5)).TryBuild("1 + 2 + 3", out _, out problems));
        Assert.Equal("the formula has 9 characters; at most 5 are read", problems[0].Message);
        Assert.False(FormulaContext.Standard.WithInput("f", QuantityKind.Frequency).WithLimits(FormulaLimits.Default.WithCalls(1)).TryBuild("period(f) + period(f)", out _, out problems));
        Assert.Equal("more than 1 function calls", problems[0].Message);
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("ar-EG")]
    [InlineData("sv-SE")]
    [InlineData("tr-TR")]
    public void CultureOfTheThread_DoesNotMatter(string culture)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Formula formula = Formula.Build("-1.5 ns ± 2.5 % (k=1.5)");
            Assert.Equal("-1.5 ns ± 2.5 % (k=1.5)", formula.ToString());
            Assert.Equal("-1.5 ns", formula.Evaluate().ToString());
            Assert.False(Formula.TryBuild("2,5 GHz", out _, out _));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
