using SectionScan.Metrology.Comparison;
using SectionScan.Porting.Cutting;

namespace SectionScan.Jobs.Cutting;

/// <summary>The answer of <c>sectionscan cut-plan</c> for programs.</summary>
/// <param name="Schema">The schema's name.</param>
/// <param name="AllowanceMm">What roughing leaves for finishing, mm.</param>
/// <param name="NowMm3">Metal to remove in roughing between the first station and the last, mm³, or null.</param>
/// <param name="AtFinishMm3">Metal to remove in all, mm³, or null.</param>
/// <param name="Stations">Station by station.</param>
/// <param name="OrderOfWork">The order of work in plain words.</param>
/// <param name="Cautions">The usual cautions.</param>
/// <param name="Files">The files written.</param>
public sealed record CutPlanAnswer(
    string Schema,
    double AllowanceMm,
    double? NowMm3,
    double? AtFinishMm3,
    IReadOnlyList<CutPlanAnswer.StationPart> Stations,
    IReadOnlyList<string> OrderOfWork,
    IReadOnlyList<string> Cautions,
    IReadOnlyList<string> Files)
{
    /// <summary>The schema's name.</summary>
    public const string SchemaName = "sectionscan/cut-plan/1";

    /// <summary>The answer of a plan.</summary>
    public static CutPlanAnswer Of(CutPlan plan, IReadOnlyList<string> files)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new(
            SchemaName, plan.Order.AllowanceMm, plan.NowMm3, plan.AtFinishMm3, [.. plan.Stations.Select(Part)], plan.Steps, CutCautions.All, files);
    }

    /// <summary>A mark in one word: "rough", "finish", "leave", "beyond", "thin-wall".</summary>
    public static string MarkWord(CutMark mark) => mark switch
    {
        CutMark.Rough => "rough",
        CutMark.FinishOnly => "finish",
        CutMark.Leave => "leave",
        CutMark.Beyond => "beyond",
        _ => "thin-wall",
    };

    private static StationPart Part(StationPlan station)
    {
        var cut = station.Cut;
        return new(
            station.Station, station.Present.Name, station.Target.Name,
            cut.DepthStandardUncertaintyMm > 0 ? cut.DepthExpandedUncertaintyMm : null, cut.NowMm2, cut.AtFinishMm2, cut.BeyondMm2,
            [
                .. cut.Sectors.Select(sector => new SectorPart(
                    RegionWords.Of(sector.Region), sector.MeanNowMm, sector.MostNowMm, sector.MeanAtFinishMm, sector.MostAtFinishMm, sector.LeastAtFinishMm,
                    sector.NowMm2, sector.AtFinishMm2, sector.ShareToLeave)),
            ],
            new(cut.Halves.LeftMm2, cut.Halves.RightMm2, cut.Halves.PresentAsymmetryMm, cut.Halves.TargetAsymmetryMm),
            [.. station.PresentWalls.Concat(cut.Walls).Select(WallPart.Of)],
            [.. cut.Places.Select(place => new PlacePart(place.Target.XMm, place.Target.YMm, place.Direction.Degrees, place.NowMm, place.AtFinishMm, MarkWord(place.Mark)))]);
    }

    /// <summary>One station.</summary>
    public sealed record StationPart(
        int? Station,
        string Present,
        string Target,
        double? DepthExpandedUncertaintyMm,
        double NowMm2,
        double AtFinishMm2,
        double BeyondMm2,
        IReadOnlyList<SectorPart> Sectors,
        HalvesPart Halves,
        IReadOnlyList<WallPart> Walls,
        IReadOnlyList<PlacePart> Places);

    /// <summary>One side.</summary>
    public sealed record SectorPart(
        string Side,
        double MeanNowMm,
        double MostNowMm,
        double MeanAtFinishMm,
        double MostAtFinishMm,
        double LeastAtFinishMm,
        double NowMm2,
        double AtFinishMm2,
        double ShareToLeave);

    /// <summary>The two halves.</summary>
    public sealed record HalvesPart(double LeftMm2, double RightMm2, double PresentAsymmetryMm, double TargetAsymmetryMm);

    /// <summary>One place of the target.</summary>
    public sealed record PlacePart(double X, double Y, double DirectionDeg, double NowMm, double AtFinishMm, string Mark);
}
