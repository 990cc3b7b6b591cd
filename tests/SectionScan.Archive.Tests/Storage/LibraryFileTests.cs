using System.IO.Compression;
using System.Security.Cryptography;
using Dapper;
using Microsoft.Data.Sqlite;
using SectionScan.Archive.Library;
using SectionScan.Testing.Repository;
using SectionScan.Testing.Sections;

namespace SectionScan.Archive.Tests.Storage;

public sealed class LibraryFileTests : IDisposable
{
    private readonly LibraryFolder folder = new();

    [Fact]
    public void A_library_of_a_later_version_is_refused_and_left_as_it_is()
    {
        folder.Open().Dispose();
        Sql("PRAGMA user_version = 99");
        var before = SHA256.HashData(File.ReadAllBytes(folder.LibraryPath));

        var problem = folder.ProblemOfOpening();

        Assert.Equal("library-later-version", problem.Code);
        Assert.Contains("99", problem.What, StringComparison.Ordinal);
        Assert.Equal(before, SHA256.HashData(File.ReadAllBytes(folder.LibraryPath)));
    }

    [Fact]
    public void A_database_of_another_program_is_refused_and_left_as_it_is()
    {
        Sql("CREATE TABLE song (title TEXT)");
        var before = SHA256.HashData(File.ReadAllBytes(folder.LibraryPath));

        Assert.Equal("not-a-library", folder.ProblemOfOpening().Code);
        Assert.Equal(before, SHA256.HashData(File.ReadAllBytes(folder.LibraryPath)));
    }

    [Fact]
    public void A_file_that_is_no_database_is_refused()
    {
        File.WriteAllText(folder.LibraryPath, string.Concat(Enumerable.Repeat("This is a letter and not a library. ", 200)));

        Assert.Equal("not-a-library", folder.ProblemOfOpening().Code);
    }

    [Fact]
    public void A_folder_or_a_path_into_nowhere_is_refused()
    {
        Directory.CreateDirectory(folder.FilePath("folder"));

        Assert.Equal("library-path-unusable", folder.ProblemOfOpening(folder.FilePath("folder")).Code);
        Assert.Equal("library-path-unusable", folder.ProblemOfOpening(folder.FilePath("nowhere/library.db")).Code);
        Assert.Equal("library-path-unusable", folder.ProblemOfOpening("").Code);
        Assert.Equal("library-path-unusable", folder.ProblemOfOpening("a\0b").Code);
        Assert.False(Directory.Exists(folder.FilePath("nowhere")));
    }

