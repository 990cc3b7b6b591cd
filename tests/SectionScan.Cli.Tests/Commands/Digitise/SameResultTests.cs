using System.Text.Json;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Documents;
using SectionScan.Testing.Truth;

namespace SectionScan.Cli.Tests.Commands.Digitise;

/// <summary>The same photo and settings give the same result, today and when a document is read back.</summary>
public sealed class SameResultTests : IDisposable
{
    private readonly PhotoFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task The_same_photo_and_settings_give_the_same_bytes()
    {
        var first = await CommandLine.RunAsync("digitise", SamplePhotos.PhotoPath("p01"), "--thickness", "6", "--out", folder.Out, "--json");
        var again = await CommandLine.RunAsync("digitise", SamplePhotos.PhotoPath("p01"), "--thickness", "6", "--out", folder.PathOf("again"), "--json");

        Assert.Equal(ExitCode.Done, first.ExitCode);
        Assert.Equal(first.Output, again.Output);
        Assert.Equal(first.Error, again.Error);

        // Four slices: document, drawing and points of each, and the picture.
        Assert.Equal(13, folder.Written.Count);
        Assert.Equal(folder.Written, Directory.GetFiles(folder.PathOf("again")).Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal));
        Assert.All(folder.Written, name => Assert.Equal(
            File.ReadAllBytes(Path.Combine(folder.Out, name)), File.ReadAllBytes(Path.Combine(folder.PathOf("again"), name))));
    }

    [Fact]
    public async Task A_document_read_back_and_measured_again_gives_the_same_numbers()
    {
        var run = await CommandLine.RunAsync("digitise", SamplePhotos.PhotoPath("p01"), "--thickness", "6", "--out", folder.Out, "--json");

        using var answer = JsonDocument.Parse(run.Output);
        var sections = answer.RootElement.GetProperty("results")[0].GetProperty("sections").EnumerateArray().ToArray();
        Assert.Equal(4, sections.Length);
        foreach (var section in sections)
        {
            var path = Path.Combine(folder.Out, $"p01.station-{section.GetProperty("station").GetInt32()}.section.json");
            var document = SectionDocumentFormat.Read(await File.ReadAllTextAsync(path), path).ValueOrThrow();
            var measured = MeasuredOutline.Of(document.Section.Outline, document.Section.ErrorSources);

            var stated = section.GetProperty("measures");
            Assert.Equal(measured.Quantities.Count, stated.EnumerateObject().Count());
            foreach (var quantity in measured.Quantities)
            {
                var said = stated.GetProperty(quantity.Measure.Name);
                Assert.Equal(quantity.Estimate.Value, said.GetProperty("value").GetDouble());
                Assert.Equal(quantity.Estimate.StandardUncertainty, said.GetProperty("u").GetDouble());
                Assert.Equal(quantity.Estimate.ExpandedUncertainty, said.GetProperty("U").GetDouble());
            }
        }
    }
}
