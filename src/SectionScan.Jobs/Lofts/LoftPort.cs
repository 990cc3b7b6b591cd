using System.Globalization;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Sections;
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
    /// <param name="unit">What the preview shows; the solid is always in mm.</param>
    public static Result<LoftOutcome> Run(IReadOnlyList<string> sections, string table, string name, string? outputFolder, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(sections);
        return PortFiles.ReadSections(sections).Then(read => PortFiles.ReadStations(table)
            .Then(stations => Port.From(name, PortKind.Intake, [.. read.Select(document => document.Section)], stations))
            .Then(port => Loft.Of(port).Then(loft => Write(port, loft, outputFolder, unit))));
    }

    private static Result<LoftOutcome> Write(Port port, Loft loft, string? outputFolder, LengthUnit unit)
    {
        var mesh = loft.ToMesh();
        var outcome = new LoftOutcome(port, loft, mesh, PortVolume.Of(AreaSchedule.Of(port)), []);
        if (outputFolder is null)
        {
            return outcome;
        }

        var units = new ShownUnits(unit);
        var notes = new[]
        {
            string.Create(CultureInfo.InvariantCulture, $"{loft.Stations.Count} stations over {units.Distance(new(port.LengthMm, 0))} {units.LengthName} of centreline; dark rings: the stations"),
            $"solid {units.Volume(new(mesh.VolumeMm3, 0))} {units.VolumeName}, from the sections {units.Volume(outcome.Schedule.VolumeMm3)} {units.VolumeName} (k = 2)",
        };
        var page = LoftDrawing.Build(loft, port.Name, notes, unit);
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
