using System.Text.Json;
using SectionScan.Porting.Documents;
using SectionScan.Testing.Truth;

namespace SectionScan.Cli.Tests.Commands.Digitise;

/// <summary>A mould that has shrunk by s gives the port ℓ / (1 − s): lengths once, areas twice; u of an area is 2·A·u(s)/(1 − s)
/// (JCGM 100:2008, 5.1.2).</summary>
public sealed class ShrinkageTests : IDisposable
{
    private const double Share = 0.006;
    private const double Uncertainty = 0.002;

    // Documents hold coordinates at whole 0.0001 mm, so that measures differ by parts in a million.
    private const double Rounding = 1e-5;

    private readonly PhotoFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Shrinkage_told_with_its_uncertainty_enlarges_the_outline_and_stands_in_the_budget()
    {
        var photo = folder.Resized("p01", "small.jpg", 0.6);
        using var plain = await Digitise(photo, "--thickness", "6");
        using var enlarged = await Digitise(photo, "--thickness", "6", "--shrinkage", "0.6", "--shrinkage-u", "0.2", "--out", folder.Out);

        var (before, after) = (Sections(plain), Sections(enlarged));
        Assert.Equal(4, after.Length);
        for (var i = 0; i < after.Length; i++)
        {
            var ratio = 1 / (1 - Share);
            Assert.Equal(Value(before[i], "width") * ratio, Value(after[i], "width"), Rounding * 40);
            Assert.Equal(Value(before[i], "area") * ratio * ratio, Value(after[i], "area"), Rounding * 1000);
            Assert.Equal(2 * Value(after[i], "area") * Uncertainty * ratio, Row(after[i], "area")!.Value, 0.01);
            Assert.Null(Row(before[i], "area"));

            // Where it lies on the sheet does not change.
            Assert.Equal(before[i].GetProperty("placedOutline").GetRawText(), after[i].GetProperty("placedOutline").GetRawText());
        }

        var path = Path.Combine(folder.Out, "small.station-1.section.json");
        var document = SectionDocumentFormat.Read(await File.ReadAllTextAsync(path), path).ValueOrThrow();
        Assert.Equal("0.6", document.Settings["shrinkage"]);
        Assert.Equal("0.2", document.Settings["shrinkage-u"]);
        Assert.False(document.Section.ErrorSources.Single(s => s.Name == "mould shrinkage").IsAssumed);
        Assert.Contains("0.6 % of shrinkage", await File.ReadAllTextAsync(Path.Combine(folder.Out, "small.station-1.svg")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Shrinkage_without_its_uncertainty_is_taken_for_half_known_and_marked_as_assumed()
    {
        using var answer = await Digitise(folder.Resized("p01", "small.jpg", 0.6), "--thickness", "6", "--shrinkage", "0.6", "--out", folder.Out);

        var path = Path.Combine(folder.Out, "small.station-1.section.json");
        var source = SectionDocumentFormat.Read(await File.ReadAllTextAsync(path), path).ValueOrThrow()
            .Section.ErrorSources.Single(s => s.Name == "mould shrinkage");
        Assert.True(source.IsAssumed);

        // Half of 0.6 % to either side, rectangular: 0.3 % / √3 (JCGM 100:2008, 4.3.7).
        var area = Sections(answer)[0];
        Assert.Equal(2 * Value(area, "area") * 0.003 / Math.Sqrt(3) / (1 - Share), Row(area, "area")!.Value, 0.01);
    }

    [Fact]
    public async Task Shrinkage_of_an_opening_is_refused()
    {
        var run = await CommandLine.RunAsync("digitise", SamplePhotos.PhotoPath("p08"), "--shrinkage", "0.6", "--json");

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        Assert.Contains("shrinkage-of-opening", run.Output, StringComparison.Ordinal);
        Assert.Contains("Leave out --shrinkage", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--shrinkage 11 is out of range", "--shrinkage", "11")]
    [InlineData("--shrinkage -3 is out of range", "--shrinkage=-3")]
    [InlineData("--shrinkage-u needs --shrinkage", "--shrinkage-u", "0.1")]
    [InlineData("--shrinkage-u NaN is out of range", "--shrinkage", "0.5", "--shrinkage-u", "NaN")]
    [InlineData("metal does not shrink", "--shrinkage", "0.5", "--subject", "opening")]
    public async Task Shrinkage_that_cannot_be_is_wrong_usage(string message, params string[] options)
    {
        var run = await CommandLine.RunAsync(["digitise", "a.jpg", .. options]);

        Assert.Equal(ExitCode.WrongUsage, run.ExitCode);
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
    }

    private static async Task<JsonDocument> Digitise(params string[] arguments)
    {
        var run = await CommandLine.RunAsync(["digitise", .. arguments, "--json"]);
        Assert.Equal(ExitCode.Done, run.ExitCode);
        return JsonDocument.Parse(run.Output);
    }

    private static JsonElement[] Sections(JsonDocument answer) =>
        [.. answer.RootElement.GetProperty("results")[0].GetProperty("sections").EnumerateArray()];

    private static double Value(JsonElement section, string measure) =>
        section.GetProperty("measures").GetProperty(measure).GetProperty("value").GetDouble();

    private static double? Row(JsonElement section, string measure) =>
        section.GetProperty("budget").GetProperty(measure).EnumerateArray()
            .Where(row => row.GetProperty("source").GetString() == "mould shrinkage")
            .Select(row => (double?)row.GetProperty("u").GetDouble()).SingleOrDefault();
}
