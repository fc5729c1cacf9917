namespace Acquisition.Core.Planning;

/// <summary>One demand, held against one candidate.</summary>
public sealed class Criterion
{
    internal Criterion(string code, string name, string needed, string offered, Ratio? margin, Quantity? neededQuantity, Quantity? offeredQuantity)
    {
        Code = code;
        Name = name;
        Needed = needed;
        Offered = offered;
        Margin = margin;
        NeededQuantity = neededQuantity;
        OfferedQuantity = offeredQuantity;
    }

    /// <summary>The stable code: <c>amplitude</c>, <c>edge</c>, <c>sample-rate</c>, <c>folded-content</c>, <c>pulse</c>, <c>detail</c>, <c>timing</c>, <c>range</c>, <c>offset</c>, <c>rating</c>, <c>rating-to-earth</c>, <c>reference</c>, <c>channels</c>, <c>fit</c>.</summary>
    public string Code { get; }

    /// <summary>What is judged, in words.</summary>
    public string Name { get; }

    /// <summary>What is needed, with its unit.</summary>
    public string Needed { get; }

    /// <summary>What the candidate gives, with its unit.</summary>
    public string Offered { get; }

    /// <summary>What is needed, as a quantity; null where it is no finite number.</summary>
    public Quantity? NeededQuantity { get; }

    /// <summary>What the candidate gives, as a quantity; null where it is no finite number.</summary>
    public Quantity? OfferedQuantity { get; }

    /// <summary>By how much the candidate is better than needed: 0 is exactly enough, 1 twice as good, below 0 not enough; null where it cannot be judged.</summary>
    public Ratio? Margin { get; }

    /// <summary>Whether the demand is met, not met, or not to be judged.</summary>
    public Suitability Suitability => Margin is not { } margin ? Suitability.Unproven : margin.SiValue >= 0 ? Suitability.Suitable : Suitability.Unsuitable;

    /// <summary>Need and offer in one line.</summary>
    public override string ToString() => $"{Name}: needed {Needed}, given {Offered}";
}
