using System;
using System.Linq;
using Acquisition.Core.Explanations.Json;

namespace Acquisition.Core.Planning;

/// <summary>An instrument of the catalogue in a bench file, in place of input and digitizer: which of its inputs, limits and ranges are set.</summary>
internal sealed class InstrumentDocument
{
    private readonly CatalogueInstrument _entry;
    private readonly InputTermination _termination;
    private readonly Frequency? _limit;
    private InputRange? _range;

    private InstrumentDocument(CatalogueInstrument entry, InputTermination termination, Frequency? limit)
    {
        _entry = entry;
        _termination = termination;
        _limit = limit;
        Digitizer = CatalogueChain.Digitizer(entry);
    }

    internal Digitizer Digitizer { get; }

    /// <summary>The input as it is set; its noise is that of the range.</summary>
    internal FrontEnd Input => CatalogueChain.Input(_entry, _termination, _limit, _range);

    /// <summary>Null where something is wrong, which is reported.</summary>
    /// <param name="document">The member of the bench file.</param>
    /// <param name="catalogue">The catalogue; null where none was passed.</param>
    /// <param name="probe">The catalogue's probe on it; null where another one, or none, is.</param>
    internal static InstrumentDocument? Read(DocumentObject document, Catalogue? catalogue, CatalogueProbe? probe)
    {
        CatalogueInstrument? entry = document.Has(BenchDocument.Reference) ? document.Entry(BenchDocument.Reference, "instrument", catalogue?.Instruments, known => known.Name) : null;
        if (!document.Has(BenchDocument.Reference))
            document.Text(BenchDocument.Reference);
        Resistance? wanted = document.OptionalQuantity("inputResistance", Resistance.Parse);
        Frequency? limit = document.OptionalQuantity("bandwidthLimit", Frequency.Parse);
        document.RefuseOthers();
        if (entry is null)
            return null;
        string inputs = string.Join(", ", entry.Terminations.Select(offered => offered.Resistance.InWords()));
        if ((wanted ?? probe?.Into ?? (entry.Terminations.Count == 1 ? entry.Terminations[0].Resistance : null)) is not { } resistance)
        {
            document.Report("inputResistance", $"{entry.Name} has inputs of {inputs}; say which is set");
            return null;
        }
        if (probe is not null && !Alike(probe.Into, resistance))
            document.Report("inputResistance", $"found {resistance.InWords()}, expected the {probe.Into.InWords()} that {probe.Name} is made for");
        if (limit is { } hertz && !entry.BandwidthLimits.Contains(hertz))
        {
            string limits = entry.BandwidthLimits.Count == 0 ? "none" : string.Join(", ", entry.BandwidthLimits.Select(offered => offered.InWords()));
            document.Report("bandwidthLimit", $"found {hertz.InWords()}, but {entry.Name} has {limits}");
        }
        InputTermination? termination = entry.Terminations.FirstOrDefault(offered => Alike(offered.Resistance, resistance));
        if (termination is null)
            document.Report(wanted is null ? BenchDocument.Reference : "inputResistance", $"{entry.Name} has no input of {resistance.InWords()}; it has {inputs}");
        return termination is null ? null : new InstrumentDocument(entry, termination, limit);
    }

    /// <summary>Reports what the capture asks of the instrument and it does not have.</summary>
    internal void Refuse(DocumentObject capture, int channels, AcquisitionMode mode)
    {
        if (channels > _entry.Channels)
            capture.Report("channelsInUse", FormattableString.Invariant($"found {channels}, but {_entry.Name} has {_entry.Channels}"));
        if (mode != AcquisitionMode.Sample && !_entry.Modes.Contains(mode))
            capture.Report("mode", $"{_entry.Name} does not offer it; it has " + string.Join(", ", CatalogueDocument.Modes.Where(known => known.Value == AcquisitionMode.Sample || _entry.Modes.Contains(known.Value)).Select(known => known.Key)));
    }

    /// <summary>Takes the range that the capture names, as seen at the source, or the smallest that holds the signal.</summary>
    internal void Choose(Signal signal, double attenuation, DocumentObject capture)
    {
        if (capture.OptionalQuantity("range", PeakToPeakVoltage.Parse) is not { } named)
        {
            _range = _entry.RangeFor([signal], attenuation);
            return;
        }
        _range = _entry.Ranges.FirstOrDefault(offered => Math.Abs((offered.FullScale.SiValue * attenuation / named.SiValue) - 1) <= 1e-3);
        if (_range is null)
        {
            capture.Report("range", $"found {named.InWords()}, but behind an attenuation of {FewDigits.Number(attenuation)} {_entry.Name} has " +
                string.Join(", ", _entry.Ranges.Select(offered => FewDigits.Of(offered.FullScale.SiValue * attenuation, PeakToPeakVoltage.Kind))));
        }
    }

    /// <summary>A set-up with what the catalogue states of the instrument.</summary>
    internal SampledSignal Set(SampledSignal setup, double attenuation) => CatalogueChain.Set(setup, _entry, _range, attenuation);

    private static bool Alike(Resistance one, Resistance other) => Math.Abs((one.SiValue / other.SiValue) - 1) <= 0.05;
}
