using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Imaging.Checks;
using SectionScan.Imaging.Digitising;
using SectionScan.Jobs.Checking;
using SectionScan.Jobs.Lenses;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Results;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Check;

/// <summary>Looks at photos before they are measured.</summary>
internal sealed class CheckCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json, ProgressReport progress) : Command<CheckSettings>
{
    public override int Execute(CommandContext context, CheckSettings settings, CancellationToken cancellationToken)
    {
        LensProfile? lens = null;
        if (settings.Lens is not null && !LensFiles.Read(settings.Lens).TryGet(out lens, out var problem))
        {
            if (settings.IsJson)
            {
                json.Write(CheckAnswer.Of(settings.Photos.Select(photo => new CheckOutcome(photo, null, problem))));
            }

            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        var how = new DigitiseSettings
        {
            ThicknessMm = settings.Thickness,
            Lens = lens,
            PrintRatio = settings.PrintRatio is { } r ? (r.X, r.Y) : null,
        };
        var outcomes = progress.Follow("Checking", settings, follow => CheckPhotos.Run(settings.Photos, how, follow, cancellationToken));
        foreach (var outcome in outcomes)
        {
            Report(outcome);
        }

        if (settings.IsJson)
        {
            json.Write(CheckAnswer.Of(outcomes));
        }
        else
        {
            foreach (var outcome in outcomes.Where(o => o.Report is not null))
            {
                Show(outcome.Path, outcome.Report!);
            }
        }

        return ExitCode.OfBatch(outcomes.Count(o => o.IsUsable), outcomes.Count(o => !o.IsUsable));
    }

    /// <summary>What is poor as problems, what is fair as warnings, as <c>digitise</c> would tell them.</summary>
    private void Report(CheckOutcome outcome)
    {
        if (outcome.Problem is { } problem)
        {
            problems.Print(problem);
        }

        foreach (var item in outcome.Report?.Items ?? [])
        {
            var told = new Problem(item.Code, item.Finding, outcome.Path, item.Remedy);
            if (item.Verdict == CheckVerdict.Poor)
            {
                problems.Print(told);
            }
            else if (item.Verdict == CheckVerdict.Fair)
            {
                problems.PrintWarning(told);
            }
        }
    }

    private void Show(string path, PhotoReport report)
    {
        var table = new Table().Border(TableBorder.Simple)
            .AddColumn("looked at").AddColumn("verdict").AddColumn(new TableColumn("value").RightAligned())
            .AddColumn(new TableColumn("good").RightAligned()).AddColumn(new TableColumn("refused").RightAligned());
        foreach (var item in report.Items)
        {
            table.AddRow(
                new Text(item.Name), new Text(Word(item.Verdict), StyleOf(item.Verdict)), new Text(item.InWords(item.Value)),
                new Text(Limit(item, item.FairLimit, isGoodSide: true)),
                new Text(item.PoorLimit is { } poor ? Limit(item, poor, isGoodSide: false) : "-"));
        }

        terminal.Answers.WriteLine($"{Path.GetFileName(path)}: {Word(report.Verdict)}");
        terminal.WriteTable(table);
    }

    private static string Word(CheckVerdict verdict) => verdict switch
    {
        CheckVerdict.Good => "good",
        CheckVerdict.Fair => "fair",
        _ => "poor",
    };

    private static Style StyleOf(CheckVerdict verdict) => verdict switch
    {
        CheckVerdict.Good => new(Color.Green),
        CheckVerdict.Fair => new(Color.Yellow),
        _ => new(Color.Red, decoration: Decoration.Bold),
    };

    private static string Limit(CheckItem item, double limit, bool isGoodSide) =>
        $"{(isGoodSide ? item.IsWorseBelow ? "from" : "to" : item.IsWorseBelow ? "under" : "over")} {item.InWords(limit)}";
}
