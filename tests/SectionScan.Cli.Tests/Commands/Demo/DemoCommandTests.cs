using System.Text.Json;
using System.Text.RegularExpressions;
using SectionScan.Archive.Library;
using SectionScan.Testing.Truth;

namespace SectionScan.Cli.Tests.Commands.Demo;

public sealed partial class DemoCommandTests : IDisposable
{
    private readonly PhotoFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task The_demonstration_makes_a_page_whose_links_all_lead_somewhere_and_finds_the_cut_that_went_too_far()
    {
        var run = await CommandLine.RunAsync("demo", "--photos", SamplePhotos.Folder, "--out", folder.Out, "--json");

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Empty(run.Error);
        using var answer = JsonDocument.Parse(run.Output);
        Assert.Equal(26, answer.RootElement.GetProperty("sections").GetInt32());

        // sample-images/README.md: station 4 of the finished port is cut beyond the exemplar, no other.
        var stations = answer.RootElement.GetProperty("finished").EnumerateArray().ToArray();
        Assert.Equal(8, stations.Length);
        Assert.Equal([4], stations.Where(each => each.GetProperty("isBeyond").GetBoolean()).Select(each => each.GetProperty("station").GetInt32()));

        var page = await File.ReadAllTextAsync(Path.Combine(folder.Out, "index.html"));
        var links = Link().Matches(page).Select(match => Uri.UnescapeDataString(match.Groups["path"].Value)).ToList();
        Assert.True(links.Count > 30);
        Assert.All(links, link => Assert.True(File.Exists(Path.Combine(folder.Out, link)), link));
        Assert.Contains("rendered", page, StringComparison.Ordinal);
        Assert.Contains("local codes", page, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(folder.Out, "*.part", SearchOption.AllDirectories));
        using var library = SectionLibrary.Open(Path.Combine(folder.Out, "library.db"), TimeProvider.System).ValueOrThrow();
        Assert.Equal(24, library.List().ValueOrThrow().Count);
    }

    [Fact]
    public async Task Run_again_in_the_same_folder_it_makes_the_same_page()
    {
        Assert.Equal(ExitCode.Done, (await CommandLine.RunAsync("demo", "--photos", SamplePhotos.Folder, "--out", folder.Out)).ExitCode);
        var first = await File.ReadAllBytesAsync(Path.Combine(folder.Out, "index.html"));

        var again = await CommandLine.RunAsync("demo", "--photos", SamplePhotos.Folder, "--out", folder.Out);

        Assert.Equal(ExitCode.Done, again.ExitCode);
        Assert.EndsWith(Path.Combine(folder.Out, "index.html") + "\n", again.Output, StringComparison.Ordinal);
        Assert.Equal(first, await File.ReadAllBytesAsync(Path.Combine(folder.Out, "index.html")));
    }

    [Fact]
    public async Task A_folder_without_the_photographs_is_refused_before_anything_is_made()
    {
        var run = await CommandLine.RunAsync("demo", "--photos", folder.PathOf("nowhere"), "--out", folder.Out, "--json");

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        using var answer = JsonDocument.Parse(run.Output);
        Assert.Equal("failed", answer.RootElement.GetProperty("status").GetString());
        Assert.Equal("demo-photos-missing", answer.RootElement.GetProperty("error").GetProperty("code").GetString());
        Assert.Contains("--photos", run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder.Out));
    }

    [GeneratedRegex("(?:href|src)=\"(?<path>[^#\"]+)\"")]
    private static partial Regex Link();
}
