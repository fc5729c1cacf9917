using System;

namespace Acquisition.Core.Planning;

/// <summary>A kind of cable as its data sheet describes it; a length of it is a <see cref="Cable"/>.</summary>
/// <remarks>Immutable.</remarks>
public sealed class CatalogueCable
{
    private readonly Cable _metre;

    /// <summary>A kind of cable without loss.</summary>
    /// <param name="name">The name by which bench files refer to it.</param>
    /// <param name="impedance">The characteristic impedance.</param>
    /// <param name="velocityFactor">The speed in it over that of light, above 0 and at most 1.</param>
    /// <exception cref="ArgumentException"><paramref name="name"/> is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Impedance or velocity factor is out of range.</exception>
    public CatalogueCable(string name, Resistance impedance, double velocityFactor)
        : this(name, impedance, velocityFactor, CableLoss.None, Length.FromMeters(1))
    {
    }

    /// <summary>A kind of cable with its loss.</summary>
    /// <param name="name">The name by which bench files refer to it.</param>
    /// <param name="impedance">The characteristic impedance.</param>
    /// <param name="velocityFactor">The speed in it over that of light, above 0 and at most 1.</param>
    /// <param name="loss">The loss of the length that it is stated for.</param>
    /// <param name="statedLength">That length: data sheets state 100 m.</param>
    /// <exception cref="ArgumentException"><paramref name="name"/> is empty.</exception>
    /// <exception cref="ArgumentNullException"><paramref name="loss"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Impedance, velocity factor or length is out of range.</exception>
    public CatalogueCable(string name, Resistance impedance, double velocityFactor, CableLoss loss, Length statedLength)
    {
        Name = CatalogueInstrument.RequireName(name);
        _metre = new Cable(impedance, Length.FromMeters(1), velocityFactor);
        Loss = loss ?? throw new ArgumentNullException(nameof(loss));
        Refuse.UnlessAboveZero(statedLength.SiValue, Length.Kind, nameof(statedLength));
        StatedLength = statedLength;
    }

    /// <summary>The name by which bench files refer to it.</summary>
    public string Name { get; }

    /// <summary>The characteristic impedance.</summary>
    public Resistance Impedance => _metre.Impedance;

    /// <summary>The speed in it over that of light.</summary>
    public double VelocityFactor => _metre.VelocityFactor;

    /// <summary>The loss of <see cref="StatedLength"/>.</summary>
    public CableLoss Loss { get; }

    /// <summary>The length that the loss is stated for.</summary>
    public Length StatedLength { get; }

    /// <summary>A length of it.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="length"/> is not above 0 m.</exception>
    public Cable OfLength(Length length) => new Cable(Impedance, length, VelocityFactor).WithName(Name).WithLossPer(StatedLength, Loss);

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}
