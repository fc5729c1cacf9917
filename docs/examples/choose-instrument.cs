#:project ../../src/Acquisition.Core/Acquisition.Core.csproj
// Which instrument and which probe for the lantern buoy's beacon clock? Reads a catalogue and prints the shortlist.
//   dotnet run docs/examples/choose-instrument.cs                            the workshop's catalogue
//   dotnet run docs/examples/choose-instrument.cs -- path/to/catalogue.json  a catalogue of your own (docs/planning.md)
using System;
using System.IO;
using System.Runtime.CompilerServices;
using Acquisition.Core;
using Acquisition.Core.Literals;
using Acquisition.Core.Planning;

string path = args.Length > 0 ? args[0] : Path.Combine(Folder(), "workshop-catalogue.json");
if (!File.Exists(path))
{
    Console.Error.WriteLine(Directory.Exists(path) ? $"{path} is a directory; name the catalogue in it" : $"{path} does not exist");
    return 2;
}
if (!Catalogue.TryParse(File.ReadAllText(path), out Catalogue? catalogue, out var problems))
{
    Console.Error.WriteLine($"{path} is no catalogue:");
    foreach (DocumentProblem problem in problems)
        Console.Error.WriteLine("  " + problem);
    return 1;
}

Signal beaconClock = Signal.Square(24.MHz(), 3.3.Vpp(), 2.8.ns());
Requirement wanted = new Requirement(beaconClock)
    .WithEdgeTolerance(15.Percent())
    .WithAmplitudeTolerance(10.Percent())
    .WithHarmonics(5)
    .WithWindow(1.ms())
    .WithSmallestDetail(100.mV())
    .WithChannels(2)
    .WithSourceResistance(33.Ohm());

Console.OutputEncoding = System.Text.Encoding.UTF8;
Console.WriteLine(wanted.Specify());
Shortlist shortlist = Shortlist.Of(wanted, catalogue!, ShortlistWeights.Default.WithPriceFactor(3));
Console.Write(shortlist);
if (shortlist.Best is { Outlook: { } outlook } best)
    Console.Write("\nWith " + best + "\n\n" + outlook);
return 0;

static string Folder([CallerFilePath] string file = "") => Path.GetDirectoryName(file)!;
