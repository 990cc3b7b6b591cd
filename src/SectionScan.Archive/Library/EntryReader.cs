using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;
using SectionScan.Archive.Entries;
using SectionScan.Archive.Exchange;
using SectionScan.Archive.Search;
using SectionScan.Metrology.Results;

namespace SectionScan.Archive.Library;

/// <summary>Reads entries, within the transaction that the connection is in.</summary>
internal sealed class EntryReader(string path, SqliteConnection connection)
{
    public string Path => path;

    public SqliteConnection Connection => connection;

    public static string Word(RevisionAction action) => action.ToString().ToLowerInvariant();

    public Result<IReadOnlyList<EntrySummary>> List(EntryFilter filter)
    {
        var conditions = new QueryConditions(filter.IncludesRemoved);
        conditions.AddIf(filter.Head, "c.port_id IN (SELECT p.id FROM port p JOIN head h ON h.id = p.head_id WHERE h.name = {0})", EntryRules.Name);
        conditions.AddIf(filter.Stage, "c.stage = {0}", EntryRules.Name);
        conditions.AddIf(filter.PhotoSha256, "d.photo_sha256 = {0}", value => value.ToLowerInvariant());
        conditions.AddIf(filter.Tag, "r.id IN (SELECT t.revision_id FROM revision_tag t WHERE t.tag = {0})", EntryRules.Name);
        if (filter.Station is { } station)
        {
            conditions.Add("c.station = {0}", station);
        }

        if (filter.Port is { } port)
        {
            conditions.Add("p.kind = {0}", PortName.Word(port.Kind));
            conditions.Add("p.cylinder = {0}", port.Cylinder);
            conditions.Add("p.mark = {0}", port.Mark);
        }

        return SummaryQuery.InOrderOfPlace(connection, conditions);
    }

    public Result<IReadOnlyList<EntrySummary>> FindByNumbers(IReadOnlyList<NumberRange> ranges, bool includesRemoved) =>
        Within(ranges, includesRemoved).Then<IReadOnlyList<EntrySummary>>(conditions => SummaryQuery.InOrderOfPlace(connection, conditions));

    public Result<IReadOnlyList<EntrySummary>> FindByWords(string words, IReadOnlyList<NumberRange> ranges, int count, bool includesRemoved) =>
        IdsByWords(words, ranges, count, includesRemoved).Then<IReadOnlyList<EntrySummary>>(ids => Summaries(ids).ToList());

    /// <summary>The entries with all the words, or all entries when there is none, whose numbers lie in all the ranges.</summary>
    public Result<IReadOnlySet<long>> Matching(string words, IReadOnlyList<NumberRange> ranges)
    {
        if (words.Length > 0)
        {
            return IdsByWords(words, ranges, int.MaxValue, false).Then<IReadOnlySet<long>>(ids => ids.ToHashSet());
        }

        return Within(ranges, false).Then<IReadOnlySet<long>>(conditions => connection.Query<long>(
            $"SELECT c.entry_id {SummaryQuery.From} WHERE {conditions.Sql}", conditions.Parameters).ToHashSet());
    }

    public Result<long> Find(string entry)
    {
        if (long.TryParse(entry.AsSpan().Trim().TrimStart('#'), NumberStyles.None, CultureInfo.InvariantCulture, out var id))
        {
            return connection.ExecuteScalar<long>("SELECT count(*) FROM entry WHERE id = @id", new { id }) == 1
                ? id
                : EntryProblems.NotFound(path, entry);
        }

        return SectionPlace.Parse(entry).Then<long>(place => Holder(place) is { } holder ? holder : EntryProblems.NotFound(path, $"\"{entry}\""));
    }

    /// <summary>The entry that is not removed and stands at a place, or null.</summary>
    public long? Holder(SectionPlace place) => connection.QuerySingleOrDefault<long?>(
        """
        SELECT c.entry_id FROM head h JOIN port p ON p.head_id = h.id JOIN current_revision c ON c.port_id = p.id
        WHERE h.name = @Head AND p.kind = @Kind AND p.cylinder = @Cylinder AND p.mark = @Mark
            AND c.station = @Station AND c.stage = @Stage AND c.is_removed = 0
        """,
        new
        {
            Head = EntryRules.Name(place.Head),
            Kind = PortName.Word(place.Port.Kind),
            place.Port.Cylinder,
            Mark = EntryRules.Name(place.Port.Mark),
            place.Station,
            Stage = EntryRules.Name(place.Stage),
        });

