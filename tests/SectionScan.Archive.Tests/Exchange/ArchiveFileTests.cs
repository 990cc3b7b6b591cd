using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using SectionScan.Archive.Library;
using SectionScan.Testing.Sections;

namespace SectionScan.Archive.Tests.Exchange;

public sealed class ArchiveFileTests : IDisposable
{
    private readonly LibraryFolder folder = new();
    private readonly SectionLibrary library;

    public ArchiveFileTests()
    {
        library = folder.Open();
        library.Add(LibraryFolder.Content(1) with { Notes = "First\nslice, ½ mm burr.", Tags = ["proven", "café"], Fields = [new("flow", 95.5, "cfm")] }).ValueOrThrow();
        library.Add(LibraryFolder.Content(2)).ValueOrThrow();
        library.Add(LibraryFolder.Content(3)).ValueOrThrow();
        library.Revise(2, LibraryFolder.Content(7, LibraryFolder.Place(2)), "Digitised again.").ValueOrThrow();
        library.Remove(3, "Bad slice.").ValueOrThrow();
    }

    [Fact]
    public void Exported_entries_come_in_elsewhere_with_their_whole_history()
    {
        var path = Exported(1, 2, 3);
        using var other = Other();

        var report = other.Import(path).ValueOrThrow();

        Assert.Equal([1, 2, 3], report.Added);
        Assert.Empty(report.AlreadyThere);
        foreach (var id in report.Added)
        {
            var (here, there) = (library.Show(id).ValueOrThrow(), other.Show(id).ValueOrThrow());
            Assert.Equal(here.History.Count, there.History.Count);
            foreach (var (before, after) in here.History.Zip(there.History))
            {
                Assert.Equal((before.Number, before.Action, before.Reason, before.At, before.DocumentSha256), (after.Number, after.Action, after.Reason, after.At, after.DocumentSha256));
                Assert.Equal((before.Content.Place, before.Content.Notes, before.Content.DocumentJson), (after.Content.Place, after.Content.Notes, after.Content.DocumentJson));
                Assert.Equal(before.Content.Tags, after.Content.Tags);
                Assert.Equal(before.Content.Fields, after.Content.Fields);
            }
        }

        Assert.Equal([1, 2], other.List().ValueOrThrow().Select(each => each.Place.Station));
        Assert.Equal([1], other.FindByWords("cafe 95.5").ValueOrThrow().Select(each => each.Id));
        Assert.Equal(2, other.FindSimilar(SampleSections.Blob(7), 1, new()).ValueOrThrow().Single().Entry.Id);
        Assert.True(other.CheckIntegrity().ValueOrThrow().IsSound);
    }

    [Fact]
    public void The_same_entries_give_the_same_bytes_even_after_a_journey()
    {
        var path = Exported(1, 2, 3);
        using var other = Other();
        other.Import(path).ValueOrThrow();

        other.Export(folder.FilePath("again.zip"), [3, 2, 1, 1]).ValueOrThrow();

        Assert.Equal(File.ReadAllBytes(path), File.ReadAllBytes(folder.FilePath("again.zip")));
    }

    [Fact]
    public void One_section_takes_its_own_documents_and_no_others()
    {
        var path = folder.FilePath("one.zip");

        var report = library.Export(path, [2]).ValueOrThrow();

        Assert.Equal((1, 2, new FileInfo(path).Length), (report.EntryCount, report.DocumentCount, report.Bytes));
        using var zip = ZipFile.OpenRead(path);
        Assert.Equal(["README.txt", "manifest.json"], zip.Entries.Select(each => each.FullName).Where(name => !name.StartsWith("documents/", StringComparison.Ordinal)));
        Assert.Equal(2, zip.Entries.Count(each => Regex.IsMatch(each.FullName, "^documents/[0-9a-f]{64}\\.json$")));
    }

