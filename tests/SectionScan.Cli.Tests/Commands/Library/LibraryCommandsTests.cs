using System.Text.Json;
using SectionScan.Metrology.Outlines;
using SectionScan.Testing.Sections;

namespace SectionScan.Cli.Tests.Commands.Library;

/// <summary>A library filled and asked by the command line: ellipses of 40 × 30, 44 × 30 and 30 × 40 mm at stations 1, 2 and 3.</summary>
public sealed class LibraryCommandsTests : IDisposable
{
    private static readonly Outline[] Outlines = [SampleSections.Ellipse(40, 30), SampleSections.Ellipse(44, 30), SampleSections.Ellipse(30, 40)];

    private readonly PhotoFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Sections_added_are_listed_with_their_place()
    {
        await FillAsync();

        var entries = await EntriesAsync("list", "--head", "Bramble 480 twin");

        Assert.Equal([1, 2, 3], entries.Select(entry => entry.GetProperty("station").GetInt32()));
        Assert.Equal("Bramble 480 twin/intake 1/station 2", entries[1].GetProperty("path").GetString());
    }

    // An ellipse's area is π·a·b (any handbook).
    [Fact]
    public async Task A_range_of_areas_finds_what_lies_in_it()
    {
        await FillAsync();

        var found = Assert.Single(await EntriesAsync("find", "bramble", "--range", "area=1000..1100"));

        Assert.Equal(Math.PI * 22 * 15, found.GetProperty("areaMm2").GetDouble(), 0.2);
    }

    [Fact]
    public async Task The_nearest_shape_comes_first_and_a_turned_one_moves_up_when_asked_for()
    {
        await FillAsync();
        var section = Document("asked", SampleSections.Ellipse(40, 30.5), 9);

        var upright = await NearestAsync(section, "--count", "3");
        var turned = await NearestAsync(section, "--count", "3", "--turned");

        Assert.Equal([1, 2, 3], upright);
        Assert.Equal(2, turned[2]);
    }

    [Fact]
    public async Task A_place_that_is_taken_is_refused_and_the_others_are_kept()
    {
        await FillAsync();
        var taken = Document("again", Outlines[0], 1);
        var free = Document("more", Outlines[0], 4);

        var run = await RunAsync("add", taken, free, "--head", "Bramble 480 twin", "--port", "intake 1");

        Assert.Equal(ExitCode.SomeInputsUnusable, run.ExitCode);
        Assert.Contains("station 1", run.Error, StringComparison.Ordinal);
        Assert.Equal(4, (await EntriesAsync("list")).Length);
    }

