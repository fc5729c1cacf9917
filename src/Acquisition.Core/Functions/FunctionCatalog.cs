using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core.Functions;

/// <summary>The functions a formula may call.</summary>
/// <remarks>Immutable and thread-safe: <see cref="With(FunctionDefinition[])"/> gives a new catalogue.</remarks>
public sealed class FunctionCatalog
{
    /// <summary>Words of the language itself.</summary>
    internal static readonly string[] ReservedWords = { "in", "or", "and", "not", "if", "then", "else", "true", "false", "given", "let", "check", "show" };

    private readonly Lazy<Content> _content;

    private FunctionCatalog(Func<Content> make) => _content = new Lazy<Content>(make);

    private sealed class Content(FunctionDefinition[] all, Dictionary<string, FunctionDefinition[]> byName)
    {
        internal FunctionDefinition[] All { get; } = all;

        internal Dictionary<string, FunctionDefinition[]> ByName { get; } = byName;
    }

    /// <summary>A catalogue without functions.</summary>
    public static FunctionCatalog Empty { get; } = new(() => new Content(Array.Empty<FunctionDefinition>(), new Dictionary<string, FunctionDefinition[]>(StringComparer.Ordinal)));

    /// <summary>A catalogue that is made when somebody asks for a function: a formula without calls starts without it.</summary>
    internal static FunctionCatalog Deferred(Func<FunctionCatalog> make) => new(() => make()._content.Value);

    /// <summary>Every function, in the order of declaration.</summary>
    public IReadOnlyList<FunctionDefinition> All => _content.Value.All;

    /// <summary>The names, in the order of declaration.</summary>
    public IReadOnlyCollection<string> Names => _content.Value.ByName.Keys;

    /// <summary>The definitions of one name; empty where it is unknown. Several are told apart by their arguments.</summary>
    /// <param name="name">The name.</param>
    public IReadOnlyList<FunctionDefinition> Find(string name) =>
        _content.Value.ByName.TryGetValue(name ?? throw new ArgumentNullException(nameof(name)), out FunctionDefinition[]? found) ? found : Array.Empty<FunctionDefinition>();

    /// <summary>This catalogue with functions added.</summary>
    /// <param name="functions">The functions.</param>
    /// <exception cref="ArgumentException">A function is a word of the language, is not complete, or cannot be told apart from one of the same name.</exception>
    public FunctionCatalog With(params FunctionDefinition[] functions) => With((IEnumerable<FunctionDefinition>)functions);

    /// <summary>This catalogue with functions added.</summary>
    /// <param name="functions">The functions.</param>
    /// <exception cref="ArgumentException">A function is a word of the language, is not complete, or cannot be told apart from one of the same name.</exception>
    public FunctionCatalog With(IEnumerable<FunctionDefinition> functions)
    {
        FunctionDefinition[] added = (functions ?? throw new ArgumentNullException(nameof(functions))).ToArray();
        var byName = new Dictionary<string, FunctionDefinition[]>(_content.Value.ByName, StringComparer.Ordinal);
        foreach (FunctionDefinition function in added)
        {
            Check(function);
            if (!byName.TryGetValue(function.Name, out FunctionDefinition[]? earlier)) earlier = Array.Empty<FunctionDefinition>();
            FunctionDefinition? clash = earlier.FirstOrDefault(function.ClashesWith);
            if (clash is not null) throw new ArgumentException($"function {function.Signature} cannot be told apart from {clash.Signature}, which is declared already", nameof(functions));
            byName[function.Name] = earlier.Append(function).ToArray();
        }
        FunctionDefinition[] all = _content.Value.All.Concat(added).ToArray();
        return new FunctionCatalog(() => new Content(all, byName));
    }

    /// <summary>The catalogue as Markdown: every function with meaning, parameters, source and example, in the order of the names.</summary>
    public string ToMarkdown() => FunctionCatalogText.ToMarkdown(this);

    private static void Check(FunctionDefinition function)
    {
        if (function is null) throw new ArgumentNullException(nameof(function));
        if (function.Kernel is null) throw new ArgumentException($"function {function.Name} does not say how it is computed", nameof(function));
        if (ReservedWords.Contains(function.Name)) throw new ArgumentException($"'{function.Name}' is a word of the formula language: a function cannot have it as its name", nameof(function));
    }
}
