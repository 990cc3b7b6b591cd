using System.Globalization;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Ports;
using SectionScan.Porting.Ports;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Port;

/// <summary>Ties the sections of one port together.</summary>
internal sealed class PortCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<PortSettings>
{
    public override int Execute(CommandContext context, PortSettings settings, CancellationToken cancellationToken)
    {
        var name = settings.Name ?? Path.GetFileName(settings.Out).Replace(".port.json", "", StringComparison.OrdinalIgnoreCase);
        var made = PortFiles.Make(
            name, settings.Kind == "intake" ? PortKind.Intake : PortKind.Exhaust, settings.Sections, settings.Stations, settings.BowlFrom, settings.Out,
            $"{SectionScanApp.Name} {SectionScanApp.Version}");
        if (!made.TryGet(out var document, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(new
            {
                Schema = "sectionscan/port-result/1",
                File = settings.Out,
                document.Port.Name,
                Kind = settings.Kind,
                document.Port.LengthMm,
                Stations = document.Port.Stations.Select(station => station.Position.Station),
            });
        }
        else
        {
            terminal.Answers.WriteLine(string.Create(
                CultureInfo.InvariantCulture, $"{name}: {document.Port.Stations.Count} stations over {document.Port.LengthMm:0.##} mm."));
            terminal.Answers.WriteLine(settings.Out);
        }

        return ExitCode.Done;
    }
}
