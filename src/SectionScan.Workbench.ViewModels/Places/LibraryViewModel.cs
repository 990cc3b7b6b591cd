using CommunityToolkit.Mvvm.ComponentModel;
using CommunityToolkit.Mvvm.Input;
using SectionScan.Archive.Entries;
using SectionScan.Archive.Library;
using SectionScan.Jobs.Libraries;
using SectionScan.Metrology.Likeness;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Results;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>The reference section library: search by words, by area and by likeness; every entry's history.</summary>
public sealed partial class LibraryViewModel(JobDesk desk) : ObservableObject
{
    private const int MostShown = 200;
    private const int MostAlike = 12;

    /// <summary>Words to search for; empty for all.</summary>
    [ObservableProperty]
    public partial string Words { get; set; } = string.Empty;

    /// <summary>Least area, mm², or null.</summary>
    [ObservableProperty]
    public partial double? LeastAreaMm2 { get; set; }

    /// <summary>Greatest area, mm², or null.</summary>
    [ObservableProperty]
    public partial double? MostAreaMm2 { get; set; }

    /// <summary>What was found.</summary>
    [ObservableProperty]
    public partial IReadOnlyList<EntrySummary> Found { get; private set; } = [];

    /// <summary>What the list shows, in words.</summary>
    [ObservableProperty]
    public partial string Heading { get; private set; } = string.Empty;

    /// <summary>The entry on show, or null.</summary>
    [ObservableProperty]
    public partial LibraryEntry? Shown { get; private set; }

    /// <summary>Why the library cannot be read, or null.</summary>
    [ObservableProperty]
    public partial Problem? Problem { get; private set; }

    /// <summary>The library's file.</summary>
    public string Path => desk.LibraryPath;

    /// <summary>An entry's outline as it is now, or null.</summary>
    public Outline? OutlineOf(EntrySummary entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return Use(library => library.Show(entry.Id).Then(found => found.ReadDocument())) is { } document ? document.Section.Outline : null;
    }

    [RelayCommand]
    private void Search()
    {
        var words = Words.Trim();
        Found = Use(library => words.Length == 0 ? library.List() : library.FindByWords(words, MostShown)) is { } all
            ? [.. all.Where(each => !(each.AreaMm2 < LeastAreaMm2) && !(each.AreaMm2 > MostAreaMm2)).Take(MostShown)]
            : [];
        Heading = FormattableString.Invariant($"{Found.Count} section{(Found.Count == 1 ? string.Empty : "s")}");
    }

    [RelayCommand]
    private void Show(long id) => Shown = Use(library => library.Show(id));

    [RelayCommand]
    private void FindAlike(long id)
    {
        var alike = Use(library => library.Show(id).Then(entry => entry.ReadDocument()).Then(document =>
            library.FindSimilar(document.Section.Outline, MostAlike, new LikenessFreedom(MayTurn: true), id)));
        if (alike is not null)
        {
            Found = [.. alike.Select(each => each.Entry)];
            Heading = "Nearest in shape first";
        }
    }

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
}
