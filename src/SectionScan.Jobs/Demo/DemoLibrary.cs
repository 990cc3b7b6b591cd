using SectionScan.Archive.Entries;
using SectionScan.Archive.Library;
using SectionScan.Archive.Search;
using SectionScan.Jobs.Digitising;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Likeness;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Ports;

namespace SectionScan.Jobs.Demo;

/// <summary>Puts the demonstration's sections into a new library and asks it something.</summary>
internal static class DemoLibrary
{
    public const string FileName = "library.db";

    private const string UnfinishedName = "library.building.db";
    private const int MostNeighbours = 4;

    /// <summary>Makes the library file: whole or not at all, in place of an earlier one.</summary>
    /// <param name="folder">Where.</param>
    /// <param name="ports">What goes in: every section with a station.</param>
    /// <param name="asked">The section whose nearest shapes are looked for.</param>
    /// <param name="time">The clock.</param>
    /// <returns>The file's path and what was found.</returns>
    public static Result<(string Path, IReadOnlyList<SimilarSection> Found)> Make(
        OutputFolder folder, IReadOnlyList<DigitisedPort> ports, DigitisedDocument asked, TimeProvider time)
    {
        var (path, unfinished) = (Path.Combine(folder.FullPath, FileName), Path.Combine(folder.FullPath, UnfinishedName));
        try
        {
            Discard(unfinished);
            var filled = Fill(unfinished, path, ports, asked, time);
            Discard(unfinished);
            return filled.Then<(string, IReadOnlyList<SimilarSection>)>(found => (path, found));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return FileProblems.CannotWrite(path, e.Message);
        }
    }

    private static Result<IReadOnlyList<SimilarSection>> Fill(
        string unfinished, string path, IReadOnlyList<DigitisedPort> ports, DigitisedDocument asked, TimeProvider time)
    {
        if (!SectionLibrary.Open(unfinished, time).TryGet(out var library, out var problem))
        {
            return problem;
        }

        using (library)
        {
            return AddAll(library, ports).Then(_ => Ask(library, asked)).Then(found =>
            {
                Discard(path);
                return library.Backup(path).Then<IReadOnlyList<SimilarSection>>(_ => found.ToList());
            });
        }
    }

    private static Result<int> AddAll(SectionLibrary library, IReadOnlyList<DigitisedPort> ports)
    {
        var count = 0;
        foreach (var port in ports)
        {
            foreach (var section in port.Sections)
            {
                if (section.Document.Section.Station is not { } station)
                {
                    continue;
                }

                var text = SectionText.Of(section.Document, section.Measured);
                var place = new SectionPlace(DemoScenario.Head, new(PortKind.Intake, 1), station, port.Port.Stage);
                if (!library.Add(new(place, text, port.Port.Notes, port.Port.Tags, [])).TryGet(out _, out var problem))
                {
                    return problem;
                }

                count++;
            }
        }

        return count;
    }

    private static Result<IReadOnlyList<SimilarSection>> Ask(SectionLibrary library, DigitisedDocument asked) =>
        library.FindSimilar(asked.Document.Section.Outline, MostNeighbours, new LikenessFreedom(MayTurn: true));

    private static void Discard(string path)
    {
        foreach (var name in new[] { path, path + "-wal", path + "-shm" })
        {
            File.Delete(name);
        }
    }
}
