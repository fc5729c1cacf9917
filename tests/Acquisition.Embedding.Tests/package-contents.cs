#:property Nullable=enable
// Opens each packed file and checks what a user's package manager, editor and debugger will look for.
using System.IO.Compression;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Text.RegularExpressions;
using System.Xml.Linq;

const int Megabyte = 1_000_000;
Guid embeddedSource = new("0E8A571B-6926-466E-B4AD-8AB04611F5FE"); // Portable PDB v1.0, custom debug information
string[] targets = ["netstandard2.0", "net8.0"];
var expected = new (string Id, int LargestSize, string[] Dependencies)[]
{
    ("Acquisition.Core", Megabyte, ["Acquisition.Foundation [0.1.0]", "MathNet.Numerics 5.0.0"]),
    ("Acquisition.Foundation", Megabyte, ["MathNet.Numerics 5.0.0"]),
    ("Acquisition.Interop.UnitsNet", Megabyte / 10, ["Acquisition.Core [0.1.0, 0.2.0)", "UnitsNet [5.75.1, 6.0.0)"]),
    ("Acquisition.Reports", Megabyte / 4, ["Acquisition.Core [0.1.0, 0.2.0)"]),
};
string folder = args[0];
string checkout = Path.GetFullPath(args[1]);
int faults = 0;
void Require(bool condition, string package, string what)
{
    if (condition) return;
    faults++;
    Console.WriteLine($"{package}: {what}");
}

string[] packed = Directory.GetFiles(folder, "*.nupkg").Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal).ToArray();
Require(packed.SequenceEqual(expected.Select(package => package.Id + ".0.1.0.nupkg")), folder, "holds " + string.Join(", ", packed));
foreach ((string id, int largestSize, string[] dependencies) in expected)
{
    string path = Path.Combine(folder, id + ".0.1.0.nupkg");
    using ZipArchive archive = ZipFile.OpenRead(path);
    using ZipArchive symbols = ZipFile.OpenRead(Path.ChangeExtension(path, ".snupkg"));
    long size = new FileInfo(path).Length;
    Console.WriteLine($"{id}: {size / 1000} kB, symbols {new FileInfo(Path.ChangeExtension(path, ".snupkg")).Length / 1000} kB");
    Require(size < largestSize, id, $"is larger than {largestSize / 1000} kB");

    string[] content = archive.Entries.Select(entry => entry.FullName).Where(name => !name.StartsWith("_rels/", StringComparison.Ordinal) && !name.StartsWith("package/", StringComparison.Ordinal) && name != "[Content_Types].xml").Order(StringComparer.Ordinal).ToArray();
    string[] wanted = [id + ".nuspec", "README.md", "icon.png", .. targets.SelectMany(target => new[] { $"lib/{target}/{id}.dll", $"lib/{target}/{id}.xml" })];
    Require(content.SequenceEqual(wanted.Order(StringComparer.Ordinal)), id, "holds " + string.Join(", ", content));
    Require(Text(archive, "README.md").StartsWith("# " + id + "\n", StringComparison.Ordinal), id, "README.md is not its own");
    Require(!Regex.IsMatch(Text(archive, "README.md"), @"\]\((?!https:)"), id, "README.md has links that lead nowhere from the page of a package");
    Require(Bytes(archive, "icon.png").AsSpan(1).StartsWith("PNG"u8), id, "icon.png is no picture");

    CheckMetadata(id, XDocument.Parse(Text(archive, id + ".nuspec")).Root!.Elements().First(), dependencies);
    foreach (string target in targets)
    {
        string[] documented = XDocument.Parse(Text(archive, $"lib/{target}/{id}.xml")).Descendants("member").Select(member => member.Attribute("name")!.Value).ToArray();
        Require(documented.Any(name => name.StartsWith("M:", StringComparison.Ordinal)), id, $"documents no method for {target}");
        CheckAssembly(id, target, Bytes(archive, $"lib/{target}/{id}.dll"), Bytes(symbols, $"lib/{target}/{id}.pdb"), documented.ToHashSet());
    }
}
return faults == 0 ? 0 : 1;

