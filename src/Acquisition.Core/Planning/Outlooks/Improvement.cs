using System;
using System.Collections.Generic;
using System.Linq;
using Acquisition.Core.Chain;

namespace Acquisition.Core.Planning;

/// <summary>One figure of one element of a chain that could be better: the chain with a part of what is wrong with it, from all of it, 1, to none, 0, and how that is told.</summary>
internal sealed class Improvement
{
    private Improvement(Func<double, MeasurementChain> leaving, Func<double, string> words) => (Leaving, Words) = (leaving, words);

    /// <summary>The chain in which so large a part of the flaw is left.</summary>
    internal Func<double, MeasurementChain> Leaving { get; }

    /// <summary>What such an element is called.</summary>
    internal Func<double, string> Words { get; }

    /// <summary>What could be better about an element, its number that in the chain; the front end comes last.</summary>
    /// <param name="chain">The chain.</param>
    /// <param name="place">The element.</param>
    /// <param name="hertz">Where the loss of a cable is told.</param>
    internal static IEnumerable<Improvement> Of(MeasurementChain chain, int place, double hertz)
    {
        if (place == chain.Elements.Count)
            return OfInput(chain);
        return chain.Elements[place] switch
        {
            Probe probe => OfProbe(probe, element => With(chain, place, element)),
            Cable cable => OfCable(cable, hertz, element => With(chain, place, element)),
            BandwidthLimiter limiter => OfLimiter(limiter, element => With(chain, place, element)),
            _ => [],
        };
    }

    private static IEnumerable<Improvement> OfProbe(Probe probe, Func<ChainElement, MeasurementChain> with)
    {
        double ohms = probe.InputResistance.SiValue, farads = probe.InputCapacitance.SiValue;
        double? hertz = BandwidthOf(probe.OwnResponse);
        if (farads > 0)
            yield return new(left => with(new Tip(probe, ohms, left * farads, probe.OwnResponse)), left => $"a probe of at most {Lighter(left)} at the tip");
        if (hertz is { } b)
        {
            yield return new(left => with(new Tip(probe, ohms, farads, Faster(b, left))), left => $"a probe of at least {Wider(b, left)} (Gaussian)");
            if (farads > 0)
                yield return new(left => with(new Tip(probe, ohms, left * farads, Faster(b, left))), left => $"a probe of at most {Lighter(left)} at the tip and at least {Wider(b, left)} (Gaussian)");
        }
        yield return new(left => with(new Tip(probe, ohms / left, left * farads, probe.OwnResponse)), left => $"a probe of at least {FewDigits.Of(FewDigits.RoundUp(ohms / left), Resistance.Kind)} and at most {Lighter(left)} at the tip");

        string Lighter(double left) => FewDigits.Of(FewDigits.RoundDown(left * farads), Capacitance.Kind);
    }

    private static IEnumerable<Improvement> OfCable(Cable cable, double hertz, Func<ChainElement, MeasurementChain> with)
    {
        double loss = cable.Loss.At(Frequency.FromSi(hertz, "frequency")).SiValue, metres = cable.Length.SiValue;
        if (loss > 0)
        {
            yield return new(left => with(cable.WithLoss(cable.Loss.Times(Ratio.FromFraction(left)))),
                left => $"a cable that loses at most {FewDigits.Of(FewDigits.RoundDown(left * loss), DecibelRatio.Kind)} at {FewDigits.Of(hertz, Frequency.Kind)}, where it loses {FewDigits.Of(loss, DecibelRatio.Kind)}: a shorter or a thicker one");
        }
        yield return new(left => with(new Cable(cable.Impedance, Length.FromSi(left * metres, "length"), cable.VelocityFactor).WithLoss(cable.Loss.Times(Ratio.FromFraction(left)))),
            left => $"at most {FewDigits.Of(FewDigits.RoundDown(left * metres), Length.Kind)} of cable");
    }

    private static IEnumerable<Improvement> OfLimiter(BandwidthLimiter limiter, Func<ChainElement, MeasurementChain> with)
    {
        if (BandwidthOf(limiter.Response) is { } b)
            yield return new(left => with(new BandwidthLimiter(Faster(b, left), limiter.Impedance)), left => $"no limiter, or one of at least {Wider(b, left)} (Gaussian)");
    }

    private static IEnumerable<Improvement> OfInput(MeasurementChain chain)
    {
        FrontEnd input = chain.FrontEnd;
        if (input.BandwidthLimit is not null)
            yield return new(_ => With(chain, input.WithBandwidthLimit(null)), _ => "without its bandwidth limit");
        if (BandwidthOf(input.OwnResponse) is { } b)
            yield return new(left => With(chain, input.Behaving(Faster(b, left))), left => $"a front end of at least {Wider(b, left)} (Gaussian)");
        if (input.InputCapacitance.SiValue is > 0 and var farads)
            yield return new(left => With(chain, input.WithInputCapacitance(Capacitance.FromSi(left * farads, "capacitance"))), left => $"an input of at most {FewDigits.Of(FewDigits.RoundDown(left * farads), Capacitance.Kind)}, or a probe that divides before it");
    }

    private static double? BandwidthOf(Response response) => response.TryBandwidth(DecibelRatio.HalfPower, out Frequency bandwidth) ? bandwidth.SiValue : null;

    private static Response Faster(double hertz, double left) => Response.Gaussian(Frequency.FromSi(hertz / left, "bandwidth"));

    private static string Wider(double hertz, double left) => FewDigits.Of(FewDigits.RoundUp(hertz / left), Frequency.Kind);

    private static MeasurementChain With(MeasurementChain chain, int place, ChainElement element)
    {
        ChainElement[] elements = chain.Elements.ToArray();
        elements[place] = element;
        return new MeasurementChain(chain.Source, elements, chain.FrontEnd);
    }

    private static MeasurementChain With(MeasurementChain chain, FrontEnd input) => new(chain.Source, chain.Elements.ToArray(), input);
}
