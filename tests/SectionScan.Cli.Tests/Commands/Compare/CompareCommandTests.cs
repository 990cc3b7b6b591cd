using System.Text;
using System.Text.Json;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Sections;
using SectionScan.Testing.Sections;

namespace SectionScan.Cli.Tests.Commands.Compare;

/// <summary>A circle of 40 mm against one of 41 mm.</summary>
public sealed class CompareCommandTests : IDisposable
{
    private readonly PhotoFolder folder = new();
    private readonly string before;
    private readonly string after;

    public CompareCommandTests()
    {
        before = folder.Bytes("before.section.json", Encoding.UTF8.GetBytes(SampleSections.Document(SampleSections.Ellipse(40, 40))));
        after = folder.Bytes("after.section.json", Encoding.UTF8.GetBytes(SampleSections.Document(SampleSections.Ellipse(41, 41))));
    }

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task The_answer_for_programs_tells_what_was_taken_away()
    {
        var run = await CommandLine.RunAsync("compare", before, after, "--align", "centroids", "--json");

        Assert.Equal(ExitCode.Done, run.ExitCode);
        using var answer = JsonDocument.Parse(run.Output);
        Assert.Equal("sectionscan/compare/1", answer.RootElement.GetProperty("schema").GetString());
        Assert.Equal(0.5, answer.RootElement.GetProperty("deviation").GetProperty("meanMm").GetDouble(), 0.002);
        Assert.Equal(
            Math.PI * ((20.5 * 20.5) - (20 * 20)), answer.RootElement.GetProperty("area").GetProperty("differenceMm2").GetDouble(), 0.05);
    }

