using System.Globalization;
using SectionScan.Archive.Entries;
using SectionScan.Cli.Options;
using SectionScan.Cli.Terminals;
using Spectre.Console;

namespace SectionScan.Cli.Commands.Library;

/// <summary>Entries as a table for people and as parts of a document for programs.</summary>
internal static class EntryView
{
    /// <summary>Writes entries as a table.</summary>
    public static void Show(Terminal terminal, IEnumerable<EntrySummary> entries, UnitOption units)
    {
        var table = new Table().Border(TableBorder.Simple).AddColumn(new TableColumn("no.").RightAligned()).AddColumn("where");
        foreach (var heading in new[] { $"area {units.AreaSymbol}", $"width {units.LengthSymbol}", $"height {units.LengthSymbol}" })
        {
            table.AddColumn(new TableColumn(heading).RightAligned());
        }

        table.AddColumn("tags");
        foreach (var entry in entries)
        {
            table.AddRow(
                new Text(entry.Id.ToString(CultureInfo.InvariantCulture)), new Text(entry.Place.Path + (entry.IsRemoved ? " (removed)" : string.Empty)),
                new Text(Area(entry.AreaMm2, units)), new Text(Length(entry.WidthMm, units)), new Text(Length(entry.HeightMm, units)),
                new Text(string.Join(", ", entry.Tags)));
        }

        if (table.Rows.Count == 0)
        {
            terminal.Answers.WriteLine("No entry.");
            return;
        }

        terminal.WriteTable(table);
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

    /// <summary>What one revision holds, as part of a document.</summary>
    public static object Of(EntryRevision revision) => new
    {
        revision.Number,
        revision.Action,
        revision.Reason,
        revision.At,
        Path = revision.Content.Place.Path,
        revision.Content.Notes,
        revision.Content.Tags,
        revision.Content.Fields,
        revision.DocumentSha256,
    };

    /// <summary>An area with its unit left out, as a table shows it.</summary>
    public static string Area(double areaMm2, UnitOption units) =>
        units.FromMm2(areaMm2).ToString(units == UnitOption.Inch ? "0.0000" : "0.0", CultureInfo.InvariantCulture);

    private static string Length(double lengthMm, UnitOption units) =>
        units.FromMm(lengthMm).ToString(units == UnitOption.Inch ? "0.0000" : "0.00", CultureInfo.InvariantCulture);
}
