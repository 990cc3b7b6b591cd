using System.Globalization;
using SectionScan.Cli.Options;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Lofts;
using SectionScan.Metrology.Quantities;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Loft;

/// <summary>Makes the solid of a port.</summary>
internal sealed class LoftCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<LoftSettings>
{
    private const double CubicMmPerInch = Inch.Mm * Inch.Mm * Inch.Mm;

    public override int Execute(CommandContext context, LoftSettings settings, CancellationToken cancellationToken)
    {
        if (!LoftPort.Run(settings.Sections, settings.Stations, settings.Name, settings.Out).TryGet(out var outcome, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(LoftAnswer.Of(outcome));
            return ExitCode.Done;
        }

        var isInch = settings.Units == UnitOption.Inch;
        var figures = new Table().Border(TableBorder.Simple).HideHeaders().AddColumn("figure").AddColumn("value");
        figures.AddRow("stations", outcome.Loft.Stations.Count.ToString(CultureInfo.InvariantCulture));
        figures.AddRow("length of the centreline", MeasureText.Length(new(outcome.Port.LengthMm, 0), isInch ? LengthUnit.Inch : LengthUnit.Millimetre));
        figures.AddRow("volume of the solid", Volume(outcome.Mesh.VolumeMm3, isInch));
        figures.AddRow("volume from the sections", $"{Volume(outcome.Schedule.VolumeMm3.Value, isInch)} ± {Volume(outcome.Schedule.VolumeMm3.ExpandedUncertainty, isInch)}");
        figures.AddRow("surface", string.Create(CultureInfo.InvariantCulture, $"{outcome.Mesh.Triangles.Count} triangles, {(outcome.Mesh.IsClosed ? "closed" : "open")}"));
        terminal.Answers.Write(figures);
        foreach (var file in outcome.Files)
        {
            terminal.Answers.WriteLine(file);
        }

        return ExitCode.Done;
    }

    private static string Volume(double mm3, bool isInch) => isInch
        ? string.Create(CultureInfo.InvariantCulture, $"{mm3 / CubicMmPerInch:0.000} in³")
        : string.Create(CultureInfo.InvariantCulture, $"{mm3 / 1000:0.00} cm³");
}
