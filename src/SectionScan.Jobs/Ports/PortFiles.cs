using SectionScan.Jobs.Files;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Ports;

namespace SectionScan.Jobs.Ports;

/// <summary>Ports as files.</summary>
public static class PortFiles
{
    /// <summary>Reads a port document.</summary>
    public static Result<PortDocument> Read(string path) =>
        TextFile.Read(path, PortDocumentFormat.MaximumBytes).Then(text => PortDocumentFormat.Read(text, path));

    /// <summary>Reads a station table.</summary>
    public static Result<StationTable> ReadStations(string path) =>
        TextFile.Read(path, StationTableCsv.MaximumBytes).Then(text => StationTableCsv.Read(text, path));

    /// <summary>Reads section documents, in the order given; the first that cannot be read ends it.</summary>
    public static Result<IReadOnlyList<SectionDocument>> ReadSections(IEnumerable<string> paths)
    {
        ArgumentNullException.ThrowIfNull(paths);
        var sections = new List<SectionDocument>();
        foreach (var path in paths)
        {
            if (!TextFile.Read(path, SectionDocumentFormat.MaximumBytes).Then(text => SectionDocumentFormat.Read(text, path)).TryGet(out var section, out var problem))
            {
                return problem;
            }

            sections.Add(section);
        }

        return sections;
    }

    /// <summary>Ties section documents and a station table into one port document and writes it.</summary>
    /// <param name="name">The port's name.</param>
    /// <param name="kind">Intake or exhaust.</param>
    /// <param name="sections">The section documents' files.</param>
    /// <param name="stationTable">The station table's file.</param>
    /// <param name="bowlFromStation">The station where the bowl begins, or null.</param>
    /// <param name="path">Where to write it.</param>
    /// <param name="program">Name and version of the program.</param>
    public static Result<PortDocument> Make(
        string name, PortKind kind, IReadOnlyList<string> sections, string stationTable, int? bowlFromStation, string path, string program) =>
        ReadStations(stationTable).Then(table => ReadSections(sections).Then(read => From(name, kind, read, table, stationTable, program)))
            .Then<PortDocument>(document => document with { Port = document.Port with { BowlFromStation = bowlFromStation } })
            .Then(document => OutputFolder.WriteFile(path, PortDocumentFormat.Write(document)).Then<PortDocument>(_ => document));

    // What does not fit between sections and table is looked for in the table, not in a port that is not written yet.
    private static Result<PortDocument> From(
        string name, PortKind kind, IReadOnlyList<SectionDocument> sections, StationTable table, string stationTable, string program) =>
        PortDocument.From(name, kind, sections, table, program).TryGet(out var document, out var problem)
            ? document
            : problem.Where == name ? problem with { Where = stationTable } : problem;
}
