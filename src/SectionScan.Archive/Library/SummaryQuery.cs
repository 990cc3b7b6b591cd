using Dapper;
using Microsoft.Data.Sqlite;
using SectionScan.Archive.Entries;

namespace SectionScan.Archive.Library;

/// <summary>Reads entries in short.</summary>
internal static class SummaryQuery
{
    private const string Select =
        """
        SELECT c.entry_id AS Id, r.id AS RevisionId, h.name AS Head, p.kind AS Kind, p.cylinder AS Cylinder, p.mark AS Mark,
            r.station AS Station, r.stage AS Stage, r.number AS Number, c.is_removed AS IsRemoved, first.at AS AddedAt, r.at AS ChangedAt,
            s.area_mm2 AS AreaMm2, s.width_mm AS WidthMm, s.height_mm AS HeightMm, d.photo_sha256 AS PhotoSha256, r.notes AS Notes
        """;

    /// <summary>The tables of an entry's present state: c, r, first, p, h, d and s.</summary>
    public const string From =
        """
        FROM current_revision c
        JOIN revision r ON r.id = c.revision_id
        JOIN revision first ON first.entry_id = c.entry_id AND first.number = 1
        JOIN port p ON p.id = r.port_id
        JOIN head h ON h.id = p.head_id
        JOIN document d ON d.id = r.document_id
        JOIN shape s ON s.document_id = r.document_id
        """;

    // Keeps a statement below SQLite's limit of parameters.
    private const int BatchSize = 500;

    public static List<EntrySummary> InOrderOfPlace(SqliteConnection connection, QueryConditions conditions)
    {
        var rows = connection.Query<Row>(
            $"{Select} {From} WHERE {conditions.Sql} ORDER BY h.name, p.kind DESC, p.cylinder, p.mark, r.station, r.stage, c.entry_id",
            conditions.Parameters).AsList();
        if (rows.Count <= BatchSize)
        {
            var parameters = new { ids = rows.Select(row => row.RevisionId) };
            return Complete(rows, Tags(connection, "r.id IN @ids", parameters), Fields(connection, "r.id IN @ids", parameters));
        }

        // Too many for a list of parameters: the same choice once more, which takes as long as the first time.
        var chosen = $"r.id IN (SELECT r.id {From} WHERE {conditions.Sql})";
        return Complete(rows, Tags(connection, chosen, conditions.Parameters), Fields(connection, chosen, conditions.Parameters));
    }

    public static List<EntrySummary> Of(SqliteConnection connection, long[] ids)
    {
        var found = new Dictionary<long, EntrySummary>();
        foreach (var batch in ids.Chunk(BatchSize))
        {
            var parameters = new { batch };
            var rows = connection.Query<Row>($"{Select} {From} WHERE c.entry_id IN @batch", parameters).AsList();
            const string Chosen = "r.id IN (SELECT revision_id FROM current_revision WHERE entry_id IN @batch)";
            foreach (var summary in Complete(rows, Tags(connection, Chosen, parameters), Fields(connection, Chosen, parameters)))
            {
                found[summary.Id] = summary;
            }
        }

        return [.. ids.Where(found.ContainsKey).Select(id => found[id])];
    }

    /// <summary>Tags by revision, of revisions r that meet a condition.</summary>
    public static ILookup<long, string> Tags(SqliteConnection connection, string condition, object parameters) =>
        connection.Query<TagRow>(
            $"""
            SELECT t.revision_id AS RevisionId, t.tag AS Tag FROM revision_tag t JOIN revision r ON r.id = t.revision_id
            WHERE {condition} ORDER BY t.revision_id, t.position
            """,
            parameters).ToLookup(row => row.RevisionId, row => row.Tag);

    /// <summary>Fields by revision, of revisions r that meet a condition.</summary>
    public static ILookup<long, NumericField> Fields(SqliteConnection connection, string condition, object parameters) =>
        connection.Query<FieldRow>(
            $"""
            SELECT f.revision_id AS RevisionId, f.name AS Name, f.value AS Value, f.unit AS Unit
            FROM revision_field f JOIN revision r ON r.id = f.revision_id
            WHERE {condition} ORDER BY f.revision_id, f.position
            """,
            parameters).ToLookup(row => row.RevisionId, row => new NumericField(row.Name, row.Value, row.Unit));

    private static List<EntrySummary> Complete(List<Row> rows, ILookup<long, string> tags, ILookup<long, NumericField> fields) =>
        rows.ConvertAll(row => new EntrySummary(
            row.Id,
            new(row.Head, new(PortName.KindOf(row.Kind)!.Value, (int)row.Cylinder, row.Mark), (int)row.Station, row.Stage),
            (int)row.Number,
            row.IsRemoved != 0,
            Moments.FromText(row.AddedAt),
            Moments.FromText(row.ChangedAt),
            row.AreaMm2,
            row.WidthMm,
            row.HeightMm,
            row.PhotoSha256,
            row.Notes,
            [.. tags[row.RevisionId]],
            [.. fields[row.RevisionId]]));

    private sealed record TagRow(long RevisionId, string Tag);

    private sealed record FieldRow(long RevisionId, string Name, double Value, string Unit);

    private sealed record Row(
        long Id,
        long RevisionId,
        string Head,
        string Kind,
        long Cylinder,
        string Mark,
        long Station,
        string Stage,
        long Number,
        long IsRemoved,
        string AddedAt,
        string ChangedAt,
        double AreaMm2,
        double WidthMm,
        double HeightMm,
        string? PhotoSha256,
        string Notes);
}
