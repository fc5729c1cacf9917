#:project ../../src/Acquisition.Core/Acquisition.Core.csproj
// What will be seen on the bench? Reads a bench file and prints the outlook.
//   dotnet run docs/examples/outlook.cs                        the lantern buoy's beacon clock
//   dotnet run docs/examples/outlook.cs -- path/to/bench.json  a bench of your own (docs/bench-files.md)
using System;
using System.IO;
using System.Runtime.CompilerServices;
using Acquisition.Core;

string path = args.Length > 0 ? args[0] : Path.Combine(Folder(), "lantern-buoy.json");
if (!File.Exists(path))
{
    Console.Error.WriteLine(Directory.Exists(path) ? $"{path} is a directory; name the bench file in it" : $"{path} does not exist");
    return 2;
}
if (!Bench.TryParse(File.ReadAllText(path), out Bench? bench, out var problems))
{
    Console.Error.WriteLine($"{path} is no bench file:");
    foreach (DocumentProblem problem in problems)
        Console.Error.WriteLine("  " + problem);
    return 1;
}
Console.OutputEncoding = System.Text.Encoding.UTF8;
Console.Write(bench);
return 0;

static string Folder([CallerFilePath] string file = "") => Path.GetDirectoryName(file)!;
