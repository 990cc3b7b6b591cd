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
