using CommunityToolkit.Mvvm.Input;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Results;
using SectionScan.Porting.TargetShapes;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>Decide: a target shape for each station between the own port and the one worked toward. What a slider shows while it is moved is
/// worked out in the background, the newest state only; what it is left at is a step of the job.</summary>
public sealed partial class DecideViewModel : PlaceViewModel
{
    private const double LeastLimit = 1;
    private const double MostLimitMm = 200;
    private const double MostLimitMm2 = 40_000;

    private readonly JobDesk desk;
    private readonly JobBenches benches;
    private readonly Lock gate = new();
    private readonly Dictionary<int, WorkedOut> views = [];
    private PortOptions? options;
    private TargetSettings? draft;
    private bool isWorking;
    private volatile bool isAgain;

    /// <summary>Makes it.</summary>
    public DecideViewModel(JobViewModel window, JobDesk desk, JobBenches benches)
        : base(window)
    {
        this.desk = desk;
        this.benches = benches;
    }

    /// <summary>What is chosen, with what a hand on a slider is about to choose.</summary>
    public TargetSettings Settings => draft ?? Window.Job.Target;

    /// <summary>The ports to choose between.</summary>
    public PortOptions Options => options ??= PortOptions.Of(Window.Live, desk);

    /// <summary>Both ports, or why they cannot be put together; null while they are not chosen.</summary>
    public Result<JobTarget>? Ports => Bench?.Ports();

    /// <summary>What was typed and cannot be, or null.</summary>
    public Problem? Problem { get; private set; }

    /// <summary>The place of the station shown among the pairs.</summary>
    public int ShownAt { get; private set; }

    /// <summary>The station shown; null while it is worked out for the first time.</summary>
    public Result<TargetView>? Shown => ViewAt(ShownAt);

    /// <summary>The work in the background, for whoever waits for it.</summary>
    public Task Working { get; private set; } = Task.CompletedTask;

    /// <summary>A station as far as it is worked out, or null. While a slider moves, the others show what they were.</summary>
    public Result<TargetView>? ViewAt(int at)
    {
        lock (gate)
        {
            return views.GetValueOrDefault(at)?.View;
        }
    }

    /// <summary>Begins to work the stations out; does nothing when they are worked out already.</summary>
    public void Begin()
    {
        options = null;
        Work();
    }

    /// <summary>Chooses the port worked on.</summary>
    public void ChooseOwn(string? key) => Set("Choose the port to work on", target => target with { Own = NullIfEmpty(key) });

    /// <summary>Chooses the port worked toward.</summary>
    public void ChooseReference(string? key) => Set("Choose the port to work toward", target => target with { Reference = NullIfEmpty(key) });

    /// <summary>Chooses how the reference is laid on.</summary>
    public void ChooseAlignment(AlignmentMethod alignment) => Set("Choose the target's alignment", target => target with { Alignment = alignment });

    /// <summary>Exchanges left and right of the reference.</summary>
    public void ChooseMirrored(bool isMirrored) => Set("Mirror the reference", target => target with { IsMirrored = isMirrored });

    /// <summary>Shows another station.</summary>
    public void Show(int at)
    {
        ShownAt = at;
        Work();
        OnPropertyChanged(string.Empty);
    }

    /// <summary>Shows what another share of a sector would do, without keeping it.</summary>
    public void TryShare(OutlineRegion region, double percent) => Try(Settings.With(region, Clamped(percent)));

    /// <summary>Keeps the share of a sector.</summary>
    public void SetShare(OutlineRegion region, double percent) => Set(
        $"Set the share of the {RegionWords.Of(region)}", target => target.With(region, Clamped(percent)));

    /// <summary>Shows what one share all round would do, without keeping it.</summary>
    public void TryAll(double percent) => Try(AllRound(Settings, percent));

    /// <summary>Keeps one share all round.</summary>
    public void SetAll(double percent) => Set("Set the share all round", target => AllRound(target, percent));

    /// <summary>Shows what another fairing would do, without keeping it.</summary>
    public void TryFairing(double lengthMm) => Try(Settings with { FairingMm = Math.Clamp(lengthMm, 0, TargetSettings.MostFairingMm) });

    /// <summary>Keeps the fairing.</summary>
    public void SetFairing(double lengthMm) => Set(
        "Set the fairing", target => target with { FairingMm = Math.Clamp(lengthMm, 0, TargetSettings.MostFairingMm) });

    /// <summary>Shows what widening beside the guide would do, without keeping it.</summary>
    public void TryWidening(double lengthMm) => Try(Settings with { WidenMm = Math.Clamp(lengthMm, 0, TargetSettings.MostWideningMm) });

    /// <summary>Keeps the widening beside the guide.</summary>
    public void SetWidening(double lengthMm) => Set(
        "Set the widening beside the guide", target => target with { WidenMm = Math.Clamp(lengthMm, 0, TargetSettings.MostWideningMm) });

