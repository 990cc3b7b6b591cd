using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Cutting;
using SectionScan.Porting.Walls;

namespace SectionScan.Jobs.Cutting;

/// <summary>The remaining walls of one section, present, target and finished.</summary>
/// <param name="Schema">The schema's name.</param>
/// <param name="Section">The present section's name.</param>
/// <param name="Station">Its station, or null.</param>
/// <param name="Walls">Each keep-out at each stage.</param>
/// <param name="Least">The thinnest of the walls of each stage given.</param>
/// <param name="Assumptions">What was assumed, in plain sentences.</param>
/// <param name="Cautions">The usual cautions.</param>
public sealed record WallsReport(
    string Schema,
    string Section,
    int? Station,
    IReadOnlyList<WallPart> Walls,
    IReadOnlyList<WallPart> Least,
    IReadOnlyList<string> Assumptions,
    IReadOnlyList<string> Cautions)
{
    /// <summary>The schema's name.</summary>
    public const string SchemaName = "sectionscan/walls/1";

    /// <summary>Reads a table of keep-outs and readings.</summary>
    public static Result<PortWalls> ReadWalls(string path) =>
        TextFile.Read(path, PortWallsCsv.MaximumBytes).Then(text => PortWallsCsv.Read(text, path));

    /// <summary>Works the walls out.</summary>
    /// <param name="present">The present section.</param>
    /// <param name="target">The target, or null.</param>
    /// <param name="finished">The finished section, or null.</param>
    /// <param name="walls">What lies behind the walls.</param>
    /// <param name="alignment">How target and finished section are laid on the present one.</param>
    /// <param name="assumptions">What is assumed.</param>
    /// <param name="where">The table's file, for the message of a refusal.</param>
    public static Result<WallsReport> Of(
        SectionInput present, SectionInput? target, SectionInput? finished, PortWalls walls, AlignmentMethod alignment, WallAssumptions assumptions, string where)
    {
        ArgumentNullException.ThrowIfNull(present);
        ArgumentNullException.ThrowIfNull(walls);
        ArgumentNullException.ThrowIfNull(assumptions);
        return walls.At(present.Station, present.Outline).Then<WallsReport>(keepOuts =>
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

            var found = keepOuts.SelectMany(keepOut => stages.Select(each => RemainingWall.Of(
                each.Outline, each.Stage, keepOut, present.Outline, present.ErrorSources, each.Section.ErrorSources, assumptions))).ToList();
            return new WallsReport(
                SchemaName,
                present.Name,
                present.Station,
                [.. found.Select(WallPart.Of)],
                [.. found.GroupBy(wall => wall.Stage).OrderBy(group => group.Key).Select(group => WallPart.Of(group.MinBy(wall => wall.WallMm.Value)!))],
                Words(assumptions, present, keepOuts),
                CutCautions.All);
        });
    }

    private static List<string> Words(WallAssumptions assumptions, SectionInput present, IReadOnlyList<KeepOut> keepOuts)
    {
        var words = new List<string>
        {
            FormattableString.Invariant($"Registration of one section on another or on the drawing: ±{assumptions.RegistrationMm:0.##} mm (assumed, from memory)."),
            FormattableString.Invariant($"A hand follows the template within ±{assumptions.HandworkMm:0.##} mm (assumed, common practice); counts for the target."),
        };
        if (keepOuts.Any(keepOut => keepOut.Source == KeepOutSource.Drawing))
        {
            words.Add(FormattableString.Invariant($"Cores may lie ±{assumptions.CoreShiftMm:0.##} mm from the drawing (assumed, from memory); counts for keep-outs from a drawing."));
        }

        words.Add(assumptions.LeanDeg > 0
            ? FormattableString.Invariant($"Walls lean by {assumptions.LeanDeg:0.#}° to the section: they are counted thinner by {100 * (1 - assumptions.Cosine):0.0} %.")
            : "Walls are taken to stand square to the section; one that leans is thinner (--lean).");
        if (present.ErrorSources.Count == 0)
        {
            words.Add("Nothing is known of the present outline's error; it counts as none.");
        }

        return words;
    }
}
