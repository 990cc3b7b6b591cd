using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Dapper;
using Microsoft.Data.Sqlite;
using SectionScan.Metrology.Results;

namespace SectionScan.Archive.Storage;

/// <summary>Checks a library from the pages of its file up to the hashes of its documents.</summary>
internal static class LibraryIntegrity
{
    public static Result<IntegrityReport> Check(SqliteConnection connection)
    {
        var findings = connection.Query<string>("PRAGMA integrity_check").Where(line => line != "ok").Select(line => $"File: {line}.").ToList();
        findings.AddRange(connection.Query("PRAGMA foreign_key_check")
            .Select(row => $"A row of {row.table} points at a row of {row.parent} that is not there."));
        AddWordFindings(connection, findings);
        var documentCount = AddDocumentFindings(connection, findings);
        var photoCount = AddPhotoFindings(connection, findings);
        var without = connection.ExecuteScalar<long>(
            """
            SELECT count(*) FROM entry e LEFT JOIN current_revision c ON c.entry_id = e.id
            WHERE c.revision_id IS NOT (SELECT r.id FROM revision r WHERE r.entry_id = e.id ORDER BY r.number DESC LIMIT 1)
            """);
        if (without > 0)
        {
            findings.Add(string.Create(CultureInfo.InvariantCulture, $"{without} entries do not stand at their last revision."));
        }

        return new IntegrityReport(
            connection.ExecuteScalar<long>("SELECT count(*) FROM entry"),
            connection.ExecuteScalar<long>("SELECT count(*) FROM revision"),
            documentCount,
            photoCount,
            findings);
    }

    private static void AddWordFindings(SqliteConnection connection, List<string> findings)
    {
        try
        {
            connection.Execute("INSERT INTO words (words) VALUES ('integrity-check')");
        }
        catch (SqliteException exception)
        {
            findings.Add($"The index of words does not agree with itself ({exception.Message}).");
        }
    }

    private static long AddPhotoFindings(SqliteConnection connection, List<string> findings)
    {
        var count = 0L;
        foreach (var (sha256, name, content) in connection.Query<(string, string, byte[])>("SELECT sha256, name, content FROM photo", buffered: false))
        {
            count++;
            if (Convert.ToHexStringLower(SHA256.HashData(content)) != sha256)
            {
                findings.Add($"The photo {name} does not have the hash {sha256} that it was kept under.");
            }
        }

        return count;
    }

    private static long AddDocumentFindings(SqliteConnection connection, List<string> findings)
    {
        var count = 0L;
        foreach (var (id, sha256, json) in connection.Query<(long, string, string)>("SELECT id, sha256, json FROM document", buffered: false))
        {
            count++;
            if (Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(json))) != sha256)
            {
                findings.Add(string.Create(CultureInfo.InvariantCulture, $"Document {id} does not have the hash {sha256} that it was kept under."));
            }
        }

        return count;
    }
}
