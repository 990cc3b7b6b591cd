using System.Globalization;
using CommunityToolkit.Mvvm.ComponentModel;
using CommunityToolkit.Mvvm.Input;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Results;

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

    [RelayCommand]
    private void SetAcross(double? measuredMm) => Set(measuredMm, CheckBars.AcrossMm, (job, mm) => job with { CheckBarAcrossMm = mm });

    [RelayCommand]
    private void SetUp(double? measuredMm) => Set(measuredMm, CheckBars.UpMm, (job, mm) => job with { CheckBarUpMm = mm });

    private static string Percent(double ratio) => ratio == 1 ? "true to size"
        : string.Create(CultureInfo.InvariantCulture, $"{100 * (ratio - 1):+0.00;−0.00} %");

    private void Set(double? measuredMm, double nominalMm, Func<PortingJob, double?, PortingJob> change)
    {
        Problem = measuredMm is { } mm && !(Math.Abs((mm / nominalMm) - 1) <= CheckBars.MostOff)
            ? JobProblems.CheckBarUnlikely(mm, nominalMm)
            : null;
        if (Problem is null)
        {
            Window.Live?.Do("Enter a check bar", job => change(job, measuredMm));
            Window.Live?.BeginChecks();
        }
    }
}
