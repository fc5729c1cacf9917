using System;
using System.Collections.Generic;
using System.Numerics;
using Acquisition.Core.Chain;

namespace Acquisition.Core;

/// <summary>
/// Everything from the measured node to the converter: source impedance, what is in the path, front end. It is solved as a network, so that loading, order and
/// interaction are in the answer.
/// </summary>
/// <remarks>
/// Immutable and thread-safe. Built from left to right: <c>MeasurementChain.From(source).Probe(probe).Into(frontEnd)</c>. All responses refer to the tip: the
/// nominal attenuation of probes and pads is multiplied back, as the instrument's display does.
/// </remarks>
public sealed partial class MeasurementChain
{
    private readonly ChainElement[] _elements;
    private Response? _response, _fromTip, _loading;

    internal MeasurementChain(SourceImpedance source, ChainElement[] elements, FrontEnd frontEnd)
    {
        Source = source;
        _elements = elements;
        FrontEnd = frontEnd;
    }

    /// <summary>Begins a chain at a node with a resistance.</summary>
    public static UnterminatedChain From(Resistance sourceResistance) => From(SourceImpedance.Resistive(sourceResistance));

    /// <summary>Begins a chain at a node.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="source"/> is null.</exception>
    public static UnterminatedChain From(SourceImpedance source) => new(source ?? throw new ArgumentNullException(nameof(source)), Array.Empty<ChainElement>());

    /// <summary>The impedance of the measured node.</summary>
    public SourceImpedance Source { get; }

    /// <summary>What lies between node and front end, from the node on.</summary>
    public IReadOnlyList<ChainElement> Elements => Array.AsReadOnly(_elements);

    /// <summary>The input of the instrument.</summary>
    public FrontEnd FrontEnd { get; }

    /// <summary>From the voltage of the node while nothing is connected (or as <see cref="SourceImpedance.StatedInto"/> says) to the display: loading and all.</summary>
    public Response Response => _response ??= Build(Part.All);

    /// <summary>From the voltage that really is at the tip to the display: what the equipment does, without what it does to the node.</summary>
    public Response ResponseFromTip => _fromTip ??= Build(Part.FromTip);

    /// <summary>From the voltage of the node while nothing is connected to the one it has with the chain connected.</summary>
    public Response Loading => _loading ??= Build(Part.Loading);

    /// <summary>The complex impedance that the chain puts on the node at a frequency, in ohms.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="frequency"/> is negative.</exception>
    public Complex InputOhmsAt(Frequency frequency)
    {
        if (frequency.SiValue < 0)
            throw Refuse.OutOfRange(frequency.SiValue, Frequency.Kind, nameof(frequency), "at least 0 Hz");
        ChainSection first = Sections()[0];
        return 1 / first.Ladder.InputAdmittance(new Complex(0, 2 * Math.PI * frequency.SiValue));
    }

    /// <summary>By how much probes and pads divide on purpose, all together.</summary>
    public double NominalAttenuationFactor
    {
        get
        {
            double factor = 1;
            foreach (ChainElement element in _elements)
                factor *= element.NominalFactor;
            return factor;
        }
    }

    /// <summary>Source, elements and front end.</summary>
    public override string ToString() => string.Join(" > ", Names());

    private enum Part
    {
        All,
        FromTip,
        Loading,
    }

    private IEnumerable<string> Names()
    {
        yield return Source.ToString();
        foreach (ChainElement element in _elements)
            yield return element.Name;
        yield return FrontEnd.Name;
    }

    private Response Build(Part part)
    {
        List<ChainSection> sections = Sections();
        if (part == Part.Loading)
            return sections[0].Ladder.LoadingResponse("loading of " + Source);
        double gain = NominalAttenuationFactor * (part == Part.All ? Source.Scale : 1);
        Response? response = null;
        foreach (ChainSection section in sections)
        {
            gain *= section.BufferGain;
            Response ladder = response is null && part == Part.FromTip ? section.Ladder.FromInputResponse("network", gain) : section.Ladder.TransferResponse("network", gain);
            response = response is null ? ladder : response.Then(ladder);
            foreach (Response own in section.Own)
                response = response.Then(own);
            gain = 1;
        }
        return response!.Then(FrontEnd.Response);
    }

    private List<ChainSection> Sections()
    {
        var sections = new List<ChainSection>();
        LumpedBranch? source = Source.ToBranch();
        var branches = new List<Branch>();
        var own = new List<Response>();
        foreach (ChainElement element in _elements)
        {
            ChainStage stage = element.Stage(FrontEnd);
            branches.AddRange(stage.Branches);
            if (stage.Own is not null)
                own.Add(stage.Own);
            if (!stage.IsBuffer)
                continue;
            sections.Add(new ChainSection(new LadderSection(source, branches), stage.BufferGain, own));
            source = stage.OutputOhms > 0 ? LumpedBranch.Series(stage.OutputOhms) : null;
            branches = new List<Branch>();
            own = new List<Response>();
        }
        branches.Add(FrontEnd.Input);
        sections.Add(new ChainSection(new LadderSection(source, branches), 1, own));
        return sections;
    }
}
