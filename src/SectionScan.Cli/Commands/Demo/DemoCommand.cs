using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Demo;
using SectionScan.Metrology.Results;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Demo;

/// <summary>Runs the main job on the sample photographs.</summary>
internal sealed class DemoCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json, ProgressReport progress) : Command<DemoSettings>
{
    private const string Schema = "sectionscan/demo/1";

    public override int Execute(CommandContext context, DemoSettings settings, CancellationToken cancellationToken)
    {
        var made = DemoPhotos.Find(settings.Photos, [Directory.GetCurrentDirectory(), AppContext.BaseDirectory]).Then(photos =>
        {
            var order = new DemoOrder(photos, settings.Out, $"{SectionScanApp.Name} {SectionScanApp.Version}", TimeProvider.System);
            return progress.Follow("Demonstration", settings, follow => RunDemo.Run(order, follow, cancellationToken));
        });
        if (!made.TryGet(out var outcome, out var problem))
        {
            return Refuse(settings, problem);
        }

        if (settings.IsJson)
        {
            json.Write(new
            {
                Schema,
                Status = "ok",
                Page = outcome.PagePath,
                Library = outcome.LibraryPath,
                Sections = outcome.SectionCount,
                Finished = outcome.Finished.Select(each => new
                {
                    each.Station,
                    MeanDeviationMm = each.Result.MeanDeviationMm,
                    LowestDeviationMm = each.Result.Lowest.DeviationMm,
                    HighestDeviationMm = each.Result.Highest.DeviationMm,
                    each.DeviationExpandedUncertaintyMm,
                    each.IsBeyond,
                }),
            });
        }
        else
        {
            Tell(outcome);
        }

        return ExitCode.Done;
    }

    private void Tell(DemoOutcome outcome)
    {
        terminal.Answers.WriteLine(FormattableString.Invariant(
            $"{outcome.SectionCount} sections measured (rendered photographs, invented engine)."));
        foreach (var each in outcome.Finished.Where(each => each.IsBeyond))
        {
            terminal.Answers.WriteLine(FormattableString.Invariant(
                $"Finished port, station {each.Station}: {each.Result.Highest.DeviationMm:0.00} ± {each.DeviationExpandedUncertaintyMm:0.00} mm beyond the exemplar."));
        }

        // The path on a line of its own, past the width of the screen: it is there to be copied.
        terminal.Answers.WriteLine("Open this page in a browser:");
        terminal.Answers.Profile.Out.Writer.WriteLine(outcome.PagePath);
    }

    private int Refuse(DemoSettings settings, Problem problem)
    {
        if (settings.IsJson)
        {
            json.Write(new { Schema, Status = "failed", Error = new { problem.Code, Message = problem.What, problem.Remedy } });
        }

        problems.Print(problem);
        return ExitCode.UnusableInput;
    }
}
