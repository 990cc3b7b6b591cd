using Dapper;
using Microsoft.Data.Sqlite;
using SectionScan.Metrology.Likeness;

namespace SectionScan.Archive.Library;

/// <summary>The shapes of all entries that are not removed, in memory; before each search it takes in what any program has written
/// since.</summary>
internal sealed class ShapeCache
{
    private readonly LikenessIndex index = new();
    private long seenRevision;

    /// <summary>Takes in what is new, and tells how many shapes there are.</summary>
    public int Refresh(SqliteConnection connection)
    {
        var newest = connection.ExecuteScalar<long?>("SELECT max(id) FROM revision") ?? 0;
        if (newest == seenRevision)
        {
            return index.Count;
        }

        using var command = connection.CreateCommand();
        command.CommandText =
            """
            SELECT c.entry_id, c.is_removed, s.descriptor FROM current_revision c
            JOIN revision r ON r.id = c.revision_id JOIN shape s ON s.document_id = r.document_id
            WHERE c.revision_id > @seen
            """;
        command.Parameters.AddWithValue("@seen", seenRevision);
        using var rows = command.ExecuteReader();
        var bytes = new byte[ShapeDescriptor.ByteCount];
        while (rows.Read())
        {
            var id = rows.GetInt64(0);
            var length = rows.GetBytes(2, 0, bytes, 0, bytes.Length);
            if (rows.GetInt64(1) == 0 && ShapeDescriptor.FromBytes(bytes.AsSpan(0, (int)length)) is { } shape)
            {
                index.Put(id, shape);
            }
            else
            {
                index.Remove(id);
            }
        }

        seenRevision = newest;
        return index.Count;
    }

    public IReadOnlyList<Neighbour> Nearest(ShapeDescriptor shape, int count, LikenessFreedom freedom, Func<long, bool> isWanted) =>
        index.Nearest(shape, count, freedom, isWanted);
}
