using SectionScan.Jobs.Cutting;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Jobs.TargetShapes;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Walls;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>One station of the target as it is shown.</summary>
/// <param name="Target">The target.</param>
/// <param name="Measures">Area, width and height: own, target, reference.</param>
/// <param name="OwnAreaMm2">The own section's area with its uncertainty.</param>
/// <param name="ReferenceAreaMm2">The reference's area with its uncertainty.</param>
/// <param name="KeepOuts">What lies behind the walls here.</param>
/// <param name="Walls">The walls now and at the target; empty when nothing is known of them.</param>
public sealed record TargetView(
    SettledTarget Target, TargetShapeAnswer.TargetPart Measures, Estimate OwnAreaMm2, Estimate ReferenceAreaMm2,
    IReadOnlyList<KeepOut> KeepOuts, IReadOnlyList<WallPart> Walls)
{
    /// <summary>The wall at the target that is likeliest to be under its limit, or null.</summary>
    public WallPart? WorstWall => Walls.Where(wall => wall.Stage == "target").MaxBy(wall => wall.ChanceUnderLimit);

    /// <summary>Looks at one station.</summary>
    /// <param name="ports">The ports.</param>
    /// <param name="at">The station's place among the pairs.</param>
    /// <param name="settled">Its target, or why there is none.</param>
    /// <param name="bench">What measures sections.</param>
    internal static Result<TargetView> Of(JobTarget ports, int at, Result<SettledTarget> settled, JobBench bench) => settled.Then(target =>
        ports.KeepOuts(target.Own).Then(keepOuts => WallsOf(target, ports.Walls, keepOuts).Then<TargetView>(walls => new TargetView(
            target, TargetShapeAnswer.Of([target]).Targets[0],
            bench.Measured(target.Own)[MeasureCatalogue.Area].Estimate, bench.Measured(ports.Pairs[at].Reference)[MeasureCatalogue.Area].Estimate,
            keepOuts, walls))));

    private static Result<IReadOnlyList<WallPart>> WallsOf(SettledTarget target, PortWalls walls, IReadOnlyList<KeepOut> keepOuts) => keepOuts.Count == 0
        ? Array.Empty<WallPart>()
        : WallsStudy.Of(target.Own, JobCut.AsSection(target), null, walls, AlignmentMethod.AsPlaced, WallAssumptions.Usual, "walls")
            .Then<IReadOnlyList<WallPart>>(study => WallsReport.Of(study).Walls.ToList());
}
