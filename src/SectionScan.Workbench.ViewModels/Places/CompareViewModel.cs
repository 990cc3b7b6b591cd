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
    // A hand tells hundredths of a millimetre; what is typed may be thousandths, and tenths of thousandths of an inch.
    private const int HandDecimals = 2;
    private const int TypedDecimals = 3;

    private (LiveJob? Live, ComparisonChoice Choice, string? Reference, string? Measured, int? ReferenceRevision, int? MeasuredRevision) madeOf;
    private Result<SectionComparison>? made;
    private (SectionComparison Laid, HandMove Move, SectionComparison Moved)? moved;
    private (ComparisonChoice Of, HandMove Move)? draft;
    private IReadOnlyList<EntrySummary>? entries;
    private readonly Dictionary<string, string> pastNames = new(StringComparer.Ordinal);
    private PortOptions? options;
    private (LiveJob? Live, string Sections, ComparisonChoice Choice) besideOf;
    private Result<IReadOnlyList<SectionComparison>>? beside;

    /// <summary>What is chosen.</summary>
    public ComparisonChoice Choice => Window.Job.Comparison;

    /// <summary>The job's sections, with their names.</summary>
    public IReadOnlyList<(string Key, string Name)> Sections => [.. Window.Job.Sections.Select(each => (each.Id, Window.Job.NameOf(each)))];

    /// <summary>The library's sections; empty when there is no library.</summary>
    public IReadOnlyList<(string Key, string Name)> LibrarySections => [.. Entries().Select(each => (KeyOf(each), each.Place.Path)), .. PastRevisions()];

    /// <summary>The ports to choose between.</summary>
    public PortOptions Options => options ??= PortOptions.Of(Window.Live, desk);

    /// <summary>How the measured one is moved by hand, with what a hand on it is about to choose.</summary>
    public HandMove Hand => draft is { } tried && tried.Of == Choice ? tried.Move : Choice.ByHand;

    /// <summary>What was typed and cannot be, or null.</summary>
    public Problem? Problem { get; private set; }

    /// <summary>The comparison with the hand's move, or why there is none; null while nothing is chosen.</summary>
    public Result<SectionComparison>? Comparison => Laid?.Then<SectionComparison>(laid =>
    {
        var move = Hand;
        if (moved is not { } known || !ReferenceEquals(known.Laid, laid) || known.Move != move)
        {
            moved = known = (laid, move, laid.MovedByHand(move));
        }

        return known.Moved;
    });

    /// <summary>The comparison before any hand moved the section.</summary>
    public Result<SectionComparison>? Laid
    {
        get
        {
            if (Choice is not { Reference: { } reference, Measured: { } measured })
            {
                return null;
            }

            // Corrections change what is compared without changing the choice; another job may have files of the same names.
            var of = (
                Window.Live, Choice with { ByHand = HandMove.None, FirstPort = null, SecondPort = null },
                Window.Job.Section(reference)?.DocumentFile, Window.Job.Section(measured)?.DocumentFile, RevisionOf(reference), RevisionOf(measured));
            if (made is null || madeOf != of)
            {
                made = Input(reference).Then(known => Input(measured).Then<SectionComparison>(asked =>
                    SectionComparison.Of(known, asked, new(Choice.Alignment, Choice.IsMirrored))));
                madeOf = of;
            }

            return made;
        }
    }

    /// <summary>The two ports station by station, the first the reference; or why they cannot be set beside each other; null while they
    /// are not chosen.</summary>
    public Result<IReadOnlyList<SectionComparison>>? Beside
    {
        get
        {
            if (Window.Live is not { } live || Choice is not { FirstPort: { } first, SecondPort: { } second })
            {
                return null;
            }

            var of = (live, string.Join('\n', live.Job.Sections.Select(each => each.DocumentFile + live.Job.NameOf(each))),
                Choice with { ByHand = HandMove.None, Reference = null, Measured = null });
            if (beside is null || besideOf != of)
            {
                beside = JobPorts.Beside(live.Folder, live.Job, first, second, AlignmentChoice.Of(Choice.Alignment, Choice.IsMirrored), desk.LibraryPath, desk.Time);
                besideOf = of;
            }

            return beside;
        }
    }

    /// <summary>Chooses what is the reference.</summary>
    public void ChooseReference(string? key) => Choose(
        "Choose the reference", choice => choice with { Reference = NullIfEmpty(key), ByHand = HandMove.None });

    /// <summary>Chooses what is laid on it.</summary>
    public void ChooseMeasured(string? key) => Choose(
        "Choose the measured section", choice => choice with { Measured = NullIfEmpty(key), ByHand = HandMove.None });

    /// <summary>Chooses how it is laid on; a move by hand begins anew.</summary>
    public void ChooseAlignment(AlignmentMethod alignment) => Choose(
        "Choose the alignment", choice => choice with { Alignment = alignment, ByHand = HandMove.None });

    /// <summary>Exchanges left and right of what is laid on; a move by hand begins anew.</summary>
    public void ChooseMirrored(bool isMirrored) => Choose(
        "Mirror the measured section", choice => choice with { IsMirrored = isMirrored, ByHand = HandMove.None });

    /// <summary>Chooses the first of two ports beside each other.</summary>
    public void ChooseFirstPort(string? key) => Choose("Choose the first port", choice => choice with { FirstPort = NullIfEmpty(key) });

    /// <summary>Chooses the second of two ports beside each other.</summary>
    public void ChooseSecondPort(string? key) => Choose("Choose the second port", choice => choice with { SecondPort = NullIfEmpty(key) });

    /// <summary>Shows what another move by hand would do, without keeping it.</summary>
    public void TryHand(HandMove move)
    {
        ArgumentNullException.ThrowIfNull(move);
        if (move.IsUsable)
        {
            draft = (Choice, Rounded(move, HandDecimals));
            OnPropertyChanged(string.Empty);
        }
    }

    /// <summary>Keeps a move by hand: a step of the job.</summary>
    public void SetHand(HandMove move)
    {
        ArgumentNullException.ThrowIfNull(move);
        draft = null;
        if (!move.IsUsable)
        {
            Problem = new(
                "move-out-of-range", FormattableString.Invariant($"A section is moved by up to {HandMove.MostMm:0} mm and turned by up to 180 degrees."), "by hand",
                "Give less, or choose another alignment.");
            OnPropertyChanged(string.Empty);
            return;
        }

        Problem = null;
        Choose("Align by hand", choice => choice with { ByHand = Rounded(move, TypedDecimals) });
        OnPropertyChanged(string.Empty);
    }

    /// <summary>Looks into the library again.</summary>
    [RelayCommand]
    private void LookAgain()
    {
        (entries, options) = (null, null);
        pastNames.Clear();
        OnPropertyChanged(nameof(LibrarySections));
    }

    /// <summary>Leaves the section where the alignment lays it.</summary>
    [RelayCommand]
    private void TakeHandAway() => SetHand(HandMove.None);

    /// <summary>Keeps what the hand tried last.</summary>
    [RelayCommand]
    private void KeepHand()
    {
        if (draft is not null)
        {
            SetHand(Hand);
        }
    }

    /// <summary>Forgets what the hand tried last.</summary>
    [RelayCommand]
    private void ForgetHand()
    {
        draft = null;
        OnPropertyChanged(string.Empty);
    }

    /// <inheritdoc/>
    protected override void OnWindowChange()
    {
        options = null;
        base.OnWindowChange();
    }

    /// <inheritdoc/>
    protected override void OnOtherJob() => (Problem, draft) = (null, null);

    /// <summary>As fine as it is shown, so that a document and the command line tell the same move.</summary>
    private static HandMove Rounded(HandMove move, int decimals) =>
        new(Math.Round(move.XMm, decimals) + 0.0, Math.Round(move.YMm, decimals) + 0.0, Math.Round(move.TurnDeg, HandDecimals) + 0.0);

    private int? RevisionOf(string key) => Entries().FirstOrDefault(each => KeyOf(each) == key)?.RevisionNumber;

    private static string KeyOf(EntrySummary entry) => FormattableString.Invariant($"{ComparisonChoice.LibraryPrefix}{entry.Id}");

    private static string? NullIfEmpty(string? key) => string.IsNullOrEmpty(key) ? null : key;

    /// <summary>Past revisions are chosen in the library; here only those that are compared stand among the others.</summary>
    private IEnumerable<(string Key, string Name)> PastRevisions() => new[] { Choice.Reference, Choice.Measured }.OfType<string>()
        .Where(key => key.StartsWith(ComparisonChoice.LibraryPrefix, StringComparison.Ordinal) && key.Contains('@', StringComparison.Ordinal)).Distinct()
        .Select(key => (key, NameOfPast(key)));

    // A revision is for ever: it is looked up once, not each time that a hand moves the section.
    private string NameOfPast(string key) => pastNames.TryGetValue(key, out var known) ? known
        : pastNames[key] = Input(key).TryGet(out var past, out _) ? past.Name : key[ComparisonChoice.LibraryPrefix.Length..];

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
