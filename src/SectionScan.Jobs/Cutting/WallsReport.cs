using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Files;
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

    /// <summary>Tells the walls.</summary>
    public static WallsReport Of(WallsStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return new(
            SchemaName,
            study.Present.Name,
            study.Present.Station,
            [.. study.Walls.Select(WallPart.Of)],
            [.. study.Walls.GroupBy(wall => wall.Stage).OrderBy(group => group.Key).Select(group => WallPart.Of(group.MinBy(wall => wall.WallMm.Value)!))],
            Words(study.Assumptions, study.Present, study.Walls.Select(wall => wall.KeepOut)),
            CutCautions.All);
    }

    private static List<string> Words(WallAssumptions assumptions, SectionInput present, IEnumerable<KeepOut> keepOuts)
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
