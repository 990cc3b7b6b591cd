using SectionScan.Archive.Entries;
using SectionScan.Archive.Library;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Ports;
using SectionScan.Testing.Sections;

namespace SectionScan.Archive.Tests;

/// <summary>A folder of its own for one test, with a library in it.</summary>
public sealed class LibraryFolder : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("sectionscan-");

    public SteppingClock Clock { get; } = new();

    public string LibraryPath => FilePath("library.db");

    public string FilePath(string name) => Path.Combine(folder.FullName, name);

    public SectionLibrary Open() => SectionLibrary.Open(LibraryPath, Clock).ValueOrThrow();

    public Problem ProblemOfOpening(string? path = null)
    {
        Assert.False(SectionLibrary.Open(path ?? LibraryPath, Clock).TryGet(out var library, out var problem));
        Assert.Null(library);
        return problem;
    }

    public static SectionPlace Place(int station, string head = "Bramble 480 twin", string stage = "") =>
        new(head, new(PortKind.Intake, 1), station, stage);

    public static EntryContent Content(int number, SectionPlace? place = null) =>
        new(place ?? Place(number), SampleSections.Document(SampleSections.Blob(number), number));

    public void Dispose() => folder.Delete(recursive: true);
}
