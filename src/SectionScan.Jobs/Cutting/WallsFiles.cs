using System.Globalization;
using System.Text;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.Walls;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Cutting;

namespace SectionScan.Jobs.Cutting;

/// <summary>Writes the walls of one section: a page as PDF and SVG, and a table as CSV.</summary>
public static class WallsFiles
{
    /// <summary>Writes all or nothing.</summary>
    /// <param name="study">The walls.</param>
    /// <param name="unit">What the page shows; the table is in mm.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="folder">The folder.</param>
    /// <returns>The files' full paths.</returns>
    public static Result<IReadOnlyList<string>> Write(WallsStudy study, LengthUnit unit, PaperSize paper, string folder)
    {
        ArgumentNullException.ThrowIfNull(study);
        var report = WallsReport.Of(study);
        var title = report.Station is { } station ? string.Create(CultureInfo.InvariantCulture, $"Walls, station {station}") : "Walls";
        var page = WallsPage.Build(study.Outlines, study.Walls, new(title, study.Present.Name, [.. report.Assumptions, CutCautions.InShort], unit), paper);
        var name = FileNames.Safe($"walls-{study.Present.Name}");
        return OutputFolder.Open(folder).Then(open => open.WriteAll(
        [
            (name + ".pdf", stream => PdfWriter.Write([page], stream, title)),
            (name + ".svg", stream => SvgWriter.Write(page, stream)),
            (name + ".csv", stream => stream.Write(Encoding.UTF8.GetBytes(Csv(report)))),
        ]));
    }

    private static string Csv(WallsReport report)
    {
        var table = new CsvTable("keep_out", "kind", "outline", "side", "x_mm", "y_mm", "wall_mm", "u_mm", "limit_mm", "chance_under_limit", "caution", "note");
        foreach (var wall in report.Walls)
        {
            table.Add(
                wall.KeepOut, wall.Kind, wall.Stage, wall.Side, wall.At[0], wall.At[1], wall.WallMm, wall.UMm, wall.LimitMm, wall.ChanceUnderLimit, wall.NeedsCaution, wall.Note);
        }

        return table.ToString();
    }
}
