using System.Text.Json;
using SectionScan.Metrology.GaugeStudies;
using SectionScan.Porting.Documents;
using SectionScan.Testing.Gauges;
using SectionScan.Testing.Truth;

namespace SectionScan.Cli.Tests.Commands.Gauge;

public sealed class GaugeCommandTests(GaugeCommandTests.TwoPlugs plugs) : IClassFixture<GaugeCommandTests.TwoPlugs>
{
    [Fact]
    public async Task A_study_ends_with_0_a_table_and_a_file_that_digitise_takes()
    {
        var file = plugs.PathOf("shop.gauge.json");

        var run = await CommandLine.RunAsync("gauge", plugs.Table, "--print-ratio", "1,1", "--out", file);

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Contains("ring 20", run.Output, StringComparison.Ordinal);
        Assert.Contains("50.000 × 30.000 mm", run.Output, StringComparison.Ordinal);
        Assert.Contains("Reproducibility: not studied", run.Output, StringComparison.Ordinal);
        Assert.Contains("AIAG", run.Output, StringComparison.Ordinal);
        Assert.Contains("One person, camera and sheet took part", run.Error, StringComparison.Ordinal);
        var study = GaugeStudyFormat.Read(await File.ReadAllTextAsync(file), file).ValueOrThrow();
        Assert.Equal(4, study.Readings.Count);
    }

    [Fact]
    public async Task Inches_are_shown_and_millimetres_are_kept()
    {
        var (mm, inch) = (plugs.PathOf("mm.gauge.json"), plugs.PathOf("in.gauge.json"));

        var shown = await CommandLine.RunAsync("gauge", plugs.Table, "--out", inch, "--units", "in");
        using var inMm = JsonDocument.Parse((await CommandLine.RunAsync("gauge", plugs.Table, "--out", mm, "--json")).Output);
        using var inInch = JsonDocument.Parse((await CommandLine.RunAsync("gauge", plugs.Table, "--out", inch, "--units", "in", "--json")).Output);

        Assert.Contains("1.9685 × 1.1811 in", shown.Output, StringComparison.Ordinal);
        Assert.DoesNotContain(" mm", shown.Output, StringComparison.Ordinal);
        Assert.Equal(("mm", "in"), (inMm.RootElement.GetProperty("unit").GetString(), inInch.RootElement.GetProperty("unit").GetString()));
        Assert.Equal(
            inMm.RootElement.GetProperty("repeatability").GetDouble(), 25.4 * inInch.RootElement.GetProperty("repeatability").GetDouble(), 1e-12);
        Assert.Equal(await File.ReadAllTextAsync(mm), await File.ReadAllTextAsync(inch));
    }

    [Fact]
    public async Task Digitise_takes_edge_and_scale_from_the_study_and_keeps_every_other_cause()
    {
        var file = plugs.PathOf("rows.gauge.json");
        await CommandLine.RunAsync("gauge", plugs.Table, "--print-ratio", "1,1", "--out", file);
        var study = GaugeStudyFormat.Read(await File.ReadAllTextAsync(file), file).ValueOrThrow();
        var photo = plugs.PathOf("ring-20-Ann-1.jpg");

        using var plain = await Digitise(photo, "--thickness", "6", "--print-ratio", "1,1");
        using var with = await Digitise(photo, "--thickness", "6", "--print-ratio", "1,1", "--gauge", file);

        var (before, after) = (Rows(plain, "width"), Rows(with, "width"));
        Assert.Equal(
            [.. before.Keys.Select(k => k switch { "print scale" => "print scale, by gauge study", "edge, systematic" => "edge, by gauge study", _ => k })],
            after.Keys);
        Assert.All(before.Keys.Intersect(after.Keys), k => Assert.Equal(before[k], after[k]));
        Assert.Equal(before.Count - 2, before.Keys.Intersect(after.Keys).Count());
        Assert.Equal(20 * study.ScaleStandardUncertainty, after["print scale, by gauge study"], 1e-4);
        Assert.InRange(after["edge, by gauge study"], 2 * study.EdgeStandardUncertaintyMm, (2.2 * study.EdgeStandardUncertaintyMm) + 0.001);
    }

