using System.Text;
using System.Text.Json;
using SectionScan.Testing.Sections;

namespace SectionScan.Cli.Tests.Commands.Cutting;

/// <summary>A round port of 30 mm to be opened to 34 mm, with an oil drain beside it.</summary>
public sealed class CutPlanCommandTests : IDisposable
{
    private readonly PhotoFolder folder = new();
    private readonly string present;
    private readonly string target;
    private readonly string keepOuts;

    public CutPlanCommandTests()
    {
        present = Document("own", 30, 3);
        target = Document("target", 34, 3);
        keepOuts = folder.Bytes("walls.csv", Encoding.UTF8.GetBytes(
            "kind,station,name,x_mm,y_mm,radius_mm,u_mm,source\ncircle,3,oil drain,23.5,0,4,0.1,measured\ncircle,4,stud,0,30,4,0.1,drawing\n"));
    }

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task The_plan_tells_depths_metal_and_walls()
    {
        var run = await CommandLine.RunAsync("cut-plan", present, target, "--keep-outs", keepOuts, "--json");

        Assert.Equal(ExitCode.Done, run.ExitCode);
        using var answer = JsonDocument.Parse(run.Output);
        Assert.Equal("sectionscan/cut-plan/1", answer.RootElement.GetProperty("schema").GetString());
        var station = Assert.Single(answer.RootElement.GetProperty("stations").EnumerateArray());
        Assert.Equal(3, station.GetProperty("station").GetInt32());
        Assert.Equal(Math.PI * ((17 * 17) - (15 * 15)), station.GetProperty("atFinishMm2").GetDouble(), 0.1);

        // The ring up to the rough line, less the part of it before the wall that may be thin.
        var marks = station.GetProperty("places").EnumerateArray().Select(place => place.GetProperty("mark").GetString()).ToList();
        var ring = Math.PI * ((16.2 * 16.2) - (15 * 15));
        Assert.Equal(ring * marks.Count(mark => mark == "rough") / marks.Count, station.GetProperty("nowMm2").GetDouble(), 0.01 * ring);
        Assert.Contains("thin-wall", marks);
        Assert.Equal(0.8, answer.RootElement.GetProperty("allowanceMm").GetDouble());
        Assert.Equal(["present", "target"], station.GetProperty("walls").EnumerateArray().Select(wall => wall.GetProperty("stage").GetString()));
        Assert.Equal(2.5, station.GetProperty("walls")[1].GetProperty("wallMm").GetDouble(), 0.01);
        Assert.NotEmpty(answer.RootElement.GetProperty("cautions").EnumerateArray());
    }

    [Fact]
    public async Task A_folder_is_planned_station_by_station_with_its_volume()
    {
        foreach (var (part, mm) in new[] { ("cast", 30), ("wanted", 34) })
        {
            Directory.CreateDirectory(folder.PathOf(part));
            foreach (var station in new[] { 2, 1, 10 })
            {
                File.Copy(Document(FormattableString.Invariant($"{part}-{station}"), mm, station), Path.Combine(folder.PathOf(part), FormattableString.Invariant($"{station}.section.json")));
            }
        }

        var run = await CommandLine.RunAsync("cut-plan", folder.PathOf("cast"), folder.PathOf("wanted"), "--spacing", "10", "--port", "intake 2", "--out", folder.Out, "--json");

        Assert.Equal(ExitCode.Done, run.ExitCode);
        using var answer = JsonDocument.Parse(run.Output);
        Assert.Equal([1, 2, 10], answer.RootElement.GetProperty("stations").EnumerateArray().Select(station => station.GetProperty("station").GetInt32()));
        Assert.Equal(20 * Math.PI * ((17 * 17) - (15 * 15)), answer.RootElement.GetProperty("atFinishMm3").GetDouble(), 2.0);
        Assert.Equal(
            ["cut-plan-intake-2.csv", "cut-plan-intake-2.pdf", "cut-plan-intake-2.station-1.svg", "cut-plan-intake-2.station-10.svg", "cut-plan-intake-2.station-2.svg"],
            folder.Written);
    }

