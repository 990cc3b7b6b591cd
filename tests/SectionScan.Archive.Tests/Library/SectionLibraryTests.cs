using SectionScan.Archive.Entries;
using SectionScan.Archive.Library;
using SectionScan.Porting.Ports;
using SectionScan.Testing.Sections;

namespace SectionScan.Archive.Tests.Library;

public sealed class SectionLibraryTests : IDisposable
{
    private static readonly string Photo = new('b', 64);

    private readonly LibraryFolder folder = new();
    private readonly SectionLibrary library;

    public SectionLibraryTests() => library = folder.Open();

    [Fact]
    public void What_was_added_is_there_to_the_letter_after_opening_again()
    {
        var json = SampleSections.Document(SampleSections.Ellipse(40, 28), 3, Photo);
        var place = new SectionPlace("Bramble 480 twin", new(PortKind.Exhaust, 2, "left"), 3, "as cast");
        var content = new EntryContent(place, json, "First slice.\nBubble at the roof.", ["proven", "long stroke"], [new("valve diameter", 38, "mm"), new("flow", 95.5, "cfm")]);

        var added = library.Add(content).ValueOrThrow();
        library.Dispose();
        using var again = folder.Open();
        var shown = again.Show(added.Id).ValueOrThrow();

        Assert.Equal("Bramble 480 twin/exhaust 2 left/station 3/as cast", shown.Summary.Place.Path);
        Assert.Equal(json, shown.Current.Content.DocumentJson);
        Assert.Equal(content.Notes, shown.Current.Content.Notes);
        Assert.Equal(content.Tags, shown.Current.Content.Tags);
        Assert.Equal(content.Fields, shown.Current.Content.Fields);
        Assert.Equal(new(2025, 5, 1, 10, 0, 1, TimeSpan.Zero), shown.Summary.AddedAt);
        Assert.Equal((Photo, 1, false), (shown.Summary.PhotoSha256, shown.Summary.RevisionNumber, shown.Summary.IsRemoved));
        Assert.Equal(360, shown.ReadDocument().ValueOrThrow().Section.Outline.Count);

        // An ellipse: π·20·14, less the inscribed 360-gon's 5.08e-5.
        Assert.Equal(879.645943, shown.Summary.AreaMm2, 0.06);
        Assert.Equal((40, 28), (shown.Summary.WidthMm, shown.Summary.HeightMm));
    }

    [Fact]
    public void A_correction_is_a_new_revision_and_the_earlier_one_stays()
    {
        var added = library.Add(LibraryFolder.Content(3)).ValueOrThrow();
        var corrected = LibraryFolder.Content(4, LibraryFolder.Place(5)) with { Notes = "Turned the right way up." };

        var revised = library.Revise(added.Id, corrected, "It lay upside down.").ValueOrThrow();

        var history = library.Show(added.Id).ValueOrThrow().History;
        Assert.Equal((added.Id, 2, "Bramble 480 twin/intake 1/station 5"), (revised.Id, revised.RevisionNumber, revised.Place.Path));
        Assert.Equal([RevisionAction.Added, RevisionAction.Revised], history.Select(each => each.Action));
        Assert.Equal(["", "It lay upside down."], history.Select(each => each.Reason));
        Assert.Equal(LibraryFolder.Content(3).DocumentJson, history[0].Content.DocumentJson);
        Assert.Equal(corrected.DocumentJson, history[1].Content.DocumentJson);
        Assert.Equal(3, history[0].Content.Place.Station);
        Assert.True(history[0].At < history[1].At);
        Assert.Equal(history[0].At, revised.AddedAt);
        Assert.Equal(history[1].At, revised.ChangedAt);
    }

