using System.Globalization;
using System.Text;
using SectionScan.Drawings.Cutting;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Cutting;
using SectionScan.Porting.Walls;

namespace SectionScan.Jobs.Cutting;

/// <summary>The plan of a cut, station by station.</summary>
/// <param name="Order">What was ordered.</param>
/// <param name="Stations">The stations in order.</param>
public sealed record CutPlan(CutPlanOrder Order, IReadOnlyList<StationPlan> Stations)
{
    private const double Mm3PerCm3 = 1000;

    private static readonly string[] SummaryHead = ["station", "most now", "most at finish", "metal now", "metal in all", "wall at target", "chance under limit"];

    /// <summary>Sections of a station that only one of the two ports has: not planned.</summary>
    public IReadOnlyList<SectionInput> Alone { get; init; } = [];

    /// <summary>What each of them lacks.</summary>
    public IReadOnlyList<Problem> Unplanned { get; init; } = [];

    /// <summary>Metal to remove in roughing between the first station and the last, mm³; null when the stations' distance is not known.</summary>
    public double? NowMm3 => Volume(station => station.Cut.NowMm2);

    /// <summary>Metal to remove in all between the first station and the last, mm³; null when the stations' distance is not known.</summary>
    public double? AtFinishMm3 => Volume(station => station.Cut.AtFinishMm2);

    /// <summary>"; metal 2.31 cm³ now, 8.02 cm³ in all", or nothing when it is not known.</summary>
    private string VolumeWords => NowMm3 is { } now && AtFinishMm3 is { } all
        ? string.Create(CultureInfo.InvariantCulture, $"; metal {now / Mm3PerCm3:0.00} cm³ now, {all / Mm3PerCm3:0.00} cm³ in all") : string.Empty;

    /// <summary>The plan's title.</summary>
    public string Title => Order.PortName.Length > 0 ? $"Cut plan, {Order.PortName}" : "Cut plan";

    /// <summary>The order of work in plain words.</summary>
    public IReadOnlyList<string> Steps => OrderOfWork.Of(Stations, Order.Unit);

    /// <summary>Plans a cut.</summary>
    /// <param name="order">What is wanted.</param>
    /// <param name="libraryPath">The library's file.</param>
    /// <param name="time">The clock.</param>
    public static Result<CutPlan> Of(CutPlanOrder order, string libraryPath, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(order);
        return SectionFiles.Read(order.Present, libraryPath, time).Then(present =>
            SectionFiles.Read(order.Target, libraryPath, time).Then(targets => Of(order, present, targets)));
    }

    /// <summary>Plans a cut of sections at hand.</summary>
    /// <param name="order">What is wanted; what it names is not read.</param>
    /// <param name="present">The sections as they are.</param>
    /// <param name="targets">What they are to become.</param>
    public static Result<CutPlan> Of(CutPlanOrder order, IReadOnlyList<SectionInput> present, IReadOnlyList<SectionInput> targets)
    {
        ArgumentNullException.ThrowIfNull(order);
        if (!SectionFiles.Paired(present, targets).TryGet(out var paired, out var problem))
        {
            return problem;
        }

        if (order.Places is { } places && paired.Pairs.FirstOrDefault(pair => places.Positions.All(position => position.Station != pair.First.Station)) is { First: not null } pair)
        {
            return CuttingProblems.NoPlace(pair.First.Title);
        }

        var stations = new List<StationPlan>();
        foreach (var (own, target) in paired.Pairs)
        {
            if (!PlanStation(order, own, target).TryGet(out var station, out problem))
            {
                return problem;
            }

            stations.Add(station);
        }

        return new CutPlan(order, stations) { Alone = paired.Alone, Unplanned = paired.Missing };
    }

    /// <summary>Writes the plan: pages as one PDF and as SVG, the depths as CSV.</summary>
    /// <returns>The files' full paths.</returns>
    public Result<IReadOnlyList<string>> Write(string folder)
    {
        var title = Title;
        var name = FileNames.Safe(Order.PortName.Length > 0 ? $"cut-plan-{Order.PortName}" : "cut-plan");
        var pages = Pages(title);
        var files = new List<(string Name, Action<Stream> Write)> { (name + ".pdf", stream => PdfWriter.Write(pages, stream, title)) };
        for (var i = 0; i < Stations.Count; i++)
        {
            var page = pages[i + 1];
            files.Add(($"{name}.{FileNames.Safe(Stations[i].Title)}.svg", stream => SvgWriter.Write(page, stream)));
        }

        files.Add((name + ".csv", stream => stream.Write(Encoding.UTF8.GetBytes(ToCsv()))));
        return OutputFolder.Open(folder).Then(open => open.WriteAll(files));
    }

