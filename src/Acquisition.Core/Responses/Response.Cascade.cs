using System;
using Acquisition.Core.Responses;

namespace Acquisition.Core;

public abstract partial class Response
{
    /// <summary>This stage, and then another: the gains multiply. It holds where each stage's gain was stated with the impedances it meets (handbook 1.4); loading is the chain's matter.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="next"/> is null.</exception>
    public Response Then(Response next)
    {
        _ = next ?? throw new ArgumentNullException(nameof(next));
        string name = Name + " > " + next.Name;
        return new FactoredResponse(name, Factors!.Then(next.Factors!));
    }

    /// <summary>All stages, one after the other. None at all is a straight wire.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="stages"/> or one of them is null.</exception>
    public static Response Cascade(params Response[] stages)
    {
        _ = stages ?? throw new ArgumentNullException(nameof(stages));
        if (stages.Length == 0)
            return new FactoredResponse("straight wire", Factors.Unity);
        Response all = stages[0] ?? throw new ArgumentNullException(nameof(stages));
        for (int i = 1; i < stages.Length; i++)
            all = all.Then(stages[i]);
        return all;
    }
}
