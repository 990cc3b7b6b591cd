using SectionScan.Jobs.Demo;
using SectionScan.Porting.Schedules;

namespace SectionScan.Jobs.WholeJobs;

/// <summary>One port of a job against another.</summary>
/// <param name="Reference">The reference.</param>
/// <param name="Measured">The port looked at.</param>
/// <param name="Schedules">Their areas, by true distance where both are counted from one place, else by share of length.</param>
/// <param name="Stations">Their sections at every station that both have.</param>
public sealed record PortComparison(
    StudiedPort Reference, StudiedPort Measured, ScheduleComparison Schedules, IReadOnlyList<StationComparison> Stations)
{
    /// <summary>Compares two ports.</summary>
    public static PortComparison Of(StudiedPort reference, StudiedPort measured)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(measured);
        var (theirs, ours) = (reference.Schedule.Schedule, measured.Schedule.Schedule);
        var schedules = ScheduleComparison.Of(theirs, ours, ScheduleAxis.Distance).TryGet(out var byDistance, out _)
            ? byDistance
            : ScheduleComparison.Of(theirs, ours, ScheduleAxis.Share).ValueOrThrow();
        var stations = theirs.Stations.Select(station => station.Position.Station).Where(station => measured.At(station) is not null);
        return new(reference, measured, schedules, [.. stations.Select(station =>
            StationComparison.Of(station, reference.Plan.Name, reference.At(station)!, measured.Plan.Name, measured.At(station)!))]);
    }
}
