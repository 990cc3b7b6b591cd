using System.Globalization;
using CommunityToolkit.Mvvm.ComponentModel;
using CommunityToolkit.Mvvm.Input;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Results;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>Prepare: the printed target and how true it is.</summary>
public sealed partial class PrepareViewModel(JobViewModel window) : PlaceViewModel(window)
{
    /// <summary>What stands in the way of the last input, or null.</summary>
    [ObservableProperty]
    public partial Problem? Problem { get; private set; }

    /// <summary>How far the print is off, in words; empty while it is not checked.</summary>
    public string PrintInWords => Window.Job.PrintRatio() is { } ratio
        ? string.Create(CultureInfo.InvariantCulture, $"Across {Percent(ratio.X)}, up {Percent(ratio.Y)}. Both are taken into account.")
        : string.Empty;

    /// <summary>Tells what the bar across measures, mm, as typed; empty for not measured.</summary>
    public void SetAcross(string? typed) => Set(typed, CheckBars.AcrossMm, (job, mm) => job with { CheckBarAcrossMm = mm });

    /// <summary>Tells what the bar up measures, mm, as typed; empty for not measured.</summary>
    public void SetUp(string? typed) => Set(typed, CheckBars.UpMm, (job, mm) => job with { CheckBarUpMm = mm });

    /// <summary>Why photos were left out when the lens was learnt last.</summary>
    [ObservableProperty]
    public partial IReadOnlyList<Problem> LeftOut { get; private set; } = [];

    /// <summary>Photos of the bare sheet, to learn the lens from.</summary>
    public IReadOnlyList<JobPhoto> LensPhotos => Window.Job.LensPhotos;

    /// <inheritdoc/>
    protected override void OnOtherJob() => (Problem, LeftOut) = (null, []);

    [RelayCommand]
    private async Task LearnLensAsync()
    {
        if (Window.Live is not { } live)
        {
            return;
        }

        var learnt = await live.LearnLensAsync([.. live.Job.LensPhotos.Select(live.Folder.PathOf)]);
        if (ReferenceEquals(live, Window.Live))
        {
            LeftOut = learnt.TryGet(out var leftOut, out var problem) ? [.. leftOut.Select(Shown)] : [];
            Problem = problem is null ? null : Shown(problem);
        }
    }

    [RelayCommand]
    private void UseNoLens() => Window.Live?.Do("Use no lens profile", job => job.LensFile is null ? job : job with { LensFile = null });

    [RelayCommand]
    private void RemoveLensPhoto(string id) => Window.Live?.Do(
        $"Remove {Window.Job.LensPhoto(id)?.GivenName}", job => job with { LensPhotos = [.. job.LensPhotos.Where(each => each.Id != id)] });

    /// <summary>A problem with the photo's name as its sender knows it, in place of ours.</summary>
    private Problem Shown(Problem problem) => LensPhotos.FirstOrDefault(photo => problem.Where.EndsWith(photo.File, StringComparison.Ordinal)) is { } photo
        ? problem with { Where = photo.GivenName }
        : problem;

    private static string Percent(double ratio) => ratio == 1 ? "true to size"
        : string.Create(CultureInfo.InvariantCulture, $"{100 * (ratio - 1):+0.00;−0.00} %");

    private void Set(string? typed, double nominalMm, Func<PortingJob, double?, PortingJob> change)
    {
        if (!NumberEntry.TryRead(typed, "check bar", out var measuredMm, out var problem))
        {
            Problem = problem;
            return;
        }

        Problem = measuredMm is { } mm && !(Math.Abs((mm / nominalMm) - 1) <= CheckBars.MostOff)
            ? JobProblems.CheckBarUnlikely(mm, nominalMm)
            : null;
        if (Problem is null)
        {
            Window.Live?.Do("Enter a check bar", job => change(job, measuredMm));
        }
    }
}
