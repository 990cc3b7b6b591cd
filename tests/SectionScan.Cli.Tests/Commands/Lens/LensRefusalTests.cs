using System.Text.Json;
using SectionScan.Testing.Truth;

namespace SectionScan.Cli.Tests.Commands.Lens;

/// <summary>Photos that make no lens profile.</summary>
public sealed class LensRefusalTests : IDisposable
{
    private readonly PhotoFolder folder = new();

    private string Profile => folder.PathOf("phone.lens.json");

    public void Dispose() => folder.Dispose();

    [Fact]
    public Task Three_photos_are_too_few() => RefusesAsync("lens-too-few-photos", Samples("c01", "c02", "c03"));

    [Fact]
    public Task A_photo_given_twice_counts_once() => RefusesAsync("lens-too-few-photos", Samples("c01", "c02", "c03", "c03"));

    [Fact]
    public Task Photos_from_one_direction_are_too_similar() => RefusesAsync(
        "lens-photos-too-similar",
        [SamplePhotos.PhotoPath("c01"), .. Enumerable.Range(0, 3).Select(i => folder.Bytes($"copy{i}.jpg", [.. File.ReadAllBytes(SamplePhotos.PhotoPath("c01")), (byte)i]))]);

    [Fact]
    public Task A_sheet_that_is_small_in_every_photo_covers_too_little() => RefusesAsync(
        "lens-poor-coverage", [.. new[] { "c01", "c02", "c03", "c04" }.Select(name => folder.Distant(name, name + ".jpg"))]);

    [Fact]
    public Task Photos_of_two_sizes_do_not_mix() => RefusesAsync(
        "lens-photos-mixed", [.. Samples("c01", "c02", "c03"), folder.Resized("c04", "c04.jpg", 0.5)]);

    [Fact]
    public Task Photos_without_the_sheet_make_none() => RefusesAsync(
        "lens-too-few-photos", [folder.Make("no target"), folder.Make("text"), folder.Make("missing"), folder.Make("truncated")]);

    [Fact]
    public async Task Photos_that_show_no_sheet_are_told_why_the_first_was_left_out_and_what_a_checkerboard_needs()
    {
        var photo = folder.Make("no target");

        var run = await CommandLine.RunAsync("lens", photo, "--out", Profile);

        Assert.Contains($"Of {photo}: No scale target is seen in the photo.", run.Error, StringComparison.Ordinal);
        Assert.Contains("Photos of a plain checkerboard need --checkerboard MM", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_profile_is_made_of_the_good_photos_when_one_is_bad()
    {
        var run = await CommandLine.RunAsync(
            ["lens", .. Samples("c01", "c03", "c05", "c07", "c09", "c10"), folder.Make("text"), "--out", Profile, "--json"]);

        Assert.Equal(ExitCode.SomeInputsUnusable, run.ExitCode);
        using var answer = JsonDocument.Parse(run.Output);
        Assert.Equal("ok", answer.RootElement.GetProperty("status").GetString());
        Assert.Equal("not-a-photo", answer.RootElement.GetProperty("leftOut")[0].GetProperty("code").GetString());
        Assert.True(File.Exists(Profile));
    }

    [Fact]
    public async Task A_profile_that_cannot_be_written_is_told()
    {
        folder.Bytes("file", [1]);

        var run = await CommandLine.RunAsync(
            ["lens", .. Samples("c01", "c03", "c05", "c07"), "--out", Path.Combine(folder.PathOf("file"), "phone.lens.json"), "--json"]);

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        using var answer = JsonDocument.Parse(run.Output);
        Assert.Equal("cannot-write", answer.RootElement.GetProperty("error").GetProperty("code").GetString());
    }

    private static string[] Samples(params string[] names) => Array.ConvertAll(names, SamplePhotos.PhotoPath);

    private async Task RefusesAsync(string code, string[] photos)
    {
        var told = await CommandLine.RunAsync(["lens", .. photos, "--out", Profile]);
        var asked = await CommandLine.RunAsync(["lens", .. photos, "--out", Profile, "--json"]);

        Assert.Equal(ExitCode.UnusableInput, told.ExitCode);
        Assert.Empty(told.Output);
        Assert.Equal(told.Error, asked.Error);
        Assert.DoesNotContain("   at ", told.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.UnusableInput, asked.ExitCode);
        using var answer = JsonDocument.Parse(asked.Output);
        Assert.Equal("failed", answer.RootElement.GetProperty("status").GetString());
        Assert.Equal(code, answer.RootElement.GetProperty("error").GetProperty("code").GetString());
        Assert.Contains(answer.RootElement.GetProperty("error").GetProperty("remedy").GetString()!, told.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(Profile));
        Assert.False(File.Exists(Profile + ".part"));
    }
}
