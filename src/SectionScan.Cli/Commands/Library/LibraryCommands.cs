using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Library;

/// <summary>The commands on the reference section library.</summary>
internal static class LibraryCommands
{
    public static void Add(IConfigurator commands) => commands.AddBranch("library", library =>
    {
        library.SetDescription("Keeps reference sections: heads, ports, stations, with every revision.");
        library.AddCommand<LibraryAddCommand>("add")
            .WithDescription("Adds section documents or drawings of outlines to the library.")
            .WithExample("library", "add", "p01.station-1.section.json", "--head", "\"Bramble 480 twin\"", "--port", "\"intake 1\"", "--stage", "exemplar", "--tag", "proven");
        library.AddCommand<LibraryListCommand>("list")
            .WithDescription("Lists entries.")
            .WithExample("library", "list", "--head", "\"Bramble 480 twin\"", "--port", "\"intake 1\"");
        library.AddCommand<LibraryShowCommand>("show")
            .WithDescription("Shows one entry, as it is or as it was.")
            .WithExample("library", "show", "4")
            .WithExample("library", "show", "4", "--revision", "1", "--json");
        library.AddCommand<LibraryHistoryCommand>("history")
            .WithDescription("Shows every revision of an entry: when, why, and what it changed.")
            .WithExample("library", "history", "\"Bramble 480 twin/intake 1/station 3\"");
        library.AddCommand<LibraryCorrectCommand>("correct")
            .WithDescription("Corrects an entry: a new revision with its reason, the earlier ones stay.")
            .WithExample("library", "correct", "4", "--field", "\"valve diameter=33 mm\"", "--drop-tag", "draft", "--reason", "\"valve measured\"")
            .WithExample("library", "correct", "4", "--document", "p01-again.station-1.section.json", "--reason", "\"photographed again\"")
            .WithExample("library", "correct", "4", "--back-to", "1", "--reason", "\"the first slice was right\"");
        library.AddCommand<LibraryRemoveCommand>("remove")
            .WithDescription("Marks an entry as removed; its history stays.")
            .WithExample("library", "remove", "4", "--reason", "\"sliced askew\"");
        library.AddCommand<LibraryRestoreCommand>("restore")
            .WithDescription("Takes the mark of removal away again.")
            .WithExample("library", "restore", "4", "--reason", "\"the slice was square after all\"");
        library.AddCommand<LibraryFindCommand>("find")
            .WithDescription("Finds entries by words and by ranges of numbers.")
            .WithExample("library", "find", "bramble", "--range", "area=900..1100")
            .WithExample("library", "find", "--range", "\"valve diameter=1.25..1.35 in\"");
        library.AddCommand<LibrarySimilarCommand>("similar")
            .WithDescription("Finds the entries whose shapes are nearest to a section's.")
            .WithExample("library", "similar", "p04.station-4.section.json", "--count", "5", "--mirrored")
            .WithExample("library", "similar", "library:4", "--any-scale", "--words", "proven", "--range", "station=2..5");
        library.AddCommand<LibraryPhotoCommand>("photo")
            .WithDescription("Keeps the original photo of an entry in the library, or writes it out again.")
            .WithExample("library", "photo", "4", "--keep", "sample-images/p01.jpg")
            .WithExample("library", "photo", "4", "--out", "photos");
        library.AddCommand<LibraryCheckCommand>("check")
            .WithDescription("Checks that the library is sound; exit code 3 when it is not.")
            .WithExample("library", "check");
        library.AddCommand<LibraryBackupCommand>("backup")
            .WithDescription("Writes a copy of the whole library to a new file.")
            .WithExample("library", "backup", "library-copy.db");
        library.AddCommand<LibraryExportCommand>("export")
            .WithDescription("Writes entries with their history to one archive file: one section, a port, or all.")
            .WithExample("library", "export", "sections.zip")
            .WithExample("library", "export", "port.zip", "--head", "\"Bramble 480 twin\"", "--port", "\"intake 1\"")
            .WithExample("library", "export", "section.zip", "--entry", "4")
            .WithExample("library", "export", "drawings", "--as", "dxf", "--port", "\"intake 1\"");
        library.AddCommand<LibraryImportCommand>("import")
            .WithDescription("Adds the entries of an archive file with their history.")
            .WithExample("library", "import", "sections.zip", "--skip-taken");
    });
}
