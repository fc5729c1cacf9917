using System;
using System.Collections.Generic;
using Acquisition.Core.Explanations.Json;

namespace Acquisition.Core.Planning;

/// <summary>The form in JSON of what lies between probe and input: cables, attenuator pads, feed-through terminators.</summary>
internal static class PathDocument
{
    private static readonly IReadOnlyDictionary<string, Func<DocumentObject, Func<ChainElement>>> Elements = new Dictionary<string, Func<DocumentObject, Func<ChainElement>>>
    {
        ["cable"] = Cable,
        ["pi pad"] = pad => Pad(pad, AttenuatorPad.Pi),
        ["tee pad"] = pad => Pad(pad, AttenuatorPad.Tee),
        ["minimum-loss pad"] = MinimumLoss,
        ["feed-through terminator"] = FeedThrough,
    };

    /// <summary>The elements in their order; those that are wrong, which is reported, are left out.</summary>
    internal static IReadOnlyList<ChainElement> Read(DocumentObject document)
    {
        var read = new List<ChainElement>();
        foreach (DocumentObject entry in document.Objects("path"))
        {
            Func<DocumentObject, Func<ChainElement>>? kind = entry.RequiredChoice<Func<DocumentObject, Func<ChainElement>>?>("element", Elements!, null);
            Func<ChainElement>? make = kind?.Invoke(entry);
            if (kind is not null)
                entry.RefuseOthers();
            if (make is not null && entry.Build(make) is { } made)
                read.Add(made);
        }
        return read;
    }

    private static Func<ChainElement> Cable(DocumentObject cable)
    {
        string? name = cable.OptionalText("name");
        Resistance impedance = cable.Quantity("impedance", Resistance.Parse);
        Length length = cable.Quantity("length", Length.Parse);
        double velocity = cable.Number("velocityFactor", 0.01, 1);
        Func<CableLoss>? loss = null;
        Length? per = null;
        if (cable.OptionalObject("loss") is { } stated)
        {
            Frequency low = stated.Quantity("at", Frequency.Parse);
            DecibelRatio lowLoss = stated.Quantity("loss", DecibelRatio.Parse);
            Frequency? high = stated.OptionalQuantity("secondAt", Frequency.Parse);
            DecibelRatio? highLoss = stated.OptionalQuantity("secondLoss", DecibelRatio.Parse);
            per = stated.OptionalQuantity("per", Length.Parse);
            if (high is null != highLoss is null)
                stated.Report(high is null ? "secondLoss" : "secondAt", "secondAt and secondLoss belong together; give both or none");
            stated.RefuseOthers();
            loss = () => high is { } second && highLoss is { } more ? CableLoss.FromPoints(low, lowLoss, second, more) : CableLoss.FromPoint(low, lowLoss);
        }
        return () =>
        {
            var made = new Cable(impedance, length, velocity);
            made = name is null ? made : made.WithName(name);
            return loss is null ? made : per is { } metres ? made.WithLossPer(metres, loss()) : made.WithLoss(loss());
        };
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
