using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Comparing;
using SectionScan.Metrology.Frames;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Mark;

/// <summary>Marks the guide axis, the floor line or points in a section document.</summary>
internal sealed class MarkCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<MarkSettings>
{
    public override int Execute(CommandContext context, MarkSettings settings, CancellationToken cancellationToken)
    {
        if (!SectionMarking.Mark(settings.Section, settings.Marks, settings.IsCleared, settings.Out).TryGet(out var marks, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(new
            {
                Schema = "sectionscan/mark/1",
                GuideAxis = Ends(marks.GuideAxis),
                FloorLine = Ends(marks.FloorLine),
                Points = marks.Points.OrderBy(each => each.Key, StringComparer.Ordinal).Select(each => new { Name = each.Key, each.Value.XMm, each.Value.YMm }),
            });
            return ExitCode.Done;
        }

        terminal.Answers.WriteLine($"guide axis: {Text(marks.GuideAxis)}");
        terminal.Answers.WriteLine($"floor line: {Text(marks.FloorLine)}");
        foreach (var (name, point) in marks.Points.OrderBy(each => each.Key, StringComparer.Ordinal))
        {
            terminal.Answers.WriteLine($"{name}: {Text(point)}");
        }

        return ExitCode.Done;
    }

    private static double[][]? Ends(SectionLine? line) => line is null ? null : [[line.From.XMm, line.From.YMm], [line.To.XMm, line.To.YMm]];

    private static string Text(SectionLine? line) => line is null ? "not marked" : $"{Text(line.From)} to {Text(line.To)} mm";

    private static string Text(SectionPoint point) => FormattableString.Invariant($"{point.XMm:0.00},{point.YMm:0.00}");
}
