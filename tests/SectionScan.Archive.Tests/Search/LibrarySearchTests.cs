using CsCheck;
using SectionScan.Archive.Entries;
using SectionScan.Archive.Library;
using SectionScan.Archive.Search;
using SectionScan.Metrology.Quantities;
using SectionScan.Testing.Sections;

namespace SectionScan.Archive.Tests.Search;

public sealed class LibrarySearchTests : IDisposable
{
    private readonly LibraryFolder folder = new();
    private readonly SectionLibrary library;

    public LibrarySearchTests() => library = folder.Open();

    [Fact]
    public void All_words_must_occur_and_the_beginning_of_a_word_is_enough()
    {
        Add(1, notes: "Proven on the long-stroke engine, 38.5 mm valve.", tags: ["café racer"]);
        Add(2, notes: "Proven, short stroke.", fields: [new("valve diameter", 41, "mm")]);

        Assert.Equal([1, 2], Stations("prov strok"));
        Assert.Equal([1], Stations("LONG-stroke"));
        Assert.Equal([1], Stations("cafe"));
        Assert.Equal([1], Stations("38.5"));
        Assert.Equal([2], Stations("diam 41"));
        Assert.Equal([2], Stations("station 2"));
        Assert.Equal([1, 2], Stations("intake bramble"));
        Assert.Empty(Stations("proven turbo"));
    }

    [Theory]
    [InlineData("\"")]
    [InlineData("*")]
    [InlineData("  ")]
    [InlineData("--")]
    public void A_search_without_a_letter_or_digit_is_refused(string words) =>
        Assert.Equal("search-without-words", Results.ProblemOf(library.FindByWords(words)).Code);

    [Theory]
    [InlineData("bramble OR zeta", 0)]
    [InlineData("NOT zeta", 0)]
    [InlineData("bramble\" OR \"zeta", 0)]
    [InlineData("head:bramble", 0)]
    [InlineData("bramble AND (", 0)]
    [InlineData("bram*", 1)]
    [InlineData("bramble'; DROP TABLE words; --", 0)]
    public void What_a_person_types_is_text_and_never_an_operator(string words, int found)
    {
        Add(1);

        Assert.Equal(found, library.FindByWords(words).ValueOrThrow().Count);
        Assert.Single(library.List().ValueOrThrow());
    }

    [Fact]
    public void No_text_at_all_makes_the_search_fail()
    {
        Add(1);

        Gen.String[Gen.Char[" \"'*():^-+{}\\\n\0aZ0é½ß東\ud83d"], 0, 20].Sample(words =>
            library.FindByWords(words).TryGet(out _, out var problem) || problem.Code == "search-without-words", iter: 300, seed: "0000OnXyZab1");
    }

    [Fact]
    public void A_corrected_entry_is_found_by_its_new_words_only()
    {
        var id = Add(1, notes: "rough");

        library.Revise(id, LibraryFolder.Content(1) with { Notes = "smooth" }, "Polished.").ValueOrThrow();

        Assert.Empty(Stations("rough"));
        Assert.Equal([1], Stations("smooth"));
    }

    [Fact]
    public void Numbers_are_found_by_ranges_with_both_ends_included()
    {
        AddEllipse(1, 40, 28); // area π·20·14 = 879.65 mm²
        AddEllipse(2, 36, 30); // π·18·15 = 848.23
        AddEllipse(3, 30, 24); // π·15·12 = 565.49

        Assert.Equal([1, 2], StationsIn([new("area", 800, 900)]));
        Assert.Equal([1], StationsIn([new("area", 850, null)]));
        Assert.Equal([1, 2], StationsIn([new("width", 36, 40)]));
        Assert.Equal([2], StationsIn([new("area", 800, 900), new("height", 29, 31)]));
        Assert.Equal([2, 3], StationsIn([new("station", 2, null)]));
        Assert.Equal([3], StationsIn([new("width", null, 31)]));
        Assert.Equal([1], StationsIn([new("width", 1.5, 1.6, "in")])); // 38.1 to 40.64 mm
        Assert.Equal([3], StationsIn([new("area", 0.8, 0.9, "in²")])); // 516 to 581 mm²
    }

