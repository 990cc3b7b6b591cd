using SectionScan.Metrology.Comparison;
using SectionScan.Porting.Walls;

namespace SectionScan.Jobs.Cutting;

/// <summary>A remaining wall in answers for programs.</summary>
/// <param name="KeepOut">The keep-out's name.</param>
/// <param name="Kind">"circle", "line", "outline"; a reading is a "caliper".</param>
/// <param name="Stage">"present", "target" or "finished".</param>
/// <param name="WallMm">The wall, mm; negative for a break-through.</param>
/// <param name="UMm">Its standard uncertainty, mm.</param>
/// <param name="ExpandedUncertaintyMm">Its expanded uncertainty, k = 2, mm.</param>
/// <param name="LimitMm">The limit below which caution is due, mm.</param>
/// <param name="ChanceUnderLimit">The chance that the wall is thinner than the limit, 0 to 1.</param>
/// <param name="NeedsCaution">True when that chance is more than 0.05.</param>
/// <param name="Side">The side of the port.</param>
/// <param name="At">The place on the port's outline, mm.</param>
/// <param name="Budget">Where the uncertainty comes from, mm.</param>
/// <param name="Note">The person's note.</param>
public sealed record WallPart(
    string KeepOut,
    string Kind,
    string Stage,
    double WallMm,
    double UMm,
    double ExpandedUncertaintyMm,
    double LimitMm,
    double ChanceUnderLimit,
    bool NeedsCaution,
    string Side,
    IReadOnlyList<double> At,
    IReadOnlyList<WallPart.Row> Budget,
    string Note)
{
    /// <summary>A wall as an answer.</summary>
    public static WallPart Of(RemainingWall wall)
    {
        ArgumentNullException.ThrowIfNull(wall);
        return new(
            wall.KeepOut.Name,
            wall.KeepOut.Source == KeepOutSource.Caliper ? "caliper" : wall.KeepOut.Shape.Kind,
            StageWord(wall.Stage),
            wall.WallMm.Value,
            wall.WallMm.StandardUncertainty,
            wall.WallMm.ExpandedUncertainty,
            wall.KeepOut.LimitMm,
            wall.ChanceUnderLimit,
            wall.NeedsCaution,
            RegionWords.Of(wall.Region),
            [wall.Least.AtPort.XMm, wall.Least.AtPort.YMm],
            [.. wall.Budget.Rows.Select(row => new Row(row.Source, row.StandardUncertainty))],
            wall.KeepOut.Note);
    }

    /// <summary>"present", "target" or "finished".</summary>
    public static string StageWord(WallStage stage) => stage switch
    {
        WallStage.Present => "present",
        WallStage.Target => "target",
        _ => "finished",
    };

    /// <summary>One cause of uncertainty.</summary>
    /// <param name="Source">The cause; an assumption says so.</param>
    /// <param name="UMm">Its standard uncertainty, mm.</param>
    public sealed record Row(string Source, double UMm);
}