    [Theory]
    [InlineData("gauge-of-other-print-ratio", "--print-ratio", "0.998,1")]
    [InlineData("gauge-of-other-print-ratio")]
    public async Task A_study_made_with_another_print_ratio_is_refused(string code, params string[] ratio)
    {
        var file = plugs.PathOf("ratio.gauge.json");
        await File.WriteAllTextAsync(file, GaugeStudyFormat.Write(Study with { PrintRatio = [0.999, 1] }));

        var run = await CommandLine.RunAsync(["digitise", plugs.PathOf("ring-20-Ann-1.jpg"), "--thickness", "6", "--gauge", file, "--json", .. ratio]);

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        Assert.Contains(code, run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_study_of_the_sheet_is_refused_for_the_card_and_one_of_another_camera_is_warned_of()
    {
        var file = plugs.PathOf("other.gauge.json");
        await File.WriteAllTextAsync(file, GaugeStudyFormat.Write(Study with { CameraModels = ["Plate camera"], HasLensProfile = true, PixelMm = 0.05 }));

        var card = await CommandLine.RunAsync("digitise", SamplePhotos.PhotoPath("p08"), "--gauge", file, "--json");
        var sheet = await CommandLine.RunAsync("digitise", plugs.PathOf("ring-20-Ann-1.jpg"), "--thickness", "6", "--gauge", file);

        Assert.Contains("gauge-of-other-target", card.Output, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Done, sheet.ExitCode);
        Assert.Contains("made with Plate camera", sheet.Error, StringComparison.Ordinal);
        Assert.Contains("made with a lens profile", sheet.Error, StringComparison.Ordinal);
        Assert.Contains("in the gauge study; the edge's uncertainty is widened", sheet.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("print was not checked", sheet.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_stands_in_the_way_ends_with_3_and_writes_nothing()
    {
        var file = plugs.PathOf("never.gauge.json");
        var table = plugs.PathOf("bad.csv");
        await File.WriteAllTextAsync(table, "photo,plug\n");

        var run = await CommandLine.RunAsync("gauge", table, "--out", file, "--json");

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        Assert.Contains("study-no-head", run.Output, StringComparison.Ordinal);
        Assert.Contains("Begin it with: photo,plug,shape", run.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(file));
        Assert.Equal(ExitCode.UnusableInput, (await CommandLine.RunAsync("digitise", "a.jpg", "--gauge", table)).ExitCode);
    }

    [Fact]
    public async Task A_gauge_study_and_another_scale_are_wrong_usage()
    {
        var run = await CommandLine.RunAsync("digitise", "a.jpg", "--gauge", "shop.gauge.json", "--scan");

        Assert.Equal(ExitCode.WrongUsage, run.ExitCode);
        Assert.Contains("--scan and --gauge cannot be given together", run.Error, StringComparison.Ordinal);
    }

    private static readonly GaugeStudy Study = new("sheet", null, false, [], 0.2, [], [], new(0.004, 0.003, 0, 0.0001), 0.01, 12, 0, 1, []);

    private static async Task<JsonDocument> Digitise(params string[] arguments)
    {
        var run = await CommandLine.RunAsync(["digitise", .. arguments, "--json"]);
        Assert.Equal(ExitCode.Done, run.ExitCode);
        return JsonDocument.Parse(run.Output);
    }

    private static Dictionary<string, double> Rows(JsonDocument answer, string measure) =>
        answer.RootElement.GetProperty("results")[0].GetProperty("sections")[0].GetProperty("budget").GetProperty(measure).EnumerateArray()
            .ToDictionary(row => row.GetProperty("source").GetString()!, row => row.GetProperty("u").GetDouble());

    /// <summary>A round and a rectangular plug, two photos each.</summary>
    public sealed class TwoPlugs : IDisposable
    {
        private readonly PlugPhotos photos = new();

        public TwoPlugs() => Table = photos.Study([PlugPhotos.FourShapes[0], PlugPhotos.FourShapes[3]], ["Ann"], 2).Table();

        public string Table { get; }

        public string PathOf(string name) => Path.Combine(photos.Folder, name);

        public void Dispose() => photos.Dispose();
    }
}