    [Fact]
    public void Fields_are_compared_across_units_of_one_kind()
    {
        Add(1, fields: [new("valve diameter", 38.1, "mm")]);
        Add(2, fields: [new("Valve diameter", 1.5, "in")]);
        Add(3, fields: [new("valve diameter", 41, "mm"), new("flow", 100, "cfm")]);
        Add(4, fields: [new("flow", 2831.7, "l/min"), new("polish", 4, "stars")]);

        Assert.Equal([1, 2], StationsIn([new("valve diameter", 38, 38.2, "mm")]));
        Assert.Equal([1, 2], StationsIn([new("VALVE DIAMETER", 1.49, 1.51, "in")]));
        Assert.Equal([1, 3], StationsIn([new("valve diameter", 30, 50)]));
        Assert.Equal([3, 4], StationsIn([new("flow", 99, 101, "cfm")])); // 1 cfm = 28.3168 l/min
        Assert.Equal([4], StationsIn([new("polish", 3, null, "stars")]));
        Assert.Empty(StationsIn([new("polish", 3, null, "mm")]));
    }

    [Fact]
    public void Words_and_ranges_together_look_at_every_entry_and_not_at_the_best_hundred_by_words_only()
    {
        for (var station = 1; station <= 130; station++)
        {
            Add(station, notes: "lathe", fields: [new("depth", station, "mm")]);
        }

        var found = library.FindByWords("lathe", count: 1000, ranges: [new("depth", 12.5, 13, "cm")]).ValueOrThrow();

        Assert.Equal([125, 126, 127, 128, 129, 130], found.Select(each => each.Place.Station).Order());
        Assert.Equal(3, library.FindByWords("lathe", count: 3, ranges: [new("depth", 12.5, 13, "cm")]).ValueOrThrow().Count);
        Assert.Empty(library.FindByWords("mill", ranges: [new("depth", 1, 2)]).ValueOrThrow());
        Assert.Equal("search-range-unusable", Results.ProblemOf(library.FindByWords("lathe", ranges: [new("depth", 2, 1)])).Code);
    }

    [Fact]
    public void The_most_similar_shapes_among_those_with_words_and_numbers()
    {
        AddEllipse(1, 40, 28);
        AddEllipse(2, 41, 28);
        AddEllipse(3, 60, 20);
        var proven = Add(9, notes: "proven");

        Assert.Equal([2], SimilarTo([new("station", 2, 2)]));
        Assert.Equal([3], SimilarTo([new("width", 50, null)]));
        Assert.Equal(proven, library.FindSimilar(SampleSections.Ellipse(40, 28), 5, new(), words: "prov").ValueOrThrow().Single().Entry.Id);
        Assert.Empty(library.FindSimilar(SampleSections.Ellipse(40, 28), 5, new(), words: "zeta").ValueOrThrow());

        IEnumerable<int> SimilarTo(NumberRange[] ranges) => library.FindSimilar(SampleSections.Ellipse(40, 28), 5, new(), ranges: ranges)
            .ValueOrThrow().Select(each => each.Entry.Place.Station);
    }

    [Fact]
    public void A_range_without_sense_is_refused()
    {
        Assert.Equal("search-range-unusable", Results.ProblemOf(library.FindByNumbers([new("area", null, null)])).Code);
        Assert.Equal("search-range-unusable", Results.ProblemOf(library.FindByNumbers([new("area", 2, 1)])).Code);
        Assert.Equal("search-range-unusable", Results.ProblemOf(library.FindByNumbers([new("area", double.NaN, 1)])).Code);
        Assert.Equal("search-unit-unusable", Results.ProblemOf(library.FindByNumbers([new("area", 1, 2, "mm")])).Code);
    }

