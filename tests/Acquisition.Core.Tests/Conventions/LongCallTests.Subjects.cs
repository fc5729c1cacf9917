using System;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;
using System.Threading;
using Acquisition.Core.Formulas;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Acquisition.Core.Tests.Planning;

namespace Acquisition.Core.Tests.Conventions;

// What the calls are asked of, and what is compared of their results.
public partial class LongCallTests
{
    private static Catalogue Workshop() => Catalogue.Parse(DocumentFiles.Read("examples", "workshop-catalogue.json"));

    private static Requirement Wanted() => new Requirement(Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns())).WithEdgeTolerance(15.Percent()).WithHarmonics(5).WithWindow(1.ms());

    private static string Summary(Shortlist list) => string.Join("|", list.Candidates.Select(candidate => $"{candidate} {candidate.ScoreFraction:R} {candidate.IsDominated}"));

    private static string Summary(MonteCarloResult result) =>
        string.Create(CultureInfo.InvariantCulture, $"{result.Estimate.SiValue:R} {result.StandardUncertainty.SiValue:R} {string.Join(",", result.Findings)}");

    private static string Summary(PulseMeasurement pulses) =>
        string.Create(CultureInfo.InvariantCulture, $"{pulses} {pulses.Period.Value.Mean.Seconds:R} {pulses.RisingDuration} {pulses.DutyFactor} {string.Join(",", pulses.Findings)}");

    private static string Summary(SineFit fit) => string.Create(
        CultureInfo.InvariantCulture, $"{fit} {fit.Sine?.Frequency.Hertz:R} {fit.Sine?.Amplitude.Volts:R} {fit.Sine?.AmplitudeUncertainty.Volts:R} {string.Join(",", fit.Findings)}");

    private static double[] Values(Record record) => record.ToSiValues();

    private static double[] Columns(string text, IProgress<Ratio>? progress, CancellationToken cancellation)
    {
        var results = new double[100_000];
        FormulaContext.Standard.WithInput("u", Acquisition.Core.Functions.ValueKind.Of(QuantityKind.Voltage)).WithInput("r", Acquisition.Core.Functions.ValueKind.Of(QuantityKind.Resistance)).Build(text)
            .EvaluateColumns([Array.ConvertAll(Train(results.Length), code => code / 100.0), Enumerable.Repeat(50.0, results.Length).ToArray()], results, progress, cancellation);
        return results;
    }

    private static RollOffAttribution Paths()
    {
        double[] hertz = Enumerable.Range(1, 100).Select(i => 1e7 * i).ToArray();
        Sweep Falling(double decibelsPerGigahertz) => Sweep.OfDecibels(hertz, Array.ConvertAll(hertz, f => decibelsPerGigahertz * f / 1e9));
        return RollOffAttribution.OfElements("probe", "front end", "cable").WithSweep(Falling(-3), "front end").WithSweep(Falling(-5), "probe", "front end").WithSweep(Falling(-4), "cable", "front end");
    }

    private static byte[] Train(int length)
    {
        var codes = new byte[length];
        for (int i = 0; i < length; i++)
            codes[i] = (byte)(20 + 200 * (i % 10_007 < 4000 ? Math.Min(1, i % 10_007 / 8.0) : Math.Max(0, 1 - (i % 10_007 - 4000) / 8.0)));
        return codes;
    }

    /// <summary>A sine of 1 MHz at 100 MSa/s in noise of about 16 codes.</summary>
    private static byte[] Sine(int length, int amplitude)
    {
        var random = new Random(5);
        return Enumerable.Range(0, length).Select(n => (byte)(128 + amplitude * Math.Cos(2 * Math.PI * 0.01 * n + 0.3) + random.Next(28) + random.Next(28) - 27)).ToArray();
    }

    private static string LongSheet() =>
        "given u = 1 V ± 10 mV\n" + string.Concat(Enumerable.Range(0, 30).Select(i => FormattableString.Invariant($"let p{i} = u^2 / {50 + i} ohm\ncheck p{i} < 25 mW else \"too much\"\n")));

    private static string Table(int rows)
    {
        var text = new StringBuilder("time/s,ch1 (V)\n");
        for (int i = 0; i < rows; i++)
            text.Append(CultureInfo.InvariantCulture, $"{i}e-6,{i % 17}\n");
        return text.ToString();
    }

    private static MemoryStream Array1() => Written(Record.FromCodes(Train(500_000), 1.MSaPerS(), 1.mV(), 0.V(), signed: false));

    private static MemoryStream Array2() => Written(Record.FromVolts(Array.ConvertAll(Train(200_000), code => (double)code), 1.MSaPerS()));

    private static MemoryStream Written(Record record)
    {
        var stream = new MemoryStream();
        NpyRecords.Write(stream, record);
        stream.Position = 0;
        return stream;
    }

    /// <summary>Two channels of 16 bits, 2 MB.</summary>
    private static MemoryStream Sound()
    {
        byte[] data = Train(2_000_000);
        var stream = new MemoryStream();
        var writer = new BinaryWriter(stream);
        writer.Write("RIFF"u8);
        writer.Write(36 + data.Length);
        writer.Write("WAVEfmt "u8);
        writer.Write(16);
        writer.Write((short)1);
        writer.Write((short)2);
        writer.Write(48_000);
        writer.Write(192_000);
        writer.Write((short)4);
        writer.Write((short)16);
        writer.Write("data"u8);
        writer.Write(data.Length);
        writer.Write(data);
        stream.Position = 0;
        return stream;
    }
}
