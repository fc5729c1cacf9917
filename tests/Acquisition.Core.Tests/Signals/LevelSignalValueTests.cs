using System;
using System.Linq;
using Acquisition.Core.Literals;
using Acquisition.Core.Signals;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Acquisition.Core.Tests.Signals;

/// <summary>The value of a pattern by the few edges that are on their way, against the sum over all edges of many periods.</summary>
public sealed class LevelSignalValueTests
{
    [Property(MaxTest = 100)]
    public Property ValueOfAPattern_IsTheSumOverAllItsEdges() => Prop.ForAll(
        Gen.Choose(0, 1).NonEmptyListOf().Where(bits => bits.Contains(0) && bits.Contains(1)).ToArbitrary(),
        Gen.Elements(EdgeShape.Linear, EdgeShape.Gaussian, EdgeShape.Exponential).ToArbitrary(),
        Gen.Choose(0, 1000).ToArbitrary(),
        (bits, shape, place) =>
        {
            double rise = shape switch { EdgeShape.Linear => 0.8, EdgeShape.Gaussian => 0.2, _ => 0.1 };
            var signal = (LevelSignal)Signal.BitPattern([.. bits.Select(bit => bit == 1)], BitRate.FromMegabitsPerSecond(100), 2.Vpp(), (10 * rise).ns(), shape);
            double time = 3 * signal.Seconds * place / 1000 - signal.Seconds, expected = signal.Start;
            // Each period's changes add up to nothing: edges long gone leave the start level.
            for (int n = -30; n <= 30; n++)
            {
                foreach (Transition edge in signal.Transitions)
                    expected += edge.Change * edge.Edge.Fraction(time - edge.Time - n * signal.Seconds);
            }
            return Math.Abs(signal.Value(time) - expected) < 1e-9;
        });
}
