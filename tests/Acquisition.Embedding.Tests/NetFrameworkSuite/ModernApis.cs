using System;
using System.IO;
using System.Reflection;
using System.Text;

// What the tests use of modern .NET and neither .NET Framework nor its polyfills have.
namespace Acquisition.Core.Tests
{
    internal static class ModernApis
    {
        private static readonly Func<long> AllocatedBytes = (Func<long>)Delegate.CreateDelegate(typeof(Func<long>), typeof(GC).GetMethod("GetAllocatedBytesForCurrentThread", BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static)!);

        public static string Replace(this string text, string old, string replacement, StringComparison comparison) =>
            comparison == StringComparison.Ordinal ? text.Replace(old, replacement) : throw new NotSupportedException();

        public static StringBuilder Append(this StringBuilder builder, IFormatProvider culture, FormattableString text) => builder.Append(text.ToString(culture));

        public static void Write(this BinaryWriter writer, ReadOnlySpan<byte> bytes) => writer.Write(bytes.ToArray());

        extension(string)
        {
            public static string Create(IFormatProvider culture, FormattableString text) => text.ToString(culture);
        }

        extension(GC)
        {
            public static long GetAllocatedBytesForCurrentThread() => AllocatedBytes();
        }

        extension(double)
        {
            public static bool IsFinite(double value) => !double.IsNaN(value) && !double.IsInfinity(value);
        }

        extension(Math)
        {
            public static double BitIncrement(double value)
            {
                long bits = BitConverter.DoubleToInt64Bits(value);
                if (double.IsNaN(value) || double.IsPositiveInfinity(value)) return value;
                return value == 0 ? double.Epsilon : BitConverter.Int64BitsToDouble(value > 0 ? bits + 1 : bits - 1);
            }

            /// <summary>For powers of which 2^n itself is a normal number.</summary>
            public static double ScaleB(double value, int exponent) => value * BitConverter.Int64BitsToDouble((long)(exponent + 1023) << 52);
        }
    }
}

namespace System.Runtime.CompilerServices
{
    /// <summary>What the compiler calls for a range of an array.</summary>
    internal static class RuntimeHelpers
    {
        public static T[] GetSubArray<T>(T[] array, Range range)
        {
            (int offset, int length) = range.GetOffsetAndLength(array.Length);
            var part = new T[length];
            Array.Copy(array, offset, part, 0, length);
            return part;
        }
    }
}
