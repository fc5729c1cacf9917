using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text.Json;
using Acquisition.Core.Literals;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Xunit;

namespace Acquisition.Core.Tests.Records.Pulses;

/// <summary>States that tilt, drift or ring say so, with their size; states that rest say nothing.</summary>
public sealed class StateMotionTests
{
    private static readonly string[] Codes = ["states-tilt", "states-drift", "states-ring"];

    /// <summary>A square of 0 V to 1 V with edges of 6 samples, behind a first-order high-pass of this time constant in samples, by its difference equation.</summary>
    private static double[] Coupled(int points, int period, double duty, double samples)
    {
        var volts = new double[points];
        double keep = Math.Exp(-1 / samples), mean = duty, now = 0;
        // Settled before the record begins; a time constant of a million samples and more is DC coupling.
        for (int i = samples < 1e6 ? -(int)(12 * samples / period + 1) * period : 0; i < points; i++)
        {
            double since = ((i % period) + period) % period, high = duty * period;
            now = Math.Min(1, since / 6) - Math.Max(0, Math.Min(1, (since - high) / 6));
            mean = keep * mean + (1 - keep) * now;
            if (i >= 0)
                volts[i] = now - mean;
        }
        return volts;
    }

    private static double[] With(double[] volts, double noise, int seed)
    {
        var random = new Random(seed);
        return [.. volts.Select(x => x + noise * PulseRecords.Gaussian(random))];
    }

    private static Record Volts(double[] volts) => Record.FromVolts(volts, 1.GSaPerS());

    private static Record Coded(double[] volts, double step) => Record.FromCodes([.. volts.Select(x => (short)Math.Round(x / step))], 1.GSaPerS(), Voltage.FromVolts(step), 0.V());

    private static Finding? Said(Record record, string code) => PulseMeasurement.Of(record).Findings.SingleOrDefault(x => x.Code == code);

    private static IEnumerable<string> Moves(Record record) => PulseMeasurement.Of(record).Findings.Select(x => x.Code).Intersect(Codes);

    /// <summary>
    /// The tilt of a square is pi f_c / f of half its amplitude in common textbooks, or pi f_c / (2 f) of the amplitude: f_c = 1 / (2 pi 20 000 ns) = 7.96 kHz, f = 1 MHz, 1.25 %. Of other duty factors, a state
    /// that is v above the mean falls by v times its duration over the time constant: here 0.7 V x 300 / 20 000 = 1.05 %.
    /// </summary>
    [Theory]
    [InlineData(0.5, 0.0, 1.25), InlineData(0.3, 0.0, 1.05), InlineData(0.5, 0.002, 1.25), InlineData(0.3, 0.01, 1.05)]
    public void TopsBehindAHighPass_SayHowMuchTheyTilt_AndWhichCornerDoesSo(double duty, double noise, double percent)
    {
        Finding finding = Assert.IsType<Finding>(Said(Volts(With(Coupled(40_000, 1000, duty, 20_000), noise, 1)), "states-tilt"));

        Assert.Equal(Severity.Warning, finding.Severity);
        // A few samples around the edges are left out: up to a tenth of the shorter state.
        Assert.InRange(Percent(finding, "the high state falls by "), 0.88 * percent, 1.08 * percent);
        Assert.InRange(Percent(finding, "and the low state rises by "), 0.88 * percent, 1.08 * percent);
        Assert.InRange(Corner(finding), 7.5e3, 8.5e3);
        Assert.Contains("couple DC", finding.Remedy, StringComparison.Ordinal);
    }

    [Property(MaxTest = 60)]
    public Property CornerOfAHighPass_IsToldWhateverThePulses() => Prop.ForAll(
        Gen.Choose(0, 1_000_000).ToArbitrary(), Gen.Choose(200, 4000).ToArbitrary(), Gen.Choose(20, 80).Select(x => 0.01 * x).ToArbitrary(), (seed, period, duty) =>
        {
            double samples = period * (4 + new Random(seed).NextDouble() * 10), truth = 1e9 / (2 * Math.PI * samples);
            Finding? finding = Said(Volts(With(Coupled(12 * period, period, duty, samples), 0.001, seed)), "states-tilt");
            double told = finding is null ? 0 : Corner(finding);
            return (told > 0.85 * truth && told < 1.15 * truth).Label(FormattableString.Invariant($"told {told:G4} Hz of {truth:G4} Hz"));
        });

    private static double Percent(Finding finding, string after) => double.Parse(finding.Message.Split([after], StringSplitOptions.None)[1].Split(' ')[0], CultureInfo.InvariantCulture);

    private static double Corner(Finding finding)
    {
        string text = finding.Message.Split(["a corner of about "], StringSplitOptions.None)[1].Split(',')[0];
        return Frequency.Parse(text).Hertz;
    }

