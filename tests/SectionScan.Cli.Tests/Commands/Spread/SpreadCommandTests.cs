using System.Text;
using System.Text.Json;
using SectionScan.Testing.Sections;

namespace SectionScan.Cli.Tests.Commands.Spread;

/// <summary>Round ports, two stations each.</summary>
public sealed class SpreadCommandTests : IDisposable
{
    private readonly PhotoFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Cylinders_are_compared_with_each_other_station_by_station()
    {
        Put("one", 40, 36);
        Put("two", 40.4, 36);
        Put("three", 40.2, 36);

        var run = await CommandLine.RunAsync("spread", folder.PathOf("one"), folder.PathOf("two"), folder.PathOf("three"), "--json");

        using var answer = JsonDocument.Parse(run.Output);
        var stations = answer.RootElement.GetProperty("stations").EnumerateArray().ToList();
        Assert.Equal([1, 2], stations.Select(station => station.GetProperty("station").GetInt32()));
        Assert.Equal(0.2, stations[0].GetProperty("meanRangeMm").GetDouble(), 0.002);
        Assert.Equal(0, stations[1].GetProperty("meanRangeMm").GetDouble(), 0.002);
        Assert.Equal("two", stations[0].GetProperty("widest").GetProperty("outermost").GetString());
        Assert.Equal("one", stations[0].GetProperty("widest").GetProperty("innermost").GetString());
        Assert.Equal(Math.PI / 4 * ((40.4 * 40.4) - 1600), stations[0].GetProperty("area").GetProperty("range").GetDouble(), 0.01);
    }

    [Fact]
    public async Task Stages_of_one_port_are_followed()
    {
        Put("cast", 40, 36);
        Put("roughed", 41, 36.5);
        Put("finished", 41.4, 37);

        var run = await CommandLine.RunAsync("drift", folder.PathOf("cast"), folder.PathOf("roughed"), "done=" + folder.PathOf("finished"), "--json");

        using var answer = JsonDocument.Parse(run.Output);
        var stages = answer.RootElement.GetProperty("stations")[0].GetProperty("stages").EnumerateArray().ToList();
        Assert.Equal(["roughed", "done"], stages.Select(stage => stage.GetProperty("stage").GetString()));
        Assert.Equal(0.7, Mean(stages[1], "fromFirst"), 0.003);
        Assert.Equal(0.2, Mean(stages[1], "fromLast"), 0.003);
    }

    [Fact]
    public async Task Spread_and_drift_are_drawn_and_written_as_tables()
    {
        Put("cast", 40, 36);
        Put("finished", 41.4, 37);

        await CommandLine.RunAsync("spread", folder.PathOf("cast"), folder.PathOf("finished"), "--out", folder.Out);
        var told = await CommandLine.RunAsync("drift", folder.PathOf("cast"), folder.PathOf("finished"), "--out", folder.Out);

        Assert.Equal(
            [
                "drift-sides.csv", "drift.csv", "drift.json", "drift.pdf", "drift.station-1.svg", "drift.station-2.svg",
                "spread-sides.csv", "spread.csv", "spread.json", "spread.pdf", "spread.station-1.svg", "spread.station-2.svg",
            ],
            folder.Written.Order(StringComparer.Ordinal));
        var drift = await File.ReadAllLinesAsync(Path.Combine(folder.Out, "drift.csv"));
        Assert.Equal(5, drift.Length);
        Assert.Equal(0.7, double.Parse(drift[2].Split(',')[3], System.Globalization.CultureInfo.InvariantCulture), 0.003);
        Assert.Equal(1 + (2 * 8), (await File.ReadAllLinesAsync(Path.Combine(folder.Out, "spread-sides.csv"))).Length);
        using var answer = JsonDocument.Parse(await File.ReadAllTextAsync(Path.Combine(folder.Out, "spread.json")));
        Assert.Equal("sectionscan/spread/1", answer.RootElement.GetProperty("schema").GetString());

        Assert.Contains(told.Output.Split('\n'), line => line.Contains("finished", StringComparison.Ordinal) && line.Contains("+0.70", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_table_that_a_program_reads_has_every_row_whole_and_one_on_a_narrow_screen_loses_no_letter()
    {
        Put("a-port-with-quite-a-long-name", 40, 36);
        Put("another-port-with-a-long-name", 41.4, 37);
        string[] command = ["spread", folder.PathOf("a-port-with-quite-a-long-name"), folder.PathOf("another-port-with-a-long-name")];

        var piped = (await CommandLine.RunAsync(command)).Output;

        // π/4·40² = 1256.6 and π/4·41.4² = 1346.1 mm²; apart by 6.7 % of the larger.
        var row = Assert.Single(piped.Split('\n'), line => line.Contains("1256.6 to 1346.1", StringComparison.Ordinal));
        Assert.Matches(@"6\.[67] %", row);
        Assert.Contains("apart, of the largest", piped, StringComparison.Ordinal);

        var shown = await CommandLine.OnScreenAsync(60, command);
        Assert.Equal(CommandLine.Letters(piped), CommandLine.Letters(shown));
        Assert.All(shown.Split('\n'), line => Assert.True(line.TrimEnd('\r').Length <= 60, line));
    }

    [Fact]
    public async Task Metal_that_grew_is_pointed_out()
    {
        Put("cast", 40, 36);
        Put("later", 39.8, 36);

        var run = await CommandLine.RunAsync("drift", folder.PathOf("cast"), folder.PathOf("later"));

        Assert.Contains("metal does not grow", run.Output.ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_port_alone_is_wrong_usage() =>
        Assert.Equal(ExitCode.WrongUsage, (await CommandLine.RunAsync("spread", folder.PathOf("one"))).ExitCode);

    [Fact]
    public async Task A_folder_without_sections_is_refused()
    {
        Directory.CreateDirectory(folder.PathOf("one"));
        Directory.CreateDirectory(folder.PathOf("two"));

        var run = await CommandLine.RunAsync("spread", folder.PathOf("one"), folder.PathOf("two"));

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        Assert.Contains("no section document", run.Error, StringComparison.Ordinal);
    }

    private static double Mean(JsonElement stage, string from) =>
        stage.GetProperty(from).GetProperty("deviation").GetProperty("meanMm").GetDouble();

    private void Put(string port, double firstMm, double secondMm)
    {
        Directory.CreateDirectory(folder.PathOf(port));
        foreach (var (station, diameter) in new[] { (1, firstMm), (2, secondMm) })
        {
            folder.Bytes(Path.Combine(port, $"s{station}.section.json"), Encoding.UTF8.GetBytes(SampleSections.Document(SampleSections.Ellipse(diameter, diameter), station)));
        }
    }
}
