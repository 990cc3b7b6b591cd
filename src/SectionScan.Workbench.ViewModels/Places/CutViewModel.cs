using SectionScan.Drawings.Pages;
using SectionScan.Jobs.Cutting;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Jobs.Templates;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>Cut: the plan from the own port to its targets, and templates of them at true size.</summary>
public sealed class CutViewModel(JobViewModel window, JobBenches benches) : WorkedPlaceViewModel(window)
{
    /// <summary>How long the bar is that a person measures on the screen, mm.</summary>
    public const double ScreenBarMm = 100;

    private const double MostOffScreen = 3;

    /// <summary>What is chosen.</summary>
    public CutSettings Settings => Window.Job.Cut;

    /// <summary>True when there is a target to cut to.</summary>
    public bool HasTarget => Window.Job.Target.IsChosen;

    /// <summary>What was typed and cannot be, or null.</summary>
    public Problem? Problem { get; private set; }

    /// <summary>The plan, or why there is none; null until it is worked out.</summary>
    public Result<CutPlan>? Plan { get; private set; }

    /// <summary>The templates, or why there are none; null until they are made.</summary>
    public Result<TemplateSet>? Templates { get; private set; }

    /// <summary>Another number for every other state of plan and templates, so that a picture of an earlier one is not shown for it.</summary>
    public int Version { get; private set; }

    /// <summary>The place of the station shown in the plan.</summary>
    public int ShownAt { get; private set; }

    /// <summary>True to show the paper at true size; false to fit it to the window.</summary>
    public bool IsTrueSize { get; private set; }

    /// <summary>How much larger the screen must draw so that a millimetre is one.</summary>
    public double ScreenScale { get; private set; } = 1;

    /// <summary>How wide a page is shown at true size, px.</summary>
    public int WidthPx(Page page)
    {
        ArgumentNullException.ThrowIfNull(page);
        const double PxPerMm = 96 / Inch.Mm; // CSS: one inch is 96 px
        return (int)Math.Round(page.WidthMm * PxPerMm * ScreenScale);
    }

    /// <summary>Shows another station of the plan.</summary>
    public void Show(int at)
    {
        ShownAt = at;
        OnPropertyChanged(string.Empty);
    }

    /// <summary>Shows the paper at true size, or fitted to the window.</summary>
    public void ShowTrueSize(bool isTrueSize)
    {
        IsTrueSize = isTrueSize;
        OnPropertyChanged(string.Empty);
    }

    /// <summary>Tells what the bar measures on this screen; null forgets it.</summary>
    public void SetScreenBar(double? measuredMm)
    {
        if (measuredMm is { } mm && !(mm * MostOffScreen >= ScreenBarMm && mm <= ScreenBarMm * MostOffScreen))
        {
            Say(CutProblems.OutOfRange("bar on the screen", ScreenBarMm / MostOffScreen, ScreenBarMm * MostOffScreen));
            return;
        }

        Problem = null;
        ScreenScale = measuredMm is { } measured ? ScreenScale * ScreenBarMm / measured : 1;
        OnPropertyChanged(string.Empty);
    }

    /// <summary>Sets what roughing leaves for finishing, mm.</summary>
    public void SetAllowance(double? mm) => Set("finishing allowance", mm, (cut, value) => cut with { AllowanceMm = value });

    /// <summary>Sets how much a template's edge stands off the port, mm.</summary>
    public void SetClearance(double? mm) => Set("clearance", mm, (cut, value) => cut with { ClearanceMm = value });

    /// <summary>Sets the width that a cutter takes, mm.</summary>
    public void SetKerf(double? mm) => Set("kerf", mm, (cut, value) => cut with { KerfMm = value });

    /// <summary>Sets the thickness of the sheet that is cut, mm; zero for no handle.</summary>
    public void SetSheet(double? mm) => Set("thickness of the sheet", mm, (cut, value) => cut with { SheetMm = value });

    /// <summary>Sets the diameter of a round hole in a plug instead of the handle, mm.</summary>
    public void SetStem(double? mm) => Set("hole in a plug", mm, (cut, value) => cut with { StemMm = value });

    /// <summary>Chooses the paper.</summary>
    public void ChoosePaper(string? name)
    {
        if (name is not null && PaperSize.FromName(name) is { } paper)
        {
            Do("Choose the paper", cut => cut with { Paper = paper.Name });
        }
    }

    /// <summary>Chooses plugs for the port.</summary>
    public void ChoosePlugs(bool isWanted) => Do("Choose plugs", cut => cut with { HasPlugs = isWanted });

    /// <summary>Chooses plates for the mould.</summary>
    public void ChoosePlates(bool isWanted) => Do("Choose plates", cut => cut with { HasPlates = isWanted });

    /// <summary>Corrects the print by the check bars of Prepare.</summary>
    public void CorrectPrint(bool isWanted) => Do("Correct the print", cut => cut with { IsPrintCorrected = isWanted });

    /// <inheritdoc/>
    protected override void Make()
    {
        var bench = benches.Of(Window.Live)!;
        var (plan, templates) = (bench.Plan(Window.Units.IsInch), bench.Templates(Window.Units.IsInch));
        if (!ReferenceEquals(plan, Plan) || !ReferenceEquals(templates, Templates))
        {
            (Plan, Templates, Version) = (plan, templates, Version + 1);
            ShownAt = plan is not null && plan.TryGet(out var made, out _) ? Math.Min(ShownAt, made.Stations.Count - 1) : 0;
        }
    }

    private void Set(string what, double? mm, Func<CutSettings, double, CutSettings> change)
    {
        if (mm is >= 0 and <= CutSettings.MostMm)
        {
            Do($"Set the {what}", cut => change(cut, mm.Value));
        }
        else
        {
            Say(CutProblems.OutOfRange(what, 0, CutSettings.MostMm));
        }
    }

    private void Do(string what, Func<CutSettings, CutSettings> change)
    {
        Problem = null;
        Window.Live?.Do(what, job => change(job.Cut) is var next && next == job.Cut ? job : job with { Cut = next });
    }

    private void Say(Problem problem)
    {
        Problem = problem;
        OnPropertyChanged(string.Empty);
    }
}