    [Fact]
    public async Task Stations_at_known_places_give_the_volume_by_integration()
    {
        var stations = folder.Bytes("stations.csv", Encoding.UTF8.GetBytes("station,distance_mm\n1,0\n2,8\n10,20\n"));
        foreach (var (part, mm) in new[] { ("cast", 30), ("wanted", 34) })
        {
            Directory.CreateDirectory(folder.PathOf(part));
            foreach (var station in new[] { 1, 2, 10 })
            {
                File.Copy(Document(FormattableString.Invariant($"{part}-{station}"), mm, station), Path.Combine(folder.PathOf(part), FormattableString.Invariant($"{station}.section.json")));
            }
        }

        var run = await CommandLine.RunAsync("cut-plan", folder.PathOf("cast"), folder.PathOf("wanted"), "--stations", stations, "--json");

        using var answer = JsonDocument.Parse(run.Output);
        Assert.Equal(20 * Math.PI * ((17 * 17) - (15 * 15)), answer.RootElement.GetProperty("atFinishMm3").GetDouble(), 2.0);

        File.WriteAllText(stations, "station,distance_mm\n1,0\n2,8\n");
        var refused = await CommandLine.RunAsync("cut-plan", folder.PathOf("cast"), folder.PathOf("wanted"), "--stations", stations);
        Assert.Equal(ExitCode.UnusableInput, refused.ExitCode);
        Assert.Contains("does not say where", refused.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Walls_are_drawn_and_written_as_a_table()
    {
        var run = await CommandLine.RunAsync("walls", present, "--target", target, "--keep-outs", keepOuts, "--out", folder.Out);

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Equal(["walls-own.csv", "walls-own.pdf", "walls-own.svg"], folder.Written);
        var rows = await File.ReadAllLinesAsync(Path.Combine(folder.Out, "walls-own.csv"));
        Assert.Equal(["oil drain,circle,present", "oil drain,circle,target"], rows.Skip(1).Select(row => string.Join(',', row.Split(',').Take(3))));
        Assert.Equal(["4.5", "2.5"], rows.Skip(1).Select(row => Math.Round(double.Parse(row.Split(',')[6], System.Globalization.CultureInfo.InvariantCulture), 2).ToString(System.Globalization.CultureInfo.InvariantCulture)));
    }

    [Fact]
    public async Task People_are_told_the_order_of_work_and_cautioned()
    {
        var run = await CommandLine.RunAsync("cut-plan", present, target);

        var said = run.Output.ReplaceLineEndings(string.Empty);
        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Contains("Station 3. Rough the", said, StringComparison.Ordinal);
        Assert.Contains("knows nothing of the walls", said, StringComparison.Ordinal);
        Assert.Contains("licensed practice", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(32.2, true, "Station 3. Rough the")]
    [InlineData(31.66, false, "Station 3. Nothing to rough: hardly more than the 0.80 mm left for finishing stands anywhere. Finish only: the right wall (up to 0.83 mm)")]
    [InlineData(30.02, false, "Station 3. Nothing to rough. Nothing comes off where the wall is on the target within ±0.05 mm")]
    public async Task The_table_lists_metal_to_rough_where_the_order_of_work_says_so_and_nowhere_else(double mm, bool isRoughed, string order)
    {
        var run = await CommandLine.RunAsync("cut-plan", present, Document("wanted", mm, 3));

        var said = run.Output.ReplaceLineEndings(string.Empty);
        var row = run.Output.Split('\n').First(line => line.StartsWith("  station 3", StringComparison.Ordinal)).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        Assert.Contains(order, said, StringComparison.Ordinal);
        Assert.Equal(isRoughed, row[2] != "0.00");
        Assert.Equal(isRoughed, row[4] != "0.0");
        Assert.Contains("leaves 0.80 mm for finishing (--allowance)", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_thin_wall_is_the_reason_given_where_it_forbids_all_roughing()
    {
        var walls = folder.Bytes("deep.csv", Encoding.UTF8.GetBytes("kind,station,name,x_mm,y_mm,radius_mm,u_mm,limit_mm,source\ncircle,3,jacket,23.5,0,4,0.1,60,measured\n"));

        var run = await CommandLine.RunAsync("cut-plan", present, target, "--keep-outs", walls);

        Assert.Contains("Station 3. Nothing to rough before the walls are measured.", run.Output.ReplaceLineEndings(string.Empty), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_station_that_only_lacks_its_target_is_not_asked_to_be_photographed_again()
    {
        Directory.CreateDirectory(folder.PathOf("cast"));
        Directory.CreateDirectory(folder.PathOf("wanted"));
        foreach (var station in new[] { 2, 3 })
        {
            File.Copy(Document(FormattableString.Invariant($"cast-{station}"), 30, station), Path.Combine(folder.PathOf("cast"), FormattableString.Invariant($"{station}.section.json")));
        }

        var proven = Document("proven", 34, 2);
        Assert.Equal(ExitCode.Done, (await CommandLine.RunAsync("target-shape", Path.Combine(folder.PathOf("cast"), "2.section.json"), proven, "--out", folder.PathOf("wanted"))).ExitCode);

        var run = await CommandLine.RunAsync("cut-plan", folder.PathOf("cast"), folder.PathOf("wanted"));

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Contains("3 has no target of its station.", run.Error, StringComparison.Ordinal);
        Assert.Contains("Settle a target for it", run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("Photograph", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Walls_are_told_for_present_target_and_finished()
    {
        var run = await CommandLine.RunAsync("walls", present, "--target", target, "--finished", Document("done", 34.4, 3), "--keep-outs", keepOuts, "--json");

        Assert.Equal(ExitCode.Done, run.ExitCode);
        using var answer = JsonDocument.Parse(run.Output);
        Assert.Equal("sectionscan/walls/1", answer.RootElement.GetProperty("schema").GetString());
        var walls = answer.RootElement.GetProperty("walls").EnumerateArray().ToList();
        Assert.Equal(["present", "target", "finished"], walls.Select(wall => wall.GetProperty("stage").GetString()));
        Assert.Equal([4.5, 2.5, 2.3], walls.Select(wall => Math.Round(wall.GetProperty("wallMm").GetDouble(), 2)));
        Assert.Equal([false, true, true], walls.Select(wall => wall.GetProperty("needsCaution").GetBoolean()));
        Assert.Equal(0.5, walls[1].GetProperty("chanceUnderLimit").GetDouble(), 0.01);
    }

    [Fact]
    public async Task People_are_told_the_thinnest_wall_and_what_was_assumed()
    {
        var run = await CommandLine.RunAsync("walls", present, "--target", target, "--keep-outs", keepOuts);

        var said = run.Output.ReplaceLineEndings(string.Empty);
        Assert.Contains("Thinnest wall of the target outline: 2.50 mm to oil drain, right wall, at (17.0, 0.0) mm.", said, StringComparison.Ordinal);
        Assert.Contains("(assumed", said, StringComparison.Ordinal);
        Assert.Contains("CAUTION", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("kind,name,x_mm,y_mm,u_mm,station\ncircle,a,1,2,0.1,3", "a circle needs its radius")]
    [InlineData("kind,name,x_mm,y_mm,u_mm,station,radius_mm\ncircle,a,1,2,0.1,7,1", "no keep-out and no reading for station 3")]
    public async Task A_table_that_cannot_be_used_is_refused(string table, string said)
    {
        var path = folder.Bytes("odd.csv", Encoding.UTF8.GetBytes(table));

        var run = await CommandLine.RunAsync("walls", present, "--keep-outs", path);

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        Assert.Contains(said, run.Error.ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Folders_without_a_common_station_are_refused_and_nothing_is_written()
    {
        foreach (var (part, station) in new[] { ("cast", 1), ("wanted", 2) })
        {
            Directory.CreateDirectory(folder.PathOf(part));
            foreach (var number in new[] { station, station + 10 })
            {
                File.Copy(Document(FormattableString.Invariant($"{part}{number}"), 30, number), Path.Combine(folder.PathOf(part), FormattableString.Invariant($"{number}.section.json")));
            }
        }

        var run = await CommandLine.RunAsync("cut-plan", folder.PathOf("cast"), folder.PathOf("wanted"), "--out", folder.Out);

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        Assert.Contains("No station is in both", run.Error, StringComparison.Ordinal);
        Assert.Empty(folder.Written);
    }

    [Theory]
    [InlineData("--allowance", "-0.1")]
    [InlineData("--spacing", "0")]
    [InlineData("--lean", "90")]
    [InlineData("--align", "somehow")]
    [InlineData("--core-shift", "NaN")]
    public async Task What_makes_no_sense_is_wrong_usage(string option, string value) =>
        Assert.Equal(ExitCode.WrongUsage, (await CommandLine.RunAsync("cut-plan", present, target, option, value)).ExitCode);

    private string Document(string name, double diameterMm, int station) => folder.Bytes(
        name + ".section.json", Encoding.UTF8.GetBytes(SampleSections.Document(SampleSections.Ellipse(diameterMm, diameterMm, 720), station)));
}
