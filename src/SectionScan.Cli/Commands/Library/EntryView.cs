using System.Globalization;
using SectionScan.Archive.Entries;
using SectionScan.Cli.Terminals;
using Spectre.Console;

namespace SectionScan.Cli.Commands.Library;

/// <summary>Entries as a table for people and as parts of a document for programs.</summary>
internal static class EntryView
{
    /// <summary>Writes entries as a table.</summary>
    public static void Show(Terminal terminal, IEnumerable<EntrySummary> entries)
    {
        var table = new Table().Border(TableBorder.Simple).AddColumn(new TableColumn("no.").RightAligned()).AddColumn("where");
        foreach (var heading in new[] { "area mm²", "width mm", "height mm" })
        {
            table.AddColumn(new TableColumn(heading).RightAligned());
        }

        table.AddColumn("tags");
        foreach (var entry in entries)
        {
            table.AddRow(
                new Text(entry.Id.ToString(CultureInfo.InvariantCulture)), new Text(entry.Place.Path + (entry.IsRemoved ? " (removed)" : string.Empty)),
                Number(entry.AreaMm2, "0.0"), Number(entry.WidthMm, "0.00"), Number(entry.HeightMm, "0.00"), new Text(string.Join(", ", entry.Tags)));
        }

        if (table.Rows.Count == 0)
        {
            terminal.Answers.WriteLine("No entry.");
            return;
        }

        terminal.Answers.Write(table);
    }

    /// <summary>An entry as part of a document.</summary>
    public static object Of(EntrySummary entry) => new
    {
        entry.Id,
        Path = entry.Place.Path,
        entry.Place.Head,
        Port = entry.Place.Port.ToString(),
        entry.Place.Station,
        entry.Place.Stage,
        Revision = entry.RevisionNumber,
        entry.IsRemoved,
        entry.AreaMm2,
        entry.WidthMm,
        entry.HeightMm,
        entry.Notes,
        entry.Tags,
        entry.Fields,
        entry.PhotoSha256,
        entry.AddedAt,
        entry.ChangedAt,
    };

    private static Text Number(double value, string format) => new(value.ToString(format, CultureInfo.InvariantCulture));
}
