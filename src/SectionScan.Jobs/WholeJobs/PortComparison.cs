using SectionScan.Jobs.Demo;
using SectionScan.Porting.Documents;
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
    /// <param name="reference">The reference.</param>
    /// <param name="measured">The port looked at.</param>
    /// <param name="byHand">The stations whose section a person aligned by hand; each is one that both have.</param>
    public static PortComparison Of(StudiedPort reference, StudiedPort measured, IReadOnlyList<JobHandAlignment>? byHand = null)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(measured);
        var (theirs, ours) = (reference.Schedule.Schedule, measured.Schedule.Schedule);
        var schedules = ScheduleComparison.Of(theirs, ours, ScheduleAxis.Distance).TryGet(out var byDistance, out _)
            ? byDistance
            : ScheduleComparison.Of(theirs, ours, ScheduleAxis.Share).ValueOrThrow();
        return new(reference, measured, schedules, [.. StationsOfBoth(reference, measured).Select(station => StationComparison.Of(
            station, reference.Plan.Name, reference.At(station)!, measured.Plan.Name, measured.At(station)!,
            byHand?.FirstOrDefault(each => each.Station == station)?.Choice()))]);
    }

    /// <summary>The stations that both ports have.</summary>
    public static IReadOnlyList<int> StationsOfBoth(StudiedPort reference, StudiedPort measured)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(measured);
        return [.. reference.Schedule.Schedule.Stations.Select(station => station.Position.Station).Where(station => measured.At(station) is not null)];
    }
}
