using System;
using System.Collections.Generic;
using System.Linq;
using System.Text.RegularExpressions;
using Acquisition.Core.Literals;
using Xunit;

namespace Acquisition.Core.Tests.Planning;

/// <summary>A finding about the sampling whose remedy holds a number is gone once that number is applied.</summary>
public sealed class NumberedRemedyTests
{
    private static readonly Response Chain = Response.Gaussian(500.MHz());

    private static Digitizer Of(SampleRate rate) => new(rate, 10.Mpts(), 8.bit());

    private static Outlook Seen(Signal signal, SampleRate rate, Duration window) => signal.Through(Chain).SampledBy(Of(rate)).Over(window);

    private static double First(string remedy, string pattern) => Quantity.Parse(Regex.Match(remedy, pattern).Groups[1].Value).SiValue;

    private static SampleRate Rate(string remedy) => SampleRate.FromSamplesPerSecond(First(remedy, @"([0-9.]+ [kMG]?Sa/s)"));

    public static TheoryData<string> Codes => new(Cases.Keys);

    private static readonly Dictionary<string, (Func<Outlook> Before, Func<string, Outlook> After)> Cases = new()
    {
        ["window-too-short"] = (
            () => Seen(Signal.Sine(1.kHz(), 1.Vpk()), 1.GSaPerS(), 70.us()),
            remedy => Seen(Signal.Sine(1.kHz(), 1.Vpk()), 1.GSaPerS(), Duration.FromSeconds(First(remedy, "at least ([0-9.]+ m?s)")))),
        ["few-points-per-edge"] = (
            () => Seen(Signal.Square(1.MHz(), 1.Vpp(), 7.ns()), 130.MSaPerS(), 10.us()),
            remedy => Seen(Signal.Square(1.MHz(), 1.Vpp(), 7.ns()), Rate(remedy), 10.us())),
        ["coarse-interpolation"] = (
            () => Seen(Signal.Sine(47.MHz(), 1.Vpk()), 95.MSaPerS(), 10.us()),
            remedy => Seen(Signal.Sine(47.MHz(), 1.Vpk()), Rate(remedy), 10.us())),
        ["fundamental-aliased"] = (
            () => Seen(Signal.Sine(73.MHz(), 1.Vpk()), 100.MSaPerS(), 10.us()),
            remedy => Seen(Signal.Sine(73.MHz(), 1.Vpk()), Rate(remedy), 10.us())),
        ["harmonics-aliased"] = (
            () => Seen(Signal.Square(17.MHz(), 1.Vpp(), 1.ns()), 300.MSaPerS(), 10.us()),
            remedy => Seen(Signal.Square(17.MHz(), 1.Vpp(), 1.ns()), Rate(remedy), 3.us())),
        ["pulse-between-samples"] = (
            () => Signal.Sine(1.MHz(), 1.Vpk()).Through(Chain).SampledBy(Of(100.MSaPerS())).WatchingFor(7.ns()).Over(10.us()),
            remedy => Signal.Sine(1.MHz(), 1.Vpk()).Through(Chain).SampledBy(Of(Rate(remedy))).WatchingFor(7.ns()).Over(10.us())),
        ["pulse-flattened"] = (
            () => Signal.Sine(1.MHz(), 1.Vpk()).Through(Response.Gaussian(50.MHz())).SampledBy(Of(5.GSaPerS())).WatchingFor(3.ns()).Over(10.us()),
            remedy => Signal.Sine(1.MHz(), 1.Vpk()).Through(Response.Gaussian(Frequency.FromHertz(First(remedy, "about ([0-9.]+ MHz)")))).SampledBy(Of(5.GSaPerS())).WatchingFor(3.ns()).Over(10.us())),
        ["records-overlap"] = (
            () => Signal.Sine(1.MHz(), 1.Vpk()).Through(Chain).SampledBy(Of(1.GSaPerS())).WithRecordRate(700.Hz()).WatchingFor(7.ns()).Over(3.ms()),
            remedy => Signal.Sine(1.MHz(), 1.Vpk()).Through(Chain).SampledBy(Of(1.GSaPerS())).WithRecordRate(Frequency.FromHertz(First(remedy, "at most ([0-9.]+ Hz)"))).WatchingFor(7.ns()).Over(3.ms())),
        ["clipped"] = (
            () => Signal.Sine(1.MHz(), 0.777.Vpk()).Through(Chain).SampledBy(Of(1.GSaPerS())).WithFullScale(1.Vpp()).Over(10.us()),
            remedy => Signal.Sine(1.MHz(), 0.777.Vpk()).Through(Chain).SampledBy(Of(1.GSaPerS())).WithFullScale(PeakToPeakVoltage.FromVolts(First(remedy, "at least ([0-9.]+ Vpp)"))).Over(10.us())),
        ["memory-caps-rate"] = (
            () => Seen(Signal.Sine(1.MHz(), 1.Vpk()), 1.GSaPerS(), 33.ms()),
            remedy => Seen(Signal.Sine(1.MHz(), 1.Vpk()), 1.GSaPerS(), Duration.FromSeconds(First(remedy, "at most ([0-9.]+ ms)")))),
        ["signal-beyond-bandwidth"] = (
            () => Seen(Signal.Sine(700.MHz(), 1.Vpk()), 5.GSaPerS(), 1.us()),
            remedy => Signal.Sine(700.MHz(), 1.Vpk()).Through(Response.Gaussian(Frequency.FromGigahertz(First(remedy, "at least ([0-9.]+ GHz)") / 1e9))).SampledBy(Of(5.GSaPerS())).Over(1.us())),
    };

    [Theory, MemberData(nameof(Codes))]
    public void TheNumberOfTheRemedy_Cures(string code)
    {
        Finding said = Cases[code].Before().Findings.Single(finding => finding.Code == code);
        Assert.DoesNotContain(Cases[code].After(said.Remedy!).Findings, finding => finding.Code == code);
    }
}
