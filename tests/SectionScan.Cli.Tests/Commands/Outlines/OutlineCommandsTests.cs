using System.Text.Json;
using SectionScan.Metrology.Outlines;
using SectionScan.Porting.Documents;
using SectionScan.Testing.Repository;

namespace SectionScan.Cli.Tests.Commands.Outlines;

public sealed class OutlineCommandsTests : IDisposable
{
    // Radius 14, straight 12: closed forms of area and extents.
    private const double StadiumMm2 = (Math.PI * 14 * 14) + (12 * 28);

    private readonly PhotoFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("stadium-lwpolyline.dxf", 40, 28)]
    [InlineData("stadium-lines-arcs.dxf", 40, 28)]
    [InlineData("stadium-path.svg", 40, 28)]
    [InlineData("stadium-lwpolyline.dxf", 28, 40, "--turn", "90")]
    public async Task A_drawing_becomes_a_section_document_at_true_size(string file, double widthMm, double heightMm, params string[] options)
    {
        var run = await CommandLine.RunAsync(["import-outline", Drawn(file), "--station", "4", "--out", folder.Out, "--json", .. options]);

        Assert.Equal(ExitCode.Done, run.ExitCode);
        var result = Root(run).GetProperty("results")[0];
        Assert.Equal(StadiumMm2, Measure(result, "area"), 0.03);
        Assert.Equal(widthMm, Measure(result, "width"), 0.001);
        Assert.Equal(heightMm, Measure(result, "height"), 0.001);
        Assert.Equal(JsonValueKind.Null, result.GetProperty("measures").GetProperty("area").GetProperty("u").ValueKind);
        var document = Document(Assert.Single(folder.Written));
        Assert.Equal(4, document.Section.Station);
        var centroid = PolygonMoments.Of(document.Section.Outline.Points).Centroid;
        Assert.Equal(0, centroid.DistanceTo(new(0, 0)), 0.001);
    }

    [Fact]
    public async Task A_stated_uncertainty_of_the_edge_goes_into_the_measures()
    {
        var run = await CommandLine.RunAsync("import-outline", Drawn("circle.dxf"), "--edge-u", "0.05", "--out", folder.Out, "--json");

        // An edge off by u everywhere moves a diameter by 2u.
        var width = Root(run).GetProperty("results")[0].GetProperty("measures").GetProperty("width");
        Assert.Equal(36, width.GetProperty("value").GetDouble(), 0.001);
        Assert.Equal(0.1, width.GetProperty("u").GetDouble(), 0.001);
    }

    [Fact]
    public async Task A_drawing_that_cannot_be_used_hinders_no_other()
    {
        var run = await CommandLine.RunAsync("import-outline", Drawn("broken-number.dxf"), Drawn("circle.dxf"), "--out", folder.Out);

        Assert.Equal(ExitCode.SomeInputsUnusable, run.ExitCode);
        Assert.Contains("eighteen", run.Error, StringComparison.Ordinal);
        Assert.Equal(["circle.section.json"], folder.Written);
    }

    [Theory]
    [InlineData("--file-units", "furlong")]
    [InlineData("--contour", "0")]
    [InlineData("--gap", "99")]
    [InlineData("--edge-u", "-1")]
    [InlineData("--subject", "cake")]
    public async Task An_impossible_option_is_wrong_usage(params string[] option) =>
        Assert.Equal(ExitCode.WrongUsage, (await CommandLine.RunAsync(["import-outline", Drawn("circle.dxf"), .. option])).ExitCode);

    [Theory]
    [InlineData("mm")]
    [InlineData("in")]
    public async Task What_is_exported_in_any_kind_is_imported_as_the_same_outline(string units)
    {
        await CommandLine.RunAsync("import-outline", Drawn("d-section-polyline.dxf"), "--out", folder.Out);
        var document = Path.Combine(folder.Out, "d-section-polyline.section.json");
        var original = Document("d-section-polyline.section.json").Section.Outline.Points.ToArray();

        var run = await CommandLine.RunAsync("export-outline", document, "--out", folder.PathOf("drawings"), "--units", units, "--json");

        Assert.Equal(ExitCode.Done, run.ExitCode);
        var files = Root(run).GetProperty("files").EnumerateArray().Select(file => file.GetString()!).ToList();
        Assert.Equal(Jobs.Outlines.OutlineExport.KnownKinds.Count, files.Count);
        foreach (var file in files)
        {
            var back = await CommandLine.RunAsync("import-outline", file, "--keep-origin", "--json", "--out", folder.PathOf("back"), "--replace");
            var points = Root(back).GetProperty("results")[0].GetProperty("outline").EnumerateArray().Select(p => (X: p[0].GetDouble(), Y: p[1].GetDouble())).ToList();
            Assert.Equal(original.Length, points.Count);

            // Documents keep 0.0001 mm.
            Assert.All(original.Zip(points), pair => Assert.InRange(Math.Abs(pair.First.XMm - pair.Second.X) + Math.Abs(pair.First.YMm - pair.Second.Y), 0, 0.00021));
        }
    }

    [Fact]
    public async Task A_document_that_is_there_already_is_kept_unless_it_is_to_be_replaced()
    {
        Directory.CreateDirectory(folder.Out);
        var there = Path.Combine(folder.Out, "circle.section.json");
        await File.WriteAllTextAsync(there, "measured by hand");

        var refused = await CommandLine.RunAsync("import-outline", Drawn("circle.dxf"), "--out", folder.Out);

        Assert.Equal(ExitCode.UnusableInput, refused.ExitCode);
        Assert.Contains("it is not overwritten", refused.Error, StringComparison.Ordinal);
        Assert.Equal("measured by hand", await File.ReadAllTextAsync(there));
        Assert.Equal(["circle.section.json"], folder.Written);

        // With --replace it is; and the same again changes nothing, so that it is no matter.
        Assert.Equal(ExitCode.Done, (await CommandLine.RunAsync("import-outline", Drawn("circle.dxf"), "--out", folder.Out, "--replace")).ExitCode);
        Assert.Contains("drawing-sha256", await File.ReadAllTextAsync(there), StringComparison.Ordinal);
        Assert.Equal(ExitCode.Done, (await CommandLine.RunAsync("import-outline", Drawn("circle.dxf"), "--out", folder.Out)).ExitCode);
    }

    [Fact]
    public async Task Two_drawings_of_one_name_give_two_documents()
    {
        Directory.CreateDirectory(folder.PathOf("other"));
        var other = folder.PathOf("other/circle.dxf");
        File.Copy(Drawn("circle.dxf"), other);

        var run = await CommandLine.RunAsync("import-outline", Drawn("circle.dxf"), other, "--out", folder.Out);

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Equal(["circle-2.section.json", "circle.section.json"], folder.Written);
    }

    [Fact]
    public async Task A_drawing_can_be_compared_and_kept_in_the_library_as_it_is()
    {
        var library = folder.PathOf("library.db");
        var add = await CommandLine.RunAsync(
            "library", "add", Drawn("circle.dxf"), "--head", "Bramble 480 twin", "--port", "intake 1", "--station", "2", "--library", library, "--json");
        var compare = await CommandLine.RunAsync("compare", "library:1", Drawn("circle.dxf"), "--library", library, "--json");

        Assert.Equal(ExitCode.Done, add.ExitCode);
        Assert.Equal(0, Root(compare).GetProperty("deviation").GetProperty("rmsMm").GetDouble(), 0.001);
    }

    [Fact]
    public async Task The_outlines_of_a_port_leave_the_library_as_drawings()
    {
        var library = folder.PathOf("library.db");
        foreach (var (file, station) in new[] { ("circle.dxf", "1"), ("ellipse.dxf", "2") })
        {
            await CommandLine.RunAsync("library", "add", Drawn(file), "--head", "Bramble", "--port", "intake 1", "--station", station, "--library", library);
        }

        var run = await CommandLine.RunAsync("library", "export", folder.Out, "--as", "svg,csv", "--port", "intake 1", "--library", library, "--json");

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Equal(
            ["Bramble-intake-1-station-1.csv", "Bramble-intake-1-station-1.svg", "Bramble-intake-1-station-2.csv", "Bramble-intake-1-station-2.svg"],
            folder.Written);
    }

    private static string Drawn(string name) => RepositoryFolder.PathOf("tests", "SectionScan.Drawings.Tests", "Outlines", "Drawn", name);

    private SectionDocument Document(string name) =>
        SectionDocumentFormat.Read(File.ReadAllText(Path.Combine(folder.Out, name)), name).ValueOrThrow();

    private static double Measure(JsonElement result, string name) =>
        result.GetProperty("measures").GetProperty(name).GetProperty("value").GetDouble();

    private static JsonElement Root(CommandLine run)
    {
        using var document = JsonDocument.Parse(run.Output);
        return document.RootElement.Clone();
    }
}
