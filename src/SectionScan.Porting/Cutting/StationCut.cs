using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Walls;

namespace SectionScan.Porting.Cutting;

/// <summary>What is to be cut at one station, from the present section to the target.</summary>
/// <param name="Present">The present outline, mm, section frame.</param>
/// <param name="Target">The target in the same frame.</param>
/// <param name="Rough">The outline to stop at in roughing: the target less the finishing allowance.</param>
/// <param name="AllowanceMm">The finishing allowance, mm.</param>
/// <param name="DepthStandardUncertaintyMm">u of a depth, mm; zero when nothing is known of the outlines' error.</param>
/// <param name="Places">Depths at even steps along the target, counter-clockwise.</param>
/// <param name="Sectors">The same side by side, in the order of <see cref="OutlineRegion"/>.</param>
/// <param name="Halves">The same half by half.</param>
/// <param name="Walls">The walls that the target leaves, the one likeliest to be under its limit first.</param>
/// <param name="NowMm2">Metal to remove in roughing, mm².</param>
/// <param name="AtFinishMm2">Metal to remove in all, mm².</param>
/// <param name="BeyondMm2">Area by which the present port already lies beyond the target, mm².</param>
public sealed record StationCut(
    Outline Present,
    Outline Target,
    Outline Rough,
    double AllowanceMm,
    double DepthStandardUncertaintyMm,
    IReadOnlyList<CutPlace> Places,
    IReadOnlyList<CutSector> Sectors,
    CutHalves Halves,
    IReadOnlyList<RemainingWall> Walls,
    double NowMm2,
    double AtFinishMm2,
    double BeyondMm2)
{
    /// <summary>A depth below this cannot be cut by hand on purpose, mm (common practice, no source).</summary>
    private const double LeastCutMm = 0.05;

    private const double SpacingMm = 0.25;
    private const double FarMm = 1000;

    /// <summary>About half the step from place to place, seen from the centroid of a port, degrees.</summary>
    private const double AboutAPlaceDeg = 0.4;

    /// <summary>The metal to remove in roughing, mm, section frame: only where the places say so.</summary>
    public required Geometry MetalNow { get; init; }

    /// <summary>U of a depth (k = 2), mm; zero when nothing is known of the outlines' error.</summary>
    public double DepthExpandedUncertaintyMm => Estimate.CoverageFactor * DepthStandardUncertaintyMm;

    /// <summary>A depth up to this counts as nothing to cut: what a hand can do, or what cannot be told, mm.</summary>
    public double LeastDepthMm => LeastDepth(DepthStandardUncertaintyMm);

    /// <summary>Plans the cut.</summary>
    /// <param name="present">The present outline.</param>
    /// <param name="target">The target in the present section's frame.</param>
    /// <param name="allowanceMm">What roughing leaves for finishing, mm.</param>
    /// <param name="depthStandardUncertaintyMm">u of a depth, mm.</param>
    /// <param name="walls">The walls that the target leaves.</param>
    /// <param name="where">The station, for the message of a refusal.</param>
    /// <returns>The plan, or <c>offset-closes</c> when the allowance is too large for the section.</returns>
    public static Result<StationCut> Plan(
        Outline present, Outline target, double allowanceMm, double depthStandardUncertaintyMm, IReadOnlyList<RemainingWall> walls, string where)
    {
        ArgumentNullException.ThrowIfNull(present);
        ArgumentNullException.ThrowIfNull(target);
        ArgumentNullException.ThrowIfNull(walls);
        return OutlineOffset.By(target, -allowanceMm, where).Then<StationCut>(rough =>
        {
            var places = FindPlaces(present, target, allowanceMm, LeastDepth(depthStandardUncertaintyMm), walls);
            var atFinish = Metal(target, present);
            var centroid = PolygonMoments.Of(target.Points).Centroid;
            var now = ToRough(Metal(rough, present), places, allowanceMm, centroid);
            var right = Area(atFinish, RightHalf(centroid));
            return new StationCut(
                present, target, rough, allowanceMm, depthStandardUncertaintyMm, places, FindSectors(places, now, atFinish, centroid),
                new(atFinish.Area - right, right, LeftRightSymmetry.Of(present).LargestDeviationMm, LeftRightSymmetry.Of(target).LargestDeviationMm),
                [.. walls.OrderByDescending(wall => wall.ChanceUnderLimit)], now.Area, atFinish.Area, Metal(present, target).Area)
            {
                MetalNow = now,
            };
        });
    }

    private static double LeastDepth(double standardUncertaintyMm) => Math.Max(LeastCutMm, Estimate.CoverageFactor * standardUncertaintyMm);

    private static List<CutPlace> FindPlaces(Outline present, Outline target, double allowanceMm, double leastMm, IReadOnlyList<RemainingWall> walls)
    {
        var samples = OutlineComparison.Samples(target, present, SpacingMm);
        var places = new List<CutPlace>(samples.Count);
        for (var i = 0; i < samples.Count; i++)
        {
            // Counter-clockwise: the outward normal is the direction of travel turned to the right.
            var (before, after) = (samples[(i + samples.Count - 1) % samples.Count].Reference, samples[(i + 1) % samples.Count].Reference);
            var chord = before.DistanceTo(after);
            var sample = samples[i];
            var atFinish = -sample.DeviationMm;
            var mark = atFinish < -leastMm ? CutMark.Beyond
                : atFinish < leastMm ? CutMark.Leave
                : walls.Any(wall => IsThin(wall, sample.Reference)) ? CutMark.ThinWall
                : atFinish > allowanceMm ? CutMark.Rough
                : CutMark.FinishOnly;
            places.Add(new(
                sample.Reference, sample.Measured, (after.YMm - before.YMm) / chord, (before.XMm - after.XMm) / chord, sample.Direction, sample.Region,
                atFinish, mark == CutMark.Rough ? atFinish - allowanceMm : 0, mark));
        }

        // Roughing runs out to nothing at its ends; a stretch that is nowhere deep enough to be cut on purpose is left to finishing. How well a
        // depth is known does not count here: the wall certainly stands short of the target, and the allowance is there for what is not certain.
        foreach (var run in Runs(places, place => place.Mark == CutMark.Rough).Where(run => run.Max(i => places[i].NowMm) < LeastCutMm))
        {
            run.ForEach(i => places[i] = places[i] with { Mark = CutMark.FinishOnly, NowMm = 0 });
        }

        return places;
    }

    /// <summary>The stretches of neighbouring places of a kind, as indices in order round the outline.</summary>
    private static List<List<int>> Runs(List<CutPlace> places, Func<CutPlace, bool> isOf)
    {
        var other = places.FindIndex(place => !isOf(place));
        if (other < 0)
        {
            return [[.. Enumerable.Range(0, places.Count)]];
        }

        var runs = new List<List<int>>();
        var isInRun = false;
        foreach (var i in Enumerable.Range(other, places.Count).Select(i => i % places.Count))
        {
            if (isOf(places[i]))
            {
                if (!isInRun)
                {
                    runs.Add([]);
                }

                runs[^1].Add(i);
            }

            isInRun = isOf(places[i]);
        }

        return runs;
    }

    /// <summary>Of all that lies outside the rough line, what is to be roughed: not the metal before a thin wall, nor what is left to finishing.</summary>
    private static Geometry ToRough(Geometry outsideRough, List<CutPlace> places, double allowanceMm, SectionPoint centroid)
    {
        if (!places.Exists(place => place.Mark == CutMark.Rough))
        {
            return outsideRough.Factory.CreatePolygon();
        }

        foreach (var run in Runs(places, place => place.Mark != CutMark.Rough && place.AtFinishMm > allowanceMm))
        {
            outsideRough = OverlayNGRobust.Overlay(outsideRough, Fan(centroid, [.. run.Select(i => places[i].Direction.Degrees)]), SpatialFunction.Difference);
        }

        return outsideRough;
    }

    private static bool IsThin(RemainingWall wall, SectionPoint place) =>
        wall.ChanceAt(wall.KeepOut.Shape.DistanceMm(place) * (wall.Least.WallMm == 0 ? 1 : wall.WallMm.Value / wall.Least.WallMm)) > RemainingWall.ChanceForCaution;

    private static List<CutSector> FindSectors(List<CutPlace> places, Geometry now, Geometry atFinish, SectionPoint centroid)
    {
        var sectors = new List<CutSector>();
        foreach (var group in places.GroupBy(place => place.Region).OrderBy(group => group.Key))
        {
            var wedge = Wedge(centroid, (int)group.Key * 45);
            sectors.Add(new(
                group.Key,
                group.Average(place => place.NowMm),
                group.Max(place => place.NowMm),
                group.Average(place => Math.Max(0, place.AtFinishMm)),
                group.Max(place => place.AtFinishMm),
                group.Min(place => place.AtFinishMm),
                Area(now, wedge),
                Area(atFinish, wedge),
                (double)group.Count(place => place.Mark is CutMark.Beyond or CutMark.Leave or CutMark.ThinWall) / group.Count()));
        }

        return sectors;
    }

    /// <summary>What lies within one outline and not within the other.</summary>
    private static Geometry Metal(Outline within, Outline notWithin) =>
        OverlayNGRobust.Overlay(within.ToPolygon(), notWithin.ToPolygon(), SpatialFunction.Difference);

    private static double Area(Geometry metal, Polygon part) => OverlayNGRobust.Overlay(metal, part, SpatialFunction.Intersection).Area;

    /// <summary>The sector of 45° about a direction, seen from the centroid.</summary>
    private static Polygon Wedge(SectionPoint centroid, double middleDeg) => Between(centroid, middleDeg - 22.5, middleDeg + 22.5);

    /// <summary>What lies in the directions of neighbouring places, seen from the centroid.</summary>
    private static Geometry Fan(SectionPoint centroid, IReadOnlyList<double> directionsDeg)
    {
        const double WidestDeg = 45;
        var turnDeg = directionsDeg.Zip(directionsDeg.Skip(1), (from, to) => Math.IEEERemainder(to - from, 360)).Sum();
        var parts = Math.Max(1, (int)Math.Ceiling(turnDeg / WidestDeg));
        var stepDeg = Math.Max(0, turnDeg) / parts;
        return OverlayNGRobust.Union([.. Enumerable.Range(0, parts).Select(part =>
            Between(centroid, directionsDeg[0] + (part * stepDeg) - AboutAPlaceDeg, directionsDeg[0] + ((part + 1) * stepDeg) + AboutAPlaceDeg))]);
    }

    private static Polygon Between(SectionPoint centroid, double fromDeg, double toDeg)
    {
        Coordinate Far(double deg)
        {
            var (sin, cos) = Math.SinCos(double.DegreesToRadians(deg));
            return new(centroid.XMm + (FarMm * cos), centroid.YMm + (FarMm * sin));
        }

        var middle = new Coordinate(centroid.XMm, centroid.YMm);
        return new(new LinearRing([middle, Far(fromDeg), Far(toDeg), middle]));
    }

    /// <summary>All that lies right of the centroid.</summary>
    private static Polygon RightHalf(SectionPoint centroid) => new(new LinearRing(
    [
        new(centroid.XMm, centroid.YMm - FarMm), new(centroid.XMm + FarMm, centroid.YMm - FarMm),
        new(centroid.XMm + FarMm, centroid.YMm + FarMm), new(centroid.XMm, centroid.YMm + FarMm), new(centroid.XMm, centroid.YMm - FarMm),
    ]));
}
