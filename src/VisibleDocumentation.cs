using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Text;
using System.Xml;
using System.Xml.Linq;
using Microsoft.Build.Framework;

// The compiler documents every member; a package needs what its users can see. Writes a documentation file, whose assembly lies beside it, without what is hidden. A task of the build
// itself (src/Directory.Build.targets), so that it needs neither a tool nor a network.
public sealed class VisibleDocumentation : Microsoft.Build.Utilities.Task
{
    [Required]
    public ITaskItem[] Sources { get; set; }

    [Required]
    public ITaskItem[] Targets { get; set; }

    public override bool Execute()
    {
        for (int i = 0; i < Sources.Length; i++)
        {
            HashSet<string> visible = Visible(Path.ChangeExtension(Sources[i].ItemSpec, ".dll"));
            XDocument documentation = XDocument.Load(Sources[i].ItemSpec, LoadOptions.PreserveWhitespace);
            foreach (XElement member in documentation.Descendants("member").Where(member => !visible.Contains(member.Attribute("name").Value)).ToArray())
            {
                if (member.PreviousNode is XText indentation) indentation.Remove();
                member.Remove();
            }
            Directory.CreateDirectory(Path.GetDirectoryName(Targets[i].ItemSpec));
            using (var writer = XmlWriter.Create(Targets[i].ItemSpec, new XmlWriterSettings { Encoding = new UTF8Encoding(false), NewLineChars = "\n" })) documentation.Save(writer);
        }
        return true;
    }

    // The documentation names (C# standard, annex D.4.2) of all types and members that other assemblies see.
    private static HashSet<string> Visible(string path)
    {
        using var image = new PEReader(new MemoryStream(File.ReadAllBytes(path)));
        MetadataReader reader = image.GetMetadataReader();
        var names = new HashSet<string>();
        var text = new SignatureText(reader);
        foreach (TypeDefinition type in reader.TypeDefinitions.Select(reader.GetTypeDefinition).Where(type => IsVisible(reader, type)))
        {
            string owner = text.NameOf(type);
            names.Add("T:" + owner);
            foreach (FieldDefinition field in type.GetFields().Select(reader.GetFieldDefinition).Where(field => Outside((int)field.Attributes))) names.Add($"F:{owner}.{reader.GetString(field.Name)}");
            foreach (MethodDefinition method in type.GetMethods().Select(reader.GetMethodDefinition).Where(method => Outside((int)method.Attributes)))
            {
                string name = reader.GetString(method.Name).Replace('.', '#');
                MethodSignature<string> signature = method.DecodeSignature(text, null);
                string generic = signature.GenericParameterCount > 0 ? "``" + signature.GenericParameterCount : "", parameters = Parameters(signature.ParameterTypes);
                names.Add($"M:{owner}.{name}{generic}{parameters}" + (name is "op_Implicit" or "op_Explicit" ? "~" + signature.ReturnType : ""));
            }
            foreach (PropertyDefinition property in type.GetProperties().Select(reader.GetPropertyDefinition))
            {
                PropertyAccessors accessors = property.GetAccessors();
                bool isVisible = new[] { accessors.Getter, accessors.Setter }.Any(accessor => !accessor.IsNil && Outside((int)reader.GetMethodDefinition(accessor).Attributes));
                if (isVisible) names.Add($"P:{owner}.{reader.GetString(property.Name)}{Parameters(property.DecodeSignature(text, null).ParameterTypes)}");
            }
        }
        return names;
    }

    private static string Parameters(ImmutableArray<string> types) => types.IsEmpty ? "" : $"({string.Join(",", types)})";

    private static bool IsVisible(MetadataReader reader, TypeDefinition type) => (type.Attributes & TypeAttributes.VisibilityMask) switch
    {
        TypeAttributes.Public => true,
        TypeAttributes.NestedPublic or TypeAttributes.NestedFamily or TypeAttributes.NestedFamORAssem => IsVisible(reader, reader.GetTypeDefinition(type.GetDeclaringType())),
        _ => false,
    };

    // Fields and methods have the same access bits.
    private static bool Outside(int attributes) => (MethodAttributes)attributes is var all && (all & MethodAttributes.MemberAccessMask) is MethodAttributes.Public or MethodAttributes.Family or MethodAttributes.FamORAssem;
}

// Types as documentation names write them.
internal sealed class SignatureText(MetadataReader reader) : ISignatureTypeProvider<string, object>
{
    public string NameOf(TypeDefinition type) => Full(type.GetDeclaringType() is { IsNil: false } outer ? NameOf(reader.GetTypeDefinition(outer)) : reader.GetString(type.Namespace), reader.GetString(type.Name));

    public string GetTypeFromDefinition(MetadataReader reader, TypeDefinitionHandle handle, byte kind) => NameOf(reader.GetTypeDefinition(handle));

    public string GetTypeFromReference(MetadataReader reader, TypeReferenceHandle handle, byte kind)
    {
        TypeReference type = reader.GetTypeReference(handle);
        string outer = type.ResolutionScope.Kind == HandleKind.TypeReference ? GetTypeFromReference(reader, (TypeReferenceHandle)type.ResolutionScope, kind) : reader.GetString(type.Namespace);
        return Full(outer, reader.GetString(type.Name));
    }

    public string GetGenericInstantiation(string type, ImmutableArray<string> arguments) => $"{type.Substring(0, type.LastIndexOf('`'))}{{{string.Join(",", arguments)}}}";

    public string GetPrimitiveType(PrimitiveTypeCode code) => "System." + code;

    public string GetArrayType(string element, ArrayShape shape) => $"{element}[{string.Join(",", Enumerable.Repeat("0:", shape.Rank))}]";

    public string GetSZArrayType(string element) => element + "[]";

    public string GetByReferenceType(string element) => element + "@";

    public string GetPointerType(string element) => element + "*";

    public string GetGenericTypeParameter(object context, int index) => "`" + index;

    public string GetGenericMethodParameter(object context, int index) => "``" + index;

    public string GetModifiedType(string modifier, string type, bool isRequired) => type;

    public string GetPinnedType(string element) => element;

    public string GetFunctionPointerType(MethodSignature<string> signature) => "=FUNC:" + signature.ReturnType;

    public string GetTypeFromSpecification(MetadataReader reader, object context, TypeSpecificationHandle handle, byte kind) => reader.GetTypeSpecification(handle).DecodeSignature(this, context);

    private static string Full(string outer, string name) => outer.Length > 0 ? outer + "." + name : name;
}
