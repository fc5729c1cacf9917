using System.Collections.Generic;

namespace Acquisition.Core.Chain;

/// <summary>A ladder with the buffer that ends it and the responses that nothing loads.</summary>
internal sealed class ChainSection
{
    internal ChainSection(LadderSection ladder, double bufferGain, IReadOnlyList<Response> own)
    {
        Ladder = ladder;
        BufferGain = bufferGain;
        Own = own;
    }

    internal LadderSection Ladder { get; }

    internal double BufferGain { get; }

    internal IReadOnlyList<Response> Own { get; }
}
