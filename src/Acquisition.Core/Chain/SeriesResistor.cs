namespace Acquisition.Core.Chain;

/// <summary>A resistor in the path, as at the source end of a line that it is to match.</summary>
internal sealed class SeriesResistor : ChainElement
{
    private readonly double _ohms;

    internal SeriesResistor(Resistance resistance)
        : base(resistance + " in series") => _ohms = resistance.SiValue;

    internal override ChainElement Ideal => this;

    internal override ChainStage Stage(FrontEnd frontEnd) => new(LumpedBranch.Series(_ohms));
}
