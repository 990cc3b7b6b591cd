using System.Text.Json;
using SectionScan.Testing.Truth;

namespace SectionScan.Cli.Tests.Commands;

public sealed class CheckCommandTests : IDisposable
{
    private readonly PhotoFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task A_good_photo_ends_with_0_and_a_table()
    {
        var run = await CommandLine.RunAsync("check", SamplePhotos.PhotoPath("p01"), "--thickness", "6");

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Contains("p01.jpg: good", run.Output, StringComparison.Ordinal);
        Assert.Contains("sharpness", run.Output, StringComparison.Ordinal);
        Assert.Empty(run.Error);
    }

    [Fact]
    public async Task Poor_photos_among_good_ones_end_with_4_and_the_answer_tells_of_all()
    {
        var run = await CommandLine.RunAsync(
            "check", SamplePhotos.PhotoPath("p01"), folder.Make("blurred beyond use"), folder.Make("text"), "--json");

        Assert.Equal(ExitCode.SomeInputsUnusable, run.ExitCode);
        using var answer = JsonDocument.Parse(run.Output);
        Assert.Equal("sectionscan/check/1", answer.RootElement.GetProperty("schema").GetString());
        var results = answer.RootElement.GetProperty("results").EnumerateArray().ToArray();
        Assert.Equal(["good", "poor", "poor"], results.Select(r => r.GetProperty("verdict").GetString()));
        Assert.Contains(
            results[1].GetProperty("items").EnumerateArray(),
            i => i.GetProperty("code").GetString() == "too-blurred" && i.GetProperty("verdict").GetString() == "poor");
        Assert.Equal("not-a-photo", results[2].GetProperty("error").GetProperty("code").GetString());
        Assert.Contains("too-blurred", run.Output, StringComparison.Ordinal);
        Assert.Contains("focus", run.Error, StringComparison.Ordinal);
    }
}