    [Fact]
    public void A_removed_entry_leaves_the_lists_but_not_the_history_and_can_come_back()
    {
        var id = library.Add(LibraryFolder.Content(3) with { Tags = ["proven"] }).ValueOrThrow().Id;

        library.Remove(id, "Wrong head.").ValueOrThrow();

        Assert.Empty(library.List().ValueOrThrow());
        Assert.Empty(library.FindByWords("bramble").ValueOrThrow());
        Assert.Empty(library.FindByNumbers([new("station", 3, 3)]).ValueOrThrow());
        Assert.Empty(library.FindSimilar(SampleSections.Blob(3), 5, new()).ValueOrThrow());
        Assert.Single(library.List(new(IncludesRemoved: true)).ValueOrThrow());
        Assert.Single(library.FindByWords("bramble", includesRemoved: true).ValueOrThrow());

        library.Restore(id, "It was right after all.").ValueOrThrow();

        Assert.Equal(["proven"], library.List().ValueOrThrow().Single().Tags);
        Assert.Single(library.FindByWords("bramble").ValueOrThrow());
        Assert.Single(library.FindSimilar(SampleSections.Blob(3), 5, new()).ValueOrThrow());
        Assert.Equal(
            [RevisionAction.Added, RevisionAction.Removed, RevisionAction.Restored],
            library.Show(id).ValueOrThrow().History.Select(each => each.Action));
    }

    [Fact]
    public void A_place_holds_one_entry_unless_a_stage_tells_them_apart()
    {
        var first = library.Add(LibraryFolder.Content(3)).ValueOrThrow();

        var taken = Results.ProblemOf(library.Add(LibraryFolder.Content(4, LibraryFolder.Place(3, "BRAMBLE 480 Twin"))));
        library.Add(LibraryFolder.Content(4, LibraryFolder.Place(3, stage: "finished"))).ValueOrThrow();

        Assert.Equal("entry-place-taken", taken.Code);
        Assert.Contains($"Entry {first.Id} ", taken.What, StringComparison.Ordinal);
        Assert.Equal(["", "finished"], library.List().ValueOrThrow().Select(each => each.Place.Stage));
    }

    [Fact]
    public void The_place_of_a_removed_entry_is_free_and_then_it_cannot_come_back()
    {
        var first = library.Add(LibraryFolder.Content(3)).ValueOrThrow().Id;
        library.Remove(first, "Bad slice.").ValueOrThrow();
        var second = library.Add(LibraryFolder.Content(4, LibraryFolder.Place(3))).ValueOrThrow().Id;

        Assert.Equal("entry-place-taken", Results.ProblemOf(library.Restore(first, "Both?")).Code);
        Assert.Equal(second, library.Find("Bramble 480 twin/intake 1/station 3").ValueOrThrow());
    }

    [Fact]
    public void What_cannot_be_done_is_refused_and_changes_nothing()
    {
        var id = library.Add(LibraryFolder.Content(3)).ValueOrThrow().Id;

        Assert.Equal("entry-not-found", Results.ProblemOf(library.Show(99)).Code);
        Assert.Equal("entry-not-found", Results.ProblemOf(library.Remove(99, "Why not.")).Code);
        Assert.Equal("entry-not-found", Results.ProblemOf(library.Revise(99, LibraryFolder.Content(3), "Why not.")).Code);
        Assert.Equal("entry-reason-missing", Results.ProblemOf(library.Remove(id, "  ")).Code);
        Assert.Equal("entry-reason-missing", Results.ProblemOf(library.Revise(id, LibraryFolder.Content(3), "")).Code);
        Assert.Equal("entry-is-not-removed", Results.ProblemOf(library.Restore(id, "Back.")).Code);
        Assert.Equal("section-document-not-json", Results.ProblemOf(library.Revise(id, LibraryFolder.Content(3) with { DocumentJson = "{" }, "Broken.")).Code);
        Assert.Equal("entry-changed-meanwhile", Results.ProblemOf(library.Revise(id, LibraryFolder.Content(3), "Late.", basedOn: 2)).Code);
        Assert.Single(library.Show(id).ValueOrThrow().History);

        library.Remove(id, "Gone.").ValueOrThrow();
        Assert.Equal("entry-is-removed", Results.ProblemOf(library.Remove(id, "Again.")).Code);
        Assert.Equal("entry-is-removed", Results.ProblemOf(library.Revise(id, LibraryFolder.Content(3), "Again.")).Code);
        Assert.Equal(2, library.Show(id).ValueOrThrow().History.Count);
    }

