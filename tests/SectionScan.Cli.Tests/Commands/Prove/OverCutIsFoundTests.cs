using System.Text.Json;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Proving;
using SectionScan.Jobs.TargetShapes;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Outlines;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Proof;
using SectionScan.Porting.Sections;
using SectionScan.Porting.TargetShapes;
using SectionScan.Testing.Truth;

namespace SectionScan.Cli.Tests.Commands.Prove;

/// <summary>The sample photos, from pixels to the verdict. Truth (rendered photos, exact polygons): at station 4 the finished port was cut
/// 0.400 mm beyond the exemplar toward −12 degrees; everywhere else it lies 0.2 to 0.4 mm inside.</summary>
public sealed class OverCutIsFoundTests(OverCutIsFoundTests.Photos photos) : IClassFixture<OverCutIsFoundTests.Photos>
{
    private const double DepthToleranceMm = 0.1;

    [Fact]
    public async Task The_station_cut_beyond_the_exemplar_is_found_and_no_other_is_accused()
    {
        using var answer = await ProveAsync(photos.Exemplar, "--inside", "0.6", "--outside", "0.1");

        var sections = answer.RootElement.GetProperty("sections").EnumerateArray().ToDictionary(each => each.GetProperty("station").GetInt32());
        Assert.Equal(Enumerable.Range(1, 8), sections.Keys.Order());
        Assert.All(sections.Where(each => each.Key != 4), each => Assert.NotEqual("does not conform", Verdict(each.Value)));
        Assert.Equal("does not conform", Verdict(sections[4]));
        var worst = sections[4].GetProperty("findings")[0].GetProperty("worst");
        Assert.Equal(0.400, worst.GetProperty("deviationMm").GetDouble(), DepthToleranceMm);
        Assert.Equal(-12, worst.GetProperty("directionDeg").GetDouble(), 8.0);
        Assert.Equal("right wall", worst.GetProperty("region").GetString());
        Assert.True(sections[4].GetProperty("findings")[0].GetProperty("isTooFar").GetBoolean());
        Assert.True(Math.Abs(worst.GetProperty("deviationMm").GetDouble() - 0.400) < worst.GetProperty("expandedUncertaintyMm").GetDouble() + 0.02);
    }

