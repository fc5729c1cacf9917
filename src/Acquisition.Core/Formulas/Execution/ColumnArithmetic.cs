using System;
#if NET8_0_OR_GREATER
using System.Numerics;
#endif

namespace Acquisition.Core.Formulas.Execution;

/// <summary>
/// The frequent operations over whole rows, by vectors where the processor has them. Each gives the bits that <see cref="Arithmetic"/> gives: the
/// operations are those of IEEE 754, and none is fused with another.
/// </summary>
internal static class ColumnArithmetic
{
    internal static bool TryApply(Operation operation, Row a, Row b, Row target, int count)
    {
        switch (operation)
        {
            case Operation.Copy: Array.Copy(a.Values, a.Offset, target.Values, target.Offset, count); return true;
            case Operation.Negate: Negate(a, target, count); return true;
            case Operation.Add: Add(a, b, target, count); return true;
            case Operation.Subtract: Subtract(a, b, target, count); return true;
            case Operation.Multiply: Multiply(a, b, target, count); return true;
            case Operation.Divide: Divide(a, b, target, count); return true;
            case Operation.Square: Multiply(a, a, target, count); return true;
            case Operation.SquareRoot: SquareRoot(a, target, count); return true;
            case Operation.Absolute: Absolute(a, target, count); return true;
            default: return false;
        }
    }

    private static void Negate(Row a, Row target, int count)
    {
        int i = 0;
#if NET8_0_OR_GREATER
        for (; i <= count - Vector<double>.Count; i += Vector<double>.Count) (-At(a, i)).CopyTo(target.Values, target.Offset + i);
#endif
        for (; i < count; i++) target.Values[target.Offset + i] = -a.Values[a.Offset + i];
    }

    private static void Add(Row a, Row b, Row target, int count)
    {
        int i = 0;
#if NET8_0_OR_GREATER
        for (; i <= count - Vector<double>.Count; i += Vector<double>.Count) (At(a, i) + At(b, i)).CopyTo(target.Values, target.Offset + i);
#endif
        for (; i < count; i++) target.Values[target.Offset + i] = a.Values[a.Offset + i] + b.Values[b.Offset + i];
    }

    private static void Subtract(Row a, Row b, Row target, int count)
    {
        int i = 0;
#if NET8_0_OR_GREATER
        for (; i <= count - Vector<double>.Count; i += Vector<double>.Count) (At(a, i) - At(b, i)).CopyTo(target.Values, target.Offset + i);
#endif
        for (; i < count; i++) target.Values[target.Offset + i] = a.Values[a.Offset + i] - b.Values[b.Offset + i];
    }

    private static void Multiply(Row a, Row b, Row target, int count)
    {
        int i = 0;
#if NET8_0_OR_GREATER
        for (; i <= count - Vector<double>.Count; i += Vector<double>.Count) (At(a, i) * At(b, i)).CopyTo(target.Values, target.Offset + i);
#endif
        for (; i < count; i++) target.Values[target.Offset + i] = a.Values[a.Offset + i] * b.Values[b.Offset + i];
    }

    private static void Divide(Row a, Row b, Row target, int count)
    {
        int i = 0;
#if NET8_0_OR_GREATER
        var missing = new Vector<double>(double.NaN);
        for (; i <= count - Vector<double>.Count; i += Vector<double>.Count)
        {
            Vector<double> divisor = At(b, i);
            Vector<long> exists = Vector.AndNot(Vector.Equals(divisor - divisor, Vector<double>.Zero), Vector.Equals(divisor, Vector<double>.Zero));
            Vector.ConditionalSelect(exists, At(a, i) / divisor, missing).CopyTo(target.Values, target.Offset + i);
        }
#endif
        for (; i < count; i++) target.Values[target.Offset + i] = Arithmetic.Divide(a.Values[a.Offset + i], b.Values[b.Offset + i]);
    }

    private static void SquareRoot(Row a, Row target, int count)
    {
        int i = 0;
#if NET8_0_OR_GREATER
        for (; i <= count - Vector<double>.Count; i += Vector<double>.Count) Vector.SquareRoot(At(a, i)).CopyTo(target.Values, target.Offset + i);
#endif
        for (; i < count; i++) target.Values[target.Offset + i] = Math.Sqrt(a.Values[a.Offset + i]);
    }

    private static void Absolute(Row a, Row target, int count)
    {
        int i = 0;
#if NET8_0_OR_GREATER
        for (; i <= count - Vector<double>.Count; i += Vector<double>.Count) Vector.Abs(At(a, i)).CopyTo(target.Values, target.Offset + i);
#endif
        for (; i < count; i++) target.Values[target.Offset + i] = Math.Abs(a.Values[a.Offset + i]);
    }

#if NET8_0_OR_GREATER
    private static Vector<double> At(Row row, int i) => new(row.Values, row.Offset + i);
#endif
}

/// <summary>A stretch of an array: one register's values for a chunk of rows.</summary>
internal readonly struct Row(double[] values, int offset)
{
    internal double[] Values { get; } = values;

    internal int Offset { get; } = offset;
}
