using SectionScan.Jobs.PortingJobs;
using SectionScan.Jobs.Proving;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Results;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>Prove: the finished port against its targets, or against another port.</summary>
public sealed class ProveViewModel(JobViewModel window, JobDesk desk, JobBenches benches) : WorkedPlaceViewModel(window)
{
    private PortOptions? options;

    /// <summary>What is chosen.</summary>
    public ProofSettings Settings => Window.Job.Proof;

    /// <summary>The ports to choose between.</summary>
    public PortOptions Options => options ??= PortOptions.Of(Window.Live, desk);

    /// <summary>What was typed and cannot be, or null.</summary>
    public Problem? Problem { get; private set; }

    /// <summary>True when a finished port is chosen and there is something to prove it against.</summary>
    public bool IsChosen => Settings.Finished is not null && (Settings.Target != ProofSettings.SettledTarget || Window.Job.Target.IsChosen);

    /// <summary>The proof, or why there is none; null until it is worked out.</summary>
    public Result<PortProof>? Proof { get; private set; }

    /// <summary>The place of the section shown.</summary>
    public int ShownAt { get; private set; }

    /// <summary>Shows another section.</summary>
    public void Show(int at)
    {
        ShownAt = at;
        OnPropertyChanged(string.Empty);
    }

    /// <summary>Chooses the finished port.</summary>
    public void ChooseFinished(string? key) => Do("Choose the finished port", proof => proof with { Finished = string.IsNullOrEmpty(key) ? null : key });

    /// <summary>Chooses what it is proved against.</summary>
    public void ChooseTarget(string? key) => Do(
        "Choose what to prove against", proof => proof with { Target = string.IsNullOrEmpty(key) ? ProofSettings.SettledTarget : key });

    /// <summary>Chooses how the finished section is laid on the target.</summary>
    public void ChooseAlignment(AlignmentMethod alignment) => Do("Choose the proof's alignment", proof => proof with { Alignment = alignment });

    /// <summary>Sets how far inside the target the wall may lie, mm.</summary>
    public void SetInside(double? mm) => Set("bound inside", mm, ProofSettings.MostMm, (proof, value) => proof with { InsideMm = value });

    /// <summary>Sets how far outside the target the wall may lie, mm.</summary>
    public void SetOutside(double? mm) => Set("bound outside", mm, ProofSettings.MostMm, (proof, value) => proof with { OutsideMm = value });

    /// <summary>Sets a further standard uncertainty, mm.</summary>
    public void SetOther(double? mm) => Set("further uncertainty", mm, ProofSettings.MostOtherMm, (proof, value) => proof with { OtherMm = value });

    /// <inheritdoc/>
    protected override void Make()
    {
        options = null;
        Proof = benches.Of(Window.Live)!.Proof();
        ShownAt = Proof is not null && Proof.TryGet(out var made, out _) ? Math.Min(ShownAt, made.Proved.Count - 1) : 0;
    }

    private void Set(string what, double? mm, double mostMm, Func<ProofSettings, double, ProofSettings> change)
    {
        if (mm is { } value && value >= 0 && value <= mostMm)
        {
            Do($"Set the {what}", proof => change(proof, value));
        }
        else
        {
            Problem = CutProblems.OutOfRange(what, 0, mostMm);
            OnPropertyChanged(string.Empty);
        }
    }

    private void Do(string what, Func<ProofSettings, ProofSettings> change)
    {
        Problem = null;
        Window.Live?.Do(what, job => change(job.Proof) is var next && next == job.Proof ? job : job with { Proof = next });
    }
}
