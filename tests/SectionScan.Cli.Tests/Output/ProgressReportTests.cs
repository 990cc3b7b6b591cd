using SectionScan.Cli.Options;
using SectionScan.Cli.Output;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Progress;

namespace SectionScan.Cli.Tests.Output;

public class ProgressReportTests : TerminalTest
{
    [Fact]
    public void A_person_sees_progress_on_standard_error()
    {
        var done = Follow(Terminal.ForScreen(Answers, Messages, 100, hasColours: false), isJson: false);

        Assert.Equal(2, done);
        Assert.Contains("Digitising 2 of 2: [b].jpg", Messages.ToString(), StringComparison.Ordinal);
        Assert.Empty(Answers.ToString());
    }

    [Theory]
    [InlineData(true, true)]
    [InlineData(false, false)]
    public void A_program_sees_none(bool isWatched, bool isJson)
    {
        var terminal = isWatched ? Terminal.ForScreen(Answers, Messages, 100, hasColours: false) : Terminal.ForWriters(Answers, Messages);

        var done = Follow(terminal, isJson);

        Assert.Equal(2, done);
        Assert.Empty(Messages.ToString());
        Assert.Empty(Answers.ToString());
    }

    [Fact]
    public void What_the_work_throws_passes_through()
    {
        var report = new ProgressReport(Terminal.ForScreen(Answers, Messages, 100, hasColours: false));

        Assert.Throws<OperationCanceledException>(
            () => report.Follow<int>("Digitising", new OutputSettings(), _ => throw new OperationCanceledException()));
    }

    private static int Follow(Terminal terminal, bool isJson) =>
        new ProgressReport(terminal).Follow("Digitising", new OutputSettings { IsJson = isJson }, progress =>
        {
            progress.Report(new JobProgress(1, 2, "[a].jpg"));
            progress.Report(new JobProgress(2, 2, "[b].jpg"));
            return 2;
        });
}
