using SectionScan.Cli.Options;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Progress;
using Spectre.Console;

namespace SectionScan.Cli.Output;

/// <summary>Shows how far a long command has come, on standard error, when a person is watching; otherwise does nothing.</summary>
public sealed class ProgressReport(Terminal terminal)
{
    /// <summary>Runs <paramref name="work"/> and shows its progress until it ends.</summary>
    /// <typeparam name="T">What the work returns.</typeparam>
    /// <param name="title">What is being done, e.g. <c>Digitising</c>.</param>
    /// <param name="settings">With <c>--json</c> no progress is shown: a program is listening.</param>
    /// <param name="work">The work; it may report from several threads.</param>
    /// <returns>What the work returned; its exceptions pass through.</returns>
    public T Follow<T>(string title, OutputSettings settings, Func<IProgress<JobProgress>, T> work)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(title);
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(work);

        if (!terminal.AreMessagesWatched || settings.IsJson)
        {
            return work(new Unseen());
        }

        return terminal.Messages.Progress()
            .AutoClear(true)
            .Columns(new TaskDescriptionColumn { Alignment = Justify.Left }, new ProgressBarColumn(), new ElapsedTimeColumn(), new SpinnerColumn())
            .Start(progress => work(new Shown(title, progress.AddTask(Markup.Escape(title)))));
    }

    private sealed class Unseen : IProgress<JobProgress>
    {
        public void Report(JobProgress value)
        {
        }
    }

    private sealed class Shown(string title, ProgressTask bar) : IProgress<JobProgress>
    {
        public void Report(JobProgress value)
        {
            bar.MaxValue = Math.Max(value.Total, 1);
            bar.Value = value.Done;
            bar.Description = Markup.Escape($"{title} {value.Done} of {value.Total}: {value.What}");
        }
    }
}
