using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Scripting;
using Microsoft.CodeAnalysis.Scripting;

// Runs C# scripts: ScriptRunner <package folder> <script> [--nullable]. Prints what the script prints, and to the error stream where each package came from.
// A warning of the compiler is a failure, with --nullable also those of nullable references.
string text = File.ReadAllText(args[1]);
if (args.Contains("--nullable")) text = "#nullable enable\n#line 1\n" + text;
var resolver = new PackageResolver(Path.GetFullPath(args[0]));
resolver.Restore(text);
string[] platform = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator).Where(path => Path.GetFileName(path).StartsWith("System.", StringComparison.Ordinal)).ToArray();
var options = ScriptOptions.Default
    .WithFilePath(Path.GetFullPath(args[1]))
    .WithFileEncoding(Encoding.UTF8)
    .WithWarningLevel(9999)
    .WithMetadataResolver(resolver)
    .WithReferences(platform.Concat(resolver.Assemblies).Select(path => MetadataReference.CreateFromFile(path)));

Script<object> script = CSharpScript.Create(text, options);
List<Diagnostic> problems = script.Compile().Where(problem => problem.Severity >= DiagnosticSeverity.Warning).ToList();
foreach (Diagnostic problem in problems) Console.Error.WriteLine(problem);
if (problems.Count > 0) return 1;
foreach (string assembly in resolver.Assemblies) Console.Error.WriteLine(assembly);
await script.RunAsync();
return 0;
