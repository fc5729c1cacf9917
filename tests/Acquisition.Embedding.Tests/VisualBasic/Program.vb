Option Explicit On
Imports System
Imports Acquisition.Core
Imports Acquisition.Core.Literals

' Visual Basic folds case, so MHz and mHz, Mpts and mpts ... are one name to it: literals whose prefix is unambiguous read as in C#, the others are factories.
Friend Module Program
    Public Sub Main()
        Dim edge As Duration = 2.8.ns()
        Dim beacon As Frequency = Frequency.FromMegahertz(24)
        Dim rate As SampleRate = 2.GSaPerS()
        Console.WriteLine("{0}, {1}, {2}", edge, beacon, rate)

        ' Operators: what makes sense has a type, overloads are told apart by it.
        Dim points As PointCount = rate * Duration.FromMilliseconds(5)
        Dim period As Duration = 1.0 / beacon
        Dim perEdge As Ratio = edge / 500.ps()
        Dim gain As DecibelRatio = 20.dB() + 6.dB()
        Console.WriteLine("{0}, {1:G6}, {2}, {3}", points, period, perEdge, gain)
        Console.WriteLine("{0} {1} {2}", rate > SampleRate.FromMegasamplesPerSecond(500), edge <> 2.8.ns(), -gain)

        Dim probe As Probe = Probe.Passive(10, Resistance.FromMegaohms(10), 12.pF(), Frequency.FromMegahertz(200))
        Dim input As FrontEnd = FrontEnd.HighImpedance(Resistance.FromMegaohms(1), 14.pF(), Response.Gaussian(Frequency.FromMegahertz(200)))
        Dim digitizer As New Digitizer(rate, PointCount.FromMegapoints(14), 8.bit())
        Dim outlook As Outlook = Signal.Square(beacon, 3.3.Vpp(), edge).Through(MeasurementChain.From(Resistance.FromOhms(33)).Probe(probe).Into(input)).SampledBy(digitizer).Over(Duration.FromMilliseconds(10))
        Console.WriteLine("edge on the display {0:G4}", outlook.DisplayedEdge.Value)
        For Each finding As Finding In outlook.Findings
            Console.WriteLine("{0} {1}", finding.Severity, finding.Code)
        Next

        Console.WriteLine(TextFormulas.Evaluate("0.35 / 100 MHz in ns"))
        Dim read As Frequency = Nothing
        If Not Frequency.TryParse("100 Mhz", read) Then Console.WriteLine("100 Mhz is refused")
        Try
            Console.WriteLine(Response.Gaussian(Frequency.FromMegahertz(-20)))
        Catch refusal As ArgumentOutOfRangeException
            Console.WriteLine(refusal.Message)
        End Try
    End Sub
End Module
