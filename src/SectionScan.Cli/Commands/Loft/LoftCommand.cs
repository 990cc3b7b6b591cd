using System.Globalization;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Lofts;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Loft;

/// <summary>Makes the solid of a port.</summary>
internal sealed class LoftCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<LoftSettings>
{
    public override int Execute(CommandContext context, LoftSettings settings, CancellationToken cancellationToken)
    {
        if (!LoftPort.Run(settings.Sections, settings.Stations, settings.Name, settings.Out, settings.Units.OfLength).TryGet(out var outcome, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(LoftAnswer.Of(outcome));
            return ExitCode.Done;
        }

        var units = new ShownUnits(settings.Units.OfLength);
        var figures = new Table().Border(TableBorder.Simple).HideHeaders().AddColumn("figure").AddColumn("value");
        figures.AddRow("stations", outcome.Loft.Stations.Count.ToString(CultureInfo.InvariantCulture));
        figures.AddRow("length of the centreline", MeasureText.Length(new(outcome.Port.LengthMm, 0), units.Unit));
        figures.AddRow("volume of the solid", $"{units.Volume(new(outcome.Mesh.VolumeMm3, 0))} {units.VolumeName}");
        figures.AddRow("volume from the sections", $"{units.Volume(outcome.Schedule.VolumeMm3)} {units.VolumeName}");
        figures.AddRow("surface", string.Create(CultureInfo.InvariantCulture, $"{outcome.Mesh.Triangles.Count} triangles, {(outcome.Mesh.IsClosed ? "closed" : "open")}"));
        terminal.WriteTable(figures);
        foreach (var file in outcome.Files)
        {
            terminal.Answers.WriteLine(file);
        }

        return ExitCode.Done;
    }
}
