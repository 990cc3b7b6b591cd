using System.Text.Json;
using SectionScan.Testing.Truth;

namespace SectionScan.Cli.Tests.Commands.Digitise;

/// <summary>Photos that cannot be used, through the front door.</summary>
public sealed class UnusablePhotoTests : IDisposable
{
    private readonly PhotoFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("no target", "no-target")]
    [InlineData("blurred beyond use", "too-blurred")]
    [InlineData("no target for blur", "no-target")]
    [InlineData("truncated", "photo-damaged")]
    [InlineData("header only", "photo-damaged", "not-a-photo")]
    [InlineData("text", "not-a-photo")]
    [InlineData("empty", "not-a-photo")]
    [InlineData("one pixel", "photo-too-small")]
    [InlineData("directory", "photo-is-a-folder")]
    [InlineData("missing", "photo-not-found")]
    [InlineData("huge", "photo-too-many-pixels")]
    [InlineData("no slices", "no-slices")]
    [InlineData("off the window", "slice-runs-off")]
    public async Task A_photo_that_cannot_be_used_is_refused_with_one_message_and_leaves_nothing(string name, params string[] codes)
    {
        var photo = folder.Make(name);

        var told = await CommandLine.RunAsync("digitise", photo, "--thickness", "6", "--out", folder.Out);
        var asked = await CommandLine.RunAsync("digitise", photo, "--thickness", "6", "--out", folder.Out, "--json");

        Assert.Equal(ExitCode.UnusableInput, told.ExitCode);
        Assert.Empty(told.Output);
        AssertOneProblem(told.Error, photo);
        Assert.Equal(ExitCode.UnusableInput, asked.ExitCode);
        using var answer = JsonDocument.Parse(asked.Output);
        var result = Assert.Single(answer.RootElement.GetProperty("results").EnumerateArray());
        Assert.Equal("failed", result.GetProperty("status").GetString());
        Assert.Contains(result.GetProperty("error").GetProperty("code").GetString(), codes);
        Assert.NotEmpty(result.GetProperty("error").GetProperty("message").GetString()!);
        Assert.NotEmpty(result.GetProperty("error").GetProperty("remedy").GetString()!);
        Assert.Empty(result.GetProperty("sections").EnumerateArray());
        Assert.Equal(told.Error, asked.Error);
        Assert.Empty(folder.Written);
    }

    [Fact]
    public async Task A_folder_of_which_one_photo_is_bad_keeps_the_good_ones()
    {
        var good = folder.Resized("p01", "good.jpg", 0.5);
        var bad = folder.Make("truncated");

        var run = await CommandLine.RunAsync("digitise", bad, good, "--thickness", "6", "--out", folder.Out, "--json");

        Assert.Equal(ExitCode.SomeInputsUnusable, run.ExitCode);
        using var answer = JsonDocument.Parse(run.Output);
        var results = answer.RootElement.GetProperty("results").EnumerateArray().ToArray();
        Assert.Equal(["failed", "ok"], results.Select(result => result.GetProperty("status").GetString()));
        Assert.Equal(["cut.jpg", "good.jpg"], results.Select(result => result.GetProperty("photo").GetProperty("file").GetString()));
        Assert.Contains("good.outlines.jpg", folder.Written);
        Assert.Equal(4, folder.Written.Count(name => name.EndsWith(".section.json", StringComparison.Ordinal)));
        Assert.DoesNotContain(folder.Written, name => name.StartsWith("cut", StringComparison.Ordinal) || name.EndsWith(".part", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_slice_that_the_frame_cuts_is_refused_and_the_others_are_measured()
    {
        var photo = folder.CutThroughTheFourthSlice();

        var run = await CommandLine.RunAsync("digitise", photo, "--thickness", "6", "--json");

        Assert.Equal(ExitCode.Done, run.ExitCode);
        using var answer = JsonDocument.Parse(run.Output);
        var result = answer.RootElement.GetProperty("results")[0];
        Assert.Equal([1, 2, 3], result.GetProperty("sections").EnumerateArray().Select(section => section.GetProperty("station").GetInt32()));
        Assert.Contains("reaches the border", run.Error, StringComparison.Ordinal);
        Assert.Contains(
            result.GetProperty("warnings").EnumerateArray(),
            warning => warning.GetString()!.Contains("reaches the border", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("-1")]
    [InlineData("61")]
    [InlineData("NaN")]
    [InlineData("six")]
    [InlineData("6,5")]
    public async Task A_thickness_that_is_none_is_wrong_usage(string thickness)
    {
        var run = await CommandLine.RunAsync("digitise", SamplePhotos.PhotoPath("p01"), "--thickness", thickness, "--out", folder.Out, "--json");

        Assert.Equal(ExitCode.WrongUsage, run.ExitCode);
        Assert.Empty(run.Output);
        Assert.Contains(thickness, run.Error, StringComparison.Ordinal);
        Assert.Contains("remedy", run.Error, StringComparison.Ordinal);
        Assert.Empty(folder.Written);
    }

    [Fact]
    public async Task A_thickness_in_inches_is_told_and_not_taken_for_millimetres()
    {
        var run = await CommandLine.RunAsync("digitise", SamplePhotos.PhotoPath("p01"), "--thickness", "0.236", "--units", "in", "--out", folder.Out);

        Assert.Equal(ExitCode.WrongUsage, run.ExitCode);
        Assert.Contains("--thickness 5.99", run.Error.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Empty(folder.Written);
    }

    [Theory]
    [InlineData("text", "not-a-lens-profile")]
    [InlineData("empty", "not-a-lens-profile")]
    [InlineData("directory", "cannot-read")]
    [InlineData("missing", "cannot-read")]
    public async Task A_lens_profile_that_cannot_be_read_fails_every_photo(string name, string code)
    {
        var run = await CommandLine.RunAsync(
            "digitise", SamplePhotos.PhotoPath("p01"), SamplePhotos.PhotoPath("p02"), "--lens", folder.Make(name), "--out", folder.Out, "--json");

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        AssertAllFailed(run, 2, code);
        Assert.Empty(folder.Written);
    }

    [Fact]
    public async Task A_lens_profile_of_another_picture_size_is_refused()
    {
        var lens = folder.PathOf("phone.lens.json");
        var photos = Enumerable.Range(1, 6).Select(i => SamplePhotos.PhotoPath($"c0{i}"));
        Assert.Equal(ExitCode.Done, (await CommandLine.RunAsync(["lens", .. photos, "--out", lens])).ExitCode);
        var cropped = folder.CutThroughTheFourthSlice();

        var run = await CommandLine.RunAsync("digitise", cropped, "--thickness", "6", "--lens", lens, "--out", folder.Out, "--json");

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        AssertAllFailed(run, 1, "lens-does-not-fit");
        Assert.Empty(folder.Written);
    }

    [Fact]
    public async Task A_result_folder_that_is_a_file_fails_every_photo()
    {
        folder.Bytes("out", [1]);

        var run = await CommandLine.RunAsync("digitise", SamplePhotos.PhotoPath("p01"), "--thickness", "6", "--out", folder.Out, "--json");

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        AssertAllFailed(run, 1, "cannot-write");
    }

    [Fact]
    public async Task A_disk_that_fills_up_leaves_nothing_of_the_photo()
    {
        // /dev/full takes no byte (full(4)); elsewhere there is no such thing.
        if (!File.Exists("/dev/full"))
        {
            return;
        }

        var photo = folder.Resized("p01", "photo.jpg", 0.5);
        Directory.CreateDirectory(folder.Out);
        File.CreateSymbolicLink(Path.Combine(folder.Out, "photo.station-3.svg.part"), "/dev/full");

        var run = await CommandLine.RunAsync("digitise", photo, "--thickness", "6", "--out", folder.Out, "--json");

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        AssertAllFailed(run, 1, "cannot-write");
        Assert.Empty(folder.Written);
    }

    private static void AssertAllFailed(CommandLine run, int count, string code)
    {
        using var answer = JsonDocument.Parse(run.Output);
        var results = answer.RootElement.GetProperty("results").EnumerateArray().ToArray();
        Assert.Equal(count, results.Length);
        Assert.All(results, result =>
        {
            Assert.Equal("failed", result.GetProperty("status").GetString());
            Assert.Equal(code, result.GetProperty("error").GetProperty("code").GetString());
        });
        AssertOneProblem(run.Error, null);
    }

    private static void AssertOneProblem(string error, string? where)
    {
        var lines = error.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(["problem", "where", "remedy"], lines.Select(line => line.TrimStart().Split(' ')[0]));
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
        if (where is not null)
        {
            Assert.Contains(where, lines[1], StringComparison.Ordinal);
        }
    }
}
