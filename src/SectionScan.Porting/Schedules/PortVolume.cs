using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Porting.Schedules;

/// <summary>The volume of a port by integrating its area along the centreline.</summary>
/// <param name="FromMm">Where it begins, mm along the centreline.</param>
/// <param name="ToMm">Where it ends.</param>
/// <param name="VolumeMm3">The volume, mm³.</param>
/// <param name="BeyondStationsMm3">The part of it beyond the first and the last station, where the end sections are carried on.</param>
/// <param name="Budget">Where the uncertainty comes from, mm³.</param>
/// <remarks>V = ∫A ds along the line of the sections' centroids (Pappus and Guldin), with the root of the area interpolated
/// by piecewise cubics; each interval by Gauss and Legendre's rule with four points, which is exact for a polynomial of the seventh degree.</remarks>
public sealed record PortVolume(
    double FromMm, double ToMm, Estimate VolumeMm3, double BeyondStationsMm3, UncertaintyBudget Budget)
{
    private static readonly (double Place, double Weight)[] FourPoints =
    [
        (-0.861136311594052575, 0.347854845137453857), (-0.339981043584856265, 0.652145154862546143),
        (0.339981043584856265, 0.652145154862546143), (0.861136311594052575, 0.347854845137453857),
    ];

    /// <summary>Between the first and the last station.</summary>
    public static PortVolume Of(AreaSchedule schedule)
    {
        ArgumentNullException.ThrowIfNull(schedule);
        return Of(schedule, schedule.FromMm, schedule.ToMm);
    }

    /// <summary>Between two places; beyond the end stations their area is carried on unchanged, with the change that the last interval
    /// would go on with as the half-width of a rectangular distribution (an assumption).</summary>
    /// <param name="schedule">The schedule.</param>
    /// <param name="fromMm">At or before the first station.</param>
    /// <param name="toMm">At or after the last station.</param>
    public static PortVolume Of(AreaSchedule schedule, double fromMm, double toMm)
    {
        ArgumentNullException.ThrowIfNull(schedule);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(fromMm, schedule.FromMm);
        ArgumentOutOfRangeException.ThrowIfLessThan(toMm, schedule.ToMm);
        var stations = schedule.Stations;
        var (before, after) = (schedule.FromMm - fromMm, toMm - schedule.ToMm);
        var (between, frusta) = (0.0, 0.0);
        var weights = new double[stations.Count];
        for (var i = 0; i + 1 < stations.Count; i++)
        {
            var (from, to) = (stations[i].Position.DistanceMm, stations[i + 1].Position.DistanceMm);
            between += Integral(schedule, from, to);
            frusta += Frustum(to - from, stations[i].AreaMm2.Value, stations[i + 1].AreaMm2.Value);
            weights[i] += (to - from) / 2;
            weights[i + 1] += (to - from) / 2;
        }

        weights[0] += before;
        weights[^1] += after;
        var ends = (before * stations[0].AreaMm2.Value) + (after * stations[^1].AreaMm2.Value);
        var rows = new List<BudgetRow>(StationCombination.Rows(stations, weights))
        {
            new("station distances", DistancesMm3(stations, before > 0, after > 0)),
            new("shape between stations", Math.Abs(between - frusta) / Math.Sqrt(3)),
        };
        if (before + after > 0)
        {
            rows.Add(new("ends beyond the stations", double.Hypot(
                EndMm3(before, stations[0], stations[1]), EndMm3(after, stations[^1], stations[^2]))));
        }

        var budget = new UncertaintyBudget(rows);
        return new(fromMm, toMm, new(between + ends, budget.CombinedStandardUncertainty), ends, budget);
    }

    /// <summary>Volume of a frustum of a cone or pyramid, mm³: h/3·(A1 + A2 + √(A1·A2)) (handbooks of mensuration).</summary>
    public static double Frustum(double lengthMm, double firstMm2, double secondMm2) =>
        lengthMm / 3 * (firstMm2 + secondMm2 + Math.Sqrt(firstMm2 * secondMm2));

    private static double Integral(AreaSchedule schedule, double from, double to)
    {
        var (middle, half) = ((from + to) / 2, (to - from) / 2);
        return FourPoints.Sum(point => point.Weight * schedule.AreaMm2At(middle + (half * point.Place)).Value) * half;
    }

    // A station moved by δ gives δ/2 to the interval on one side and takes it from the other. Where the port goes on beyond an end station,
    // the piece beyond it changes with it.
    private static double DistancesMm3(IReadOnlyList<ScheduleStation> stations, bool goesOnBefore, bool goesOnAfter)
    {
        var squares = 0.0;
        for (var i = 0; i < stations.Count; i++)
        {
            var before = i == 0 ? (goesOnBefore ? 1 : -1) * stations[i].AreaMm2.Value : stations[i - 1].AreaMm2.Value;
            var after = i == stations.Count - 1 ? (goesOnAfter ? 1 : -1) * stations[i].AreaMm2.Value : stations[i + 1].AreaMm2.Value;
            var part = (before - after) / 2 * stations[i].Position.DistanceStandardUncertaintyMm;
            squares += part * part;
        }

        return Math.Sqrt(squares);
    }

    private static double EndMm3(double beyondMm, ScheduleStation end, ScheduleStation next)
    {
        var slope = (end.AreaMm2.Value - next.AreaMm2.Value) / Math.Abs(end.Position.DistanceMm - next.Position.DistanceMm);
        return Math.Abs(slope) * beyondMm * beyondMm / 2 / Math.Sqrt(3);
    }
}
