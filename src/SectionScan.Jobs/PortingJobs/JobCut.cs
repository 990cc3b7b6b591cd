using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.Templates;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Cutting;
using SectionScan.Jobs.TargetShapes;
using SectionScan.Jobs.Templates;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Ports;
using SectionScan.Porting.Templates;
using SectionScan.Porting.Walls;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>The cut plan and the templates of a job, made as the commands make them.</summary>
public static class JobCut
{
    private const double LineWidthMm = 0.1;

    /// <summary>A target as a section that others are held against.</summary>
    public static SectionInput AsSection(SettledTarget target)
    {
        ArgumentNullException.ThrowIfNull(target);
        return SectionInput.Of(target.Name, target.Document);
    }

    /// <summary>Plans the cut from the own port to its targets.</summary>
    /// <param name="job">The job.</param>
    /// <param name="ports">Its ports and walls.</param>
    /// <param name="targets">The targets.</param>
    /// <param name="isInch">True to label lengths in inches.</param>
    public static Result<CutPlan> Plan(PortingJob job, JobTarget ports, IReadOnlyList<SettledTarget> targets, bool isInch)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(ports);
        ArgumentNullException.ThrowIfNull(targets);
        var order = new CutPlanOrder(
            JobPorts.NameOf(job.Target.Own ?? string.Empty), $"its target toward {JobPorts.NameOf(job.Target.Reference ?? string.Empty)}", AlignmentMethod.AsPlaced,
            job.Cut.AllowanceMm, PortName(job), ports.Walls, WallAssumptions.Usual, null, Paper(job), Unit(isInch))
        {
            Places = Places(job, targets),
        };
        return CutPlan.Of(order, [.. targets.Select(target => target.Own)], [.. targets.Select(AsSection)]);
    }

    /// <summary>Makes the templates of the targets, rough and finish.</summary>
    /// <param name="job">The job.</param>
    /// <param name="targets">The targets.</param>
    /// <param name="isInch">True for inches in captions and in the DXF.</param>
    public static Result<TemplateSet> Templates(PortingJob job, IReadOnlyList<SettledTarget> targets, bool isInch)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(targets);
        var cut = job.Cut;
        TemplateKind[] kinds = [.. cut.HasPlugs ? new[] { TemplateKind.Inside } : [], .. cut.HasPlates ? new[] { TemplateKind.Outside } : []];
        var ratio = cut.IsPrintCorrected ? job.PrintRatio() ?? (1, 1) : (1, 1);
        var order = new TemplateOrder(
            [], kinds, [TemplateStage.Rough, TemplateStage.Finish], PortName(job), cut.AllowanceMm, cut.ClearanceMm, LineWidthMm, cut.KerfMm, cut.StemMm > 0 ? PlugHold.Stem(cut.StemMm) : PlugHold.Handle(cut.SheetMm),
            Paper(job), new PrintCorrection(ratio.X, ratio.Y), Unit(isInch));
        return kinds.Length == 0 ? JobProblems.NoTemplateKind() : TemplateFiles.Make(order, [.. targets.Select(AsSection)]);
    }

    private static string PortName(PortingJob job) => $"{job.Head} {job.Port}".Trim();

    private static PaperSize Paper(PortingJob job) => PaperSize.FromName(job.Cut.Paper) ?? PaperSize.A4;

    private static LengthUnit Unit(bool isInch) => isInch ? LengthUnit.Inch : LengthUnit.Millimetre;

    /// <summary>Where the stations lie, when all that are cut are told of; else null: a volume over a gap would be a guess.</summary>
    private static StationTable? Places(PortingJob job, IReadOnlyList<SettledTarget> targets) =>
        targets.All(target => job.PortData.Stations.Any(each => each.Station == target.Own.Station))
        && JobDocumentRules.Stations(job.PortData.PortNamed(job.Port), job.Port).TryGet(out var table, out _) ? table : null;
}
