using System;
using System.Collections.Generic;
using Acquisition.Core.Responses;

namespace Acquisition.Core;

public abstract partial class Response
{
    /// <summary>Beyond so many products of branches a cascade is evaluated, not multiplied out; a stage of one branch makes no more of them.</summary>
    private const int MostBranches = 64;

    /// <summary>This stage, and then another: the gains multiply. It holds where each stage's gain was stated with the impedances it meets (handbook 1.4); loading is the chain's matter.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="next"/> is null.</exception>
    public Response Then(Response next)
    {
        _ = next ?? throw new ArgumentNullException(nameof(next));
        Response cascade = Combine(next, Name + " > " + next.Name);
        var stages = new List<Response>(Stages);
        stages.AddRange(next.Stages);
        cascade._stages = stages.Frozen();
        return cascade;
    }

    private Response Combine(Response next, string name)
    {
        if (Branches is not { } mine || next.Branches is not { } others || (mine.Count > 1 && others.Count > 1 && mine.Count * others.Count > MostBranches))
            return new ProductResponse(name, this, next);
        if (mine.Count == 1 && others.Count == 1)
            return new FactoredResponse(name, mine[0].Then(others[0]));
        var branches = new List<Factors>();
        foreach (Factors branch in mine)
        {
            foreach (Factors other in others)
                branches.Add(branch.Then(other));
        }
        return new SumResponse(name, branches.ToArray());
    }

    /// <summary>Branches side by side, fed by the same input, their outputs added: a direct path and its echo, a split amplifier.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="branches"/> or one of them is null.</exception>
    /// <exception cref="ArgumentException">There is no branch.</exception>
    public static Response Parallel(params Response[] branches)
    {
        _ = branches ?? throw new ArgumentNullException(nameof(branches));
        if (branches.Length == 0)
            throw new ArgumentException("branches must hold at least one response", nameof(branches));
        if (Array.Exists(branches, branch => branch is null))
            throw new ArgumentNullException(nameof(branches), "branches must not hold null");
        if (branches.Length == 1)
            return branches[0];
        string name = string.Join(" + ", Array.ConvertAll(branches, branch => "(" + branch.Name + ")"));
        var factors = new List<Factors>();
        foreach (Response branch in branches)
        {
            if (branch.Branches is not { } some || factors.Count + some.Count > MostBranches)
                return new ParallelResponse(name, branches);
            factors.AddRange(some);
        }
        return new SumResponse(name, factors.ToArray());
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
