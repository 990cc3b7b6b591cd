using CommunityToolkit.Mvvm.ComponentModel;
using CommunityToolkit.Mvvm.Input;
using SectionScan.Archive.Entries;
using SectionScan.Archive.Library;
using SectionScan.Archive.Search;
using SectionScan.Jobs.Libraries;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Likeness;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>The reference section library: search by words, by area and by likeness; every entry's history.</summary>
public sealed partial class LibraryViewModel : ObservableObject, IDisposable
{
    private const int MostShown = 200;
    private const int MostAlike = 12;
    private static readonly IReadOnlyList<Measure> OnACard = [MeasureCatalogue.Area, MeasureCatalogue.Width, MeasureCatalogue.Height];

    private readonly JobDesk desk;
    private readonly UnitChoice units;

    /// <summary>Makes it; nothing is read yet.</summary>
    public LibraryViewModel(JobDesk desk, UnitChoice units)
    {
        ArgumentNullException.ThrowIfNull(desk);
        ArgumentNullException.ThrowIfNull(units);
        this.desk = desk;
        this.units = units;
        desk.LibraryChanged += OnLibraryChanged;
    }

    /// <summary>Words to search for; empty for all.</summary>
    [ObservableProperty]
    public partial string Words { get; set; } = string.Empty;

    /// <summary>Least area as typed, in the unit shown; empty for no bound.</summary>
    [ObservableProperty]
    public partial string LeastArea { get; set; } = string.Empty;

    /// <summary>Greatest area as typed, in the unit shown; empty for no bound.</summary>
    [ObservableProperty]
    public partial string MostArea { get; set; } = string.Empty;

    /// <summary>What was found, with what is shown of each.</summary>
    [ObservableProperty]
    public partial IReadOnlyList<ShelfCard> Found { get; private set; } = [];

    /// <summary>What the list shows, in words.</summary>
    [ObservableProperty]
    public partial string Heading { get; private set; } = string.Empty;

    /// <summary>The entry on show, or null.</summary>
    [ObservableProperty]
    public partial ShownEntry? Shown { get; private set; }

    /// <summary>The job in which sections are compared; null while there is none.</summary>
    [ObservableProperty]
    [NotifyPropertyChangedFor(nameof(CanCompare))]
    public partial string? ComparedIn { get; private set; }

    /// <summary>Why the library cannot be read, or null.</summary>
    [ObservableProperty]
    public partial Problem? Problem { get; private set; }

    /// <summary>The library's file.</summary>
    public string Path => desk.LibraryPath;

    /// <summary>True when there is a job to compare in.</summary>
    public bool CanCompare => ComparedIn is not null;

    /// <summary>The jobs that can be opened, the one changed last first, with their names.</summary>
    public IReadOnlyList<(string Id, string Name)> Jobs() => [.. desk.Ids().Take(MostShown)
        .Select(id => (Id: id, Job: desk.Look(id).TryGet(out var job, out _) ? job : null))
        .Where(each => each.Job is not null).Select(each => (each.Id, each.Job!.Name))];

    /// <summary>Chooses the job in which sections are compared; one that cannot be opened, or none, is the one changed last.</summary>
    public void ChooseJob(string? id)
    {
        var jobs = Jobs();
        ComparedIn = jobs.Any(each => each.Id == id) ? id : jobs.Count > 0 ? jobs[0].Id : null;
    }

    /// <summary>Makes an entry the reference of the job's comparison: a step of the job.</summary>
    /// <param name="id">The entry's number.</param>
    /// <param name="revision">One of its revisions; null for what it is now, now and later.</param>
    /// <returns>True when the job holds it; false with <see cref="Problem"/> when it cannot.</returns>
    public bool Compare(long id, int? revision)
    {
        if (ComparedIn is null || !desk.Open(ComparedIn).TryGet(out var live, out var problem))
        {
            Problem = JobProblems.NotFound(ComparedIn ?? string.Empty);
            return false;
        }

        var key = FormattableString.Invariant($"{ComparisonChoice.LibraryPrefix}{id}") + (revision is { } number ? FormattableString.Invariant($"@{number}") : string.Empty);
        live.Do("Choose the reference", job => job with { Comparison = job.Comparison with { Reference = key, ByHand = HandMove.None } });
        Problem = problem ?? live.SaveProblem;
        return Problem is null;
    }

