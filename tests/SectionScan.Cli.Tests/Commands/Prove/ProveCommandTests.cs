using System.Text;
using System.Text.Json;
using SectionScan.Testing.Sections;

namespace SectionScan.Cli.Tests.Commands.Prove;

/// <summary>Circles of 40 mm as the target, of 40.2 mm and of 41 mm as finished.</summary>
public sealed class ProveCommandTests : IDisposable
{
    private readonly PhotoFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData(40.2, "conforms")]
    [InlineData(41, "does not conform")]
    public async Task The_verdict_is_told(double diameterMm, string verdict)
    {
        var run = await CommandLine.RunAsync("prove", Circle("target", 40), Circle("finished", diameterMm), "--json");

        using var answer = JsonDocument.Parse(run.Output);
        Assert.Equal("sectionscan/prove/1", answer.RootElement.GetProperty("schema").GetString());
        Assert.Equal(verdict, answer.RootElement.GetProperty("verdict").GetString());
    }

    [Fact]
    public async Task An_outline_of_unknown_error_is_refused_unless_its_error_is_given()
    {
        var bare = folder.Bytes("bare.csv", Encoding.UTF8.GetBytes("x_mm,y_mm\n20,0\n0,20\n-20,0\n0,-20\n"));

        var run = await CommandLine.RunAsync("prove", bare, bare);
        var given = await CommandLine.RunAsync("prove", bare, bare, "--other-u", "0.05");

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        Assert.Contains("--other-u", run.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Done, given.ExitCode);
        Assert.Contains("conforms", given.Output, StringComparison.Ordinal);
    }

    // A proof that leaves a station out must not pass: nobody would miss it.
    [Fact]
    public async Task A_station_without_a_finished_section_is_named_and_the_proof_is_not_complete()
    {
        foreach (var (port, stations) in new[] { ("targets", new[] { 1, 2, 3 }), ("done", [1, 2]) })
        {
            Directory.CreateDirectory(folder.PathOf(port));
            foreach (var station in stations)
            {
                folder.Bytes(Path.Combine(port, $"s{station}.section.json"), Encoding.UTF8.GetBytes(SampleSections.Document(SampleSections.Ellipse(40, 40), station)));
            }
        }

        var run = await CommandLine.RunAsync("prove", folder.PathOf("targets"), folder.PathOf("done"), "--out", folder.Out);

        Assert.Equal(ExitCode.SomeInputsUnusable, run.ExitCode);
        Assert.Contains("s3", run.Error, StringComparison.Ordinal);
        var report = await File.ReadAllTextAsync(Path.Combine(folder.Out, "proof.html"));
        Assert.Contains("Not proved", report, StringComparison.Ordinal);
        Assert.DoesNotContain("Every section conforms to its target.", report, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--tolerance", "-1")]
    [InlineData("--tolerance-at", "ceiling=1,1")]
    [InlineData("--tolerance-at", "floor=1")]
    [InlineData("--guard", "9")]
    [InlineData("--paper", "napkin")]
    [InlineData("--fit", "guess")]
    [InlineData("--free", "x,z")]
    public async Task Options_that_mean_nothing_are_wrong_usage(string option, string value) => Assert.Equal(
        ExitCode.WrongUsage, (await CommandLine.RunAsync("prove", Circle("target", 40), Circle("finished", 40), option, value)).ExitCode);

    private string Circle(string name, double diameterMm) => folder.Bytes(
        name + ".section.json", Encoding.UTF8.GetBytes(SampleSections.Document(SampleSections.Ellipse(diameterMm, diameterMm))));
}
