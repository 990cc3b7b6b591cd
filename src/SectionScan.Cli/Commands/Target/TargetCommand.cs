using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Targets;
using SectionScan.Jobs.Targets;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Target;

/// <summary>Writes a scale target to print.</summary>
internal sealed class TargetCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<TargetSettings>
{
    public override int Execute(CommandContext context, TargetSettings settings, CancellationToken cancellationToken)
    {
        var kind = settings.Target switch
        {
            "sheet" => TargetKind.Sheet,
            "card" => TargetKind.Card,
            _ => TargetKind.StationTags,
        };
        if (!TargetFiles.Write(kind, PaperSize.FromName(settings.Paper)!, settings.Out).TryGet(out var files, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(new { Schema = "sectionscan/target/1", settings.Target, settings.Paper, Files = files });
            return ExitCode.Done;
        }

        foreach (var file in files)
        {
            terminal.Answers.WriteLine(file);
        }

        terminal.Answers.WriteLine("Print at 100 % (\"actual size\", not \"fit to page\"), then measure both check bars with a calliper.");
        terminal.Answers.WriteLine("Give what they read over what they should as --print-ratio X,Y, for example 199.6 of 200 mm: 0.998.");
        return ExitCode.Done;
    }
}
