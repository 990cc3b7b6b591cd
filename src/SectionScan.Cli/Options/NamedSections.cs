using SectionScan.Jobs.Comparing;
using SectionScan.Metrology.Results;

namespace SectionScan.Cli.Options;

/// <summary>Sections as a person names them in a row of ports or stages: a folder or a section, or <c>NAME=</c> before it.</summary>
internal static class NamedSections
{
    /// <summary>A name and where its sections are; without a name that of the folder or file.</summary>
    public static (string Name, string Text) Named(string given)
    {
        var at = given.IndexOf('=', StringComparison.Ordinal);
        return at > 0 ? (given[..at], given[(at + 1)..]) : (Path.GetFileName(Path.TrimEndingDirectorySeparator(given)), given);
    }

    /// <summary>Reads all of them, or tells what cannot be read first.</summary>
    public static Result<IReadOnlyList<(string Name, IReadOnlyList<SectionInput> Sections)>> Read(IEnumerable<string> given, string? library)
    {
        var path = LibraryOption.PathOf(library);
        return Result.All(given.Select(Named).Select(each => SectionFiles.Read(each.Text, path, TimeProvider.System)
            .Then<(string Name, IReadOnlyList<SectionInput> Sections)>(sections => (each.Name, sections))));
    }
}
