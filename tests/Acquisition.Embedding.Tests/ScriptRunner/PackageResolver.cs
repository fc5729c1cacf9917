using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Text.Json;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Scripting;

/// <summary>Answers <c>#r "nuget: id, version"</c> as script runners do: a project that references the package is restored, and the restore says which assemblies that means.</summary>
internal sealed class PackageResolver(string packageFolder) : MetadataReferenceResolver
{
    private const string Prefix = "nuget:";
    private readonly Dictionary<string, string[]> _assemblies = [];

    public IEnumerable<string> Assemblies => _assemblies.Values.SelectMany(paths => paths);

    /// <summary>To be called before compiling, since one directive can mean several assemblies and the compiler takes one from it.</summary>
    public void Restore(string script)
    {
        foreach (string line in script.Split('\n').Where(line => line.StartsWith("#r \"" + Prefix, StringComparison.Ordinal)))
        {
            string reference = line.Split('"')[1];
            string[] parts = reference[Prefix.Length..].Split(',', StringSplitOptions.TrimEntries);
            _assemblies[reference] = Restore(parts[0], parts[1]).ToArray();
        }
    }

    public override ImmutableArray<PortableExecutableReference> ResolveReference(string reference, string? baseFilePath, MetadataReferenceProperties properties) =>
        reference.StartsWith(Prefix, StringComparison.Ordinal)
            ? [MetadataReference.CreateFromFile(_assemblies[reference][0], properties)]
            : ScriptMetadataResolver.Default.ResolveReference(reference, baseFilePath, properties);

    public override bool Equals(object? other) => ReferenceEquals(this, other);

    public override int GetHashCode() => packageFolder.GetHashCode(StringComparison.Ordinal);

    private IEnumerable<string> Restore(string id, string version)
    {
        string folder = Directory.CreateTempSubdirectory("script-packages").FullName;
        try
        {
            File.WriteAllText(Path.Combine(folder, "script.csproj"), $"""
                <Project Sdk="Microsoft.NET.Sdk">
                  <PropertyGroup>
                    <TargetFramework>net10.0</TargetFramework>
                    <RestoreAdditionalProjectSources>{packageFolder}</RestoreAdditionalProjectSources>
                  </PropertyGroup>
                  <ItemGroup><PackageReference Include="{id}" Version="[{version}]" /></ItemGroup>
                </Project>
                """);
            var start = new ProcessStartInfo("dotnet", ["restore", folder, "-v", "q"]) { RedirectStandardOutput = true };
            using Process restore = Process.Start(start)!;
            string output = restore.StandardOutput.ReadToEnd();
            restore.WaitForExit();
            if (restore.ExitCode != 0) throw new InvalidOperationException($"{id} {version} was not restored: {output}");
            using JsonDocument assets = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "obj", "project.assets.json")));
            string cache = assets.RootElement.GetProperty("packageFolders").EnumerateObject().First().Name;
            return assets.RootElement.GetProperty("targets").GetProperty("net10.0").EnumerateObject()
                .SelectMany(package => package.Value.GetProperty("runtime").EnumerateObject().Select(file => Path.Combine(cache, package.Name.ToLowerInvariant(), file.Name)))
                .ToArray();
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }
}
