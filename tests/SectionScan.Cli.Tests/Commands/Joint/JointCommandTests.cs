using System.Text;
using System.Text.Json;
using SectionScan.Testing.Sections;

namespace SectionScan.Cli.Tests.Commands.Joint;

/// <summary>A port of 36 mm and a manifold of 37 mm.</summary>
public sealed class JointCommandTests : IDisposable
{
    private readonly PhotoFolder folder = new();
    private readonly string port;
    private readonly string manifold;

    public JointCommandTests()
    {
        port = folder.Bytes("port.section.json", Encoding.UTF8.GetBytes(SampleSections.Document(SampleSections.Ellipse(36, 36))));
        manifold = folder.Bytes("manifold.section.json", Encoding.UTF8.GetBytes(SampleSections.Document(SampleSections.Ellipse(37, 37))));
    }

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("intake", true)]
    [InlineData("exhaust", false)]
    public async Task The_answer_for_programs_tells_the_step_and_whether_it_faces_the_flow(string flow, bool isCut)
    {
        var run = await CommandLine.RunAsync("joint", "--port", port, "--manifold", manifold, "--flow", flow, "--json");

        Assert.Equal(ExitCode.Done, run.ExitCode);
        using var answer = JsonDocument.Parse(run.Output);
        Assert.Equal("sectionscan/joint/1", answer.RootElement.GetProperty("schema").GetString());
        var opening = answer.RootElement.GetProperty("openings")[0];
        Assert.Equal(0.5, opening.GetProperty("step").GetProperty("highest").GetProperty("deviationMm").GetDouble(), 0.01);
        Assert.Equal(isCut, opening.GetProperty("stretches")[0].GetProperty("facesFlow").GetBoolean());
        Assert.Equal(isCut ? 1 : 0, answer.RootElement.GetProperty("cautions").GetArrayLength());
    }

    [Fact]
    public async Task A_person_reads_what_to_cut_and_gets_picture_template_and_steps()
    {
        var run = await CommandLine.RunAsync("joint", "--port", port, "--manifold", manifold, "--out", folder.Out);

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Contains("cut the port", run.Output, StringComparison.Ordinal);
        Assert.Contains("Before you cut", run.Output, StringComparison.Ordinal);
        Assert.Contains(
            "The manifold's shift and turn are counted from where the middles of the two openings lie on each other; nothing was said of studs, pivot or limits",
            run.Output, StringComparison.Ordinal);
        Assert.Equal(8, folder.Written.Count);
    }

    [Theory]
    [InlineData("--flow", "sideways")]
    [InlineData("--pivot", "1,2")]
    [InlineData("--clearance", "0.5")]
    [InlineData("--port-studs", "1,2,3")]
    [InlineData("--shift", "-1")]
    [InlineData("--paper", "stamp")]
    [InlineData("--port-seen", "askance")]
    public async Task What_makes_no_sense_is_wrong_usage(string option, string value) =>
        Assert.Equal(ExitCode.WrongUsage, (await CommandLine.RunAsync("joint", "--port", port, "--manifold", manifold, option, value)).ExitCode);

    [Fact]
    public async Task A_face_that_cannot_be_read_is_refused_and_nothing_is_written()
    {
        var run = await CommandLine.RunAsync("joint", "--port", port, "--manifold", folder.PathOf("missing.jpg"), "--out", folder.Out);

        Assert.Equal(ExitCode.UnusableInput, run.ExitCode);
        Assert.Contains("missing.jpg", run.Error, StringComparison.Ordinal);
        Assert.Empty(folder.Written);
    }
}
