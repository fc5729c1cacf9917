// Opens each packed file and checks what a user's package manager will look for.
using System.IO.Compression;
using System.Xml.Linq;

string folder = args[0];
string[] packages = Directory.GetFiles(folder, "*.nupkg");
int faults = 0;
void Require(bool condition, string package, string what)
{
    if (condition) return;
    faults++;
    Console.WriteLine($"{Path.GetFileName(package)}: {what}");
}

Require(packages.Length >= 1, folder, "no package was packed");
foreach (string package in packages)
{
    using ZipArchive archive = ZipFile.OpenRead(package);
    string[] names = archive.Entries.Select(entry => entry.FullName).ToArray();
    string id = Path.GetFileName(package).Split(".0.")[0];
    foreach (string target in (string[])["netstandard2.0", "net8.0"])
    {
        Require(names.Contains($"lib/{target}/{id}.dll"), package, $"no assembly for {target}");
        Require(names.Contains($"lib/{target}/{id}.xml"), package, $"no XML documentation for {target}");
    }
    Require(names.Contains("README.md"), package, "no README");
    Require(names.Contains("icon.png"), package, "no icon");
    Require(File.Exists(Path.ChangeExtension(package, ".snupkg")), package, "no symbol package");

    using Stream stream = archive.Entries.Single(entry => entry.FullName.EndsWith(".nuspec", StringComparison.Ordinal)).Open();
    XElement metadata = XDocument.Load(stream).Root!.Elements().First();
    string Text(string name) => metadata.Elements().FirstOrDefault(element => element.Name.LocalName == name)?.Value ?? "";
    foreach (string name in (string[])["description", "license", "icon", "readme", "tags", "authors", "copyright"]) Require(Text(name).Length > 0, package, $"no {name}");
    foreach (XElement group in metadata.Descendants().Where(element => element.Name.LocalName == "group"))
    {
        string[] allowed = id switch
        {
            "Acquisition.Core" => ["MathNet.Numerics"],
            "Acquisition.Interop.UnitsNet" => ["Acquisition.Core", "UnitsNet"],
            _ => ["Acquisition.Core"],
        };
        foreach (XElement dependency in group.Elements())
            Require(allowed.Contains(dependency.Attribute("id")!.Value), package, $"depends on {dependency.Attribute("id")!.Value} for {group.Attribute("targetFramework")?.Value}");
    }
    long size = archive.Entries.Where(entry => entry.FullName == $"lib/net8.0/{id}.dll").Sum(entry => entry.Length);
    Console.WriteLine($"{Path.GetFileName(package)}: {new FileInfo(package).Length / 1024} kB, net8.0 assembly {size / 1024} kB");
}
return faults == 0 ? 0 : 1;
