using System.Text;
using System.Text.Json;
using SectionScan.Testing.Sections;

namespace SectionScan.Cli.Tests.Commands.Loft;

/// <summary>A cone of 40 to 32 mm over 30 mm: 9760π mm³.</summary>
public sealed class LoftCommandTests : IDisposable
{
    private readonly PhotoFolder folder = new();
    private readonly string first;
    private readonly string second;

    public LoftCommandTests()
    {
        first = folder.Bytes("first.section.json", Encoding.UTF8.GetBytes(SampleSections.Document(SampleSections.Ellipse(40, 40), station: 1)));
        second = folder.Bytes("second.section.json", Encoding.UTF8.GetBytes(SampleSections.Document(SampleSections.Ellipse(32, 32), station: 2)));
    }

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task The_solid_of_a_cone_has_its_volume_and_five_files()
    {
        var stations = folder.Bytes("stations.csv", "station,distance_mm,turn_deg\n1,0,0\n2,30,0\n"u8.ToArray());

        var run = await CommandLine.RunAsync("loft", first, second, "--stations", stations, "--name", "cone", "--out", folder.Out, "--json");

        Assert.Equal(ExitCode.Done, run.ExitCode);
        using var answer = JsonDocument.Parse(run.Output);
        Assert.Equal("sectionscan/loft/1", answer.RootElement.GetProperty("schema").GetString());
        Assert.Equal(1, answer.RootElement.GetProperty("solidVolumeMm3").GetDouble() / (9760 * Math.PI), 0.001);
        Assert.True(answer.RootElement.GetProperty("isClosed").GetBoolean());
        Assert.Equal(["cone.glb", "cone.obj", "cone.solid.pdf", "cone.solid.svg", "cone.stl"], folder.Written.Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task In_inches_nothing_is_told_in_millimetres()
    {
        var stations = folder.Bytes("stations.csv", "station,distance_mm,turn_deg\n1,0,0\n2,30,0\n"u8.ToArray());

        var run = await CommandLine.RunAsync("loft", first, second, "--stations", stations, "--name", "cone", "--out", folder.Out, "--units", "in");

        // 9760π mm³ over 25.4³ mm³; 30 mm over 25.4.
        Assert.Contains("1.871 in³", run.Output, StringComparison.Ordinal);
        Assert.Contains("1.1811 in", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain(" mm", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("cm³", await File.ReadAllTextAsync(Path.Combine(folder.Out, "cone.solid.svg")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("station,distance_mm\n1,0\n2,0\n", "not beyond station 1")]
    [InlineData("station,distance_mm\n1,0\n", "Only station 1 is there")]
    [InlineData("station,distance_mm,turn_deg\n1,0,0\n2,20,90\n", "pass through each other")]
    public async Task A_table_that_makes_no_solid_is_refused_and_nothing_is_written(string table, string said)
    {
        var run = await CommandLine.RunAsync(
            "loft", first, second, "--stations", folder.Bytes("stations.csv", Encoding.UTF8.GetBytes(table)), "--out", folder.Out);

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        Assert.Contains(said, string.Join(' ', run.Error.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.Empty(folder.Written);
    }
}