    [Fact]
    public void The_most_similar_shapes_come_nearest_first_with_their_distance()
    {
        foreach (var station in Enumerable.Range(1, 60))
        {
            library.Add(LibraryFolder.Content(station)).ValueOrThrow();
        }

        library.Add(new(LibraryFolder.Place(100), SampleSections.Document(SampleSections.Ellipse(40, 40), 100))).ValueOrThrow();
        library.Add(new(LibraryFolder.Place(101), SampleSections.Document(SampleSections.Ellipse(42, 42), 101))).ValueOrThrow();

        var found = library.FindSimilar(SampleSections.Ellipse(40.2, 40.2), 3, new()).ValueOrThrow();

        Assert.Equal([100, 101], found.Take(2).Select(each => each.Entry.Place.Station));
        Assert.Equal(0.1, found[0].Likeness.DistanceMm, 1e-3); // radii 20.1 and 20
        Assert.Equal(0.9, found[1].Likeness.DistanceMm, 1e-3);
        Assert.True(found[2].Likeness.DistanceMm > found[1].Likeness.DistanceMm);
    }

    [Fact]
    public void A_mirrored_turned_section_of_another_size_is_found_when_all_that_is_allowed()
    {
        foreach (var station in Enumerable.Range(1, 100))
        {
            library.Add(LibraryFolder.Content(station)).ValueOrThrow();
        }

        var own = library.Find("Bramble 480 twin/intake 1/station 42").ValueOrThrow();
        var asked = SampleSections.Blob(42).Mirrored().Turned(Angle.FromDegrees(20)).Scaled(1.3);

        var found = library.FindSimilar(asked, 1, new(MayScale: true, MayMirror: true, MayTurn: true)).ValueOrThrow().Single();
        var others = library.FindSimilar(asked, 1, new(MayScale: true, MayMirror: true, MayTurn: true), except: own).ValueOrThrow().Single();

        Assert.Equal(own, found.Entry.Id);
        Assert.Equal((true, 1.3), (found.Likeness.IsMirrored, Math.Round(found.Likeness.Scale, 4)));
        Assert.Equal(0, found.Likeness.DistanceMm, 1e-3);
        Assert.NotEqual(own, others.Entry.Id);
    }

    [Fact]
    public void What_another_connection_wrote_is_found_too()
    {
        library.Add(LibraryFolder.Content(1)).ValueOrThrow();
        Assert.Equal(1, library.LoadShapes().ValueOrThrow());
        using var other = folder.Open();
        var added = other.Add(LibraryFolder.Content(2)).ValueOrThrow();

        Assert.Equal(added.Id, library.FindSimilar(SampleSections.Blob(2), 1, new()).ValueOrThrow().Single().Entry.Id);

        other.Revise(added.Id, LibraryFolder.Content(3, LibraryFolder.Place(2)), "Another slice.").ValueOrThrow();
        Assert.True(library.FindSimilar(SampleSections.Blob(2), 1, new()).ValueOrThrow().Single().Likeness.DistanceMm > 0.1);

        other.Remove(added.Id, "Gone.").ValueOrThrow();
        Assert.Equal(1, library.LoadShapes().ValueOrThrow());
    }

    public void Dispose()
    {
        library.Dispose();
        folder.Dispose();
    }

    private long Add(int station, string notes = "", IReadOnlyList<string>? tags = null, IReadOnlyList<NumericField>? fields = null) =>
        library.Add(LibraryFolder.Content(station) with { Notes = notes, Tags = tags ?? [], Fields = fields ?? [] }).ValueOrThrow().Id;

    private void AddEllipse(int station, double widthMm, double heightMm) =>
        library.Add(new(LibraryFolder.Place(station), SampleSections.Document(SampleSections.Ellipse(widthMm, heightMm), station))).ValueOrThrow();

    private IEnumerable<int> Stations(string words) => library.FindByWords(words).ValueOrThrow().Select(each => each.Place.Station).Order();

    private IEnumerable<int> StationsIn(IReadOnlyList<Archive.Search.NumberRange> ranges) =>
        library.FindByNumbers(ranges).ValueOrThrow().Select(each => each.Place.Station).Order();
}