    /// <summary>The entry that came in by this very revision, here or in the library that it was exported from, or null.</summary>
    public long? SameBeginning(ImportedRevision first) => connection.QueryFirstOrDefault<long?>(
        """
        SELECT r.entry_id FROM document d JOIN revision r ON r.document_id = d.id JOIN port p ON p.id = r.port_id JOIN head h ON h.id = p.head_id
        WHERE d.sha256 = @Sha256 AND r.number = 1 AND r.at = @at AND h.name = @Head AND p.kind = @kind AND p.cylinder = @Cylinder
            AND p.mark = @Mark AND r.station = @Station AND r.stage = @Stage ORDER BY r.entry_id
        """,
        new
        {
            first.Sound.Sha256,
            at = Moments.ToText(first.At),
            first.Sound.Content.Place.Head,
            kind = PortName.Word(first.Sound.Content.Place.Port.Kind),
            first.Sound.Content.Place.Port.Cylinder,
            first.Sound.Content.Place.Port.Mark,
            first.Sound.Content.Place.Station,
            first.Sound.Content.Place.Stage,
        });

    /// <summary>The entries of the given numbers, in their order.</summary>
    public IReadOnlyList<EntrySummary> Summaries(IEnumerable<long> ids) => SummaryQuery.Of(connection, [.. ids]);

    public Result<LibraryEntry> Show(long id)
    {
        if (Summaries([id]) is not [var summary])
        {
            return EntryProblems.NotFound(path, id.ToString(CultureInfo.InvariantCulture));
        }

        var tags = SummaryQuery.Tags(connection, "r.entry_id = @id", new { id });
        var fields = SummaryQuery.Fields(connection, "r.entry_id = @id", new { id });
        var rows = connection.Query<RevisionRow>(
            """
            SELECT r.id AS Id, r.number AS Number, r.action AS Action, r.reason AS Reason, r.at AS At, h.name AS Head, p.kind AS Kind,
                p.cylinder AS Cylinder, p.mark AS Mark, r.station AS Station, r.stage AS Stage, r.notes AS Notes, d.json AS Json,
                d.sha256 AS Sha256
            FROM revision r JOIN port p ON p.id = r.port_id JOIN head h ON h.id = p.head_id JOIN document d ON d.id = r.document_id
            WHERE r.entry_id = @id ORDER BY r.number
            """,
            new { id });
        return new LibraryEntry(summary, [.. rows.Select(row => row.ToRevision([.. tags[row.Id]], [.. fields[row.Id]]))]);
    }

    /// <summary>The hashes of the photos that any revision of the entries came from.</summary>
    public IReadOnlyList<string> PhotosOf(IReadOnlyList<long> ids) => [.. ids.Chunk(500).SelectMany(batch => connection.Query<string>(
        "SELECT d.photo_sha256 FROM revision r JOIN document d ON d.id = r.document_id WHERE r.entry_id IN @batch AND d.photo_sha256 IS NOT NULL",
        new { batch })).Distinct()];

    private Result<List<long>> IdsByWords(string words, IReadOnlyList<NumberRange> ranges, int count, bool includesRemoved)
    {
        if (WordPattern.From(words) is not { } pattern)
        {
            return SearchProblems.NoWords(path);
        }

        return Within(ranges, includesRemoved).Then<List<long>>(conditions =>
        {
            conditions.Add("words MATCH {0}", pattern);
            conditions.Parameters.Add("count", count);
            return connection.Query<long>(
                $"""
                SELECT words.rowid FROM words
                JOIN current_revision c ON c.entry_id = words.rowid
                JOIN revision r ON r.id = c.revision_id
                JOIN shape s ON s.document_id = r.document_id
                WHERE {conditions.Sql} ORDER BY words.rank, words.rowid LIMIT @count
                """,
                conditions.Parameters).AsList();
        });
    }

    private static Result<QueryConditions> Within(IReadOnlyList<NumberRange> ranges, bool includesRemoved)
    {
        var conditions = new QueryConditions(includesRemoved);
        foreach (var range in ranges)
        {
            if (RangeConditions.Add(conditions, range) is { } problem)
            {
                return problem;
            }
        }

        return conditions;
    }

    private sealed record RevisionRow(
        long Id,
        long Number,
        string Action,
        string Reason,
        string At,
        string Head,
        string Kind,
        long Cylinder,
        string Mark,
        long Station,
        string Stage,
        string Notes,
        string Json,
        string Sha256)
    {
        public EntryRevision ToRevision(IReadOnlyList<string> tags, IReadOnlyList<NumericField> fields)
        {
            var place = new SectionPlace(Head, new(PortName.KindOf(Kind)!.Value, (int)Cylinder, Mark), (int)Station, Stage);
            var action = Enum.Parse<RevisionAction>(Action, ignoreCase: true);
            return new((int)Number, action, Reason, Moments.FromText(At), new(place, Json, Notes, tags, fields), Sha256);
        }
    }
}
