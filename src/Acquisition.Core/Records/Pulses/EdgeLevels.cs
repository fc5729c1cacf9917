namespace Acquisition.Core.Records;

/// <summary>What transitions of one direction are compared with. Fields, not properties: levels are read from where they are, many times for each edge.</summary>
internal sealed class EdgeLevels
{
    internal readonly bool IsRising;

    /// <summary>The end of the hysteresis on the side of the state that is left (beyond it the signal has turned back), and on the other side (beyond it a crossing counts).</summary>
    internal readonly Level Near, Far;

    /// <summary>Reference levels in the order in which the signal passes them.</summary>
    internal readonly Level Proximal, Middle, Distal;

    internal readonly Level Reached;

    /// <summary>Proximal, middle and distal level.</summary>
    internal readonly FourNumbers References;

    /// <summary>From the second on: the state that is reached twice, as overshoot and undershoot refer to it, and the one that is left.</summary>
    internal readonly FourNumbers States;

    /// <summary>From the second on: the amplitude with the sign of an overshoot, an undershoot and a preshoot.</summary>
    internal readonly FourNumbers Amplitudes;

    internal EdgeLevels(bool rising, double left, Level near, Level proximal, Level middle, Level distal, Level far, Level reached)
    {
        IsRising = rising;
        Near = near;
        Proximal = proximal;
        Middle = middle;
        Distal = distal;
        Far = far;
        Reached = reached;
        References = new FourNumbers(proximal.Value, middle.Value, distal.Value, 0);
        States = new FourNumbers(0, reached.Value, reached.Value, left);
        double amplitude = reached.Value - left;
        Amplitudes = new FourNumbers(amplitude, amplitude, -amplitude, -amplitude);
    }

    /// <summary>The highest code that something is compared with.</summary>
    internal int HighestCode
    {
        get
        {
            int highest = Near.Code;
            foreach (Level level in new[] { Proximal, Middle, Distal, Far, Reached })
                highest = level.Code > highest ? level.Code : highest;
            return highest;
        }
    }
}
