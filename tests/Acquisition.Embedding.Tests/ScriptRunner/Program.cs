using System;
using System.IO;
using System.Linq;
using System.Text;
using Acquisition.Core;
using Microsoft.CodeAnalysis.CSharp.Scripting;
using Microsoft.CodeAnalysis.Scripting;

// Runs a C# script. A line #r "nuget: Acquisition.Core, <version>" is answered with the package this runner was restored against.
string path = Path.GetFullPath(args[0]);
const string PackageLine = "#r \"nuget: Acquisition.Core, ";
string[] lines = File.ReadAllLines(path).Select(line => line.StartsWith(PackageLine, StringComparison.Ordinal) ? "//" + line : line).ToArray();

var options = ScriptOptions.Default
    .WithFilePath(path)
    .WithFileEncoding(Encoding.UTF8)
    .WithReferences(typeof(object).Assembly, typeof(Enumerable).Assembly, typeof(Console).Assembly, typeof(System.Numerics.Complex).Assembly, typeof(Frequency).Assembly);
try
{
    await CSharpScript.RunAsync(string.Join("\n", lines), options);
    return 0;
}
catch (CompilationErrorException refusal)
{
    foreach (var diagnostic in refusal.Diagnostics) Console.Error.WriteLine(diagnostic);
    return 1;
}
