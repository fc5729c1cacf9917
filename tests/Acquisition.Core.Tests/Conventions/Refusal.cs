using System;
using Xunit;

namespace Acquisition.Core.Tests.Conventions;

/// <summary>A call that must be refused: with the argument's name, and with the value or the range in the message.</summary>
public sealed record Refusal(string What, Action Call, string Argument, string Mentions)
{
    public void Confirm()
    {
        ArgumentException refusal = Assert.ThrowsAny<ArgumentException>(Call);
        Assert.Equal(Argument, refusal.ParamName);
        Assert.Contains(Mentions, refusal.Message, StringComparison.Ordinal);
    }

    public override string ToString() => What;
}
