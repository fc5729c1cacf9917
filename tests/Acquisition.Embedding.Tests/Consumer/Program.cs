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
        UnitsAndFormatsAreAlike();
        TheMainJobRuns();
        UncertainValuesMultiplyByName();
        FormulasRunFromTextAlone();
        RefusalsNameTheirCause();
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

    private static void UnitsAndFormatsAreAlike()
    {
        string[] units = { "Hz", "ns", "GSa/s", "in", "°C", "min", "dBmV", "%", "nV/√Hz", "km/h", "Mpts", "°", "Np", "KiB", "dBm/MHz" };
        string[] formats = { null, "4", "F2", "E3", "G5", "F12" };
        ulong state = 7;
        ulong digest = 14695981039346656037;
        int wrong = 0, texts = 0;
        for (int i = 0; i < 30000; i++)
        {
            state = state * 6364136223846793005 + 1442695040888963407;
            long thousandths = (long)(state >> 40) - 8000000;
            string unit = units[i % units.Length];
            Quantity quantity = Quantity.Parse((thousandths / 1000).ToString(CultureInfo.InvariantCulture) + "." + (Math.Abs(thousandths) % 1000).ToString("000", CultureInfo.InvariantCulture) + " " + unit);
            if (Quantity.Parse(quantity.ToString(unit)) != quantity) wrong++;
            foreach (string format in formats)
            {
                texts++;
                foreach (char c in quantity.ToString(format)) digest = (digest ^ c) * 1099511628211;
            }
        }
        Console.WriteLine("quantities in all units and formats: " + texts.ToString(CultureInfo.InvariantCulture) + ", wrong: " + wrong.ToString(CultureInfo.InvariantCulture) + ", digest: " + digest.ToString("x16", CultureInfo.InvariantCulture));
    }

    private static void TheMainJobRuns()
    {
        Signal clock = Signal.Square(Frequency.FromMegahertz(24), PeakToPeakVoltage.FromVolts(3.3), Duration.FromNanoseconds(2.8));
        MeasurementChain chain = MeasurementChain.From(Resistance.FromOhms(33))
            .Probe(Probe.Passive(10, Resistance.FromMegaohms(10), Capacitance.FromPicofarads(12), Frequency.FromMegahertz(200)))
            .Into(FrontEnd.HighImpedance(Resistance.FromMegaohms(1), Capacitance.FromPicofarads(14), Response.Gaussian(Frequency.FromMegahertz(200))));
        var digitizer = new Digitizer(SampleRate.FromGigasamplesPerSecond(2), PointCount.FromMegapoints(14), BitDepth.FromBits(8));
        Outlook outlook = clock.Through(chain).SampledBy(digitizer).Over(Duration.FromMilliseconds(10));
        Console.WriteLine(outlook);
    }

    private static void UncertainValuesMultiplyByName()
    {
        #region named-operators
        Uncertain<Voltage> drop = Uncertain.Of(Voltage.FromMillivolts(500.3), Spread.Bound(Voltage.FromMillivolts(5)), "drop");
        Uncertain<Resistance> shunt = Uncertain.Of(Resistance.FromOhms(1), Spread.Expanded(Resistance.FromOhms(0.01), 2), "shunt");
        Uncertain<Current> lamp = drop.DividedBy<Resistance, Current>(shunt);   // drop / shunt needs C# 14
        Uncertain<Power> heat = drop.Times<Current, Power>(lamp);               // the result type is named; the dimensions are checked when it runs
        Uncertain<Voltage> twice = 2 * (drop + drop);                           // within one type the operators serve every compiler

        Console.WriteLine(lamp.Budget() + "; " + heat.Budget() + "; " + twice.Budget());
        #endregion
    }

    private static void FormulasRunFromTextAlone()
    {
        Console.WriteLine(TextFormulas.Evaluate("2 GSa/s * 100 ms"));
        Console.WriteLine(TextFormulas.Fill("edge {{ sqrt(edge^2 + chain^2) : G4 ns }}, {{ 20 dB + 6 dB }}", "edge = 2.8 ns", "chain = 2.3 ns"));
        Console.WriteLine(TextFormulas.RunWorksheet("given edge = 2.8 ns\nlet seen = sqrt(edge^2 + (2.3 ns)^2)\ncheck seen <= 1.10 * edge else \"stretched\"\nshow seen in ns, 3 digits\n"));
    }

    private static void RefusalsNameTheirCause()
    {
        foreach (string text in new[] { "100 Mhz", "2,5 GHz", "1e400 Hz", "" })
        {
            try
            {
                Console.WriteLine(Frequency.Parse(text));
            }
            catch (FormatException refusal)
            {
                Console.WriteLine(refusal.Message);
            }
        }
        try
        {
            Response.Gaussian(Frequency.FromMegahertz(-20));
        }
        catch (ArgumentException refusal)
        {
            // The runtimes differ in how they append the name of the parameter.
            Console.WriteLine(refusal.Message.Split('\n')[0].Split(new[] { " (Param" }, StringSplitOptions.None)[0].TrimEnd('\r'));
        }
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
