using System;
using System.Collections;
using System.Collections.Generic;
using System.Linq;
using System.Reflection;
using Acquisition.Core.Attribution;
using Acquisition.Core.Formulas;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;
using Acquisition.Core.Tests.Planning;
using Acquisition.Core.Tests.Records;
using Acquisition.Core.Uncertainty;
using Xunit;

namespace Acquisition.Core.Tests.Conventions;

/// <summary>Results are shared by threads and caches, so no list that one hands out can be changed, not even through a cast. A list that is made anew for each caller is the caller's.</summary>
public class FrozenResultsTests
{
    private static readonly Dictionary<string, Func<object>> Subjects = new()
    {
        ["outlook"] = () => Clock.Through(Chain).SampledBy(new Digitizer(500.MSaPerS(), 10.kpts(), 8.bit()).WithFullScaleRanges(0.8.Vpp(), 8.Vpp())).WithEffectiveBits([new EffectiveBitsPoint(1.MHz(), 7.bit())]).Over(10.us()),
        ["comparison"] = () => OutlookComparison.Of(Clock.Through(Chain).SampledBy(Sampler).Over(10.us()), Clock.Through(Response.Gaussian(20.MHz())).SampledBy(Sampler).Over(10.us())),
        ["chain"] = () => Chain,
        ["cascade"] = () => Response.Gaussian(300.MHz()).Then(Response.Butterworth(3, 100.MHz())),
        ["specification"] = () => Wanted.Specify(),
        ["shortlist"] = () => Shortlist.Of(Wanted, Catalogue.Parse(DocumentFiles.Read("examples", "workshop-catalogue.json"))),
        ["catalogue"] = () => Catalogue.Parse(DocumentFiles.Read("examples", "workshop-catalogue.json")),
        ["pulses"] = () => PulseMeasurement.Of(PulseRecords.Trapezoid()),
        ["pulses of a record at rest"] = () => PulseMeasurement.Of(Record.FromVolts(new double[100], 1.GSaPerS())),
        ["trace"] = () => PulseRecords.Trapezoid().Reconstruct(Reconstruction.Sinc, 4),
        ["sine"] = () => SineFit.FourParameter(Tone),
        ["single tone"] = () => SingleToneTest.Of(Tone),
        ["windows"] = () => SpectralWindow.All,
        ["sweep"] = () => Sweep.OfDecibels([10e6, 1e9], [0, -4], [0, 0.1]),
        ["attribution"] = () => RollOffAttribution.OfElements("probe", "digitizer").WithSweep(Sweep.OfDecibels([10e6, 1e9], [0, -1], [0, 0.1]), "probe").Solve(),
        ["budget"] = () => (Uncertain.Of(1.V(), Spread.Standard(10.mV())) / Uncertain.Of(50.Ohm(), Spread.Bound(1.Ohm()))).Budget(),
        ["functions"] = () => FormulaContext.Standard,
        ["formula"] = () => FormulaContext.Standard.WithInput("u", QuantityKind.Voltage).Build("u * 2"),
        ["worksheet"] = () => Worksheet.Build("given u = 1 V ± 10 mV\nlet p = u^2 / 50 ohm\ncheck p < 25 mW"),
        ["evaluated worksheet"] = () => Worksheet.Build("given u = 1 V ± 10 mV\nlet p = u^2 / 50 ohm\ncheck p < 25 mW").Evaluate(),
        ["problems"] = () => Assert.Throws<FormulaException>(() => Formula.Build("srqt(4)")),
    };

    public static TheoryData<string> Names => new(Subjects.Keys);

    private static Signal Clock => Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns());

    private static Digitizer Sampler => new(500.MSaPerS(), 10.kpts(), 8.bit());

    private static MeasurementChain Chain => MeasurementChain.From(50.Ohm()).Probe(Probe.Passive(10, 10.MOhm(), 10.pF(), 200.MHz()).WithGroundLead(150.mm()))
        .Into(FrontEnd.HighImpedance(1.MOhm(), 15.pF(), Response.Gaussian(200.MHz())));

    private static Requirement Wanted => new Requirement(Clock).WithEdgeTolerance(15.Percent()).WithWindow(1.ms());

    private static Record Tone => Record.FromVolts(Enumerable.Range(0, 1000).Select(i => Math.Sin(0.1234 * i) + 1e-3 * Math.Sin(0.2468 * i)).ToArray(), 1.MSaPerS());

    [Theory, MemberData(nameof(Names))]
    public void NoListOfAResult_CanBeChanged(string subject)
    {
        var seen = new HashSet<object>(new ByReference());
        var open = new List<string>();
        int lists = 0;
        Look(Subjects[subject](), subject, seen, open, ref lists, 0);
        Assert.Empty(open);
        Assert.True(lists > 0, "no list was looked at");
    }

    private static void Look(object? value, string path, HashSet<object> seen, List<string> open, ref int lists, int depth)
    {
        if (value is null or string || depth > 5 || value.GetType().IsPrimitive || !seen.Add(value)) return;
        if (value is IEnumerable many)
        {
            lists++;
            int looked = 0;
            foreach (object? item in many)
            {
                if (looked++ == 3) break;
                Look(item, path + "[]", seen, open, ref lists, depth + 1);
            }
            return;
        }
        if (value is IQuantity || value.GetType().Assembly is var home && home != typeof(Finding).Assembly && home != typeof(Outlook).Assembly) return;
        foreach (PropertyInfo property in value.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance))
        {
            if (property.GetIndexParameters().Length > 0) continue;
            object? first = Read(property, value);
            if (first is IList { IsReadOnly: false, Count: > 0 } && ReferenceEquals(first, Read(property, value))) open.Add($"{path}.{property.Name} is {first.GetType().Name}");
            Look(first, path + "." + property.Name, seen, open, ref lists, depth + 1);
        }
    }

    private static object? Read(PropertyInfo property, object of)
    {
        try
        {
            return property.GetValue(of);
        }
        catch (TargetInvocationException absent) when (absent.InnerException is InvalidOperationException)
        {
            return null;
        }
    }

    private sealed class ByReference : IEqualityComparer<object>
    {
        bool IEqualityComparer<object>.Equals(object? x, object? y) => ReferenceEquals(x, y);

        // Not the object's own: results may compute theirs.
        int IEqualityComparer<object>.GetHashCode(object obj) => obj.GetType().GetHashCode();
    }
}
