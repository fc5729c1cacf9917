namespace Acquisition.Core.Chain;

/// <summary>What a probe with other figures would do, however it is made: it loads the node with R beside C behind its lead, has a response of its own, and divides.</summary>
internal sealed class Tip : ChainElement
{
    private readonly Probe _like;
    private readonly double _ohms, _farads;
    private readonly Response _own;

    internal Tip(Probe like, double ohms, double farads, Response own)
        : base(like.Name) => (_like, _ohms, _farads, _own) = (like, ohms, farads, own);

    internal override double NominalFactor => _like.AttenuationFactor;

    internal override ChainElement Ideal => _like.Ideal;

    internal override ChainStage Stage(FrontEnd frontEnd) => new(LumpedBranch.Series(_like.Damping.SiValue, _like.LeadInductance.SiValue), LumpedBranch.Shunt(_ohms, _farads))
    {
        Own = _own,
        IsBuffer = true,
        BufferGain = 1 / _like.AttenuationFactor,
    };
}
