using SectionScan.Metrology.Results;
using SectionScan.Porting.Sections;

namespace SectionScan.Porting.Ports;

/// <summary>A port as one thing: its sections in the order of the flow, each at its place along the centreline.</summary>
/// <param name="Name">What it is called, such as "intake 1, finished".</param>
/// <param name="Kind">Intake or exhaust.</param>
/// <param name="Subject">What all its sections were taken from.</param>
/// <param name="Stations">Two or more, distances growing.</param>
public sealed record Port(string Name, PortKind Kind, SectionSubject Subject, IReadOnlyList<PortStation> Stations)
{
    /// <summary>The station where the bowl begins: from there on the area is meant to change fast. Null when nobody told it.</summary>
    public int? BowlFromStation { get; init; }

    /// <summary>Distance between the first and the last station, mm.</summary>
    public double LengthMm => Stations[^1].Position.DistanceMm - Stations[0].Position.DistanceMm;

    /// <summary>Puts sections to the stations of a table.</summary>
    /// <param name="name">The port's name; also where messages say that something is wrong.</param>
    /// <param name="kind">Intake or exhaust.</param>
    /// <param name="sections">The sections in any order, each with its station.</param>
    /// <param name="table">Where the stations lie.</param>
    /// <returns>The port, or one of <see cref="StationProblems"/>.</returns>
    public static Result<Port> From(string name, PortKind kind, IReadOnlyList<Section> sections, StationTable table)
    {
        ArgumentNullException.ThrowIfNull(sections);
        ArgumentNullException.ThrowIfNull(table);
        if (ProblemOf(name, sections, table) is { } problem)
        {
            return problem;
        }

        var stations = table.Positions.Select(position => new PortStation(position, sections.First(each => each.Station == position.Station)));
        return new Port(name, kind, sections[0].Subject, [.. stations]);
    }

    private static Problem? ProblemOf(string name, IReadOnlyList<Section> sections, StationTable table)
    {
        var unnumbered = sections.Count(section => section.Station is null);
        if (unnumbered > 0)
        {
            return StationProblems.SectionWithoutStation(name, unnumbered);
        }

        var found = sections.Select(section => section.Station!.Value).ToList();
        if (found.GroupBy(station => station).FirstOrDefault(group => group.Count() > 1) is { } twice)
        {
            return StationProblems.SectionTwice(name, twice.Key);
        }

        if (found.Count == 1)
        {
            return StationProblems.OneStationOnly(name, found[0]);
        }

        var wanted = table.Positions.Select(position => position.Station).ToList();
        if (wanted.Except(found).ToList() is { Count: > 0 } missing)
        {
            return StationProblems.SectionMissing(name, missing);
        }

        if (found.Except(wanted).Order().ToList() is { Count: > 0 } extra)
        {
            return StationProblems.NotInTable(name, extra);
        }

        var kinds = sections.GroupBy(section => section.Subject).OrderBy(kind => kind.Key)
            .Select(kind => (kind.Key, (IReadOnlyList<int>)[.. kind.Select(section => section.Station!.Value).Order()])).ToList();
        return kinds.Count > 1 ? StationProblems.Mixed(name, kinds) : null;
    }
}
