namespace Acquisition.Core.Signals;

/// <summary>A change of level: when its 50 % point passes, by how much, and with which edge.</summary>
internal readonly struct Transition
{
    internal readonly double Time, Change;
    internal readonly Edge Edge;

    internal Transition(double time, double change, Edge edge)
    {
        Time = time;
        Change = change;
        Edge = edge;
    }
}
