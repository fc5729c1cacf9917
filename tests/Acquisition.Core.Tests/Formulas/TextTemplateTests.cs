using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Formulas;
using Xunit;

namespace Acquisition.Core.Tests.Formulas;

public sealed class TextTemplateTests
{
    private static readonly FormulaContext Context = FormulaContext.Standard.WithInput("edge", QuantityKind.Duration);

    private static readonly Dictionary<string, FormulaValue> Edge = new() { ["edge"] = Quantity.Parse("2.8 ns") };

    [Theory]
    [InlineData("edge {{ edge }}.", "edge 2.8 ns.")]
    [InlineData("{{edge:3}} and {{ 2 * edge : G2 ps }}", "2.80 ns and 5600 ps")]
    [InlineData("{{ edge in ps : 2 }}", "2800 ps")]
    [InlineData("a } b { c }} d", "a } b { c }} d")]
    [InlineData("{{ \"{{ }}\" }}", "{{ }}")]
    [InlineData("{{ if edge > 2 ns then \"slow\" else \"fast\" }}", "slow")]
    [InlineData("{{ 10:1 }}", "10")]
    [InlineData("", "")]
    public void Template_IsFilled(string template, string expected) => Assert.Equal(expected, TextTemplate.Build(template, Context).Fill(Edge));

    [Theory]
    [InlineData("a\n b {{ edg }} {{ 1 + }}", "line 2, column 7: 'edg' is not known; did you mean edge?|line 2, column 21: found the end of the formula, expected a value")]
    [InlineData("a {{ edge", "line 1, column 3: found '{{' without its end, expected '}}'")]
    [InlineData("a {{ edge 3 }}", "line 1, column 11: found '3', expected an operator or the end of the formula")]
    public void Mistakes_ComeWithTheirPlace(string template, string expected)
    {
        TextTemplate.TryBuild(template, Context, out _, out IReadOnlyList<FormulaProblem> problems);
        Assert.Equal(expected, string.Join("|", problems.Select(problem => problem.ToString())));
    }

    [Fact]
    public void FormatOfAnotherKind_IsRefusedWhenBuilt() => Assert.False(TextTemplate.TryBuild("{{ edge : 3 MHz }}", Context, out _, out _));

    [Fact]
    public void Template_TakesTheNamesOfAWorksheet()
    {
        Worksheet sheet = Worksheet.Build("given clock = 24 MHz\nlet cycle = period(clock)");
        TextTemplate template = TextTemplate.Build("one cycle lasts {{ cycle : G4 }}", FormulaContext.Standard.WithNamesOf(sheet));
        Assert.Equal("one cycle lasts 41.67 ns", template.Fill(sheet.Evaluate().Values));
    }
}
