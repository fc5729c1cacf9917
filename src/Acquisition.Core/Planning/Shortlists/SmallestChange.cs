namespace Acquisition.Core.Planning;

/// <summary>The smallest change found that would meet one demand that a candidate fails, all else as it is.</summary>
/// <remarks>Immutable. Each demand has its own: where several fail, all their changes are needed.</remarks>
public sealed class SmallestChange
{
    internal SmallestChange(Criterion demand, string change)
    {
        Demand = demand;
        Change = change;
    }

    /// <summary>The demand that it meets.</summary>
    public Criterion Demand { get; }

    /// <summary>The change, with its number.</summary>
    public string Change { get; }

    /// <summary>Demand and change.</summary>
    public override string ToString() => $"{Demand.Name}: {Change}";
}