    /// <inheritdoc/>
    public void Dispose() => desk.LibraryChanged -= OnLibraryChanged;

    private void OnLibraryChanged(object? sender, EventArgs e) => Search();

    [RelayCommand]
    private void Search()
    {
        if (!NumberEntry.TryRead(LeastArea, "area from", FieldUnit.Area, units.IsInch, out var least, out var problem) || !NumberEntry.TryRead(MostArea, "area to", FieldUnit.Area, units.IsInch, out var most, out problem))
        {
            Problem = problem;
            return;
        }

        var words = Words.Trim();
        IReadOnlyList<NumberRange> ranges = least is null && most is null ? [] : [new("area", least, most)];
        var found = Use(library => (words.Length > 0 ? library.FindByWords(words, MostShown + 1, ranges: ranges)
            : ranges.Count > 0 ? library.FindByNumbers(ranges)
            : library.List()).Then(entries => Cards(library, entries.Take(MostShown), entries.Count > MostShown)));
        Show(found, found?.IsCutOff == true
            ? FormattableString.Invariant($"The first {MostShown} sections; narrow the search to see others")
            : FormattableString.Invariant($"{found?.Cards.Count ?? 0} section{(found?.Cards.Count == 1 ? string.Empty : "s")}"));
    }

    [RelayCommand]
    private void Show(long id) => Shown = Use(library => library.Show(id).Then<ShownEntry>(entry => new ShownEntry(
        entry, [.. entry.History.Select(revision => new ShownRevision(revision, entry.ReadDocument(revision).TryGet(out var document, out _) ? document.Section.Outline : null))])));

    [RelayCommand]
    private void FindAlike(long id)
    {
        var alike = Use(library => library.Show(id).Then(entry => entry.ReadDocument()).Then(document =>
            library.FindSimilar(document.Section.Outline, MostAlike, new LikenessFreedom(MayTurn: true), id))
            .Then(found => Cards(library, found.Select(each => each.Entry), false)));
        if (alike is not null)
        {
            Show(alike, "Nearest in shape first");
        }
    }

    /// <summary>Everything that a card shows is read here, once: showing it again asks the library nothing.</summary>
    private static Result<Shelf> Cards(SectionLibrary library, IEnumerable<EntrySummary> entries, bool isCutOff) =>
        new Shelf([.. entries.Select(each => library.Show(each.Id).Then(entry => entry.ReadDocument()).TryGet(out var document, out _)
            ? new ShelfCard(each, document.Section.Outline, MeasuredOutline.Of(document.Section.Outline, document.Section.ErrorSources, OnACard))
            : new ShelfCard(each, null, null))], isCutOff);

    private void Show(Shelf? shelf, string heading) => (Found, Heading) = (shelf?.Cards ?? [], heading);

    private T? Use<T>(Func<SectionLibrary, Result<T>> use)
        where T : class
    {
        // Looking is not making: without a library there is nothing to see.
        if (!File.Exists(desk.LibraryPath))
        {
            return null;
        }

        var found = LibrarySource.Use(desk.LibraryPath, desk.Time, use).TryGet(out var value, out var problem) ? value : null;
        Problem = problem;
        return found;
    }

    /// <summary>An entry as the shelf shows it.</summary>
    /// <param name="Entry">The entry.</param>
    /// <param name="Outline">Its outline as it is now, or null when its document cannot be read.</param>
    /// <param name="Measures">Its area, width and height with their uncertainty, or null likewise.</param>
    public sealed record ShelfCard(EntrySummary Entry, Outline? Outline, MeasuredOutline? Measures);

    /// <summary>An entry with its history as the page shows it.</summary>
    /// <param name="Entry">The entry.</param>
    /// <param name="Revisions">Its revisions, the first one first.</param>
    public sealed record ShownEntry(LibraryEntry Entry, IReadOnlyList<ShownRevision> Revisions);

    /// <summary>A revision as the page shows it.</summary>
    /// <param name="Revision">The revision.</param>
    /// <param name="Outline">The outline it held, or null when its document cannot be read.</param>
    public sealed record ShownRevision(EntryRevision Revision, Outline? Outline);

    private sealed record Shelf(IReadOnlyList<ShelfCard> Cards, bool IsCutOff);
}
