using System;
using System.Globalization;
using System.Threading;
using Acquisition.Core;

// A host as a test department writes one: C# 7.3, a culture with a decimal comma, text in and text out. Both runtimes must print the same.
internal static class Program
{
    private static int Main()
    {
        Thread.CurrentThread.CurrentCulture = new CultureInfo("de-DE");
        Console.OutputEncoding = new System.Text.UTF8Encoding(false);
        QuantityTextReadsBack();
        return 0;
    }

    private static void QuantityTextReadsBack()
    {
        ulong state = 1;
        ulong digest = 14695981039346656037;
        int wrong = 0;
        for (int i = 0; i < 200000; i++)
        {
            double seconds = NextDouble(ref state);
            string text = Duration.FromSeconds(seconds).ToString();
            if (BitConverter.DoubleToInt64Bits(Duration.Parse(text).Seconds) != BitConverter.DoubleToInt64Bits(seconds)) wrong++;
            foreach (char c in text) digest = (digest ^ c) * 1099511628211;
        }
        Console.WriteLine("durations written and read back: 200000, wrong: " + wrong.ToString(CultureInfo.InvariantCulture));
        Console.WriteLine("digest of the text: " + digest.ToString("x16", CultureInfo.InvariantCulture));
        Console.WriteLine(Frequency.Parse("100 MHz") + ", " + SampleRate.Parse("2.5 GS/s") + ", " + PowerLevel.Parse("-12.5 dBm"));
    }

    /// <summary>Any finite double, its bits from a 64-bit linear congruential generator.</summary>
    private static double NextDouble(ref ulong state)
    {
        while (true)
        {
            state = state * 6364136223846793005 + 1442695040888963407;
            double value = BitConverter.Int64BitsToDouble((long)(state ^ state >> 31));
            if (!double.IsNaN(value) && !double.IsInfinity(value)) return value;
        }
    }
}
