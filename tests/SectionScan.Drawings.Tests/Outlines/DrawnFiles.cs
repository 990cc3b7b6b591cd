using SectionScan.Drawings.Outlines;
using SectionScan.Metrology.Results;
using SectionScan.Testing.Repository;

namespace SectionScan.Drawings.Tests.Outlines;

/// <summary>The small drawings written by hand.</summary>
internal static class DrawnFiles
{
    public static string Folder { get; } = RepositoryFolder.PathOf("tests", "SectionScan.Drawings.Tests", "Outlines", "Drawn");

    public static Result<ChosenOutline> Read(string file, OutlineChoice? choice = null)
    {
        var path = Path.Combine(Folder, file);
        return OutlineFile.Read(File.ReadAllText(path), path, choice ?? new());
    }
}