    [Fact]
    public async Task Against_a_target_between_cast_and_exemplar_it_is_found_too_at_its_true_depth()
    {
        using var answer = await ProveAsync(photos.Target, "--tolerance", "0.5", "--out", photos.Folder.PathOf("proof"));

        var sections = answer.RootElement.GetProperty("sections").EnumerateArray().ToDictionary(each => each.GetProperty("station").GetInt32());
        Assert.Equal(8, sections.Count);
        Assert.All(sections.Where(each => each.Key != 4), each => Assert.NotEqual("does not conform", Verdict(each.Value)));
        var worst = sections[4].GetProperty("findings")[0].GetProperty("worst");
        var truth = TrueDepthBeyondTheTarget();
        Assert.Equal(truth.DeviationMm, worst.GetProperty("deviationMm").GetDouble(), DepthToleranceMm);
        Assert.Equal(-12, worst.GetProperty("directionDeg").GetDouble(), 8.0);
        Assert.Contains("proof.html", Directory.GetFiles(photos.Folder.PathOf("proof")).Select(Path.GetFileName));
        Assert.Contains("proof.pdf", Directory.GetFiles(photos.Folder.PathOf("proof")).Select(Path.GetFileName));
        Assert.Contains("p06.outlines.jpg", Directory.GetFiles(photos.Folder.PathOf("proof")).Select(Path.GetFileName));
        var html = await File.ReadAllTextAsync(photos.Folder.PathOf(Path.Combine("proof", "proof.html")));
        Assert.Contains("station 4 does not conform", html, StringComparison.Ordinal);
        Assert.Contains("ISO 14253-1", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_comparison_shows_the_over_cut_at_its_depth_and_least_squares_do_not()
    {
        var (exemplar, finished) = (Document(photos.Exemplar, "p01"), Document(photos.Finished, "p06"));

        Assert.Equal(0.400, await HighestAsync(exemplar, finished, "tukey"), DepthToleranceMm);
        Assert.InRange(await HighestAsync(exemplar, finished, "least-squares"), 0.1, 0.28);
    }

    private static async Task<double> HighestAsync(string reference, string measured, string fit)
    {
        var run = await CommandLine.RunAsync("compare", reference, measured, "--align", "best-fit-turned", "--fit", fit, "--json");
        using var answer = JsonDocument.Parse(run.Output);
        return answer.RootElement.GetProperty("deviation").GetProperty("highest").GetProperty("deviationMm").GetDouble();
    }

    /// <summary>The same target and proof from the true polygons, in the frame that they share: no photo, no fit.</summary>
    private static ProvedPlace TrueDepthBeyondTheTarget()
    {
        var choice = new TargetShapeChoice(SectorShares.Even(0.75), AlignmentChoice.AsPlaced);
        var target = SettledTarget.Of(TrueSection("p04"), TrueSection("p01"), choice).ValueOrThrow();
        var terms = new ProofTerms(ToleranceBand.Of(0.5), new(DecisionRule.UsualGuardFactor), AlignmentChoice.AsPlaced);
        var own = new SectionInput("target", target.Document.Section.Outline, []) { Document = target.Document };
        return ProvedSection.Of(own, TrueSection("p06"), terms).ValueOrThrow().Proof.Highest;
    }

    private static SectionInput TrueSection(string photo)
    {
        var outline = Outline.From(SamplePhotos.TruthOf(photo).Sections.Single(section => section.Station == 4).Outline).ValueOrThrow();
        return new(photo, outline, [])
        {
            Document = new SectionDocument(
                new(4, SectionSubject.Target, 0, outline, [], []), null, [], null, null, null, new Dictionary<string, string>(), "truth"),
        };
    }

    private static string Document(string folder, string photo) => Path.Combine(folder, photo + ".station-4.section.json");

    private static string Verdict(JsonElement section) => section.GetProperty("verdict").GetString()!;

    private async Task<JsonDocument> ProveAsync(string target, params string[] options)
    {
        var run = await CommandLine.RunAsync(["prove", target, photos.Finished, "--json", .. options]);
        Assert.Equal(ExitCode.Done, run.ExitCode);
        return JsonDocument.Parse(run.Output);
    }

    /// <summary>The photos of the job digitised once, with the camera's lens profile, and the target settled.</summary>
    public sealed class Photos : IAsyncLifetime
    {
        internal PhotoFolder Folder { get; } = new();

        internal string Exemplar => Folder.PathOf("exemplar");

        internal string AsCast => Folder.PathOf("as-cast");

        internal string Finished => Folder.PathOf("finished");

        internal string Target => Folder.PathOf("target");

        public async Task InitializeAsync()
        {
            var lens = Folder.PathOf("phone.lens.json");
            await RunAsync(["lens", .. Enumerable.Range(1, 10).Select(i => SamplePhotos.PhotoPath($"c{i:00}")), "--out", lens]);
            foreach (var (folder, thickness, names) in new[] { (Exemplar, "6", new[] { "p01", "p02" }), (AsCast, "6", ["p04", "p05"]), (Finished, "5", ["p06", "p07"]) })
            {
                await RunAsync(["digitise", .. names.Select(SamplePhotos.PhotoPath), "--thickness", thickness, "--lens", lens, "--print-ratio", "1,1", "--out", folder]);
            }

            await RunAsync(["target-shape", AsCast, Exemplar, "--share", "75", "--out", Target]);
        }

        public Task DisposeAsync()
        {
            Folder.Dispose();
            return Task.CompletedTask;
        }

        private static async Task RunAsync(string[] arguments)
        {
            var run = await CommandLine.RunAsync(arguments);
            Assert.True(run.ExitCode == ExitCode.Done, run.Error);
        }
    }
}
