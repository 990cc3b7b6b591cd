using System.Text.Json;
using SectionScan.Testing.Truth;

namespace SectionScan.Cli.Tests.Commands.Job;

public sealed class JobCommandTests : IDisposable
{
    private readonly PhotoFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task The_finished_port_comes_from_photos_to_a_report_in_one_command()
    {
        var run = await CommandLine.RunAsync("job", "run", Path.Combine(SamplePhotos.Folder, "finished.job.json"), "--out", folder.Out, "--json");

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Empty(run.Error);
        using var answer = JsonDocument.Parse(run.Output);
        var ports = answer.RootElement.GetProperty("ports").EnumerateArray().ToArray();
        Assert.Equal(["finished", "exemplar"], ports.Select(port => port.GetProperty("name").GetString()));

        // sample-images/truth: the areas that the photographs were rendered from, and the frusta between them.
        var truth = new[] { "p06", "p07" }.SelectMany(photo => SamplePhotos.TruthOf(photo).Sections).OrderBy(section => section.Station).ToList();
        var stations = ports[0].GetProperty("schedule").GetProperty("stations").EnumerateArray().ToArray();
        Assert.Equal(truth.Select(section => section.Station), stations.Select(each => (int?)each.GetProperty("station").GetInt32()));
        Assert.All(truth.Zip(stations), pair => Assert.InRange(
            pair.Second.GetProperty("areaMm2").GetProperty("value").GetDouble() / pair.First.AreaMm2, 0.995, 1.005));

        // sample-images/README.md: station 4 is cut beyond the exemplar, no other.
        var compared = answer.RootElement.GetProperty("comparisons")[0].GetProperty("stations").EnumerateArray();
        Assert.Equal([4], compared.Where(each => each.GetProperty("isBeyond").GetBoolean()).Select(each => each.GetProperty("station").GetInt32()));
        Assert.Equal("does not conform", answer.RootElement.GetProperty("proofs")[0].GetProperty("verdict").GetString());
        Assert.Equal(1, answer.RootElement.GetProperty("joints").GetArrayLength());
        Assert.True(ports[0].GetProperty("schedule").GetProperty("burette").GetProperty("agrees").GetBoolean());

        var html = await File.ReadAllTextAsync(answer.RootElement.GetProperty("report").GetProperty("html").GetString()!);
        Assert.Contains("rendered", html, StringComparison.Ordinal);
        Assert.Contains("invented for the demonstration", html, StringComparison.Ordinal);
        Assert.Contains("local codes", html, StringComparison.Ordinal);
        Assert.DoesNotContain("src=\"http", html, StringComparison.Ordinal);
        Assert.True(new FileInfo(answer.RootElement.GetProperty("report").GetProperty("pdf").GetString()!).Length > 100_000);
        Assert.Empty(Directory.GetFiles(folder.Out, "*.part", SearchOption.AllDirectories));

        await Later_commands_take_the_port_document(Path.Combine(folder.Out, "finished", "finished.port.json"), Path.Combine(folder.Out, "exemplar", "exemplar.port.json"));
    }

    [Fact]
    public async Task Run_again_a_job_gives_the_same_bytes()
    {
        File.Copy(SamplePhotos.PhotoPath("p03"), folder.PathOf("p03.jpg"));
        var job = folder.Bytes("small.job.json", System.Text.Encoding.UTF8.GetBytes(
            """
            {"schema": "sectionscan/job/1", "head": "Bramble 480 twin", "name": "runner", "printRatio": [1, 1],
             "ports": [{"name": "exemplar", "kind": "intake", "photos": ["p03.jpg"], "thicknessMm": 6, "stations": [
               {"station": 1, "distanceMm": 0}, {"station": 2, "distanceMm": 18}, {"station": 3, "distanceMm": 46}, {"station": 4, "distanceMm": 60}]}]}
            """));

        var first = await CommandLine.RunAsync("job", "run", job, "--out", folder.Out);
        var before = Directory.GetFiles(folder.Out, "*", SearchOption.AllDirectories).ToDictionary(path => path, File.ReadAllBytes);
        var second = await CommandLine.RunAsync("job", "run", job, "--out", folder.Out);

        Assert.Equal((ExitCode.Done, ExitCode.Done), (first.ExitCode, second.ExitCode));
        Assert.Contains("First run", first.Output, StringComparison.Ordinal);
        Assert.Contains("the same to the last byte", second.Output, StringComparison.Ordinal);
        Assert.All(before, file => Assert.Equal(file.Value, File.ReadAllBytes(file.Key)));
    }

    [Fact]
    public async Task A_job_whose_photo_is_missing_is_refused_before_anything_is_made()
    {
        var job = folder.Bytes("a.job.json", """{"schema": "sectionscan/job/1", "head": "h", "name": "n", "ports": [{"name": "p", "kind": "intake", "photos": ["gone.jpg"], "stations": [{"station": 1, "distanceMm": 0}, {"station": 2, "distanceMm": 9}]}]}"""u8.ToArray());

        var run = await CommandLine.RunAsync("job", "run", job, "--out", folder.Out, "--json");

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        Assert.Contains("job-file-missing", run.Output, StringComparison.Ordinal);
        Assert.Contains("gone.jpg", run.Error, StringComparison.Ordinal);
        Assert.Empty(folder.Written);
    }

    [Fact]
    public async Task Every_sample_job_is_sound()
    {
        foreach (var name in new[] { "exemplar", "as-cast", "finished" })
        {
            var run = await CommandLine.RunAsync("job", "check", Path.Combine(SamplePhotos.Folder, name + ".job.json"));

            Assert.Equal(ExitCode.Done, run.ExitCode);
            Assert.Contains("all there", run.Output.ReplaceLineEndings(" ").Replace("  ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        }
    }

    private async Task Later_commands_take_the_port_document(string finished, string exemplar)
    {
        var schedule = await CommandLine.RunAsync("schedule", finished, "--with", exemplar, "--by", "share", "--out", folder.PathOf("plots"));
        var speed = await CommandLine.RunAsync(
            "gas-speed", finished, "--bore", "92", "--stroke", "72.2", "--rod", "130", "--cylinders", "2", "--rpm-to", "6500", "--torque-rpm", "4000",
            "--valve", "40", "--stem", "7", "--throat", "34.8", "--flow", "103", "--test-pressure", "28", "--json");
        var impossible = await CommandLine.RunAsync("gas-speed", finished, "--bore", "92", "--stroke", "72.2", "--rod", "30", "--rpm-to", "6500");

        Assert.Equal((ExitCode.Done, ExitCode.Done, ExitCode.UnusableInput), (schedule.ExitCode, speed.ExitCode, impossible.ExitCode));
        Assert.Contains("Against exemplar: -", schedule.Output, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(folder.PathOf("plots"), "finished.schedule.pdf")));
        using var speeds = JsonDocument.Parse(speed.Output);

        // 103 cfm = 0.0486106 m³/s through about 828 mm².
        Assert.Equal(58.7, speeds.RootElement.GetProperty("bench")[0].GetProperty("leastSectionSpeedMPerS").GetDouble(), 0.3);
        Assert.Contains("cannot turn a crank", impossible.Error, StringComparison.Ordinal);
    }
}