void CheckMetadata(string id, XElement metadata, string[] dependencies)
{
    string Field(string name) => metadata.Elements().FirstOrDefault(element => element.Name.LocalName == name)?.Value ?? "";
    foreach (string name in (string[])["description", "tags", "authors", "copyright"]) Require(Field(name).Length > 0, id, $"no {name}");
    Require((Field("id"), Field("version"), Field("license"), Field("icon"), Field("readme")) == (id, "0.1.0", "MIT", "icon.png", "README.md"), id, "id, version, licence, icon or readme are not as they should be");
    string[] groups = metadata.Descendants().Where(element => element.Name.LocalName == "group").Select(group => group.Attribute("targetFramework")!.Value).ToArray();
    Require(groups.Length == targets.Length, id, "dependency groups " + string.Join(", ", groups));
    foreach (XElement group in metadata.Descendants().Where(element => element.Name.LocalName == "group"))
    {
        string[] found = group.Elements().Select(dependency => $"{dependency.Attribute("id")!.Value} {dependency.Attribute("version")!.Value}").Order(StringComparer.Ordinal).ToArray();
        Require(found.SequenceEqual(dependencies), id, $"depends for {group.Attribute("targetFramework")!.Value} on {string.Join(", ", found)}");
    }
}

void CheckAssembly(string id, string target, byte[] assembly, byte[] pdb, HashSet<string> documented)
{
    using var image = new PEReader(new MemoryStream(assembly));
    using MetadataReaderProvider provider = MetadataReaderProvider.FromPortablePdbStream(new MemoryStream(pdb));
    MetadataReader metadata = image.GetMetadataReader(), debug = provider.GetMetadataReader();
    string place = $"{id} for {target}";

    DebugDirectoryEntry[] entries = image.ReadDebugDirectory().ToArray();
    Require(entries.Any(entry => entry.Type == DebugDirectoryEntryType.Reproducible), place, "is not marked as reproducible");
    CodeViewDebugDirectoryData view = image.ReadCodeViewDebugDirectoryData(entries.Single(entry => entry.Type == DebugDirectoryEntryType.CodeView));
    Require(view.Guid == new BlobContentId(debug.DebugMetadataHeader!.Id).Guid, place, "the symbols belong to another build");
    Require(view.Path.StartsWith("/_/", StringComparison.Ordinal), place, "names a folder of the machine that built it: " + view.Path);
    Require(assembly.AsSpan().IndexOf(System.Text.Encoding.UTF8.GetBytes(checkout)) < 0, place, "holds the path of the checkout");

    Document[] documents = debug.Documents.Select(debug.GetDocument).ToArray();
    Require(documents.Length > 0, place, "the symbols name no source");
    foreach (DocumentHandle handle in debug.Documents)
    {
        string name = debug.GetString(debug.GetDocument(handle).Name);
        bool isEmbedded = debug.GetCustomDebugInformation(handle).Any(info => debug.GetGuid(debug.GetCustomDebugInformation(info).Kind) == embeddedSource);
        Require(isEmbedded, place, "the symbols do not carry the source " + name);
        Require(name.StartsWith("/_/", StringComparison.Ordinal) || !Path.IsPathRooted(name), place, "the symbols name a folder of the machine that built them: " + name);
    }
    foreach (TypeDefinition type in metadata.TypeDefinitions.Select(metadata.GetTypeDefinition))
    {
        if ((type.Attributes & System.Reflection.TypeAttributes.VisibilityMask) != System.Reflection.TypeAttributes.Public) continue;
        string name = metadata.GetString(type.Namespace) + "." + metadata.GetString(type.Name);
        Require(documented.Contains("T:" + name), place, "no documentation of " + name);
    }
    string[] hidden = documented.Where(name => name.StartsWith("T:", StringComparison.Ordinal) && !IsVisible(metadata, name[2..])).ToArray();
    Require(hidden.Length == 0, place, "documents what nobody outside sees: " + string.Join(", ", hidden));
}

static bool IsVisible(MetadataReader metadata, string documented) => metadata.TypeDefinitions.Select(metadata.GetTypeDefinition).Any(type =>
    (type.Attributes & System.Reflection.TypeAttributes.VisibilityMask) is System.Reflection.TypeAttributes.Public or System.Reflection.TypeAttributes.NestedPublic or System.Reflection.TypeAttributes.NestedFamily
    && documented.EndsWith("." + metadata.GetString(type.Name), StringComparison.Ordinal));

static byte[] Bytes(ZipArchive archive, string name)
{
    using Stream stream = (archive.GetEntry(name) ?? throw new FileNotFoundException("no " + name)).Open();
    using var copy = new MemoryStream();
    stream.CopyTo(copy);
    return copy.ToArray();
}

static string Text(ZipArchive archive, string name) => System.Text.Encoding.UTF8.GetString(Bytes(archive, name)).TrimStart('\uFEFF');
