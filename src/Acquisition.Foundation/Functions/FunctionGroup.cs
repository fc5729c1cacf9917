using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core.Functions;

/// <summary>
/// Functions that are declared together, such as those of an area. Their names are known from the start; the declarations run when one of the names is
/// asked for, so that the first formula of a process does not wait for the declarations of every area.
/// </summary>
internal sealed class FunctionGroup
{
    private readonly Func<IEnumerable<FunctionDefinition>>? _declare;
    private FunctionDefinition[]? _definitions;

    /// <summary>A group that is declared later.</summary>
    /// <param name="names">Every name once, in the order of declaration, with a space between.</param>
    /// <param name="declare">The declarations.</param>
    internal FunctionGroup(string names, Func<IEnumerable<FunctionDefinition>> declare)
    {
        Names = names.Split(' ');
        _declare = declare;
    }

    /// <summary>A group that is declared already.</summary>
    internal FunctionGroup(FunctionDefinition[] definitions)
    {
        Names = definitions.Select(each => each.Name).Distinct().ToArray();
        _definitions = definitions;
    }

    internal string[] Names { get; }

    /// <summary>The declarations. Two threads that ask at once may both run them, and get the same.</summary>
    internal FunctionDefinition[] Definitions => _definitions ??= new List<FunctionDefinition>(_declare!()).ToArray();
}
