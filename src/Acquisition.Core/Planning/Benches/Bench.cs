using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Explanations.Json;
using Acquisition.Core.Planning;

namespace Acquisition.Core;

/// <summary>A set-up on the bench, as a bench file holds it (docs/bench.schema.json): signal, chain, digitizer, how it is set, and what is wanted.</summary>
/// <remarks>Immutable.</remarks>
public sealed class Bench
{
    internal Bench(string name, SampledSignal setup, Duration window, Requirement? wanted)
    {
        Name = name;
        Setup = setup;
        Window = window;
        Wanted = wanted;
        Outlook = new Outlook(setup, setup.Digitizer.TimebaseFor(window, setup.ChannelsInUse), wanted);
    }

    /// <summary>What the set-up is for.</summary>
    public string Name { get; }

    /// <summary>The signal behind chain and digitizer, with how the digitizer is set.</summary>
    public SampledSignal Setup { get; }

    /// <summary>The window.</summary>
    public Duration Window { get; }

    /// <summary>What is wanted of the signal; null where the file does not say.</summary>
    public Requirement? Wanted { get; }

    /// <summary>What will be seen.</summary>
    public Outlook Outlook { get; }

    /// <summary>Reads a bench file.</summary>
    /// <param name="json">The text of the file; docs/bench.schema.json describes it.</param>
    /// <exception cref="DocumentFormatException">Something is wrong with it; the exception lists everything that is, with its place.</exception>
    public static Bench Parse(string json) =>
        TryParse(json ?? throw new ArgumentNullException(nameof(json)), out Bench? bench, out IReadOnlyList<DocumentProblem> problems)
            ? bench!
            : throw new DocumentFormatException("bench file", problems);

    /// <summary>Reads a bench file whose instrument, probe or cables are named in a catalogue.</summary>
    /// <param name="json">The text of the file; docs/bench.schema.json describes it.</param>
    /// <param name="catalogue">Where the names are looked up.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="DocumentFormatException">Something is wrong with it; the exception lists everything that is, with its place.</exception>
    public static Bench Parse(string json, Catalogue catalogue) =>
        TryParse(json ?? throw new ArgumentNullException(nameof(json)), catalogue, out Bench? bench, out IReadOnlyList<DocumentProblem> problems)
            ? bench!
            : throw new DocumentFormatException("bench file", problems);

    /// <summary>Reads a bench file without throwing.</summary>
    /// <param name="json">The text of the file.</param>
    /// <param name="bench">The bench, or null where something is wrong.</param>
    /// <param name="problems">Everything that is wrong, with its place; empty where nothing is.</param>
    public static bool TryParse(string? json, out Bench? bench, out IReadOnlyList<DocumentProblem> problems) => TryRead(json, null, out bench, out problems);

    /// <summary>Reads a bench file whose instrument, probe or cables are named in a catalogue, without throwing over what the file holds.</summary>
    /// <param name="json">The text of the file.</param>
    /// <param name="catalogue">Where the names are looked up.</param>
    /// <param name="bench">The bench, or null where something is wrong.</param>
    /// <param name="problems">Everything that is wrong, with its place; empty where nothing is.</param>
    /// <exception cref="ArgumentNullException"><paramref name="catalogue"/> is null.</exception>
    public static bool TryParse(string? json, Catalogue catalogue, out Bench? bench, out IReadOnlyList<DocumentProblem> problems) =>
        TryRead(json, catalogue ?? throw new ArgumentNullException(nameof(catalogue)), out bench, out problems);

    private static bool TryRead(string? json, Catalogue? catalogue, out Bench? bench, out IReadOnlyList<DocumentProblem> problems)
    {
        var found = new List<DocumentProblem>();
        bench = JsonReader.Read(json ?? "", found) is { } root ? BenchDocument.Read(root, catalogue, found) : null;
        if (found.Count > 0)
            bench = null;
        problems = found.OrderBy(problem => problem.Line).ThenBy(problem => problem.Column).ToArray();
        return bench is not null;
    }

    /// <summary>The name and the outlook as plain text, and what is needed for what was wanted: met or not met.</summary>
    public override string ToString() => Name + "\n\n" + Outlook + (Wanted is null ? "" : "\n" + Wanted.Specify().ToString(Outlook));
}
