using System.Globalization;
using SectionScan.Cli.Terminals;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Digitising;
using SectionScan.Metrology.Measures;
using Spectre.Console;

namespace SectionScan.Cli.Commands.Digitise;

/// <summary>The sections of a batch as a table for people: value ± expanded uncertainty (k = 2).</summary>
internal sealed class SectionTable(Terminal terminal)
{
    public void Show(IReadOnlyList<PhotoOutcome> outcomes, bool isInch)
    {
        var unit = isInch ? LengthUnit.Inch : LengthUnit.Millimetre;
        var table = new Table().Border(TableBorder.Simple).AddColumn("photo");
        foreach (var heading in new[] { "station", "area", "width", "height" })
        {
            table.AddColumn(new TableColumn(heading).RightAligned());
        }

        var files = 0;
        string? folder = null;
        foreach (var outcome in outcomes.Where(o => o.Problem is null))
        {
            files += outcome.Files.Count;
            folder ??= outcome.Files.Count > 0 ? Path.GetDirectoryName(outcome.Files[0]) : null;
            foreach (var done in outcome.Documents)
            {
                table.AddRow(
                    new Text(Path.GetFileName(outcome.Path)),
                    new Text(done.Document.Section.Station?.ToString(CultureInfo.InvariantCulture) ?? "-"),
                    new Text(MeasureText.Area(done.Measured[MeasureCatalogue.Area].Estimate, unit)),
                    new Text(MeasureText.Length(done.Measured[MeasureCatalogue.Width].Estimate, unit)),
                    new Text(MeasureText.Length(done.Measured[MeasureCatalogue.Height].Estimate, unit)));
            }
        }

        if (table.Rows.Count > 0)
        {
            terminal.WriteTable(table);
            terminal.Answers.WriteLine("Each value with its expanded uncertainty (k = 2, about 95 %).");
        }

        if (folder is not null)
        {
            terminal.Answers.WriteLine(FormattableString.Invariant($"{files} files written to {folder}"));
        }
    }
}