    /// <summary>The pages for the wall of the bench.</summary>
    public IReadOnlyList<Page> Pages(string title) =>
    [
        CutPlanPage.Summary(
            title, $"{Order.Present} to {Order.Target}; left for finishing {MeasureText.Length(new(Order.AllowanceMm, 0), Order.Unit)}{VolumeWords}", SummaryRows(), Steps, CutCautions.All, Order.Paper),
        .. Stations.Select(station => CutPlanPage.Station(
            station.Cut,
            new($"{title}, {station.Title}", station.Present.Name, station.Target.Name)
            {
                Steps = [OrderOfWork.AtStation(station.Cut, Order.Unit)],
                Unit = Order.Unit,
            },
            Order.Paper)),
    ];

    /// <summary>The depths place by place.</summary>
    public string ToCsv()
    {
        var text = new StringBuilder("station,x_mm,y_mm,direction_deg,side,now_mm,at_finish_mm,mark\n");
        foreach (var station in Stations)
        {
            foreach (var place in station.Cut.Places)
            {
                text.Append(CultureInfo.InvariantCulture, $"{station.Station},{place.Target.XMm:0.0000},{place.Target.YMm:0.0000},{place.Direction.Degrees:0.00},{RegionWords.Of(place.Region)},{place.NowMm:0.0000},{place.AtFinishMm:0.0000},{CutPlanAnswer.MarkWord(place.Mark)}\n");
            }
        }

        return text.ToString();
    }

    /// <summary>One row a station: what there is to do, and the wall likeliest to come under its limit.</summary>
    public IReadOnlyList<IReadOnlyList<string>> SummaryRows()
    {
        var unit = Order.Unit;
        var rows = new List<IReadOnlyList<string>> { SummaryHead };
        foreach (var station in Stations)
        {
            var wall = station.Cut.Walls.Count > 0 ? station.Cut.Walls[0] : null;
            rows.Add(
            [
                station.Title,
                MeasureText.Length(new(station.Cut.Places.Max(place => place.NowMm), 0), unit),
                MeasureText.Length(new(station.Cut.Places.Max(place => place.AtFinishMm), 0), unit),
                MeasureText.Area(new(station.Cut.NowMm2, 0), unit),
                MeasureText.Area(new(station.Cut.AtFinishMm2, 0), unit),
                wall is null ? "not known" : MeasureText.Length(new(wall.WallMm.Value, 0), unit),
                wall is null ? "not known" : string.Create(CultureInfo.InvariantCulture, $"{100 * wall.ChanceUnderLimit:0.0} %"),
            ]);
        }

        return rows;
    }

    private static Result<StationPlan> PlanStation(CutPlanOrder order, SectionInput present, SectionInput target)
    {
        var title = present.Title;
        var laid = OutlineAlignment.Align(present.Outline, target.Outline, order.Alignment).Outline;
        return order.Walls.At(present.Station, present.Outline).Then(keepOuts =>
        {
            List<RemainingWall> Walls(Outline outline, WallStage stage) =>
                [.. keepOuts.Select(keepOut => RemainingWall.Of(outline, stage, keepOut, present.Outline, present.ErrorSources, [], order.Assumptions))];
            var u = present.WallStandardUncertaintyWithMm(target);
            return StationCut.Plan(present.Outline, laid, order.AllowanceMm, double.IsNaN(u) ? 0 : u, Walls(laid, WallStage.Target), title)
                .Then<StationPlan>(cut => new StationPlan(title, present.Station, present, target, cut, Walls(present.Outline, WallStage.Present)));
        });
    }

    private double? Volume(Func<StationPlan, double> areaMm2)
    {
        var areas = Stations.Select(areaMm2).ToList();
        return Stations.Count < 2 ? null
            : Order.Places is { } table ? CutVolume.Along(areas, [.. Stations.Select(station => table.Positions.Single(position => position.Station == station.Station))])
            : Order.StationStepMm is { } step ? CutVolume.Between(areas, step) : null;
    }
}
