using System;

namespace Acquisition.Core.Chain;

/// <summary>What an element contributes: branches of the ladder, a response that nothing loads, and possibly a buffer that ends the ladder and begins a new one.</summary>
internal sealed class ChainStage
{
    internal ChainStage(params Branch[] branches) => Branches = branches ?? Array.Empty<Branch>();

    /// <summary>From the source side on.</summary>
    internal Branch[] Branches { get; }

    /// <summary>What it does besides loading; null where nothing.</summary>
    internal Response? Own { get; set; }

    /// <summary>Whether the ladder ends here and a new one begins.</summary>
    internal bool IsBuffer { get; set; }

    /// <summary>The open-circuit voltage behind the buffer over the voltage before it.</summary>
    internal double BufferGain { get; set; } = 1;

    /// <summary>The output resistance of the buffer, ohms.</summary>
    internal double OutputOhms { get; set; }
}
