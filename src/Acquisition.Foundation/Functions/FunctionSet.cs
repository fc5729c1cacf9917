using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core.Functions;

/// <summary>The functions a formula may call.</summary>
/// <remarks>Immutable and thread-safe: <see cref="With(FunctionDefinition[])"/> gives a new set.</remarks>
public sealed class FunctionSet
{
    /// <summary>Words of the language itself.</summary>
    internal static readonly string[] ReservedWords = { "in", "or", "and", "not", "if", "then", "else", "true", "false", "given", "let", "check", "show" };

    private readonly FunctionGroup[] _groups;
    private Dictionary<string, Overloads>? _byName;
    private IReadOnlyList<FunctionDefinition>? _all;

    /// <summary>A set of groups whose definitions do not clash.</summary>
    internal FunctionSet(params FunctionGroup[] groups) => _groups = groups;

    /// <summary>A set without functions.</summary>
    public static FunctionSet Empty { get; } = new();

    /// <summary>Every function, in the order of declaration.</summary>
    public IReadOnlyList<FunctionDefinition> All => _all ??= _groups.SelectMany(group => group.Definitions).Frozen();

    /// <summary>The names, in the order of declaration.</summary>
    public IReadOnlyCollection<string> Names => ByName.Keys;

    /// <summary>What is declared together, in the order of declaration.</summary>
    internal IReadOnlyList<FunctionGroup> Groups => _groups;

    /// <summary>The definitions of one name; empty where it is unknown. Several are told apart by their arguments.</summary>
    /// <param name="name">The name.</param>
    public IReadOnlyList<FunctionDefinition> Find(string name) => DefinitionsOf(name ?? throw new ArgumentNullException(nameof(name)));

    internal FunctionDefinition[] DefinitionsOf(string name) => ByName.TryGetValue(name, out Overloads? found) ? found.Definitions : Array.Empty<FunctionDefinition>();

    /// <summary>Which groups know a name. Made when somebody asks for a function: a formula without calls starts without it.</summary>
    private Dictionary<string, Overloads> ByName => _byName ??= Index();

    private Dictionary<string, Overloads> Index()
    {
        var byName = new Dictionary<string, Overloads>(StringComparer.Ordinal);
        foreach (FunctionGroup group in _groups)
        {
            foreach (string name in group.Names)
            {
                if (!byName.TryGetValue(name, out Overloads? overloads)) byName.Add(name, overloads = new Overloads(name));
                overloads.Groups.Add(group);
            }
        }
        return byName;
    }

    /// <summary>The definitions of one name, of several groups where several have it.</summary>
    private sealed class Overloads(string name)
    {
        private FunctionDefinition[]? _definitions;

        internal List<FunctionGroup> Groups { get; } = new(1);

        internal FunctionDefinition[] Definitions => _definitions ??= Gather();

        private FunctionDefinition[] Gather()
        {
            var found = new List<FunctionDefinition>(1);
            foreach (FunctionGroup group in Groups)
            {
                foreach (FunctionDefinition definition in group.Definitions)
                {
                    if (definition.Name == name) found.Add(definition);
                }
            }
            return found.ToArray();
        }
    }

    /// <summary>This set with functions added.</summary>
    /// <param name="functions">The functions.</param>
    /// <exception cref="ArgumentException">A function is a word of the language, is not complete, or cannot be told apart from one of the same name.</exception>
    public FunctionSet With(params FunctionDefinition[] functions) => With((IEnumerable<FunctionDefinition>)functions);

    /// <summary>This set with functions added.</summary>
    /// <param name="functions">The functions.</param>
    /// <exception cref="ArgumentException">A function is a word of the language, is not complete, or cannot be told apart from one of the same name.</exception>
    public FunctionSet With(IEnumerable<FunctionDefinition> functions)
    {
        FunctionDefinition[] added = (functions ?? throw new ArgumentNullException(nameof(functions))).ToArray();
        for (int i = 0; i < added.Length; i++)
        {
            FunctionDefinition function = added[i];
            Check(function);
            FunctionDefinition? clash = DefinitionsOf(function.Name).Concat(added.Take(i)).FirstOrDefault(earlier => earlier.Name == function.Name && function.ClashesWith(earlier));
            if (clash is not null) throw new ArgumentException($"function {function.Signature} cannot be told apart from {clash.Signature}, which is declared already", nameof(functions));
        }
        return new FunctionSet(_groups.Append(new FunctionGroup(added)).ToArray());
    }

    /// <summary>The set as Markdown: every function with meaning, parameters, source and example, in the order of the names.</summary>
    public string ToMarkdown() => FunctionSetText.ToMarkdown(this);

    private static void Check(FunctionDefinition function)
    {
        if (function is null) throw new ArgumentNullException(nameof(function));
        if (function.Kernel is null) throw new ArgumentException($"function {function.Name} does not say how it is computed", nameof(function));
        if (ReservedWords.Contains(function.Name)) throw new ArgumentException($"'{function.Name}' is a word of the formula language: a function cannot have it as its name", nameof(function));
    }
}