    [Fact]
    public void DroopThatScipyMade_IsToldAsItIs()
    {
        string folder = Path.Combine(AppContext.BaseDirectory, "Records", "Data");
        using Stream stream = File.OpenRead(Path.Combine(folder, "scipy-states.csv"));
        Record[] records = [.. CsvRecords.Read(stream, CsvFormat.Sniffed.WithSampleRate(1.SaPerS()))];
        JsonElement scipy = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "scipy-states.json"))).RootElement;

        Finding finding = Assert.IsType<Finding>(Said(records[0], "states-tilt"));
        Assert.Equal(scipy.GetProperty("top_falls").GetDouble(), Percent(finding, "falls by ") / 100, 0.0015);
        Assert.Equal(scipy.GetProperty("corner").GetDouble(), Corner(finding), 0.1 * scipy.GetProperty("corner").GetDouble());
        // 0.5 % that dies away within an eighth of the state is no tilt.
        Assert.Empty(Moves(records[1]));
    }

    [Fact]
    public void TopThatRises_IsToldAsAProbeWithTooLittleCompensation()
    {
        double[] volts = [.. Enumerable.Range(0, 20_000).Select(i => Math.Min(1, i % 2000 / 6.0) * 0.9 + 0.1 * (1 - Math.Exp(-(i % 2000) / 600.0)) - (i % 2000 < 1000 ? 0 : 1 - Math.Exp(-(i % 2000 - 1000) / 6.0)) * (i % 2000 < 1000 ? 0 : 0.96))];

        Finding finding = Assert.IsType<Finding>(Said(Volts(volts), "states-tilt"));
        Assert.Contains("the high state rises by ", finding.Message, StringComparison.Ordinal);
        Assert.Contains("too little compensation", finding.Message, StringComparison.Ordinal);
        Assert.StartsWith("compensate the probe", finding.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.0), InlineData(0.005)]
    public void HumUnderTheStates_IsDriftAndNoTilt(double noise)
    {
        double[] volts = [.. Coupled(40_000, 400, 0.5, 1e9).Select((x, i) => x + 0.03 * Math.Sin(2 * Math.PI * i / 17_000))];

        Finding finding = Assert.IsType<Finding>(Said(Volts(With(volts, noise, 2)), "states-drift"));
        Assert.Equal(6, Percent(finding, "moves by "), 0.8);
        Assert.Null(Said(Volts(With(volts, noise, 2)), "states-tilt"));
    }

    /// <summary>The step of handbook 8.3, damping 0.5: 16.3 % over, and back across the state by the square of that, 2.66 % (handbook 2.3).</summary>
    [Fact]
    public void RingingStep_SaysHowMuch()
    {
        Finding finding = Assert.IsType<Finding>(PulseMeasurement.Of(PulseRecords.SecondOrderStep(), PulseSettings.Default.WithStateLevels(0.V(), 1.V()).WithAberrationRegions(6)).Findings.SingleOrDefault(x => x.Code == "states-ring"));

        Assert.Equal(Severity.Note, finding.Severity);
        Assert.Contains("16.3 % of the amplitude", finding.Message, StringComparison.Ordinal);
        Assert.Contains("2.6", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>Squares, exponential and Gaussian edges, white and slow noise, on numbers and on codes of 6 to 10 bits.</summary>
    [Property(MaxTest = 150)]
    public Property CleanRecords_SayNothing(int seed)
    {
        var random = new Random(seed);
        int period = random.Next(40, 3000), points = random.Next(2, 40) * period;
        double noise = random.Next(3) switch { 0 => 0, 1 => 0.001, _ => 0.02 } * random.NextDouble(), slow = random.Next(2) * random.Next(2, 20), duty = 0.2 + 0.6 * random.NextDouble();
        double[] volts = Coupled(points, period, duty, 1e12);
        double keep = slow == 0 ? 0 : Math.Exp(-1 / slow), now = PulseRecords.Gaussian(random), pole = random.Next(2) * random.NextDouble() * period / 60, last = 0;
        for (int i = 0; i < points; i++)
        {
            now = keep * now + Math.Sqrt(1 - keep * keep) * PulseRecords.Gaussian(random);
            last += (volts[i] - last) * (1 - (pole > 0.05 ? Math.Exp(-1 / pole) : 0));
            volts[i] = last + noise * now;
        }
        Record[] records = [Volts(volts), Coded(volts, 2.0 / 64), Coded(volts, 2.0 / 256), Coded(volts, 2.0 / 1024)];
        string[] said = [.. records.SelectMany(Moves)];
        return (said.Length == 0).Label(FormattableString.Invariant($"{string.Join(", ", said)}: period {period}, points {points}, noise {noise:G3}, slow {slow}, duty {duty:G3}, pole {pole:G3}"));
    }
}
