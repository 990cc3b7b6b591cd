using CommunityToolkit.Mvvm.Input;
using SectionScan.Archive.Entries;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Libraries;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Results;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>Compare: one section on another, from this job or from the library.</summary>
public sealed partial class CompareViewModel(JobViewModel window, JobDesk desk) : PlaceViewModel(window)
{
    private (LiveJob? Live, ComparisonChoice Choice, string? Reference, string? Measured, int? Revision) madeOf;
    private Result<SectionComparison>? made;
    private IReadOnlyList<EntrySummary>? entries;

    /// <summary>What is chosen.</summary>
    public ComparisonChoice Choice => Window.Job.Comparison;

    /// <summary>The job's sections, with their names.</summary>
    public IReadOnlyList<(string Key, string Name)> Sections => [.. Window.Job.Sections.Select(each => (each.Id, Window.Job.NameOf(each)))];

    /// <summary>The library's sections; empty when there is no library.</summary>
    public IReadOnlyList<(string Key, string Name)> LibrarySections => [.. Entries().Select(each => (KeyOf(each), each.Place.Path))];

    /// <summary>The comparison, or why there is none; null while nothing is chosen.</summary>
    public Result<SectionComparison>? Comparison
    {
        get
        {
            if (Choice is not { Reference: { } reference, Measured: { } measured })
            {
                return null;
            }

            // Corrections change what is compared without changing the choice; another job may have files of the same names.
            var revision = Entries().FirstOrDefault(each => KeyOf(each) == reference)?.RevisionNumber;
            var of = (Window.Live, Choice, Window.Job.Section(reference)?.DocumentFile, Window.Job.Section(measured)?.DocumentFile, revision);
            if (made is null || madeOf != of)
            {
                made = Input(reference).Then(known => Input(measured).Then<SectionComparison>(asked =>
                    SectionComparison.Of(known, asked, new(Choice.Alignment, Choice.IsMirrored))));
                madeOf = of;
            }

            return made;
        }
    }

    /// <summary>Chooses what is the reference.</summary>
    public void ChooseReference(string? key) => Choose("Choose the reference", choice => choice with { Reference = NullIfEmpty(key) });

    /// <summary>Chooses what is laid on it.</summary>
    public void ChooseMeasured(string? key) => Choose("Choose the measured section", choice => choice with { Measured = NullIfEmpty(key) });

    /// <summary>Chooses how it is laid on.</summary>
    public void ChooseAlignment(AlignmentMethod alignment) => Choose("Choose the alignment", choice => choice with { Alignment = alignment });

    /// <summary>Exchanges left and right of what is laid on.</summary>
    public void ChooseMirrored(bool isMirrored) => Choose("Mirror the measured section", choice => choice with { IsMirrored = isMirrored });

    /// <summary>Looks into the library again.</summary>
    [RelayCommand]
    private void LookAgain()
    {
        entries = null;
        OnPropertyChanged(nameof(LibrarySections));
    }

    private static string KeyOf(EntrySummary entry) => FormattableString.Invariant($"{ComparisonChoice.LibraryPrefix}{entry.Id}");

    private static string? NullIfEmpty(string? key) => string.IsNullOrEmpty(key) ? null : key;

    private IReadOnlyList<EntrySummary> Entries()
    {
        if (entries is null)
        {
            entries = File.Exists(desk.LibraryPath)
                && LibrarySource.Use(desk.LibraryPath, desk.Time, library => library.List()).TryGet(out var found, out _) ? found : [];
        }

        return entries;
    }

    private void Choose(string what, Func<ComparisonChoice, ComparisonChoice> change) => Window.Live?.Do(
        what, job => change(job.Comparison) is var next && next == job.Comparison ? job : job with { Comparison = next });

    private Result<SectionInput> Input(string key)
    {
        if (key.StartsWith(ComparisonChoice.LibraryPrefix, StringComparison.Ordinal))
        {
            return SectionInput.Read(key, desk.LibraryPath, desk.Time);
        }

        return Window.Job.Section(key) is { } section
            ? Window.Live!.Measured(section).Then<SectionInput>(read => SectionInput.Of(Window.Job.NameOf(section), read.Document))
            : JobProblems.NotFound(key);
    }
}