    [Fact]
    public async Task A_section_is_moved_and_turned_by_hand()
    {
        var run = await CommandLine.RunAsync("compare", before, after, "--align", "centroids", "--shift", "-0.3,0", "--turn", "30", "--json");

        Assert.Equal(ExitCode.Done, run.ExitCode);
        using var answer = JsonDocument.Parse(run.Output);
        var hand = answer.RootElement.GetProperty("byHand");
        Assert.Equal((-0.3, 0.0, 30.0), (hand.GetProperty("xMm").GetDouble(), hand.GetProperty("yMm").GetDouble(), hand.GetProperty("turnDeg").GetDouble()));

        // A circle larger by 0.5 mm, moved left by 0.3.
        var highest = answer.RootElement.GetProperty("deviation").GetProperty("highest");
        Assert.Equal(0.8, highest.GetProperty("deviationMm").GetDouble(), 0.005);
        Assert.Equal("left wall", highest.GetProperty("region").GetString());
        Assert.Equal(1, answer.RootElement.GetProperty("measures").GetProperty("width").GetProperty("difference").GetProperty("value").GetDouble(), 0.005);

        var words = await CommandLine.RunAsync("compare", before, after, "--shift", "0.3,0.1");
        Assert.Contains("x +0.30 mm, y +0.10 mm", words.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0.3")]
    [InlineData("0,3 mm,1")]
    [InlineData("NaN,0")]
    [InlineData("400,0")]
    public async Task A_move_that_is_none_is_refused(string shift)
    {
        var run = await CommandLine.RunAsync("compare", before, after, "--shift", shift);

        Assert.Equal(ExitCode.WrongUsage, run.ExitCode);
        Assert.Contains("--shift takes two numbers", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Drawings_and_the_table_are_written_when_a_folder_is_named()
    {
        var run = await CommandLine.RunAsync("compare", before, after, "--out", folder.Out);

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Equal([".csv", ".pdf", ".svg"], folder.Written.Select(name => Path.GetExtension(name)).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task An_entry_of_the_library_is_compared_like_a_document()
    {
        var library = folder.PathOf("library.db");
        await CommandLine.RunAsync("library", "add", before, "--head", "Bramble 480 twin", "--port", "intake 1", "--library", library);

        var run = await CommandLine.RunAsync("compare", "library:1", after, "--library", library, "--json");

        Assert.Equal(ExitCode.Done, run.ExitCode);
        using var answer = JsonDocument.Parse(run.Output);
        Assert.Equal("Bramble 480 twin/intake 1/station 3", answer.RootElement.GetProperty("reference").GetString());

        run = await CommandLine.RunAsync("compare", "library:1@1", after, "--library", library);
        Assert.Contains("station 3, revision 1", run.Output, StringComparison.Ordinal);
        run = await CommandLine.RunAsync("compare", "library:1@7", after, "--library", library);
        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        Assert.Contains("There is no revision 7; the newest is 1.", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("missing.section.json", "there is no such file")]
    [InlineData("words.section.json", "words.section.json")]
    [InlineData("library:1", "There is no such library")]
    public async Task A_section_that_cannot_be_read_is_refused_and_nothing_is_written(string name, string said)
    {
        folder.Bytes("words.section.json", "not a document"u8.ToArray());
        var measured = name.StartsWith("library:", StringComparison.Ordinal) ? name : folder.PathOf(name);

        var run = await CommandLine.RunAsync("compare", before, measured, "--out", folder.Out, "--library", folder.PathOf("none.db"));

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        Assert.Contains(said, run.Error, StringComparison.Ordinal);
        Assert.Empty(folder.Written);
        Assert.False(File.Exists(folder.PathOf("none.db")));
    }

    [Theory]
    [InlineData("folder", "This is a folder, and one section is wanted here.", "Name one section document in it")]
    [InlineData("slices.JPG", "This is a photo, and not yet a section.", "Digitise it first (sectionscan digitise)")]
    [InlineData("solid.stl", "not that of a section document", "Name the section document")]
    [InlineData("two.svg", "The drawing holds 2 closed lines", "Make a section document of it by import-outline, and name that. There: Choose one with --layer NAME")]
    [InlineData("plain.svg", "does not say what its unit is", "Make a section document of it by import-outline, and name that. There: Give --file-units")]
    public async Task What_is_no_section_is_told_with_the_way_to_one(string name, string said, string remedy)
    {
        Directory.CreateDirectory(folder.PathOf("folder"));
        folder.Bytes("slices.JPG", [0xFF, 0xD8, 0xFF, 0xE0]);
        folder.Bytes("solid.stl", "solid port"u8.ToArray());
        folder.Bytes("two.svg", "<svg xmlns='http://www.w3.org/2000/svg' width='100mm' height='100mm' viewBox='0 0 100 100'><circle cx='30' cy='30' r='9'/><circle cx='70' cy='70' r='8'/></svg>"u8.ToArray());
        folder.Bytes("plain.svg", "<svg xmlns='http://www.w3.org/2000/svg'><circle cx='30' cy='30' r='9'/></svg>"u8.ToArray());

        var run = await CommandLine.RunAsync("compare", before, folder.PathOf(name));

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        Assert.Contains(said, run.Error, StringComparison.Ordinal);
        Assert.Contains(folder.PathOf(name), run.Error, StringComparison.Ordinal);
        Assert.Contains(remedy, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_drawing_of_a_section_is_read_back_by_its_outline_and_not_by_its_letters()
    {
        var drawing = folder.PathOf("station-3.svg");
        using (var file = File.Create(drawing))
        {
            SvgWriter.Write(SectionDrawing.Build(SampleSections.Ellipse(40, 30, 720), new("station 3", new(40, 0.1), new(30, 0.1)) { AreaMm2 = new(Math.PI * 300, 1) }), file);
        }

        var run = await CommandLine.RunAsync("compare", drawing, drawing, "--json");

        using var answer = JsonDocument.Parse(run.Output);
        Assert.Equal(Math.PI * 300, answer.RootElement.GetProperty("measures").GetProperty("area").GetProperty("reference").GetProperty("value").GetDouble(), 0.1);
    }

    [Fact]
    public async Task An_unknown_alignment_is_wrong_usage() =>
        Assert.Equal(ExitCode.WrongUsage, (await CommandLine.RunAsync("compare", before, after, "--align", "somehow")).ExitCode);
}
