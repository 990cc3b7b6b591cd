using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using SectionScan.Testing.Repository;

namespace SectionScan.Architecture.Tests.Layers;

/// <summary>One project under src as the compiler left it: what its assembly really uses.</summary>
internal sealed record BuiltProject(string Name, IReadOnlyList<string> AssemblyReferences, IReadOnlyList<string> TypeReferences)
{
    private const string ProgramProject = "SectionScan.Cli";
    private const string ProgramAssembly = "sectionscan";

    public static IReadOnlyList<string> AllNames { get; } =
        [.. Directory.GetDirectories(RepositoryFolder.PathOf("src")).Select(folder => Path.GetFileName(folder)!).Order(StringComparer.Ordinal)];

    public static string ProjectFileOf(string name) => RepositoryFolder.PathOf("src", name, $"{name}.csproj");

    public static BuiltProject Read(string name)
    {
        var file = Path.Combine(AppContext.BaseDirectory, (name == ProgramProject ? ProgramAssembly : name) + ".dll");
        using var image = new PEReader(File.OpenRead(file));
        var metadata = image.GetMetadataReader();
        return new(
            name,
            [.. metadata.AssemblyReferences.Select(handle => metadata.GetString(metadata.GetAssemblyReference(handle).Name))],
            [.. metadata.TypeReferences.Select(handle => NameOf(metadata, metadata.GetTypeReference(handle)))]);
    }

    private static string NameOf(MetadataReader metadata, TypeReference type) =>
        $"{metadata.GetString(type.Namespace)}.{metadata.GetString(type.Name)}";
}
