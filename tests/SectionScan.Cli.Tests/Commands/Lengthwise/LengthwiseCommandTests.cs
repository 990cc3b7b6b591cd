using System.Globalization;
using System.Text;
using System.Text.Json;

namespace SectionScan.Cli.Tests.Commands.Lengthwise;

/// <summary>A quarter of a ring as CSV: floor radius 25, roof radius 55.</summary>
public sealed class LengthwiseCommandTests : IDisposable
{
    private readonly PhotoFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task The_answer_for_programs_tells_the_radii_and_the_centreline()
    {
        var run = await CommandLine.RunAsync("lengthwise", Ring("ring.csv", 25), "--json");

        Assert.Equal(ExitCode.Done, run.ExitCode);
        using var answer = JsonDocument.Parse(run.Output);
        Assert.Equal("sectionscan/lengthwise/1", answer.RootElement.GetProperty("schema").GetString());
        Assert.Equal(25, answer.RootElement.GetProperty("floorTurn").GetProperty("radius").GetProperty("value").GetDouble(), 0.25);
        Assert.Equal(55, answer.RootElement.GetProperty("roofTurn").GetProperty("radius").GetProperty("value").GetDouble(), 0.55);

        // The arc of the middle radius.
        var centreline = answer.RootElement.GetProperty("centreline");
        Assert.Equal(40 * Math.PI / 2, centreline[centreline.GetArrayLength() - 1][0].GetDouble(), 0.1);
    }

    [Fact]
    public async Task A_person_reads_how_much_the_floor_rises_and_gets_drawings_and_template()
    {
        var run = await CommandLine.RunAsync(
            "lengthwise", Ring("raised.csv", 25.5), "--reference", Ring("ring.csv", 25), "--align", "both", "--out", folder.Out);

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Contains("the floor rises", run.Output, StringComparison.Ordinal);
        Assert.Equal(7, folder.Written.Count);
    }

    [Fact]
    public async Task In_inches_nothing_is_told_in_millimetres()
    {
        var run = await CommandLine.RunAsync(
            "lengthwise", Ring("raised.csv", 25.5), "--reference", Ring("ring.csv", 25), "--align", "both", "--out", folder.Out, "--units", "in");

        // 25.5 mm, to a hundredth of it.
        Assert.Matches("1[.]0(0|1)[0-9]+ in over", run.Output);
        Assert.DoesNotContain(" mm", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--align", "roof")]
    [InlineData("--face", "up")]
    [InlineData("--thickness", "-1")]
    [InlineData("--paper", "stamp")]
    public async Task What_makes_no_sense_is_wrong_usage(string option, string value) =>
        Assert.Equal(ExitCode.WrongUsage, (await CommandLine.RunAsync("lengthwise", Ring("ring.csv", 25), option, value)).ExitCode);

    private string Ring(string name, double floorRadius)
    {
        var text = new StringBuilder("x_mm,y_mm\n");
        foreach (var (radius, degrees) in Enumerable.Range(0, 181).Select(k => (floorRadius, k / 2.0)).Concat(Enumerable.Range(0, 181).Select(k => (55.0, (180 - k) / 2.0))))
        {
            var (sin, cos) = Math.SinCos(double.DegreesToRadians(degrees));
            text.Append(CultureInfo.InvariantCulture, $"{radius * sin:0.0000},{radius * cos:0.0000}\n");
        }

        return folder.Bytes(name, Encoding.UTF8.GetBytes(text.ToString()));
    }
}
