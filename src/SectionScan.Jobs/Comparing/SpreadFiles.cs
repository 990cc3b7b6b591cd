using System.Text;
using SectionScan.Drawings.Comparisons;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Comparing;

/// <summary>Writes a spread: a drawing of each station (SVG, all as PDF), tables (CSV) and the answer for programs (JSON).</summary>
public static class SpreadFiles
{
    /// <summary>Writes all or nothing.</summary>
    /// <param name="stations">The stations.</param>
    /// <param name="choice">How sections were laid on each other.</param>
    /// <param name="answer">The answer.</param>
    /// <param name="unit">What the drawings show; the tables are in mm.</param>
    /// <param name="folder">The folder.</param>
    /// <returns>The files' full paths.</returns>
    public static Result<IReadOnlyList<string>> Write(
        IReadOnlyList<StationSpread> stations, AlignmentChoice choice, SpreadAnswer answer, LengthUnit unit, string folder)
    {
        ArgumentNullException.ThrowIfNull(stations);
        var pages = stations.Select(station => Draw(station, choice, unit)).ToList();
        var (table, sides) = Tables(answer);
        return OutputFolder.Open(folder).Then(open => open.WriteAll(
        [
            ("spread.pdf", stream => PdfWriter.Write(pages, stream, "Spread")),
            .. pages.Zip(stations, (page, station) => (
                $"spread.{FileNames.Safe(StationName(station.Station))}.svg", (Action<Stream>)(stream => SvgWriter.Write(page, stream)))),
            ("spread.csv", stream => stream.Write(Encoding.UTF8.GetBytes(table))),
            ("spread-sides.csv", stream => stream.Write(Encoding.UTF8.GetBytes(sides))),
            ("spread.json", stream => stream.Write(Encoding.UTF8.GetBytes(JsonText.Of(answer)))),
        ]));
    }

    /// <summary>The drawing of one station.</summary>
    public static Page Draw(StationSpread station, AlignmentChoice choice, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(station);
        var (spread, sections) = (station.Spread, station.Sections);
        var widest = spread.Widest;
        return LaidOutlinesDrawing.Build(
            [.. sections.Select((section, i) => new LaidOutline(
                section.Port, spread.Laid[i].Outline, [.. spread.Places.Select(place => (place.Direction.Degrees, place.DeviationsMm[i]))]))],
            new(
                $"Spread, {StationName(station.Station)}",
                sections[spread.Middle].Port,
                widest.Place,
                $"{MeasureText.Length(new(widest.RangeMm, 0), unit)} apart",
                [
                    $"Farthest apart at the {RegionWords.Of(widest.Region)}: {sections[widest.Outermost].Port} outermost, {sections[widest.Innermost].Port} innermost. "
                    + $"In the mean {MeasureText.Length(new(spread.MeanRangeMm, 0), unit)} apart"
                    + (double.IsNaN(station.RangeStandardUncertaintyMm) ? "." : $"; {MeasureText.Length(new(2 * station.RangeStandardUncertaintyMm, 0), unit)} is the uncertainty of a distance (k = 2)."),
                    $"Laid on each other by: {AlignmentWords.Of(choice)}.",
                ],
                unit));
    }

    /// <summary>"station 3", or "section" where there is no number.</summary>
    public static string StationName(int? station) => station is { } number ? FormattableString.Invariant($"station {number}") : "section";

    private static (string Table, string Sides) Tables(SpreadAnswer answer)
    {
        var table = new CsvTable(
            "station", "ports", "least_area_mm2", "least_area_port", "greatest_area_mm2", "greatest_area_port", "width_range_mm", "height_range_mm", "mean_apart_mm",
            "most_apart_mm", "expanded_u_mm", "direction_deg", "side", "outermost", "innermost");
        var sides = new CsvTable("station", "side", "mean_apart_mm", "most_apart_mm");
        foreach (var station in answer.Stations)
        {
            var (area, widest) = (station.Area, station.Widest);
            table.Add(
                station.Station, station.Ports.Count, area.Least, area.LeastPort, area.Greatest, area.GreatestPort, station.Width.Range, station.Height.Range,
                station.MeanRangeMm, widest.RangeMm, station.RangeExpandedUncertaintyMm, widest.DirectionDeg, widest.Region, widest.Outermost, widest.Innermost);
            foreach (var side in station.Regions)
            {
                sides.Add(station.Station, side.Region, side.MeanMm, side.MostMm);
            }
        }

        return (table.ToString(), sides.ToString());
    }
}
