using SectionScan.Jobs.Ports;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Ports;
using SectionScan.Porting.Sections;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>How a port of a job runs along its length, and how fast the gas in it goes.</summary>
/// <param name="Schedule">Areas station by station.</param>
/// <param name="Speeds">Gas speeds, or why there are none; null when no engine is told.</param>
/// <param name="LeftOut">Stations that have no section or no distance.</param>
public sealed record JobStudy(ScheduleStudy Schedule, Result<GasSpeedStudy>? Speeds, IReadOnlyList<int> LeftOut)
{
    /// <summary>Studies a port as the schedule and gas speed commands do.</summary>
    /// <param name="name">What to call it.</param>
    /// <param name="sections">Its sections, each with its station.</param>
    /// <param name="data">Where the stations lie, and the engine.</param>
    public static Result<JobStudy> Of(string name, IReadOnlyList<Section> sections, PortData data)
    {
        ArgumentNullException.ThrowIfNull(sections);
        ArgumentNullException.ThrowIfNull(data);
        var known = sections.Select(section => section.Station).OfType<int>().ToHashSet();
        var both = data.Stations.Where(each => known.Contains(each.Station)).ToList();
        var stations = both.ConvertAll(each => each.Station);
        var plan = (data with { Stations = both }).PortNamed(name);
        return JobDocumentRules.Stations(plan, name)
            .Then(table => Port.From(name, data.Kind, [.. sections.Where(section => section.Station is { } station && stations.Contains(station))], table))
            .Then(port => Of(port with { BowlFromStation = data.BowlFromStation }, data))
            .Then<JobStudy>(study => study with
            {
                LeftOut = [.. known.Union(data.Stations.Select(each => each.Station)).Except(stations).Order()],
            });
    }

    private static Result<JobStudy> Of(Port port, PortData data) => ScheduleStudy.Of(port, null, null).Then<JobStudy>(study => new JobStudy(
        study,
        data.Engine is { } engine ? GasSpeedStudy.Of(study.Schedule, port, engine, data.Valve, data.MeanFlowCoefficient, [], port.Name) : null,
        []));
}
