using SectionScan.Jobs.Comparing;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Walls;

namespace SectionScan.Jobs.Cutting;

/// <summary>The remaining walls of one section, present, target and finished, with what they were worked out from.</summary>
/// <param name="Present">The present section.</param>
/// <param name="Outlines">The outlines in its frame, present first.</param>
/// <param name="Walls">Each keep-out at each stage.</param>
/// <param name="Assumptions">What was assumed.</param>
public sealed record WallsStudy(
    SectionInput Present, IReadOnlyList<(WallStage Stage, Outline Outline)> Outlines, IReadOnlyList<RemainingWall> Walls, WallAssumptions Assumptions)
{
    /// <summary>Works the walls out.</summary>
    /// <param name="present">The present section.</param>
    /// <param name="target">The target, or null.</param>
    /// <param name="finished">The finished section, or null.</param>
    /// <param name="walls">What lies behind the walls.</param>
    /// <param name="alignment">How target and finished section are laid on the present one.</param>
    /// <param name="assumptions">What is assumed.</param>
    /// <param name="where">The table's file, for the message of a refusal.</param>
    public static Result<WallsStudy> Of(
        SectionInput present, SectionInput? target, SectionInput? finished, PortWalls walls, AlignmentMethod alignment, WallAssumptions assumptions, string where)
    {
        ArgumentNullException.ThrowIfNull(present);
        ArgumentNullException.ThrowIfNull(walls);
        ArgumentNullException.ThrowIfNull(assumptions);
        return walls.At(present.Station, present.Outline).Then<WallsStudy>(keepOuts =>
        {
            if (keepOuts.Count == 0)
            {
                return CuttingProblems.NoKeepOuts(where, present.Station);
            }

            var stages = new List<(WallStage Stage, Outline Outline, SectionInput Section)> { (WallStage.Present, present.Outline, present) };
            foreach (var (stage, section) in new[] { (WallStage.Target, target), (WallStage.Finished, finished) })
            {
                if (section is not null)
                {
                    stages.Add((stage, OutlineAlignment.Align(present.Outline, section.Outline, alignment).Outline, section));
                }
            }

            return new WallsStudy(
                present,
                stages.ConvertAll(each => (each.Stage, each.Outline)),
                [.. keepOuts.SelectMany(keepOut => stages.Select(each => RemainingWall.Of(
                    each.Outline, each.Stage, keepOut, present.Outline, present.ErrorSources, each.Section.ErrorSources, assumptions)))],
                assumptions);
        });
    }
}
