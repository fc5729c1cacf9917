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

    /// <summary>From the second on: the state that overshoot and undershoot refer to, that which is reached, and the one that preshoot does, that which is left.</summary>
    internal readonly FourNumbers States;

    /// <summary>From the second on: the amplitude with the sign of an overshoot, an undershoot and a preshoot.</summary>
    internal readonly FourNumbers Amplitudes;

    /// <summary>
    /// For codes: levels counted from the side of the state that is left. A sample is beyond a level when its code, of which a falling transition flips all bits, is at or above.
    /// </summary>
    internal readonly int ProximalCode, DistalCode, FarCode, ReachedCode;

    /// <summary>Whether these levels all lie between codes.</summary>
    internal readonly bool AreCodes;

    /// <param name="codes">How many codes there are; 0 for numbers.</param>
    /// <param name="rising">The direction.</param>
    /// <param name="left">The state that is left.</param>
    /// <param name="near">The end of the hysteresis on its side.</param>
    /// <param name="proximal">The first reference level.</param>
    /// <param name="middle">The middle level.</param>
    /// <param name="distal">The last reference level.</param>
    /// <param name="far">The end of the hysteresis on the other side.</param>
    /// <param name="reached">The state that is reached.</param>
    internal EdgeLevels(int codes, bool rising, double left, Level near, Level proximal, Level middle, Level distal, Level far, Level reached)
    {
        IsRising = rising;
        Near = near;
        Proximal = proximal;
        Middle = middle;
        Distal = distal;
        Far = far;
        Reached = reached;
        States = new FourNumbers(0, reached.Value, reached.Value, left);
        double amplitude = reached.Value - left;
        Amplitudes = new FourNumbers(amplitude, amplitude, -amplitude, -amplitude);
        ProximalCode = rising ? proximal.Code : codes - proximal.Code;
        DistalCode = rising ? distal.Code : codes - distal.Code;
        FarCode = rising ? far.Code : codes - far.Code;
        ReachedCode = rising ? reached.Code : codes - reached.Code;
        AreCodes = IsCode(ProximalCode) && IsCode(DistalCode) && IsCode(FarCode) && IsCode(ReachedCode);

        bool IsCode(int code) => code > 0 && code < codes;
    }

    /// <summary>From the second on: overshoot, undershoot and preshoot in parts of the amplitude, of the extremes that make them. What does not go that way is none.</summary>
    internal FourNumbers Aberrations(FourNumbers extremes) => ((extremes - States) / Amplitudes).AtLeastZero();
}
