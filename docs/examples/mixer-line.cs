#:project ../../src/Acquisition.Core/Acquisition.Core.csproj
// A line with cable, pad and terminator on an instrument of the workshop: the bench file names instrument and cable, the catalogue describes them.
using System;
using System.IO;
using System.Runtime.CompilerServices;
using Acquisition.Core;

Console.OutputEncoding = System.Text.Encoding.UTF8;
#region line
Catalogue workshop = Catalogue.Parse(File.ReadAllText(Beside("workshop-catalogue.json")));
string line = File.ReadAllText(Beside("mixer-line.json"));
Bench bench = Bench.Parse(line, workshop);
#endregion
Console.WriteLine("[line]");
Console.Write(bench);

Console.WriteLine("[unknown]");
#region unknown
if (!Bench.TryParse(line.Replace("50 ohm, thin", "50 ohm, thick"), workshop, out _, out var problems))
    Console.WriteLine(problems[0]);
#endregion

static string Beside(string file, [CallerFilePath] string here = "") => Path.Combine(Path.GetDirectoryName(here)!, file);
