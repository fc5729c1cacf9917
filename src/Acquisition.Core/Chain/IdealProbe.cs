namespace Acquisition.Core.Chain;

/// <summary>What a probe would be that neither loads nor filters: only its ratio is left.</summary>
internal sealed class IdealProbe : ChainElement
{
    private readonly double _factor;

    internal IdealProbe(Probe probe)
        : base("ideal " + probe.Name) => _factor = probe.AttenuationFactor;

    internal override double NominalFactor => _factor;

    internal override ChainElement Ideal => this;

    internal override ChainStage Stage(FrontEnd frontEnd) => new() { IsBuffer = true, BufferGain = 1 / _factor };
}
