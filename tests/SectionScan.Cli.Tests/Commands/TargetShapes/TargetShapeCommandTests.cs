using System.Text;
using System.Text.Json;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Sections;
using SectionScan.Testing.Sections;

namespace SectionScan.Cli.Tests.Commands.TargetShapes;

/// <summary>A circle of 40 mm toward one of 44 mm.</summary>
public sealed class TargetShapeCommandTests : IDisposable
{
    private readonly PhotoFolder folder = new();
    private readonly string own;
    private readonly string reference;

    public TargetShapeCommandTests()
    {
        own = folder.Bytes("own.section.json", Encoding.UTF8.GetBytes(SampleSections.Document(SampleSections.Ellipse(40, 40))));
        reference = folder.Bytes("reference.section.json", Encoding.UTF8.GetBytes(SampleSections.Document(SampleSections.Ellipse(44, 44))));
    }

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task The_target_is_a_section_document_that_compare_and_prove_read()
    {
        var run = await CommandLine.RunAsync(
            "target-shape", own, reference, "--share", "50", "--limit", "width=41.5:oil drain", "--out", folder.Out);

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Equal(["station-3.target.section.json", "station-3.target.svg", "targets.pdf"], folder.Written);
        Assert.Contains("oil drain", run.Output, StringComparison.Ordinal);
        var path = Path.Combine(folder.Out, "station-3.target.section.json");
        var document = SectionDocumentFormat.Read(await File.ReadAllTextAsync(path), path).ValueOrThrow();
        Assert.Equal(SectionSubject.Target, document.Section.Subject);
        Assert.Equal("50", document.Settings["share"]);
        Assert.Equal(Hash(own), document.TargetShape!.Own.Sha256);
        Assert.Equal("oil drain", document.TargetShape.Limits[0].Note);
        Assert.True(document.TargetShape.Limits[0].IsActive);

        var compared = await CommandLine.RunAsync("compare", path, own, "--align", "as-placed", "--json");
        var proved = await CommandLine.RunAsync("prove", path, own, "--json");

        using var comparison = JsonDocument.Parse(compared.Output);
        Assert.Equal(-0.95, comparison.RootElement.GetProperty("deviation").GetProperty("meanMm").GetDouble(), 0.1);
        using var proof = JsonDocument.Parse(proved.Output);
        Assert.Equal("does not conform", proof.RootElement.GetProperty("verdict").GetString());
    }

    [Fact]
    public async Task Folders_are_matched_station_by_station()
    {
        foreach (var station in new[] { 1, 2, 5 })
        {
            Put("cast", station, 40);
            Put("proven", station == 5 ? 6 : station, 42);
        }

        var run = await CommandLine.RunAsync("target-shape", folder.PathOf("cast"), folder.PathOf("proven"), "--json");

        using var answer = JsonDocument.Parse(run.Output);
        Assert.Equal([1, 2], answer.RootElement.GetProperty("targets").EnumerateArray().Select(target => target.GetProperty("station").GetInt32()));
    }

    // The reference's wall is 3 mm from the passage: 2.5 mm and twice u = 0.4 mm leave the target 0.3 mm short of it.
    [Fact]
    public async Task The_table_of_passages_holds_the_target_back_at_its_station_only()
    {
        var table = folder.Bytes("walls.csv", "kind,station,name,x_mm,y_mm,radius_mm,u_mm,limit_mm\ncircle,3,oil drain,28,0,3,0.4,2.5\ncircle,4,far drain,0,0,30,0.4,2.5\n"u8.ToArray());

        var run = await CommandLine.RunAsync("target-shape", own, reference, "--keep-outs", table, "--out", folder.Out);

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Contains("oil drain", run.Output, StringComparison.Ordinal);
        var path = Path.Combine(folder.Out, "station-3.target.section.json");
        var target = SectionDocumentFormat.Read(await File.ReadAllTextAsync(path), path).ValueOrThrow();
        Assert.Equal(3.3, target.Section.Outline.Points.ToArray().Min(place => place.DistanceTo(new(28, 0)) - 3), 0.05);
        Assert.Equal("walls.csv", Path.GetFileName(target.Settings["keep-outs"]));
        Assert.Equal("oil drain", Assert.Single(target.TargetShape!.Limits).Note.Split(':')[0]);
    }

    // From 40 to 44 mm: 2 mm all round. The floor ends 22.5° from its middle, halfway to the corners' middles at 45°: half of 2 mm there
    // (the blend of SectorShares is 1/2 in the middle between two sectors), and a little more because the target's centroid lies higher.
    [Fact]
    public async Task A_floor_at_nothing_tells_what_still_comes_off_toward_its_ends_and_how_to_keep_it()
    {
        var run = await CommandLine.RunAsync("target-shape", own, reference, "--share-at", "floor=0", "--fair", "0", "--align", "centroids", "--out", folder.Out);

        var said = run.Output.ReplaceLineEndings(string.Empty);
        Assert.Matches(@"metal still comes off: up to 1\.0\d mm of the floor\. Give the neighbours 0 % too to keep all of it\.", said);
        var path = Path.Combine(folder.Out, "station-3.target.section.json");
        Assert.Contains(SectionDocumentFormat.Read(await File.ReadAllTextAsync(path), path).ValueOrThrow().TargetShape!.Steps, step => step.Contains("0 % too", StringComparison.Ordinal));

        var kept = await CommandLine.RunAsync(
            "target-shape", own, reference, "--share-at", "floor=0", "--share-at", "floor-left-corner=0", "--share-at", "floor-right-corner=0", "--fair", "0", "--align", "centroids");
        Assert.Matches(@"still comes off: up to \d\.\d\d mm of the floor left corner, up to \d\.\d\d mm of the floor right corner\.", kept.Output);
    }

    [Fact]
    public async Task A_station_without_a_partner_is_named()
    {
        Put("cast", 1, 40);
        Put("cast", 2, 40);
        Put("proven", 1, 42);

        var run = await CommandLine.RunAsync("target-shape", folder.PathOf("cast"), folder.PathOf("proven"));

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Contains("s2", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Sections_that_are_not_of_one_station_are_refused()
    {
        var other = folder.Bytes("other.section.json", Encoding.UTF8.GetBytes(SampleSections.Document(SampleSections.Ellipse(80, 40))));

        var run = await CommandLine.RunAsync("target-shape", own, other, "--out", folder.Out);

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        Assert.Contains("same station", run.Error, StringComparison.Ordinal);
        Assert.Empty(folder.Written);
    }

    [Theory]
    [InlineData("--share-at", "ceiling=5")]
    [InlineData("--share-at", "floor=-5")]
    [InlineData("--limit", "depth=5")]
    [InlineData("--limit", "width=wide")]
    [InlineData("--keep-out", "1,2,3")]
    [InlineData("--valve", "38")]
    [InlineData("--align", "somehow")]
    public async Task Options_that_mean_nothing_are_wrong_usage(string option, string value)
    {
        var run = await CommandLine.RunAsync("target-shape", own, reference, option, value);

        Assert.Equal(ExitCode.WrongUsage, run.ExitCode);
        Assert.Contains(option, run.Error, StringComparison.Ordinal);
    }

    private void Put(string port, int station, double diameterMm)
    {
        Directory.CreateDirectory(folder.PathOf(port));
        folder.Bytes(Path.Combine(port, $"s{station}.section.json"), Encoding.UTF8.GetBytes(SampleSections.Document(SampleSections.Ellipse(diameterMm, diameterMm), station)));
    }

    private static string Hash(string path) =>
        Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(path)));
}