    [Fact]
    public void Photos_go_along_when_asked_for_and_come_in_to_the_last_byte()
    {
        var (id, photo) = WithPhoto();
        var (bare, full) = (folder.FilePath("bare.zip"), folder.FilePath("full.zip"));

        Assert.Equal(0, library.Export(bare, [1, id]).ValueOrThrow().PhotoCount);
        Assert.Equal(1, library.Export(full, [1, id], withPhotos: true).ValueOrThrow().PhotoCount);
        using var other = Other();
        other.Import(bare).ValueOrThrow();
        Assert.Equal("photo-not-kept", Results.ProblemOf(other.Photo(2)).Code);
        other.Import(full).ValueOrThrow(); // the entries are there already; their photo is not

        var kept = other.Photo(2).ValueOrThrow();
        Assert.Equal("p01.jpg", kept.Name);
        Assert.Equal(photo, kept.Content.ToArray());
        Assert.True(other.CheckIntegrity().ValueOrThrow().IsSound);
        other.Export(folder.FilePath("again.zip"), [1, 2], withPhotos: true).ValueOrThrow();
        Assert.Equal(File.ReadAllBytes(full), File.ReadAllBytes(folder.FilePath("again.zip")));
    }

    [Theory]
    [InlineData("\"p01.jpg\"", "\"../p01.jpg\"", "archive-manifest-unusable")]
    [InlineData("\"p01.jpg\"", "\"p01.exe/../..\"", "archive-manifest-unusable")]
    [InlineData("\"p01.jpg\"", "\"p01.png\"", "archive-manifest-unusable")]
    public void A_forged_photo_name_leads_nowhere(string was, string becomes, string code)
    {
        var (id, _) = WithPhoto();
        var path = folder.FilePath("forged.zip");
        library.Export(path, [id], withPhotos: true).ValueOrThrow();
        using (var zip = ZipFile.Open(path, ZipArchiveMode.Update))
        {
            Replace(zip, "manifest.json", text => text.Replace(was, becomes, StringComparison.Ordinal));
        }

        using var other = Other();

        Assert.Equal(code, Results.ProblemOf(other.Import(path)).Code);
        Assert.Empty(other.List().ValueOrThrow());
    }

    [Fact]
    public void A_photo_that_was_changed_in_the_archive_is_refused()
    {
        var (id, _) = WithPhoto();
        var path = folder.FilePath("forged.zip");
        library.Export(path, [id], withPhotos: true).ValueOrThrow();
        using (var zip = ZipFile.Open(path, ZipArchiveMode.Update))
        {
            Replace(zip, zip.Entries.Single(each => each.FullName.StartsWith("photos/", StringComparison.Ordinal)).FullName, _ => "another photo");
        }

        using var other = Other();

        Assert.Equal("archive-hash-wrong", Results.ProblemOf(other.Import(path)).Code);
        Assert.Empty(other.List().ValueOrThrow());
    }

    [Fact]
    public void Importing_twice_adds_nothing_the_second_time()
    {
        var path = Exported(1, 2, 3);
        using var other = Other();
        other.Import(path).ValueOrThrow();

        var again = other.Import(path).ValueOrThrow();

        Assert.Empty(again.Added);
        Assert.Equal([1, 2, 3], again.AlreadyThere.Select(each => each.Station));
        Assert.Equal(3, other.List(new(IncludesRemoved: true)).ValueOrThrow().Count);
    }

    [Fact]
    public void A_taken_place_refuses_all_or_is_skipped_on_request()
    {
        var path = Exported(1, 2);
        using var other = Other();
        other.Add(LibraryFolder.Content(50, LibraryFolder.Place(2))).ValueOrThrow();

        var refused = Results.ProblemOf(other.Import(path));
        Assert.Equal("entry-place-taken", refused.Code);
        Assert.Single(other.List(new(IncludesRemoved: true)).ValueOrThrow());

        var report = other.Import(path, skipsTaken: true).ValueOrThrow();
        Assert.Single(report.Added);
        Assert.Equal([LibraryFolder.Place(2)], report.Skipped);
    }

