using System.Globalization;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Solids;
using SectionScan.Jobs.Files;
using SectionScan.Jobs.Ports;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Lofts;
using SectionScan.Porting.Ports;
using SectionScan.Porting.Schedules;

namespace SectionScan.Jobs.Lofts;

/// <summary>Makes the solid of a port from its sections and the table of stations.</summary>
public static class LoftPort
{
    /// <summary>Makes the solid and writes it.</summary>
    /// <param name="sections">Section documents, one for each station.</param>
    /// <param name="table">The table of stations, CSV.</param>
    /// <param name="name">The port's name.</param>
    /// <param name="outputFolder">Where solid and preview go; null writes none.</param>
    public static Result<LoftOutcome> Run(IReadOnlyList<string> sections, string table, string name, string? outputFolder)
    {
        ArgumentNullException.ThrowIfNull(sections);
        return PortFiles.ReadSections(sections).Then(read => PortFiles.ReadStations(table)
            .Then(stations => Port.From(name, PortKind.Intake, [.. read.Select(document => document.Section)], stations))
            .Then(port => Loft.Of(port).Then(loft => Write(port, loft, outputFolder))));
    }

    private static Result<LoftOutcome> Write(Port port, Loft loft, string? outputFolder)
    {
        var mesh = loft.ToMesh();
        var outcome = new LoftOutcome(port, loft, mesh, PortVolume.Of(AreaSchedule.Of(port)), []);
        if (outputFolder is null)
        {
            return outcome;
        }

        var notes = new[]
        {
            string.Create(CultureInfo.InvariantCulture, $"{loft.Stations.Count} stations over {port.LengthMm:0.0} mm of centreline; dark rings: the stations"),
            string.Create(
                CultureInfo.InvariantCulture,
                $"solid {mesh.VolumeMm3 / 1000:0.00} cm³, from the sections {outcome.Schedule.VolumeMm3.Value / 1000:0.00} ± {outcome.Schedule.VolumeMm3.ExpandedUncertainty / 1000:0.00} cm³ (k = 2)"),
        };
        var page = LoftDrawing.Build(loft, port.Name, notes);
        var stem = FileNames.Safe(port.Name);
        return OutputFolder.Open(outputFolder).Then(folder => folder.WriteAll(
        [
            (stem + ".stl", stream => StlWriter.Write(mesh, stream)),
            (stem + ".obj", stream => ObjWriter.Write(mesh, stream)),
            (stem + ".glb", stream => GltfWriter.Write(mesh, stream, port.Name)),
            (stem + ".solid.svg", stream => SvgWriter.Write(page, stream)),
            (stem + ".solid.pdf", stream => PdfWriter.Write([page], stream, page.Title)),
        ])).Then<LoftOutcome>(files => outcome with { Files = files });
    }
}
