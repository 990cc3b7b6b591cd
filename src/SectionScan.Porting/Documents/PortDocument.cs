using SectionScan.Metrology.Results;
using SectionScan.Porting.Ports;

namespace SectionScan.Porting.Documents;

/// <summary>A port with its section documents, as kept in a file: all that later steps need, in one piece.</summary>
/// <param name="Port">The port.</param>
/// <param name="Sections">A section document for each of the port's stations, in their order.</param>
/// <param name="Program">Name and version of the program that made it.</param>
public sealed record PortDocument(Port Port, IReadOnlyList<SectionDocument> Sections, string Program)
{
    /// <summary>The schema's name, stored inside each document.</summary>
    public const string SchemaName = "sectionscan/port/1";

    /// <summary>Puts section documents to the stations of a table.</summary>
    /// <param name="name">The port's name.</param>
    /// <param name="kind">Intake or exhaust.</param>
    /// <param name="sections">The documents in any order.</param>
    /// <param name="table">Where the stations lie.</param>
    /// <param name="program">Name and version of the program.</param>
    /// <returns>The document, or one of <see cref="StationProblems"/>.</returns>
    public static Result<PortDocument> From(
        string name, PortKind kind, IReadOnlyList<SectionDocument> sections, StationTable table, string program)
    {
        ArgumentNullException.ThrowIfNull(sections);
        return Port.From(name, kind, [.. sections.Select(document => document.Section)], table).Then<PortDocument>(port => new PortDocument(
            port, [.. port.Stations.Select(station => sections.First(document => document.Section.Station == station.Position.Station))], program));
    }
}