    [Fact]
    public async Task A_removed_entry_is_listed_no_more_but_its_history_stays()
    {
        await FillAsync();

        Assert.Equal(ExitCode.Done, (await RunAsync("remove", "2", "--reason", "sliced askew")).ExitCode);

        Assert.Equal([1, 3], (await EntriesAsync("list")).Select(entry => entry.GetProperty("id").GetInt32()));
        Assert.Contains("sliced askew", (await RunAsync("show", "2")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_shop_reads_what_was_exported()
    {
        await FillAsync();
        var archive = folder.PathOf("sections.zip");

        Assert.Equal(ExitCode.Done, (await RunAsync("export", archive)).ExitCode);
        var import = await CommandLine.RunAsync("library", "import", archive, "--library", folder.PathOf("other.db"));
        var list = await CommandLine.RunAsync("library", "list", "--library", folder.PathOf("other.db"), "--json");

        Assert.Equal(ExitCode.Done, import.ExitCode);
        Assert.Equal(3, Root(list).GetProperty("entries").GetArrayLength());
    }

    [Fact]
    public async Task A_sound_library_is_called_sound_and_its_copy_too()
    {
        await FillAsync();
        var copy = folder.PathOf("copy.db");

        Assert.True(Root(await RunAsync("check")).GetProperty("report").GetProperty("isSound").GetBoolean());
        Assert.Equal(ExitCode.Done, (await RunAsync("backup", copy)).ExitCode);
        var checkedCopy = await CommandLine.RunAsync("library", "check", "--library", copy, "--json");
        Assert.Equal(3, Root(checkedCopy).GetProperty("report").GetProperty("entryCount").GetInt32());
    }

    [Fact]
    public async Task An_entry_that_is_not_there_is_refused()
    {
        await FillAsync();

        var run = await RunAsync("show", "9");

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        Assert.Contains("There is no entry 9.", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_correction_is_a_new_revision_with_its_reason_and_the_first_one_stays()
    {
        await FillAsync();

        var run = await RunAsync(
            "correct", "2", "--field", "valve diameter=33 mm", "--tag", "proven", "--note", "By hand.", "--stage", "as cast", "--reason", "valve measured");
        var now = Root(await RunAsync("show", "2"));
        var first = Root(await RunAsync("show", "2", "--revision", "1"));

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Equal(2, Root(run).GetProperty("entry").GetProperty("revision").GetInt32());
        Assert.Equal("Bramble 480 twin/intake 1/station 2/as cast", now.GetProperty("revision").GetProperty("path").GetString());
        Assert.Equal(33, now.GetProperty("revision").GetProperty("fields")[0].GetProperty("value").GetDouble());
        Assert.Equal("Bramble 480 twin/intake 1/station 2", first.GetProperty("revision").GetProperty("path").GetString());
        Assert.Equal(0, first.GetProperty("revision").GetProperty("tags").GetArrayLength());
        var was = (await PlainAsync("show", "2", "--revision", "1")).Output;
        var area = Root(run).GetProperty("entry").GetProperty("areaMm2").GetDouble();
        Assert.Contains(area.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture), was, StringComparison.Ordinal);
        Assert.DoesNotContain("as cast", was, StringComparison.Ordinal);
        Assert.DoesNotContain("proven", was, StringComparison.Ordinal);
        var words = (await PlainAsync("history", "2")).Output;
        Assert.Contains("valve measured", words, StringComparison.Ordinal);
        Assert.Contains("+ tag proven", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_correction_brings_another_document_and_an_earlier_revision_comes_back()
    {
        await FillAsync();
        var again = Document("again", SampleSections.Ellipse(41, 31), 1);

        Assert.Equal(ExitCode.Done, (await RunAsync("correct", "1", "--document", again, "--reason", "photographed again")).ExitCode);
        var corrected = Area(await RunAsync("show", "1"));
        Assert.Equal(ExitCode.Done, (await RunAsync("correct", "1", "--back-to", "1", "--reason", "the first was right")).ExitCode);

        Assert.Equal(Math.PI * 20.5 * 15.5, corrected, 0.2);
        Assert.Equal(Math.PI * 20 * 15, Area(await RunAsync("show", "1")), 0.2);
        Assert.Equal(3, Root(await RunAsync("history", "1")).GetProperty("revisions").GetArrayLength());
    }

    [Theory]
    [InlineData("There is no revision 7; the newest is 1.", "--back-to", "7")]
    [InlineData("has no tag \"draft\"", "--drop-tag", "draft")]
    [InlineData("no number named \"flow\"", "--drop-field", "flow")]
    [InlineData("would change nothing", "--station", "2")]
    [InlineData("already stands at", "--station", "3")]
    public async Task A_correction_that_cannot_be_made_says_why_and_changes_nothing(string words, params string[] change)
    {
        await FillAsync();

        var run = await RunAsync(["correct", "2", .. change, "--reason", "a try"]);

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
        Assert.Equal(1, Root(await RunAsync("history", "2")).GetProperty("revisions").GetArrayLength());
    }

    [Fact]
    public async Task A_removed_entry_is_restored_with_its_reason()
    {
        await FillAsync();
        await RunAsync("remove", "2", "--reason", "sliced askew");

        Assert.Equal(ExitCode.Done, (await RunAsync("restore", "2", "--reason", "square after all")).ExitCode);

        Assert.Equal(3, (await EntriesAsync("list")).Length);
        Assert.Equal(
            ["added", "removed", "restored"],
            Root(await RunAsync("history", "2")).GetProperty("revisions").EnumerateArray().Select(revision => revision.GetProperty("action").GetString()));
    }

    [Theory]
    [InlineData(1, "--entry", "2")]
    [InlineData(2, "--entry", "Bramble 480 twin/intake 1/station 1", "--entry", "3")]
    [InlineData(3, "--port", "intake 1")]
    [InlineData(4)]
    public async Task One_section_a_port_or_all_can_be_exported(int count, params string[] choice)
    {
        await FillAsync();
        await RunAsync("add", Document("other", Outlines[0], 1), "--head", "Bramble 480 twin", "--port", "exhaust 1");
        var archive = folder.PathOf("some.zip");

        Assert.Equal(ExitCode.Done, (await RunAsync(["export", archive, .. choice])).ExitCode);
        await CommandLine.RunAsync("library", "import", archive, "--library", folder.PathOf("other.db"));

        var list = await CommandLine.RunAsync("library", "list", "--library", folder.PathOf("other.db"), "--json");
        Assert.Equal(count, Root(list).GetProperty("entries").GetArrayLength());
    }

    [Fact]
    public async Task An_export_of_nothing_is_refused_and_writes_nothing()
    {
        await FillAsync();

        var run = await RunAsync("export", folder.PathOf("none.zip"), "--head", "Another");

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        Assert.Contains("No entry of the library is so.", run.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(folder.PathOf("none.zip")));
    }

    [Theory]
    [InlineData("backup")]
    [InlineData("export")]
    [InlineData("import")]
    public async Task A_file_must_be_named_to_write_or_read_one(string command)
    {
        await FillAsync();

        Assert.Equal(ExitCode.WrongUsage, (await RunAsync(command)).ExitCode);
    }

    [Theory]
    [InlineData("list")]
    [InlineData("check")]
    [InlineData("backup", "copy.db")]
    public async Task A_library_that_is_not_there_is_not_made_by_looking_at_it(params string[] command)
    {
        var run = await RunAsync(command);

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        Assert.Contains("There is no such library.", run.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(folder.PathOf("library.db")));
    }

    [Fact]
    public async Task A_forged_library_is_called_unsound_by_words_and_exit_code()
    {
        await FillAsync();
        var path = folder.PathOf("library.db");
        using (var library = SectionScan.Archive.Library.SectionLibrary.Open(path, TimeProvider.System).ValueOrThrow())
        {
            library.Backup(folder.PathOf("forged.db")).ValueOrThrow();
        }

        // The backup is one file without a log: a letter of a document is changed in it as a failing disk would.
        var bytes = File.ReadAllBytes(folder.PathOf("forged.db"));
        var at = bytes.AsSpan().IndexOf("\"thicknessMm\": 10"u8);
        bytes[at + "\"thicknessMm\": 1".Length] = (byte)'1';
        File.WriteAllBytes(folder.PathOf("forged.db"), bytes);

        var run = await CommandLine.RunAsync("library", "check", "--library", folder.PathOf("forged.db"));

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        Assert.Contains("not sound", run.Output, StringComparison.Ordinal);
        Assert.Contains("does not have the hash", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("add", true)]
    [InlineData("list", true)]
    [InlineData("show", true)]
    [InlineData("find", true)]
    [InlineData("similar", true)]
    [InlineData("export", true)]
    [InlineData("history", false)]
    [InlineData("correct", false)]
    [InlineData("remove", false)]
    [InlineData("restore", false)]
    [InlineData("photo", false)]
    [InlineData("import", false)]
    [InlineData("check", false)]
    [InlineData("backup", false)]
    public async Task Units_are_offered_by_the_library_commands_that_show_or_read_lengths_and_by_no_other(string command, bool showsLengths)
    {
        var help = (await CommandLine.RunAsync("library", command, "--help")).Output;

        Assert.Contains("--json", help, StringComparison.Ordinal);
        Assert.Contains("--library", help, StringComparison.Ordinal);
        Assert.Equal(showsLengths, help.Contains("--units", StringComparison.Ordinal));
    }

    // 1 in = 25.4 mm: 1000 to 1100 mm² are 1.550 to 1.705 in².
    [Theory]
    [InlineData("--range", "area=1.55..1.705 in2")]
    [InlineData("--range", "area=1.55..1.705", "--units", "in")]
    [InlineData("--range", "area=1000..")]
    [InlineData("--range", "width=4.3..4.5 cm")]
    public async Task A_range_counts_in_the_unit_it_names_or_in_the_units_asked_for(params string[] range)
    {
        await FillAsync();

        Assert.Equal(2, Assert.Single(await EntriesAsync(["find", .. range])).GetProperty("id").GetInt32());
    }

    [Fact]
    public async Task Tables_are_shown_in_inches_when_asked_for()
    {
        await FillAsync();

        // π·20·15 mm² = 942.48 mm² = 1.4608 in²; 40 mm = 1.5748 in.
        var table = (await PlainAsync("list", "--station", "1", "--units", "in")).Output;

        Assert.Contains("area in²", table, StringComparison.Ordinal);
        Assert.Contains("1.4608", table, StringComparison.Ordinal);
        Assert.Contains("1.5748", table, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Likeness_can_be_asked_among_entries_with_words_and_numbers_only()
    {
        await FillAsync();
        await RunAsync("correct", "3", "--tag", "proven", "--reason", "flowed well");

        var proven = await NearestAsync("library:1", "--words", "proven");
        var large = await NearestAsync("library:1", "--range", "area=1000..1100");
        var all = await NearestAsync("library:1");

        Assert.Equal(3, Assert.Single(proven));
        Assert.Equal(2, Assert.Single(large));
        Assert.Equal([2, 3], all);
    }

    [Fact]
    public async Task The_original_photo_is_kept_with_its_section_and_written_out_again()
    {
        var photo = folder.Bytes("p01.jpg", [1, 2, 3, 4, 5]);
        var stranger = folder.Bytes("p02.jpg", [6, 7]);
        var hash = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(photo)));
        var document = folder.Bytes("a.section.json", System.Text.Encoding.UTF8.GetBytes(SampleSections.Document(Outlines[0], 1, hash)));

        var add = await RunAsync("add", document, "--head", "Bramble 480 twin", "--port", "intake 1", "--photo", photo, "--photo", stranger);
        var write = await RunAsync("photo", "1", "--out", folder.Out);

        Assert.Equal(ExitCode.SomeInputsUnusable, add.ExitCode);
        Assert.Contains("p02.jpg", add.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Done, write.ExitCode);
        Assert.Equal(File.ReadAllBytes(photo), File.ReadAllBytes(Path.Combine(folder.Out, "p01.jpg")));
        Assert.Equal(ExitCode.UnusableInput, (await RunAsync("photo", "1", "--keep", stranger)).ExitCode);
        Assert.Equal(ExitCode.WrongUsage, (await RunAsync("photo", "1")).ExitCode);
    }

    private static double Area(CommandLine run) => Root(run).GetProperty("entry").GetProperty("areaMm2").GetDouble();

    private Task<CommandLine> PlainAsync(params string[] arguments) =>
        CommandLine.RunAsync(["library", .. arguments, "--library", folder.PathOf("library.db")]);

    private async Task FillAsync()
    {
        string[] documents = [.. Outlines.Select((outline, at) => Document($"station-{at + 1}", outline, at + 1))];
        var run = await RunAsync(["add", .. documents, "--head", "Bramble 480 twin", "--port", "intake 1"]);
        Assert.Equal(ExitCode.Done, run.ExitCode);
    }

    private string Document(string name, Outline outline, int station) => folder.Bytes(
        name + ".section.json", System.Text.Encoding.UTF8.GetBytes(SampleSections.Document(outline, station)));

    private async Task<int[]> NearestAsync(params string[] arguments) =>
        [.. (await EntriesAsync(["similar", .. arguments])).Select(found => found.GetProperty("entry").GetProperty("id").GetInt32())];

    private async Task<JsonElement[]> EntriesAsync(params string[] arguments) =>
        [.. Root(await RunAsync(arguments)).GetProperty("entries").EnumerateArray()];

    private Task<CommandLine> RunAsync(params string[] arguments) =>
        CommandLine.RunAsync(["library", .. arguments, "--library", folder.PathOf("library.db"), "--json"]);

    private static JsonElement Root(CommandLine run)
    {
        using var document = JsonDocument.Parse(run.Output);
        return document.RootElement.Clone();
    }
}
