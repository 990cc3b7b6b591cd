using System.Globalization;
using SectionScan.Cli.Options;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Digitising;
using SectionScan.Jobs.Files;
using SectionScan.Jobs.Outlines;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Results;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Outlines;

/// <summary>Makes section documents of drawings.</summary>
internal sealed class ImportOutlineCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<ImportOutlineSettings>
{
    public override int Execute(CommandContext context, ImportOutlineSettings settings, CancellationToken cancellationToken)
    {
        var import = settings.Import;
        var stems = FileNames.Unique(settings.Drawings.Select(drawing => FileNames.Safe(Path.GetFileNameWithoutExtension(drawing))));
        var results = settings.Drawings.Zip(stems, (drawing, stem) => (Drawing: drawing, Result: import.Read(drawing).Then(section =>
            Written(settings, stem, section)))).ToList();
        var failed = results.Select(each => each.Result.TryGet(out _, out var problem) ? null : problem).OfType<Problem>().ToList();
        failed.ForEach(problems.Print);
        if (settings.IsJson)
        {
            json.Write(new { Schema = "sectionscan/import-outline/1", Results = results.Select(each => Answer(each.Drawing, each.Result, settings.Units)) });
        }
        else
        {
            Show(results, settings.Units);
        }

        return ExitCode.OfBatch(results.Count - failed.Count, failed.Count);
    }

    private static Result<WrittenSection> Written(ImportOutlineSettings settings, string stem, ImportedSection section)
    {
        var name = section.Document.Section.Station is { } station
            ? FormattableString.Invariant($"{stem}.station-{station}.section.json")
            : $"{stem}.section.json";
        return OutputFolder.Open(settings.Out).Then(folder => settings.Replace ? folder.Write(name, section.ToJson()) : folder.WriteUnlessTaken(name, section.ToJson())).Then<WrittenSection>(path => new WrittenSection(section, path));
    }

    private static object Answer(string drawing, Result<WrittenSection> result, UnitOption units)
    {
        if (!result.TryGet(out var written, out var problem))
        {
            return new { Drawing = drawing, Status = "failed", Error = new { problem.Code, Message = problem.What, problem.Remedy } };
        }

        var section = written.Section.Document.Section;
        return new
        {
            Drawing = drawing,
            Status = "ok",
            Error = (object?)null,
            File = written.Path,
            section.Station,
            Outline = section.Outline.Points.ToArray().Select(p => new[] { p.XMm, p.YMm }),
            Measures = written.Section.Measured.Quantities.ToDictionary(q => q.Measure.Name, q =>
            {
                var (estimate, unit) = MeasureUnits.In(q, units == UnitOption.Inch);
                var isKnown = section.ErrorSources.Count > 0;
                return new Dictionary<string, object?>
                {
                    ["value"] = estimate.Value,
                    ["u"] = isKnown ? estimate.StandardUncertainty : null,
                    ["U"] = isKnown ? estimate.ExpandedUncertainty : null,
                    ["unit"] = unit,
                };
            }),
            section.Warnings,
        };
    }

    private void Show(List<(string Drawing, Result<WrittenSection> Result)> results, UnitOption units)
    {
        var unit = units.OfLength;
        var table = new Table().Border(TableBorder.Simple).AddColumn("drawing");
        foreach (var heading in new[] { "station", "area", "width", "height" })
        {
            table.AddColumn(new TableColumn(heading).RightAligned());
        }

        var written = results.Select(each => each.Result.TryGet(out var one, out _) ? (each.Drawing, One: one) : default).Where(each => each.One is not null).ToList();
        foreach (var (drawing, one) in written)
        {
            var measured = one.Section.Measured;
            table.AddRow(
                new Text(Path.GetFileName(drawing)),
                new Text(one.Section.Document.Section.Station?.ToString(CultureInfo.InvariantCulture) ?? "-"),
                new Text(MeasureText.Area(measured[MeasureCatalogue.Area].Estimate, unit)),
                new Text(MeasureText.Length(measured[MeasureCatalogue.Width].Estimate, unit)),
                new Text(MeasureText.Length(measured[MeasureCatalogue.Height].Estimate, unit)));
        }

        if (written.Count > 0)
        {
            terminal.WriteTable(table);
        }

        foreach (var (drawing, one) in written)
        {
            one.Section.Document.Section.Warnings.ToList().ForEach(warning => terminal.Answers.WriteLine($"{Path.GetFileName(drawing)}: {warning}"));
            terminal.Answers.WriteLine(one.Path);
        }
    }

    private sealed record WrittenSection(ImportedSection Section, string Path);
}
