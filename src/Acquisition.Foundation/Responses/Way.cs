namespace Acquisition.Core.Responses;

/// <summary>One way through a response: an echo among others, with the pure delay after which it arrives.</summary>
internal readonly struct Way
{
    internal Way(Response response, double seconds)
    {
        Response = response;
        Seconds = seconds;
    }

    /// <summary>What it does besides arriving late.</summary>
    internal Response Response { get; }

    /// <summary>How late it arrives, s.</summary>
    internal double Seconds { get; }

    /// <summary>This and then another: the responses in a row, the delays added.</summary>
    internal Way Then(Way next) => new(Response.Then(next.Response), Seconds + next.Seconds);
}