    [Fact]
    public void Damaged_pages_are_told_as_damage_with_a_remedy()
    {
        Fill(40);
        var bytes = File.ReadAllBytes(folder.LibraryPath);
        new Random(7).NextBytes(bytes.AsSpan(4096)); // all but the first page, which holds the header
        File.WriteAllBytes(folder.LibraryPath, bytes);

        var problem = folder.ProblemOfOpening();

        Assert.Equal("library-damaged", problem.Code);
        Assert.Contains("backup", problem.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Whatever_page_is_damaged_no_exception_escapes_and_the_check_tells()
    {
        const int PageSize = 4096;
        Fill(8);
        var whole = File.ReadAllBytes(folder.LibraryPath);
        var noticed = 0;
        for (var page = 1; page < whole.Length / PageSize; page++)
        {
            var bytes = (byte[])whole.Clone();
            new Random(page).NextBytes(bytes.AsSpan(page * PageSize, PageSize));
            File.WriteAllBytes(folder.LibraryPath, bytes);
            if (!SectionLibrary.Open(folder.LibraryPath, folder.Clock).TryGet(out var library, out var problem))
            {
                noticed += problem.Code == "library-damaged" ? 1 : 0;
                continue;
            }

            using (library)
            {
                _ = library.List();
                _ = library.FindByWords("tag");
                _ = library.FindSimilar(SampleSections.Blob(1), 1, new());
                _ = library.Show(1);
                _ = library.Add(LibraryFolder.Content(9));
                noticed += library.CheckIntegrity().TryGet(out var report, out _) && report.IsSound ? 0 : 1;
            }
        }

        Assert.Equal((whole.Length / PageSize) - 1, noticed);
    }

    [Fact]
    public void A_file_cut_off_in_the_middle_is_told_as_damage()
    {
        Fill(40);
        using (var file = File.OpenWrite(folder.LibraryPath))
        {
            file.SetLength(file.Length / 2);
        }

        var opened = SectionLibrary.Open(folder.LibraryPath, folder.Clock);

        var code = opened.TryGet(out var library, out var problem) ? Results.ProblemOf(library.List()).Code : problem.Code;
        library?.Dispose();
        Assert.Equal("library-damaged", code);
    }

    [Fact]
    public void The_history_cannot_be_changed_even_from_outside()
    {
        Fill(1);

        foreach (var change in new[] { "UPDATE revision SET notes = 'x'", "DELETE FROM revision_tag", "UPDATE document SET json = '{}'", "DELETE FROM document" })
        {
            Assert.Contains("never", Assert.Throws<SqliteException>(() => Sql(change)).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_sound_library_passes_its_check_and_a_forged_document_does_not()
    {
        Fill(5);
        using var library = folder.Open();
        var sound = library.CheckIntegrity().ValueOrThrow();

        Sql("DROP TRIGGER document_stays; UPDATE document SET json = replace(json, '10', '11') WHERE id = 2");
        var forged = library.CheckIntegrity().ValueOrThrow();

        Assert.True(sound.IsSound, string.Join(' ', sound.Findings));
        Assert.Equal((5, 5, 5), (sound.EntryCount, sound.RevisionCount, sound.DocumentCount));
        Assert.Contains("Document 2 ", Assert.Single(forged.Findings), StringComparison.Ordinal);
    }

    [Fact]
    public void The_durability_that_is_promised_is_switched_on()
    {
        folder.Open().Dispose();
        using var connection = new SqliteConnection($"Data Source={folder.LibraryPath};Pooling=False");

        Assert.Equal("wal", connection.ExecuteScalar<string>("PRAGMA journal_mode"));
        Assert.Equal(1, connection.ExecuteScalar<long>("SELECT sqlite_compileoption_used('ENABLE_FTS5')"));
    }

    // form-1.db.gz was written by the program when the first form was the newest: three sections, one corrected, one removed.
    [Fact]
    public void A_library_of_the_first_form_is_brought_up_to_date_with_all_that_it_held()
    {
        Unpack();

        using (var library = folder.Open())
        {
            Assert.True(library.CheckIntegrity().ValueOrThrow() is { IsSound: true, EntryCount: 3, RevisionCount: 5 });
            Assert.Equal(["as cast", ""], library.List().ValueOrThrow().Select(each => each.Place.Stage).OrderDescending());
            var entry = library.Show(1).ValueOrThrow();
            Assert.Equal(["", "measured again"], entry.History.Select(each => each.Reason));
            Assert.Equal(33.2, entry.Current.Content.Fields.Single().Value);
            Assert.Equal("Kept by the first form.", entry.Summary.Notes);
            Assert.Equal("sliced askew", library.Show(2).ValueOrThrow().Current.Reason);
            Assert.Equal(1, library.FindSimilar(SampleSections.Ellipse(36, 36), 1, new()).ValueOrThrow().Single().Entry.Id);
            library.Restore(2, "Square after all.").ValueOrThrow();
        }

        Assert.Equal(2L, Scalar("PRAGMA user_version"));
    }

    [Fact]
    public void Two_programs_that_bring_one_library_up_to_date_at_once_do_it_once()
    {
        Unpack();

        Parallel.For(0, 4, _ =>
        {
            using var library = folder.Open();
            Assert.Equal(2, library.List().ValueOrThrow().Count);
        });

        Assert.Equal(1L, Scalar("SELECT count(*) FROM sqlite_schema WHERE name = 'photo'"));
    }

    [Fact]
    public void A_step_to_the_next_form_that_fails_leaves_the_earlier_form_whole()
    {
        Unpack();
        Sql("CREATE TABLE photo (something TEXT)"); // the step to form 2 cannot make its table now

        Assert.False(SectionLibrary.Open(folder.LibraryPath, folder.Clock).TryGet(out _, out _));

        Assert.Equal(1L, Scalar("PRAGMA user_version"));
        Assert.Equal(5L, Scalar("SELECT count(*) FROM revision"));
        Sql("DROP TABLE photo");
        using var library = folder.Open();
        Assert.Equal(2, library.List().ValueOrThrow().Count);
    }

    [Fact]
    public void A_photo_is_kept_to_the_last_byte_once_and_only_with_the_section_it_shows()
    {
        var (photo, hash) = Photo(7);
        using var library = folder.Open();
        var id = library.Add(new(LibraryFolder.Place(1), SampleSections.Document(SampleSections.Blob(1), 1, hash))).ValueOrThrow().Id;
        var other = library.Add(LibraryFolder.Content(2)).ValueOrThrow().Id;

        Assert.Equal("photo-not-kept", Results.ProblemOf(library.Photo(id)).Code);
        Assert.Equal(hash, library.KeepPhoto(id, "p01.jpg", photo).ValueOrThrow());
        Assert.Equal(hash, library.KeepPhoto(id, "again.jpg", photo).ValueOrThrow());
        Assert.Equal("photo-not-of-entry", Results.ProblemOf(library.KeepPhoto(other, "p01.jpg", photo)).Code);
        Assert.Equal("photo-not-of-entry", Results.ProblemOf(library.KeepPhoto(id, "p02.jpg", Photo(8).Bytes)).Code);
        Assert.Equal("photo-name-unusable", Results.ProblemOf(library.KeepPhoto(id, "../p01.jpg", photo)).Code);

        var kept = library.Photo(id).ValueOrThrow();
        Assert.Equal("p01.jpg", kept.Name);
        Assert.Equal(photo, kept.Content.ToArray());
        Assert.Equal(1, library.CheckIntegrity().ValueOrThrow().PhotoCount);
        Sql("DROP TRIGGER photo_stays; UPDATE photo SET content = x'00'");
        Assert.Contains("p01.jpg", Assert.Single(library.CheckIntegrity().ValueOrThrow().Findings), StringComparison.Ordinal);
    }

    [Fact]
    public void A_backup_is_a_whole_library_in_one_file()
    {
        Fill(20);
        using var library = folder.Open();
        library.Remove(3, "Bad slice.").ValueOrThrow();
        var copy = folder.FilePath("copy.db");

        var size = library.Backup(copy).ValueOrThrow();
        library.Add(LibraryFolder.Content(21)).ValueOrThrow();

        Assert.Equal(new FileInfo(copy).Length, size);
        Assert.False(File.Exists(copy + ".part"));
        using var restored = SectionLibrary.Open(copy, folder.Clock).ValueOrThrow();
        Assert.Equal(19, restored.List().ValueOrThrow().Count);
        Assert.Equal(2, restored.Show(3).ValueOrThrow().History.Count);
        Assert.True(restored.CheckIntegrity().ValueOrThrow().IsSound);
    }

    [Fact]
    public void A_backup_never_overwrites_and_leaves_nothing_when_it_fails()
    {
        Fill(2);
        using var library = folder.Open();
        File.WriteAllText(folder.FilePath("precious"), "mine");

        Assert.Equal("library-path-unusable", Results.ProblemOf(library.Backup(folder.FilePath("precious"))).Code);
        Assert.Equal("library-path-unusable", Results.ProblemOf(library.Backup(folder.FilePath("nowhere/copy.db"))).Code);
        Assert.Equal("mine", File.ReadAllText(folder.FilePath("precious")));
        Assert.Empty(Directory.GetFiles(Path.GetDirectoryName(folder.LibraryPath)!, "*.part"));
    }

    public void Dispose() => folder.Dispose();

    private void Fill(int count)
    {
        using var library = folder.Open();
        for (var i = 1; i <= count; i++)
        {
            library.Add(new(LibraryFolder.Place(i), SampleSections.Document(SampleSections.Blob(i), i), "Filled.", ["tag"], [])).ValueOrThrow();
        }
    }

    private void Unpack()
    {
        using var packed = File.OpenRead(RepositoryFolder.PathOf("tests", "SectionScan.Archive.Tests", "Storage", "form-1.db.gz"));
        using var unpacked = new GZipStream(packed, CompressionMode.Decompress);
        using var file = File.Create(folder.LibraryPath);
        unpacked.CopyTo(file);
    }

    private static (byte[] Bytes, string Hash) Photo(int seed)
    {
        var bytes = new byte[300_000];
        new Random(seed).NextBytes(bytes);
        return (bytes, Convert.ToHexStringLower(SHA256.HashData(bytes)));
    }

    private long Scalar(string sql)
    {
        using var connection = new SqliteConnection($"Data Source={folder.LibraryPath};Pooling=False");
        return connection.ExecuteScalar<long>(sql);
    }

    private void Sql(string sql)
    {
        using var connection = new SqliteConnection($"Data Source={folder.LibraryPath};Pooling=False");
        connection.Execute(sql);
    }
}
