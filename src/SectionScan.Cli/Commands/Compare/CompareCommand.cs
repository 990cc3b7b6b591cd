using SectionScan.Cli.Options;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Results;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Compare;

/// <summary>Compares a section with a reference.</summary>
internal sealed class CompareCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<CompareSettings>
{
    public override int Execute(CommandContext context, CompareSettings settings, CancellationToken cancellationToken)
    {
        var library = LibraryOption.PathOf(settings.Library);
        if (!SectionInput.Read(settings.Reference, library, TimeProvider.System).TryGet(out var reference, out var problem)
            || !SectionInput.Read(settings.Measured, library, TimeProvider.System).TryGet(out var measured, out problem)
            || !SectionComparison.With(reference, measured, settings.Chosen).TryGet(out var comparison, out problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        var unit = settings.Units.OfLength;
        IReadOnlyList<string> files = [];
        if (settings.Out is not null && !Write(comparison, unit, settings.Out).TryGet(out files!, out problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(ComparisonAnswer.Of(comparison, settings.AlignWord));
        }
        else
        {
            Show(comparison, unit);
            foreach (var file in files)
            {
                terminal.Answers.WriteLine(file);
            }
        }

        return ExitCode.Done;
    }

    private static Result<IReadOnlyList<string>> Write(SectionComparison comparison, LengthUnit unit, string path)
    {
        var name = $"{FileNames.Safe(comparison.Measured.Name)}-on-{FileNames.Safe(comparison.Reference.Name)}";
        var page = comparison.Draw(unit);
        return OutputFolder.Open(path).Then(folder =>
            folder.Write(name + ".svg", stream => SvgWriter.Write(page, stream)).Then(svg =>
                folder.Write(name + ".pdf", stream => PdfWriter.Write([page], stream, page.Title)).Then(pdf =>
                    folder.Write(name + ".csv", comparison.ToCsv()).Then<IReadOnlyList<string>>(csv => new[] { svg, pdf, csv }))));
    }

    private void Show(SectionComparison comparison, LengthUnit unit)
    {
        var result = comparison.Result;
        terminal.Answers.WriteLine($"{comparison.Measured.Name} on {comparison.Reference.Name}: + metal already gone, - metal left");
        var figures = new Table().Border(TableBorder.Simple).HideHeaders().AddColumn("figure").AddColumn("value");
        if (!comparison.Alignment.ByHand.IsNone)
        {
            figures.AddRow("aligned by hand", comparison.Alignment.ByHand.InWords(unit == LengthUnit.Inch));
        }

        figures.AddRow("mean deviation", MeasureText.Deviation(result.MeanDeviationMm, unit));
        figures.AddRow("rms deviation", MeasureText.Length(new(result.RmsDeviationMm, 0), unit));
        figures.AddRow("highest", $"{MeasureText.Deviation(result.Highest.DeviationMm, unit)} at the {Place(result.Highest)}");
        figures.AddRow("lowest", $"{MeasureText.Deviation(result.Lowest.DeviationMm, unit)} at the {Place(result.Lowest)}");
        figures.AddRow("U of a deviation (k = 2)", double.IsNaN(comparison.DeviationExpandedUncertaintyMm)
            ? "not known" : MeasureText.Length(new(comparison.DeviationExpandedUncertaintyMm, 0), unit));
        figures.AddRow("overlap (IoU)", FormattableString.Invariant($"{result.IntersectionOverUnion:0.0000}"));
        figures.AddRow("Hausdorff, 95 %", $"{MeasureText.Length(new(result.HausdorffMm, 0), unit)}, {MeasureText.Length(new(result.Hausdorff95Mm, 0), unit)}");
        figures.AddRow("discrete Fréchet", MeasureText.Length(new(result.DiscreteFrechetMm, 0), unit));
        figures.AddRow("Procrustes", FormattableString.Invariant($"{result.Procrustes.FullDistance:0.00000}"));
        var measures = new Table().Border(TableBorder.Simple).AddColumn("measure");
        foreach (var heading in new[] { "reference", "measured", "difference" })
        {
            measures.AddColumn(new TableColumn(heading).RightAligned());
        }

        foreach (var each in comparison.Measures)
        {
            measures.AddRow(each.Measure.Label, each.InWords(each.Reference, unit), each.InWords(each.Measured, unit), each.InWords(each.Difference, unit));
        }

        terminal.WriteTable(measures);
        terminal.WriteTable(figures);
        var sides = new Table().Border(TableBorder.Simple).AddColumn("side");
        foreach (var heading in new[] { "mean", "lowest", "highest", "gone, mm³/mm", "left, mm³/mm" })
        {
            sides.AddColumn(new TableColumn(heading).RightAligned());
        }

        foreach (var region in result.Regions)
        {
            sides.AddRow(
                RegionWords.Of(region.Region), MeasureText.Deviation(region.MeanMm, unit),
                MeasureText.Deviation(region.LowestMm, unit), MeasureText.Deviation(region.HighestMm, unit),
                FormattableString.Invariant($"{region.GoneMm3PerMm:0.00}"), FormattableString.Invariant($"{region.LeftMm3PerMm:0.00}"));
        }

        terminal.WriteTable(sides);
        if (comparison.IsWithinUncertainty)
        {
            terminal.Answers.WriteLine("The two cannot be told apart: no deviation is larger than its uncertainty.");
        }
    }

    private static string Place(DeviationSample sample) =>
        FormattableString.Invariant($"{RegionWords.Of(sample.Region)} ({sample.Direction.Degrees:0}°)");
}
