using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Explanations.Json;
using Acquisition.Core.Planning;

namespace Acquisition.Core;

/// <summary>What the bench or the market offers: instruments, probes and cables as their data sheets describe them. Read from JSON (docs/catalogue.schema.json), quantities as text.</summary>
/// <remarks>Immutable. Names are unique within instruments and within probes.</remarks>
public sealed class Catalogue
{
    /// <summary>A catalogue of instruments and probes.</summary>
    /// <exception cref="ArgumentException">A name occurs twice.</exception>
    public Catalogue(IEnumerable<CatalogueInstrument> instruments, IEnumerable<CatalogueProbe> probes)
        : this(instruments, probes, [])
    {
    }

    /// <summary>A catalogue of instruments, probes and cables.</summary>
    /// <exception cref="ArgumentException">A name occurs twice.</exception>
    public Catalogue(IEnumerable<CatalogueInstrument> instruments, IEnumerable<CatalogueProbe> probes, IEnumerable<CatalogueCable> cables)
    {
        Instruments = (instruments ?? throw new ArgumentNullException(nameof(instruments))).Frozen();
        Probes = (probes ?? throw new ArgumentNullException(nameof(probes))).Frozen();
        RefuseTwice(Instruments.Select(instrument => instrument.Name), nameof(instruments));
        Cables = (cables ?? throw new ArgumentNullException(nameof(cables))).Frozen();
        RefuseTwice(Probes.Select(probe => probe.Name), nameof(probes));
        RefuseTwice(Cables.Select(cable => cable.Name), nameof(cables));
    }

    /// <summary>The instruments, in the catalogue's order.</summary>
    public IReadOnlyList<CatalogueInstrument> Instruments { get; }

    /// <summary>The probes, in the catalogue's order.</summary>
    public IReadOnlyList<CatalogueProbe> Probes { get; }

    /// <summary>The kinds of cable, in the catalogue's order.</summary>
    public IReadOnlyList<CatalogueCable> Cables { get; }

    /// <summary>Reads a catalogue.</summary>
    /// <param name="json">The text of the catalogue (docs/catalogue.schema.json).</param>
    /// <exception cref="DocumentFormatException">Something is wrong with it; the exception lists everything that is, with its place.</exception>
    public static Catalogue Parse(string json) =>
        TryParse(json ?? throw new ArgumentNullException(nameof(json)), out Catalogue? catalogue, out IReadOnlyList<DocumentProblem> problems)
            ? catalogue!
            : throw new DocumentFormatException("catalogue", problems);

    /// <summary>Reads a catalogue without throwing.</summary>
    /// <param name="json">The text of the catalogue.</param>
    /// <param name="catalogue">The catalogue, or null where something is wrong.</param>
    /// <param name="problems">Everything that is wrong, with its place; empty where nothing is.</param>
    public static bool TryParse(string? json, out Catalogue? catalogue, out IReadOnlyList<DocumentProblem> problems)
    {
        var found = new List<DocumentProblem>();
        catalogue = JsonReader.Read(json ?? "", found) is { } root ? CatalogueDocument.Read(root, found) : null;
        if (found.Count > 0)
            catalogue = null;
        problems = found.OrderBy(problem => problem.Line).ThenBy(problem => problem.Column).ToArray();
        return catalogue is not null;
    }

    /// <summary>The instrument of a name.</summary>
    /// <exception cref="ArgumentException">There is none; the message names the nearest.</exception>
    public CatalogueInstrument Instrument(string name) =>
        Instruments.FirstOrDefault(instrument => instrument.Name == name) ?? throw Unknown("instrument", name, Instruments.Select(instrument => instrument.Name));

    /// <summary>The probe of a name.</summary>
    /// <exception cref="ArgumentException">There is none; the message names the nearest.</exception>
    public CatalogueProbe Probe(string name) =>
        Probes.FirstOrDefault(probe => probe.Name == name) ?? throw Unknown("probe", name, Probes.Select(probe => probe.Name));

    /// <summary>The cable of a name.</summary>
    /// <exception cref="ArgumentException">There is none; the message names the nearest.</exception>
    public CatalogueCable Cable(string name) =>
        Cables.FirstOrDefault(cable => cable.Name == name) ?? throw Unknown("cable", name, Cables.Select(cable => cable.Name));

    private static ArgumentException Unknown(string what, string name, IEnumerable<string> known)
    {
        string? near = NearestWord.Of(name ?? "", known);
        return new ArgumentException($"the catalogue has no {what} \"{name}\"" + (near is null ? "" : $"; did you mean \"{near}\"?"), nameof(name));
    }

    private static void RefuseTwice(IEnumerable<string> names, string argument)
    {
        if (names.GroupBy(name => name).FirstOrDefault(group => group.Count() > 1) is { } twice)
            throw new ArgumentException($"the name \"{twice.Key}\" occurs twice in {argument}", argument);
    }
}