    /// <summary>The limit of a measure, or null.</summary>
    public ShapeLimit? LimitOf(LimitedMeasure kind) => Settings.Limits.FirstOrDefault(each => each.Kind == kind);

    /// <summary>Sets the limit of a measure; null takes it away.</summary>
    public void SetLimit(LimitedMeasure kind, double? most)
    {
        var word = kind.ToString().ToLowerInvariant();
        if (most is { } value && !(value >= LeastLimit && value <= (kind == LimitedMeasure.Area ? MostLimitMm2 : MostLimitMm)))
        {
            Say(DecideProblems.LimitUnlikely(word, kind == LimitedMeasure.Area ? "mm²" : "mm", LeastLimit, kind == LimitedMeasure.Area ? MostLimitMm2 : MostLimitMm));
            return;
        }

        Set($"Limit the {word}", target => target.With(kind, most, target.Limits.FirstOrDefault(each => each.Kind == kind)?.Note ?? string.Empty));
    }

    /// <summary>Notes why a measure is limited.</summary>
    public void NoteLimit(LimitedMeasure kind, string? note)
    {
        if (LimitOf(kind) is { } limit)
        {
            Set("Note why", target => target.With(kind, limit.Most, (note ?? string.Empty).Trim()));
        }
    }

    /// <inheritdoc/>
    protected override void OnWindowChange()
    {
        draft = null;
        options = null;
        Work();
        base.OnWindowChange();
    }

    private JobBench? Bench => benches.Of(Window.Live);

    private static string? NullIfEmpty(string? key) => string.IsNullOrEmpty(key) ? null : key;

    private static double Clamped(double percent) => double.IsFinite(percent) ? Math.Clamp(percent, 0, TargetSettings.MostSharePercent) : 100;

    private static TargetSettings AllRound(TargetSettings target, double percent) =>
        target with { SharesPercent = [.. Enumerable.Repeat(Clamped(percent), target.SharesPercent.Count)] };

    [RelayCommand]
    private void ExchangePorts() => Set("Exchange the ports", target => target with { Own = target.Reference, Reference = target.Own });

    [RelayCommand]
    private void ForgetDraft()
    {
        draft = null;
        Work();
    }

    private void Say(Problem? problem)
    {
        Problem = problem;
        OnPropertyChanged(string.Empty);
    }

    private void Try(TargetSettings next)
    {
        draft = next;
        Work();
    }

    private void Set(string what, Func<TargetSettings, TargetSettings> change)
    {
        Problem = null;
        draft = null;
        Window.Live?.Do(what, job => change(job.Target) is var next && next == job.Target ? job : job with { Target = next });
    }

    /// <summary>Has the newest state worked out: the station shown first.</summary>
    private void Work()
    {
        lock (gate)
        {
            isAgain = true;
            if (isWorking)
            {
                return;
            }

            isWorking = true;
        }

        Working = Task.Run(WorkAll);
    }

    private void WorkAll()
    {
        while (true)
        {
            lock (gate)
            {
                if (!isAgain)
                {
                    isWorking = false;
                    return;
                }

                isAgain = false;
            }

            WorkOnce();
        }
    }

    private void WorkOnce()
    {
        if (Bench is not { } bench || bench.Ports() is not { } both || !both.TryGet(out var ports, out _))
        {
            Forget(_ => true);
            OnPropertyChanged(string.Empty);
            return;
        }

        var (settings, isDraft) = (Settings, draft is not null);
        Forget(each => !ReferenceEquals(each.Ports, ports));
        ShownAt = Math.Min(ShownAt, ports.Pairs.Count - 1);
        var shown = ShownAt;
        foreach (var at in Enumerable.Range(0, ports.Pairs.Count).OrderBy(at => at != shown))
        {
            if (IsWorkedOut(at, ports, settings))
            {
                continue;
            }

            var view = TargetView.Of(ports, at, bench.Settle(ports, at, settings), bench);
            lock (gate)
            {
                views[at] = new(ports, settings, view);
            }

            if (at == shown)
            {
                OnPropertyChanged(string.Empty);
            }

            // The hand has moved on, or moves still: the other stations wait.
            if (isAgain || isDraft)
            {
                return;
            }
        }

        OnPropertyChanged(string.Empty);
    }

    private bool IsWorkedOut(int at, JobTarget ports, TargetSettings settings)
    {
        lock (gate)
        {
            return views.TryGetValue(at, out var known) && ReferenceEquals(known.Ports, ports) && ReferenceEquals(known.Settings, settings);
        }
    }

    private void Forget(Func<WorkedOut, bool> isOld)
    {
        lock (gate)
        {
            foreach (var at in views.Where(each => isOld(each.Value)).Select(each => each.Key).ToList())
            {
                views.Remove(at);
            }
        }
    }

    private sealed record WorkedOut(JobTarget Ports, TargetSettings Settings, Result<TargetView> View);
}
