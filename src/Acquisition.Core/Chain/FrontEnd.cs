using System;
using Acquisition.Core.Chain;

namespace Acquisition.Core;

/// <summary>The input of an instrument: its impedance, its own response, its noise, and what it stands.</summary>
/// <remarks>Immutable and thread-safe: each <c>With</c> method returns a changed copy.</remarks>
public sealed class FrontEnd
{
    private FrontEnd(string name, Resistance resistance, Capacitance capacitance, Response own)
    {
        Name = name;
        InputResistance = resistance;
        InputCapacitance = capacitance;
        OwnResponse = own ?? throw new ArgumentNullException(nameof(own));
    }

    /// <summary>A high-impedance input, such as 1 MΩ beside 15 pF.</summary>
    /// <param name="resistance">The input resistance.</param>
    /// <param name="capacitance">The input capacitance.</param>
    /// <param name="own">The response from the input to the converter.</param>
    /// <exception cref="ArgumentNullException"><paramref name="own"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="resistance"/> is 0 Ω.</exception>
    public static FrontEnd HighImpedance(Resistance resistance, Capacitance capacitance, Response own)
    {
        Refuse.UnlessAboveZero(resistance.SiValue, Resistance.Kind, nameof(resistance));
        return new FrontEnd("front end", resistance, capacitance, own);
    }

    /// <summary>An input that terminates a line with 50 Ω, without stray capacitance.</summary>
    /// <param name="own">The response from the input to the converter.</param>
    /// <exception cref="ArgumentNullException"><paramref name="own"/> is null.</exception>
    public static FrontEnd FiftyOhm(Response own) => new("front end", Resistance.FromOhms(50), default, own);

    /// <summary>What it is called.</summary>
    public string Name { get; private set; }

    /// <summary>The input resistance.</summary>
    public Resistance InputResistance { get; private set; }

    /// <summary>The capacitance beside it.</summary>
    public Capacitance InputCapacitance { get; private set; }

    /// <summary>The response from the input to the converter, without a bandwidth limit.</summary>
    public Response OwnResponse { get; private set; }

    /// <summary>The bandwidth limit that is switched on; null where there is none.</summary>
    public Response? BandwidthLimit { get; private set; }

    /// <summary>The noise at the input in the full bandwidth of the setting; null where it is not known.</summary>
    public RmsVoltage? Noise { get; private set; }

    /// <summary>What the input stands; null where it is not known.</summary>
    public VoltageRating? Rating { get; private set; }

    /// <summary>Whether it is isolated from earth; where not, the reference lead of whatever is plugged into it is protective earth.</summary>
    public bool IsIsolated { get; private set; }

    /// <summary>The largest voltage that an isolated input stands against earth, DC plus peak AC; null where it is not known.</summary>
    public Voltage? MaximumToEarth { get; private set; }

    /// <summary>Whether it terminates a line: an input resistance of 1 kΩ or less.</summary>
    public bool IsTerminated => InputResistance.SiValue <= 1000;

    /// <summary>The same with a name.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    public FrontEnd WithName(string name) => Copy(copy => copy.Name = name ?? throw new ArgumentNullException(nameof(name)));

    /// <summary>The same with another capacitance beside its resistance.</summary>
    public FrontEnd WithInputCapacitance(Capacitance capacitance) => Copy(copy => copy.InputCapacitance = capacitance);

    /// <summary>The same with a bandwidth limit switched on, in cascade with its own response.</summary>
    /// <param name="limit">The response of the limit, such as <c>Response.SinglePole(20 MHz)</c>; null switches it off.</param>
    public FrontEnd WithBandwidthLimit(Response? limit) => Copy(copy => copy.BandwidthLimit = limit);

    /// <summary>The same with its noise stated, as rms at the input in the full bandwidth of the setting.</summary>
    public FrontEnd WithNoise(RmsVoltage noise) => Copy(copy => copy.Noise = noise);

    /// <summary>The same with what it stands.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="rating"/> is null.</exception>
    public FrontEnd WithRating(VoltageRating rating) => Copy(copy => copy.Rating = rating ?? throw new ArgumentNullException(nameof(rating)));

    /// <summary>The same isolated from earth.</summary>
    public FrontEnd WithIsolation() => Copy(copy => copy.IsIsolated = true);

    /// <summary>The same with the largest voltage that the isolated input stands against earth, DC plus peak AC.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="maximumToEarth"/> is not above 0 V.</exception>
    public FrontEnd WithMaximumToEarth(Voltage maximumToEarth)
    {
        Refuse.UnlessAboveZero(maximumToEarth.SiValue, Voltage.Kind, nameof(maximumToEarth));
        return Copy(copy => copy.MaximumToEarth = maximumToEarth);
    }

    /// <summary>Its own response with the bandwidth limit, where one is switched on.</summary>
    public Response Response => BandwidthLimit is null ? OwnResponse : OwnResponse.Then(BandwidthLimit);

    /// <summary>The same with another resistance.</summary>
    internal FrontEnd WithInputResistance(Resistance resistance) => Copy(copy => copy.InputResistance = resistance);

    /// <summary>The same with another response of its own and no limit.</summary>
    internal FrontEnd Behaving(Response own) => Copy(copy => (copy.OwnResponse, copy.BandwidthLimit) = (own, null));

    /// <summary>Its terminating input in place of this one: without the capacitance, and of a rating of its own.</summary>
    internal FrontEnd Terminating(Resistance resistance) => Copy(copy => (copy.InputResistance, copy.InputCapacitance, copy.Rating) = (resistance, default, null));

    internal LumpedBranch Input => LumpedBranch.Shunt(InputResistance.SiValue, InputCapacitance.SiValue);

    /// <summary>The same resistance without capacitance and without limits.</summary>
    internal FrontEnd Ideal => new FrontEnd(Name, InputResistance, default, Core.Response.Cascade()) { Noise = Noise };

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    private FrontEnd Copy(Action<FrontEnd> change)
    {
        var copy = (FrontEnd)MemberwiseClone();
        change(copy);
        return copy;
    }
}
