using System.Globalization;
using Dapper;
using Microsoft.Data.Sqlite;
using SectionScan.Archive.Entries;
using SectionScan.Archive.Exchange;
using SectionScan.Archive.Search;
using SectionScan.Metrology.Likeness;
using SectionScan.Metrology.Results;

namespace SectionScan.Archive.Library;

/// <summary>Writes revisions, within the transaction that the connection is in.</summary>
internal sealed class EntryWriter(string path, SqliteConnection connection, TimeProvider time)
{
    public Result<long> Add(CheckedContent sound, string reason)
    {
        if (PlaceProblem(sound.Content.Place, null) is { } taken)
        {
            return taken;
        }

        var portId = PortId(sound.Content.Place);
        var id = NewId();
        Append(id, new(1, RevisionAction.Added, reason, time.GetUtcNow(), portId), sound, false);
        return id;
    }

    public Result<long> Revise(long id, CheckedContent sound, string reason, int? basedOn)
    {
        if (Standing(id, reason).TryGet(out var now, out var problem) && now.IsRemoved != 0)
        {
            problem = EntryProblems.IsRemoved(path, id);
        }

        if (problem is null && basedOn is { } based && based != now!.Number)
        {
            problem = EntryProblems.ChangedMeanwhile(path, id, based, (int)now.Number);
        }

        if (problem is not null)
        {
            return problem;
        }

        if (PlaceProblem(sound.Content.Place, id) is { } taken)
        {
            return taken;
        }

        var portId = PortId(sound.Content.Place);
        Append(id, new(now!.Number + 1, RevisionAction.Revised, reason, time.GetUtcNow(), portId), sound, false);
        return id;
    }

    /// <summary>Adds an entry with the history that it had in another library; its place must be free.</summary>
    public long Import(IReadOnlyList<ImportedRevision> revisions)
    {
        var id = NewId();
        Continue(id, revisions, 0);
        return id;
    }

    /// <summary>Adds to an entry the revisions of a history that it has the first <paramref name="known"/> of; the last one's place must be
    /// free or the entry's own.</summary>
    public void Continue(long id, IReadOnlyList<ImportedRevision> revisions, int known)
    {
        for (var i = known; i < revisions.Count; i++)
        {
            // Only the last one is made current: an earlier one may stand at a place that is taken here.
            var (action, reason, at, sound) = revisions[i];
            var header = new Header(i + 1, action, reason, at, PortId(sound.Content.Place));
            if (i + 1 < revisions.Count)
            {
                InsertContent(id, header, sound);
            }
            else
            {
                Append(id, header, sound, action == RevisionAction.Removed);
            }
        }
    }

    /// <summary>A reason as it is kept.</summary>
    public static string TidyReason(string reason) => reason.ReplaceLineEndings("\n").Trim();

    public Result<long> Mark(long id, RevisionAction action, string reason)
    {
        ArgumentNullException.ThrowIfNull(reason);
        if (!Standing(id, reason).TryGet(out var now, out var problem))
        {
            return problem;
        }

        if (action == RevisionAction.Removed && now.IsRemoved != 0)
        {
            return EntryProblems.IsRemoved(path, id);
        }

        if (action == RevisionAction.Restored && now.IsRemoved == 0)
        {
            return EntryProblems.IsNotRemoved(path, id);
        }

        var place = new EntryReader(path, connection).Summaries([id])[0].Place;
        if (action == RevisionAction.Restored && PlaceProblem(place, id) is { } taken)
        {
            return taken;
        }

        var revisionId = InsertRevision(id, new(now.Number + 1, action, reason, time.GetUtcNow(), now.PortId), place, now.Notes, now.DocumentId);
        connection.Execute(
            """
            INSERT INTO revision_tag SELECT @revisionId, position, tag FROM revision_tag WHERE revision_id = @Before;
            INSERT INTO revision_field SELECT @revisionId, position, name, value, unit, base_value, base_unit FROM revision_field
                WHERE revision_id = @Before;
            UPDATE current_revision SET revision_id = @revisionId, is_removed = @isRemoved WHERE entry_id = @id;
            """,
            new { revisionId, Before = now.RevisionId, id, isRemoved = action == RevisionAction.Removed ? 1 : 0 });
        return id;
    }

    private Result<Now> Standing(long id, string reason)
    {
        if (string.IsNullOrWhiteSpace(reason))
        {
            return EntryProblems.ReasonMissing(path, id);
        }

        if (EntryRules.TextProblem("reason", reason) is { } unusable)
        {
            return unusable;
        }

        var now = connection.QuerySingleOrDefault<Now>(
            """
            SELECT c.revision_id AS RevisionId, r.number AS Number, c.is_removed AS IsRemoved, r.port_id AS PortId, r.notes AS Notes,
                r.document_id AS DocumentId
            FROM current_revision c JOIN revision r ON r.id = c.revision_id WHERE c.entry_id = @id
            """,
            new { id });
        return now is null ? EntryProblems.NotFound(path, id.ToString(CultureInfo.InvariantCulture)) : now;
    }

