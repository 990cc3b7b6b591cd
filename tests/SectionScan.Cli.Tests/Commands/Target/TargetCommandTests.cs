namespace SectionScan.Cli.Tests.Commands.Target;

public sealed class TargetCommandTests : IDisposable
{
    private readonly PhotoFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("sheet", "a4", "sheet")]
    [InlineData("sheet", "letter", "sheet")]
    [InlineData("card", "a4", "card")]
    [InlineData("tags", "letter", "station-tags")]
    public async Task A_target_is_written_as_pdf_and_svg(string target, string paper, string name)
    {
        var run = await CommandLine.RunAsync("target", target, "--paper", paper, "--out", folder.Out);

        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Equal([$"{name}-{paper}.pdf", $"{name}-{paper}.svg"], folder.Written);
        Assert.Contains("100 %", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("ruler", "a4")]
    [InlineData("sheet", "a5")]
    public async Task An_unknown_target_or_paper_is_wrong_usage(string target, string paper)
    {
        var run = await CommandLine.RunAsync("target", target, "--paper", paper, "--out", folder.Out);

        Assert.Equal(ExitCode.WrongUsage, run.ExitCode);
        Assert.Empty(folder.Written);
    }
}
