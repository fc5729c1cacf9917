using System.Collections.Generic;
using System.Linq;
using System.Text;

namespace Acquisition.Core.Functions;

/// <summary>Writes a set of functions as Markdown, in the order of the names.</summary>
internal static class FunctionSetText
{
    internal static string ToMarkdown(FunctionSet catalog)
    {
        var text = new StringBuilder();
        text.Append("# Functions of the formula language\n\n");
        text.Append("What formulas and worksheets may call, by name. `...` marks an argument that may be repeated, `=` a default. Each example is run by the tests.\n");
        foreach (IGrouping<string, FunctionDefinition> name in catalog.All.GroupBy(function => function.Name).OrderBy(group => group.Key, System.StringComparer.Ordinal))
        {
            text.Append("\n## ").Append(name.Key).Append('\n');
            foreach (FunctionDefinition function in name) Append(text, function);
        }
        return text.ToString();
    }

    private static void Append(StringBuilder text, FunctionDefinition function)
    {
        text.Append("\n`").Append(function).Append("`\n\n").Append(function.Meaning).Append('\n');
        foreach (FunctionParameter parameter in function.Parameters.Where(parameter => parameter.Kind.Choices.Count > 0))
            text.Append("\n`").Append(parameter.Name).Append("` is one of ").Append(string.Join(", ", parameter.Kind.Choices.Select(choice => "`\"" + choice + "\"`"))).Append(".\n");
        text.Append("\nSource: ").Append(function.Source).Append('.');
        if (function.Parameters.Count > 0) text.Append(function.HasDerivatives ? " Derivatives: exact." : " Derivatives: numerical.");
        text.Append('\n');
        if (function.ExampleText.Length > 0) text.Append("\nExample: `").Append(function.ExampleText).Append("` is ").Append(function.ExampleResult).Append(".\n");
    }
}
