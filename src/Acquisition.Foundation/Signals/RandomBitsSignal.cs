using System;
using System.Collections.Generic;
using System.Numerics;

namespace Acquisition.Core.Signals;

/// <summary>Random non-return-to-zero data of equally likely, independent bits. The two-sided power density is A² Tb sinc²(f Tb) |edge spectrum|², A half the swing (handbook 4.2).</summary>
internal sealed class RandomBitsSignal : Signal
{
    private readonly double _bit, _swing, _offset;
    private readonly Edge _edge;

    internal RandomBitsSignal(string name, double bit, double swing, Edge edge, double offset)
        : base(name)
    {
        (_bit, _swing, _edge, _offset) = (bit, swing, edge, offset);
    }

    public override Frequency? Fundamental => null;

    public override Edge? SteepestEdge => _edge;

    public override Duration RiseTime => _edge.RiseTime;

    /// <summary>The duration of one bit, s.</summary>
    internal double BitSeconds => _bit;

    /// <summary>What two edges leave of one bit, s.</summary>
    internal double ShortestPlateau => _bit - _edge.Before - _edge.After;

    internal override double Mean => _offset;

    /// <summary>A square wave's of that swing, less what the edges take: one in two bits brings a transition. The mean lag of a lopsided edge cancels between rises and falls.</summary>
    internal override double AcPower => _swing * _swing * (0.25 - 0.5 * _edge.PowerDeficit / _bit);

    internal override double Highest => _offset + _swing / 2;

    internal override double Lowest => _offset - _swing / 2;

    internal override double MeanMagnitude
    {
        get
        {
            // Per bit: half of them without a transition, half with a rise or a fall.
            var cycle = new LevelSignal(Name, 2 * _bit, _offset - _swing / 2, new[] { new Transition(0.5 * _bit, _swing, _edge), new Transition(1.5 * _bit, -_swing, _edge) });
            return 0.5 * cycle.MeanMagnitude + 0.25 * (Math.Abs(Highest) + Math.Abs(Lowest));
        }
    }

    internal override double Value(double seconds) => throw new NotSupportedException($"{Name} is random: it has no value at a time; take PseudoRandomBits or a BitPattern");

    internal override Complex Coefficient(int number) => number == 0 ? _offset : Complex.Zero;

    /// <summary>The one-sided power density, V²/Hz.</summary>
    internal double Density(double hertz)
    {
        double x = Math.PI * hertz * _bit, sinc = Math.Abs(x) < 1e-6 ? 1 : Math.Sin(x) / x;
        return 2 * _swing * _swing / 4 * _bit * sinc * sinc * Squared(_edge.Spectrum(2 * Math.PI * hertz));
    }

    internal override IEnumerable<SpectralLine> Lines(double hertz) => Array.Empty<SpectralLine>();

    private protected override Signal Offset(double volts) => new RandomBitsSignal(Name, _bit, _swing, _edge, _offset + volts);

    private protected override double PowerShare(double from, double to) => (Below(to) - Below(from)) / AcPower;

    /// <summary>The power from DC to a frequency: half a lobe of the sinc at a time.</summary>
    private double Below(double hertz)
    {
        double lobe = 0.5 / _bit, sum = 0;
        const int lobes = 4000;
        int whole = (int)Math.Min(lobes, Math.Floor(hertz / lobe));
        for (int i = 0; i < whole; i++)
            sum += Quadrature.Of(Density, i * lobe, (i + 1) * lobe);
        if (whole < lobes)
            return sum + Quadrature.Of(Density, whole * lobe, hertz);
        // Far out the squared sine of the sinc averages to one half; what is left above falls as 1/f for jumps and far faster for edges.
        return _edge.Scale == 0 ? AcPower - _swing * _swing / (4 * Math.PI * Math.PI * hertz * _bit) : sum;
    }
}
