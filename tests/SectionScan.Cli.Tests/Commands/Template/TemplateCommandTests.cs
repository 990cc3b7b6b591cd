using System.Text;
using System.Text.Json;
using SectionScan.Testing.Sections;

namespace SectionScan.Cli.Tests.Commands.Template;

public sealed class TemplateCommandTests : IDisposable
{
    private readonly PhotoFolder folder = new();
    private readonly string target;

    public TemplateCommandTests() =>
        target = folder.Bytes("target.section.json", Encoding.UTF8.GetBytes(SampleSections.Document(SampleSections.Ellipse(40, 28, 720))));

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Plugs_and_plates_of_both_stages_are_written_as_PDF_SVG_and_DXF()
    {
        var run = await CommandLine.RunAsync("template", target, "--kind", "both", "--port", "intake 2", "--out", folder.Out, "--json");

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Equal(
            [
                "handle-12.dxf", "target.inside.finish.dxf", "target.inside.rough.dxf", "target.outside.finish.dxf", "target.outside.rough.dxf",
                "templates-intake-2-a4-page-1.svg", "templates-intake-2-a4.pdf",
            ],
            folder.Written);
        using var answer = JsonDocument.Parse(run.Output);
        Assert.Equal("sectionscan/template/1", answer.RootElement.GetProperty("schema").GetString());
        var templates = answer.RootElement.GetProperty("templates").EnumerateArray().ToList();
        Assert.Equal(3, templates[0].GetProperty("station").GetInt32());

        // Steiner's formula for the ellipse of 40 by 28: A 879.6459, P 107.6474; inward by 0.8.
        Assert.Equal(879.6459 - (0.8 * 107.6474) + (0.64 * Math.PI), templates[0].GetProperty("areaMm2").GetDouble(), 0.05);
        Assert.Equal(879.6459, templates[1].GetProperty("areaMm2").GetDouble(), 0.05);
        Assert.NotEmpty(answer.RootElement.GetProperty("cautions").EnumerateArray());
        Assert.Equal(0.8, answer.RootElement.GetProperty("allowanceMm").GetDouble());
    }

    [Theory]
    [InlineData("rough", "A rough template leaves 0.50 mm for finishing all round (--allowance).")]
    [InlineData("finish", null)]
    public async Task What_a_rough_template_leaves_for_finishing_is_told(string stage, string? told)
    {
        var run = await CommandLine.RunAsync("template", target, "--stage", stage, "--allowance", "0.5", "--out", folder.Out);

        Assert.Equal(told is not null, run.Output.Contains(told ?? "for finishing", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_answer_for_people_names_the_files_and_cautions()
    {
        var run = await CommandLine.RunAsync("template", target, "--stage", "finish", "--out", folder.Out, "--units", "in");

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Contains("1.5748 in", run.Output, StringComparison.Ordinal);
        Assert.Contains("pressure-test", run.Output.ReplaceLineEndings(string.Empty), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_section_too_small_for_the_allowance_is_refused_and_nothing_is_written()
    {
        var run = await CommandLine.RunAsync("template", target, "--allowance", "15", "--out", folder.Out);

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        Assert.Contains("closes wholly", run.Error, StringComparison.Ordinal);
        Assert.Empty(folder.Written);
    }

    [Theory]
    [InlineData("--kind", "round")]
    [InlineData("--stage", "half")]
    [InlineData("--paper", "a5")]
    [InlineData("--allowance", "-1")]
    [InlineData("--line-width", "0")]
    [InlineData("--kerf", "NaN")]
    [InlineData("--sheet", "-1")]
    public async Task What_makes_no_sense_is_wrong_usage(string option, string value) =>
        Assert.Equal(ExitCode.WrongUsage, (await CommandLine.RunAsync("template", target, option, value, "--out", folder.Out)).ExitCode);
}