    [Fact]
    public void What_was_corrected_elsewhere_since_is_taken_over_and_nothing_twice()
    {
        var first = Exported(1, 2, 3);
        using var other = Other();
        other.Import(first).ValueOrThrow();
        library.Revise(1, LibraryFolder.Content(1) with { Notes = "Burr taken off.", Tags = ["proven"] }, "Slice cleaned.").ValueOrThrow();
        library.Revise(1, LibraryFolder.Content(8, LibraryFolder.Place(11)), "It is station 11.").ValueOrThrow();
        library.Remove(2, "Digitised from the wrong slice.").ValueOrThrow();
        library.Restore(3, "The slice was good after all.").ValueOrThrow();
        var later = folder.FilePath("later.zip");
        library.Export(later, [1, 2, 3]).ValueOrThrow();

        var report = other.Import(later).ValueOrThrow();

        Assert.Empty(report.Added);
        Assert.Equal([1, 2, 3], report.Updated);
        Assert.Equal([3, 11], other.List().ValueOrThrow().Select(each => each.Place.Station));
        Assert.Equal(1, other.FindSimilar(SampleSections.Blob(8), 1, new()).ValueOrThrow().Single().Entry.Id);
        Assert.Empty(other.FindByWords("burr").ValueOrThrow()); // said in an earlier revision only
        Assert.True(other.CheckIntegrity().ValueOrThrow().IsSound);
        other.Export(folder.FilePath("again.zip"), [1, 2, 3]).ValueOrThrow();
        Assert.Equal(File.ReadAllBytes(later), File.ReadAllBytes(folder.FilePath("again.zip")));

        var older = other.Import(first).ValueOrThrow();
        Assert.Equal((0, 0, 3), (older.Added.Count, older.Updated.Count, older.AlreadyThere.Count));
    }

    [Fact]
    public void An_entry_changed_in_both_libraries_refuses_all_or_is_skipped_on_request()
    {
        using var other = Other();
        other.Import(Exported(1, 2)).ValueOrThrow();
        library.Revise(1, LibraryFolder.Content(1) with { Notes = "Said there." }, "Note.").ValueOrThrow();
        library.Revise(2, LibraryFolder.Content(9, LibraryFolder.Place(2)), "Digitised once more.").ValueOrThrow();
        other.Revise(1, LibraryFolder.Content(1) with { Notes = "Said here." }, "Note.").ValueOrThrow();
        var later = folder.FilePath("later.zip");
        library.Export(later, [2, 1]).ValueOrThrow();

        Assert.Equal("entry-histories-diverge", Results.ProblemOf(other.Import(later)).Code);
        Assert.Equal(2, other.Show(2).ValueOrThrow().History.Count);

        var report = other.Import(later, skipsTaken: true).ValueOrThrow();
        Assert.Equal((2L, LibraryFolder.Place(1)), (report.Updated.Single(), report.Skipped.Single()));
        Assert.Equal("Said here.", other.Show(1).ValueOrThrow().Current.Content.Notes);
        Assert.Equal(3, other.Show(2).ValueOrThrow().History.Count);
    }

    [Fact]
    public void A_newer_place_that_is_taken_here_refuses_all()
    {
        using var other = Other();
        other.Import(Exported(1)).ValueOrThrow();
        other.Add(LibraryFolder.Content(50, LibraryFolder.Place(11))).ValueOrThrow();
        library.Revise(1, LibraryFolder.Content(1, LibraryFolder.Place(11)), "It is station 11.").ValueOrThrow();
        var later = folder.FilePath("later.zip");
        library.Export(later, [1]).ValueOrThrow();

        Assert.Equal("entry-place-taken", Results.ProblemOf(other.Import(later)).Code);
        Assert.Equal([1, 11], other.List().ValueOrThrow().Select(each => each.Place.Station));
    }

    [Fact]
    public void An_earlier_place_that_is_taken_here_is_no_obstacle()
    {
        library.Revise(2, LibraryFolder.Content(7, LibraryFolder.Place(20)), "Wrong station.").ValueOrThrow();
        var path = Exported(2);
        using var other = Other();
        other.Add(LibraryFolder.Content(50, LibraryFolder.Place(2))).ValueOrThrow();

        other.Import(path).ValueOrThrow();

        Assert.Equal([2, 20], other.List().ValueOrThrow().Select(each => each.Place.Station));
    }