    private Problem? PlaceProblem(SectionPlace place, long? own) =>
        new EntryReader(path, connection).Holder(place) is { } id && id != own ? EntryProblems.PlaceTaken(path, place.Path, id) : null;

    private long PortId(SectionPlace place)
    {
        var kind = PortName.Word(place.Port.Kind);
        connection.Execute(
            """
            INSERT INTO head (name) VALUES (@Head) ON CONFLICT DO NOTHING;
            INSERT INTO port (head_id, kind, cylinder, mark) SELECT id, @kind, @Cylinder, @Mark FROM head WHERE name = @Head
                ON CONFLICT DO NOTHING;
            """,
            new { place.Head, kind, place.Port.Cylinder, place.Port.Mark });
        return connection.QuerySingle<long>(
            """
            SELECT p.id FROM port p JOIN head h ON h.id = p.head_id
            WHERE h.name = @Head AND p.kind = @kind AND p.cylinder = @Cylinder AND p.mark = @Mark
            """,
            new { place.Head, kind, place.Port.Cylinder, place.Port.Mark });
    }

    private long NewId() => connection.QuerySingle<long>("INSERT INTO entry DEFAULT VALUES RETURNING id");

    private long InsertContent(long id, Header header, CheckedContent sound)
    {
        var content = sound.Content;
        var revisionId = InsertRevision(id, header, content.Place, content.Notes, DocumentId(sound));
        connection.Execute(
            "INSERT INTO revision_tag VALUES (@revisionId, @position, @tag)",
            content.Tags.Select((tag, position) => new { revisionId, position, tag }));
        connection.Execute(
            "INSERT INTO revision_field VALUES (@revisionId, @position, @Name, @Value, @Unit, @baseValue, @baseUnit)",
            content.Fields.Select((field, position) =>
            {
                var (baseValue, baseUnit) = UnitScale.ToBase(field.Value, field.Unit);
                return new { revisionId, position, field.Name, field.Value, field.Unit, baseValue, baseUnit };
            }));
        return revisionId;
    }

    private void Append(long id, Header header, CheckedContent sound, bool isRemoved)
    {
        var content = sound.Content;
        var revisionId = InsertContent(id, header, sound);
        connection.Execute(
            """
            INSERT INTO current_revision VALUES (@id, @revisionId, @PortId, @Station, @Stage, @isRemoved)
            ON CONFLICT (entry_id) DO UPDATE SET revision_id = @revisionId, port_id = @PortId, station = @Station, stage = @Stage,
                is_removed = @isRemoved;
            DELETE FROM words WHERE rowid = @id;
            INSERT INTO words (rowid, head, port, station, notes, tags, fields) VALUES (@id, @Head, @port, @at, @Notes, @tags, @fields);
            """,
            new
            {
                id,
                revisionId,
                header.PortId,
                isRemoved,
                content.Place.Station,
                content.Place.Stage,
                content.Place.Head,
                port = content.Place.Port.ToString(),
                at = string.Create(CultureInfo.InvariantCulture, $"station {content.Place.Station} {content.Place.Stage}"),
                content.Notes,
                tags = string.Join('\n', content.Tags),
                fields = string.Join('\n', content.Fields.Select(f => string.Create(CultureInfo.InvariantCulture, $"{f.Name} {f.Value} {f.Unit}"))),
            });
    }

    private long InsertRevision(long id, Header header, SectionPlace place, string notes, long documentId) =>
        connection.QuerySingle<long>(
            """
            INSERT INTO revision (entry_id, number, action, reason, at, port_id, station, stage, notes, document_id)
            VALUES (@id, @Number, @action, @reason, @at, @PortId, @Station, @Stage, @notes, @documentId) RETURNING id
            """,
            new
            {
                id,
                header.Number,
                action = EntryReader.Word(header.Action),
                reason = TidyReason(header.Reason),
                at = Moments.ToText(header.At),
                header.PortId,
                place.Station,
                place.Stage,
                notes,
                documentId,
            });

    private long DocumentId(CheckedContent sound)
    {
        var known = connection.QuerySingleOrDefault<long?>("SELECT id FROM document WHERE sha256 = @Sha256", new { sound.Sha256 });
        if (known is { } id)
        {
            return id;
        }

        var documentId = connection.QuerySingle<long>(
            "INSERT INTO document (sha256, json, photo_sha256) VALUES (@Sha256, @DocumentJson, @PhotoSha256) RETURNING id",
            new { sound.Sha256, sound.Content.DocumentJson, sound.PhotoSha256 });
        connection.Execute(
            "INSERT INTO shape VALUES (@documentId, @AreaMm2, @WidthMm, @HeightMm, @recipe, @Descriptor)",
            new { documentId, sound.AreaMm2, sound.WidthMm, sound.HeightMm, recipe = ShapeDescriptor.RecipeVersion, sound.Descriptor });
        return documentId;
    }

    private sealed record Header(long Number, RevisionAction Action, string Reason, DateTimeOffset At, long PortId);

    private sealed record Now(long RevisionId, long Number, long IsRemoved, long PortId, string Notes, long DocumentId);
}