    [Theory]
    [InlineData("Bramble/480", "", "entry-text-unusable")]
    [InlineData("  ", "", "entry-text-unusable")]
    [InlineData("Bramble", "as/cast", "entry-text-unusable")]
    [InlineData("Bram\0ble", "", "entry-text-unusable")]
    public void A_name_that_cannot_stand_in_a_path_is_refused(string head, string stage, string code) =>
        Assert.Equal(code, Results.ProblemOf(library.Add(LibraryFolder.Content(1, LibraryFolder.Place(1, head, stage)))).Code);

    [Fact]
    public void Half_a_character_is_refused() =>
        Assert.Equal("entry-text-unusable", Results.ProblemOf(library.Add(LibraryFolder.Content(1) with { Notes = "Bram\ud800ble" })).Code);

    [Fact]
    public void A_field_given_twice_or_without_a_finite_value_is_refused()
    {
        var content = LibraryFolder.Content(1);

        Assert.Equal("entry-text-unusable", Results.ProblemOf(library.Add(content with { Fields = [new("bore", 80, "mm"), new("Bore", 81, "mm")] })).Code);
        Assert.Equal("entry-number-unusable", Results.ProblemOf(library.Add(content with { Fields = [new("bore", double.NaN, "mm")] })).Code);
        Assert.Equal("entry-number-unusable", Results.ProblemOf(library.Add(LibraryFolder.Content(1, LibraryFolder.Place(-1)))).Code);
        Assert.Empty(library.List(new(IncludesRemoved: true)).ValueOrThrow());
    }

    [Fact]
    public void An_entry_is_named_by_number_or_by_path()
    {
        var id = library.Add(LibraryFolder.Content(3)).ValueOrThrow().Id;

        Assert.Equal(id, library.Find($"{id}").ValueOrThrow());
        Assert.Equal(id, library.Find($"#{id}").ValueOrThrow());
        Assert.Equal(id, library.Find("bramble 480  TWIN/Intake 1/station 3").ValueOrThrow());
        Assert.Equal("entry-not-found", Results.ProblemOf(library.Find("77")).Code);
        Assert.Equal("entry-not-found", Results.ProblemOf(library.Find("Bramble 480 twin/intake 1/station 4")).Code);
        Assert.Equal("section-path-unusable", Results.ProblemOf(library.Find("Bramble")).Code);
    }

    [Fact]
    public void Lists_are_in_the_order_of_head_port_and_station_and_can_be_narrowed()
    {
        foreach (var path in new[] { "Zeta/intake 1/station 1", "Bramble/exhaust 1/station 1", "Bramble/intake 2/station 1", "Bramble/intake 1/station 10", "Bramble/intake 1/station 2" })
        {
            library.Add(LibraryFolder.Content(1, SectionPlace.Parse(path).ValueOrThrow()) with { Tags = path.Contains("10", StringComparison.Ordinal) ? ["Minimum"] : [] }).ValueOrThrow();
        }

        Assert.Equal(
            ["Bramble/intake 1/station 2", "Bramble/intake 1/station 10", "Bramble/intake 2/station 1", "Bramble/exhaust 1/station 1", "Zeta/intake 1/station 1"],
            library.List().ValueOrThrow().Select(each => each.Place.Path));
        Assert.Equal(4, library.List(new(Head: "bramble")).ValueOrThrow().Count);
        Assert.Equal(2, library.List(new(Head: "bramble", Port: new(PortKind.Intake, 1))).ValueOrThrow().Count);
        Assert.Equal(3, library.List(new(Station: 1, Stage: "", Port: null, Head: null)).ValueOrThrow().Count);
        Assert.Equal(10, library.List(new(Tag: "minimum")).ValueOrThrow().Single().Place.Station);
    }

    [Fact]
    public void Sections_of_one_photo_are_found_by_its_hash()
    {
        library.Add(new(LibraryFolder.Place(1), SampleSections.Document(SampleSections.Blob(1), 1, Photo))).ValueOrThrow();
        library.Add(LibraryFolder.Content(2)).ValueOrThrow();

        Assert.Equal(1, library.List(new(PhotoSha256: Photo.ToUpperInvariant())).ValueOrThrow().Single().Place.Station);
    }

    public void Dispose()
    {
        library.Dispose();
        folder.Dispose();
    }
}
