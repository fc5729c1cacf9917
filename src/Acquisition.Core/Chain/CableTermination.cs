using System;
using System.Collections.Generic;
using System.Linq;

namespace Acquisition.Core.Chain;

/// <summary>A way to stop the echoes of a cable, with the chain as it then is: at its end, where the source is divided down, or at its source, where it is not (handbook 7.5, 7.7).</summary>
internal sealed class CableTermination
{
    private CableTermination(string words, MeasurementChain chain, bool isLoad) => (Words, Chain, IsLoad) = (words, chain, isLoad);

    internal string Words { get; }

    internal MeasurementChain Chain { get; }

    /// <summary>Whether it takes power from the source.</summary>
    internal bool IsLoad { get; }

    /// <summary>The ways there are for a cable with an open end.</summary>
    internal static IEnumerable<CableTermination> Of(MeasurementChain chain, CableRun run)
    {
        Resistance line = Resistance.FromSi(run.Ohms, "impedance");
        if (run.Last == chain.Elements.Count - 1 && run.Ohms == 50)
            yield return new CableTermination("the 50 Ω input instead of this one", new MeasurementChain(chain.Source, chain.Elements.ToArray(), chain.FrontEnd.Terminating(line)), true);
        yield return new CableTermination($"a feed-through of {line.InWords()} at its end", With(chain, run.Last + 1, new FeedThroughTerminator(line)), true);
        if (run.SourceOhms < run.Ohms)
        {
            Resistance rest = PreferredValues.E24.Nearest(Resistance.FromSi(run.Ohms - run.SourceOhms, "impedance"));
            yield return new CableTermination($"{rest.InWords()} in series at its beginning", With(chain, run.First, new SeriesResistor(rest)), false);
        }
    }

    private static MeasurementChain With(MeasurementChain chain, int place, ChainElement element)
    {
        List<ChainElement> elements = chain.Elements.ToList();
        elements.Insert(place, element);
        return new MeasurementChain(chain.Source, elements.ToArray(), chain.FrontEnd);
    }
}
