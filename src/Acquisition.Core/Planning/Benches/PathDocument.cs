using System;
using System.Collections.Generic;
using Acquisition.Core.Explanations.Json;

namespace Acquisition.Core.Planning;

/// <summary>The form in JSON of what lies between probe and input: cables, attenuator pads, feed-through terminators.</summary>
internal static class PathDocument
{
    private static readonly IReadOnlyDictionary<string, Func<DocumentObject, Catalogue?, Func<ChainElement>?>> Elements = new Dictionary<string, Func<DocumentObject, Catalogue?, Func<ChainElement>?>>
    {
        ["cable"] = Cable,
        ["pi pad"] = (pad, _) => Pad(pad, AttenuatorPad.Pi),
        ["tee pad"] = (pad, _) => Pad(pad, AttenuatorPad.Tee),
        ["minimum-loss pad"] = (pad, _) => MinimumLoss(pad),
        ["feed-through terminator"] = (terminator, _) => FeedThrough(terminator),
    };

    private static readonly IReadOnlyDictionary<string, string> Members = new Dictionary<string, string> { ["source"] = "sourceImpedance", ["load"] = "loadImpedance" };

    private static readonly string[] Impedances = ["sourceImpedance", "loadImpedance"];

    private static readonly IReadOnlyDictionary<string, string> LossMembers = new Dictionary<string, string>
    {
        ["frequency"] = "at",
        ["lowFrequency"] = "at",
        ["lowLoss"] = "loss",
        ["highFrequency"] = "secondAt",
        ["highLoss"] = "secondLoss",
        ["statedLength"] = "per",
    };

    private static readonly string[] LossPoints = ["at", "loss", "secondAt", "secondLoss"];

    /// <summary>The elements in their order; those that are wrong, which is reported, are left out.</summary>
    internal static IReadOnlyList<ChainElement> Read(DocumentObject document, Catalogue? catalogue)
    {
        var read = new List<ChainElement>();
        foreach (DocumentObject entry in document.Objects("path"))
        {
            Func<DocumentObject, Catalogue?, Func<ChainElement>?>? kind = entry.RequiredChoice<Func<DocumentObject, Catalogue?, Func<ChainElement>?>?>("element", Elements!, null);
            Func<ChainElement>? make = kind?.Invoke(entry, catalogue);
            if (kind is not null)
                entry.RefuseOthers();
            if (make is not null && entry.Build(make, null, Members, Impedances) is { } made)
                read.Add(made);
        }
        return read;
    }

    private static Func<ChainElement>? Cable(DocumentObject cable, Catalogue? catalogue)
    {
        if (cable.Has(BenchDocument.Reference))
        {
            CatalogueCable? entry = cable.Entry(BenchDocument.Reference, "cable", catalogue?.Cables, known => known.Name);
            Length cut = cable.Quantity("length", Length.Parse);
            return entry is null ? null : () => entry.OfLength(cut);
        }
        cable.Known(BenchDocument.Reference);
        string? name = cable.OptionalText("name");
        Resistance impedance = cable.Quantity("impedance", Resistance.Parse);
        Length length = cable.Quantity("length", Length.Parse);
        double velocity = cable.Number("velocityFactor", 0.01, 1);
        (CableLoss Loss, Length? Per)? stated = cable.OptionalObject("loss") is { } loss ? Loss(loss) : null;
        return () =>
        {
            var made = new Cable(impedance, length, velocity);
            made = name is null ? made : made.WithName(name);
            return stated is not { } lossy ? made : lossy.Per is { } metres ? made.WithLossPer(metres, lossy.Loss) : made.WithLoss(lossy.Loss);
        };
    }

    /// <summary>The loss of a cable, and the length it is stated for; null where it is wrong, which is reported.</summary>
    internal static (CableLoss Loss, Length? Per)? Loss(DocumentObject stated, bool perLength = false)
    {
        Frequency low = stated.Quantity("at", Frequency.Parse);
        DecibelRatio lowLoss = stated.Quantity("loss", DecibelRatio.Parse);
        Frequency? high = stated.OptionalQuantity("secondAt", Frequency.Parse);
        DecibelRatio? highLoss = stated.OptionalQuantity("secondLoss", DecibelRatio.Parse);
        Length? per = perLength ? stated.Quantity("per", Length.Parse) : stated.OptionalQuantity("per", Length.Parse);
        if (stated.Has("secondAt") != stated.Has("secondLoss"))
        {
            (string alone, string absent) = stated.Has("secondAt") ? ("secondAt", "secondLoss") : ("secondLoss", "secondAt");
            stated.Report(stated.IsNull(absent) ? absent : alone, "secondAt and secondLoss belong together; give both or none");
        }
        if (per is { SiValue: 0 } && stated.Has("per"))
            stated.Report("per", "found 0 m, expected the length that the loss is stated for");
        stated.RefuseOthers();
        CableLoss? made = stated.Build(() => high is { } second && highLoss is { } more ? CableLoss.FromPoints(low, lowLoss, second, more) : CableLoss.FromPoint(low, lowLoss), null, LossMembers, LossPoints);
        return made is null ? null : (made, per);
    }

    private static Func<ChainElement> Pad(DocumentObject pad, Func<DecibelRatio, Resistance, AttenuatorPad> make)
    {
        DecibelRatio attenuation = pad.Quantity("attenuation", DecibelRatio.Parse);
        Resistance impedance = pad.Quantity("impedance", Resistance.Parse);
        return () => make(attenuation, impedance);
    }

    private static Func<ChainElement> MinimumLoss(DocumentObject pad)
    {
        Resistance source = pad.Quantity("sourceImpedance", Resistance.Parse), load = pad.Quantity("loadImpedance", Resistance.Parse);
        return () => AttenuatorPad.MinimumLoss(source, load);
    }

    private static Func<ChainElement> FeedThrough(DocumentObject terminator)
    {
        Resistance resistance = terminator.Quantity("resistance", Resistance.Parse);
        return () => new FeedThroughTerminator(resistance);
    }
}