    [Fact]
    public void An_export_never_overwrites_and_asks_for_entries_that_exist()
    {
        File.WriteAllText(folder.FilePath("precious"), "mine");

        Assert.Equal("library-path-unusable", Results.ProblemOf(library.Export(folder.FilePath("precious"), [1])).Code);
        Assert.Equal("library-path-unusable", Results.ProblemOf(library.Export(folder.FilePath("nowhere/a.zip"), [1])).Code);
        Assert.Equal("entry-not-found", Results.ProblemOf(library.Export(folder.FilePath("a.zip"), [1, 99])).Code);
        Assert.Equal("mine", File.ReadAllText(folder.FilePath("precious")));
        Assert.Empty(Directory.GetFiles(Path.GetDirectoryName(folder.LibraryPath)!, "*.zip*"));
    }

    [Theory]
    [InlineData("../evil.json")]
    [InlineData("/etc/evil.json")]
    [InlineData("documents/../../evil.json")]
    [InlineData("documents\\evil.json")]
    [InlineData("documents/evil.json")]
    [InlineData("C:evil.json")]
    public void A_name_that_leads_elsewhere_refuses_the_file(string name) => Refused("archive-name-unusable", zip =>
    {
        using var writer = new StreamWriter(zip.CreateEntry(name).Open());
        writer.Write("{}");
    });

    [Fact]
    public void A_changed_document_refuses_the_file() => Refused("archive-hash-wrong", zip => Replace(zip, FirstDocument(zip), text => text + " "));

