using System.Text;
using System.Text.Json;
using SectionScan.Testing.Sections;

namespace SectionScan.Cli.Tests.Commands.Mark;

public sealed class MarkCommandTests : IDisposable
{
    private readonly PhotoFolder folder = new();
    private readonly string section;

    public MarkCommandTests() =>
        section = folder.Bytes("own.section.json", Encoding.UTF8.GetBytes(SampleSections.Document(SampleSections.Ellipse(40, 30))));

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Marks_are_kept_in_the_document_and_sections_are_laid_on_each_other_by_them()
    {
        var moved = folder.PathOf("moved.section.json");
        await CommandLine.RunAsync("mark", section, "--guide-axis", "0,-10,0,10", "--point", "boss=0,14");
        await CommandLine.RunAsync("mark", section, "--guide-axis", "1,-10,1,10", "--out", moved);

        var run = await CommandLine.RunAsync("compare", section, moved, "--align", "guide-axis", "--json");
        var shown = await CommandLine.RunAsync("mark", moved, "--json");

        using var comparison = JsonDocument.Parse(run.Output);
        Assert.Equal(-1, comparison.RootElement.GetProperty("motion").GetProperty("xMm").GetDouble(), 1e-6);
        using var marks = JsonDocument.Parse(shown.Output);
        Assert.Equal(1, marks.RootElement.GetProperty("guideAxis")[0][0].GetDouble());
        Assert.Equal("boss", marks.RootElement.GetProperty("points")[0].GetProperty("name").GetString());
    }

    [Fact]
    public async Task A_section_without_the_mark_is_refused_with_what_to_do()
    {
        var run = await CommandLine.RunAsync("compare", section, section, "--align", "floor-line");

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        Assert.Contains("sectionscan mark", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--guide-axis", "1,2,3")]
    [InlineData("--guide-axis", "1,2,1,2")]
    [InlineData("--point", "=1,2")]
    [InlineData("--point", "boss=one,two")]
    public async Task A_mark_that_is_none_is_wrong_usage_and_changes_nothing(string option, string value)
    {
        var before = await File.ReadAllTextAsync(section);

        Assert.Equal(ExitCode.WrongUsage, (await CommandLine.RunAsync("mark", section, option, value)).ExitCode);
        Assert.Equal(before, await File.ReadAllTextAsync(section));
    }

    [Fact]
    public async Task A_mark_far_from_the_section_is_refused_and_changes_nothing()
    {
        var before = await File.ReadAllTextAsync(section);

        Assert.Equal(ExitCode.UnusableInput, (await CommandLine.RunAsync("mark", section, "--point", "boss=1e9,0")).ExitCode);
        Assert.Equal(before, await File.ReadAllTextAsync(section));
    }
}