    [Fact]
    public void A_document_swapped_together_with_its_hash_in_the_list_refuses_the_file() => Refused("archive-hash-wrong", zip =>
    {
        var name = FirstDocument(zip);
        Replace(zip, name, text => text + " ");
        using var stream = zip.GetEntry(name)!.Open();
        var hash = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(stream));
        Replace(zip, "manifest.json", text => Regex.Replace(text, $"(\"name\": \"{name}\",\\s+\"bytes\": )(\\d+)(,\\s+\"sha256\": \")[0-9a-f]+", match =>
            $"{match.Groups[1].Value}{int.Parse(match.Groups[2].Value, System.Globalization.CultureInfo.InvariantCulture) + 1}{match.Groups[3].Value}{hash}"));
    });

    [Fact]
    public void A_missing_document_refuses_the_file() => Refused("archive-manifest-unusable", zip => zip.GetEntry(FirstDocument(zip))!.Delete());

    [Fact]
    public void A_missing_table_of_contents_refuses_the_file() => Refused("not-an-archive", zip => zip.GetEntry("manifest.json")!.Delete());

    [Fact]
    public void A_file_that_is_not_listed_refuses_the_file() => Refused("archive-name-unusable", zip =>
    {
        using var writer = new StreamWriter(zip.CreateEntry($"documents/{new string('0', 64)}.json").Open());
        writer.Write("{}");
    });

    [Fact]
    public void A_document_beyond_all_size_refuses_the_file() => Refused("archive-too-large", zip => Replace(zip, FirstDocument(zip), text => text.PadRight(16_000_001)));

    [Theory]
    [InlineData("\"sectionscan/archive/1\"", "\"sectionscan/archive/3\"", "archive-later-version")]
    [InlineData("\"sectionscan/archive/1\"", "\"sectionscan/lens/1\"", "not-an-archive")]
    [InlineData("\"schema\"", "\"scheme\"", "archive-manifest-unusable")]
    [InlineData("\"notes\"", "\"note\"", "archive-manifest-unusable")]
    [InlineData("\"notes\": \"", "\"notes\": null, \"x\": \"", "archive-manifest-unusable")]
    [InlineData("\"action\": \"added\"", "\"action\": \"restored\"", "archive-manifest-unusable")]
    [InlineData("\"action\": \"added\"", "\"action\": \"0\"", "archive-manifest-unusable")]
    [InlineData("\"port\": \"intake 1\"", "\"port\": \"inlet 1\"", "port-name-unusable")]
    [InlineData("\"head\": \"Bramble 480 twin\"", "\"head\": \"Bramble/480\"", "entry-text-unusable")]
    [InlineData("\"station\": 1,", "\"station\": -1,", "entry-number-unusable")]
    [InlineData("\"station\": 1,", "\"station\": \"one\",", "archive-manifest-unusable")]
    [InlineData("\"at\": \"2025", "\"at\": \"25", "archive-manifest-unusable")]
    [InlineData("\"value\": 95.5", "\"value\": 1e999", "entry-number-unusable")]
    public void A_table_of_contents_that_makes_no_sense_refuses_the_file(string original, string changed, string code) => Refused(code, zip => Replace(zip, "manifest.json", text =>
    {
        Assert.Contains(original, text, StringComparison.Ordinal);
        return text.Replace(original, changed, StringComparison.Ordinal);
    }));

    [Fact]
    public void Every_truncation_of_the_file_is_refused()
    {
        var bytes = File.ReadAllBytes(Exported(1, 2, 3));
        using var other = Other();
        var cut = folder.FilePath("cut.zip");
        for (var length = 0; length < bytes.Length; length += 97)
        {
            File.WriteAllBytes(cut, bytes.AsSpan(0, length));
            Assert.Equal("not-an-archive", Results.ProblemOf(other.Import(cut)).Code);
        }

        Assert.Equal("archive-unreadable", Results.ProblemOf(other.Import(folder.FilePath("nowhere.zip"))).Code);
        Assert.Equal("archive-unreadable", Results.ProblemOf(other.Import(Path.GetDirectoryName(cut)!)).Code);
    }

    [Fact]
    public void Bytes_changed_at_random_import_nothing_or_the_very_same()
    {
        var bytes = File.ReadAllBytes(Exported(1, 2, 3));
        using var other = Other();
        var changed = folder.FilePath("changed.zip");
        var random = new Random(3);
        for (var round = 0; round < 150; round++)
        {
            var copy = (byte[])bytes.Clone();
            copy[random.Next(copy.Length)] ^= (byte)(1 << random.Next(8));
            File.WriteAllBytes(changed, copy);

            if (other.Import(changed).IsSuccess)
            {
                // The flip was in a date, a comment or the like: then all is as it was exported.
                Assert.Equal(2, other.List().ValueOrThrow().Count);
                Assert.Equal(library.Show(1).ValueOrThrow().Current.DocumentSha256, other.Show(1).ValueOrThrow().Current.DocumentSha256);
            }
            else
            {
                Assert.True(other.List(new(IncludesRemoved: true)).ValueOrThrow().Count is 0 or 3);
            }
        }
    }

    public void Dispose()
    {
        library.Dispose();
        folder.Dispose();
    }

    private (long Id, byte[] Photo) WithPhoto()
    {
        var photo = new byte[50_000];
        new Random(5).NextBytes(photo);
        var document = SampleSections.Document(SampleSections.Blob(30), 30, Convert.ToHexStringLower(SHA256.HashData(photo)));
        var id = library.Add(new(LibraryFolder.Place(30), document)).ValueOrThrow().Id;
        library.KeepPhoto(id, "p01.jpg", photo).ValueOrThrow();
        return (id, photo);
    }

    private string Exported(params long[] ids)
    {
        var path = folder.FilePath("exported.zip");
        library.Export(path, ids).ValueOrThrow();
        return path;
    }

    private SectionLibrary Other() => SectionLibrary.Open(folder.FilePath("other.db"), folder.Clock).ValueOrThrow();

    private void Refused(string code, Action<ZipArchive> tamper)
    {
        var path = Exported(1, 2, 3);
        using (var zip = ZipFile.Open(path, ZipArchiveMode.Update))
        {
            tamper(zip);
        }

        using var other = Other();
        var before = Directory.GetFileSystemEntries(Path.GetDirectoryName(path)!).Order().ToArray();

        Assert.Equal(code, Results.ProblemOf(other.Import(path)).Code);
        Assert.Empty(other.List(new(IncludesRemoved: true)).ValueOrThrow());
        Assert.Equal(before, Directory.GetFileSystemEntries(Path.GetDirectoryName(path)!).Order());
    }

    private static string FirstDocument(ZipArchive zip) => zip.Entries.First(each => each.FullName.StartsWith("documents/", StringComparison.Ordinal)).FullName;

    private static void Replace(ZipArchive zip, string name, Func<string, string> change)
    {
        string text;
        using (var reader = new StreamReader(zip.GetEntry(name)!.Open(), Encoding.UTF8))
        {
            text = reader.ReadToEnd();
        }

        zip.GetEntry(name)!.Delete();
        using var content = zip.CreateEntry(name).Open();
        content.Write(Encoding.UTF8.GetBytes(change(text)));
    }
}
