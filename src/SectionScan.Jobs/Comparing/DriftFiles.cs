using System.Text;
using SectionScan.Drawings.Comparisons;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Comparing;

/// <summary>Writes a drift: a drawing of each station (SVG, all as PDF), tables (CSV) and the answer for programs (JSON).</summary>
public static class DriftFiles
{
    /// <summary>Writes all or nothing.</summary>
    /// <param name="drifts">The stations.</param>
    /// <param name="choice">How sections were laid on each other.</param>
    /// <param name="answer">The answer.</param>
    /// <param name="unit">What the drawings show; the tables are in mm.</param>
    /// <param name="folder">The folder.</param>
    /// <returns>The files' full paths.</returns>
    public static Result<IReadOnlyList<string>> Write(
        IReadOnlyList<StageDrift> drifts, AlignmentChoice choice, DriftAnswer answer, LengthUnit unit, string folder)
    {
        ArgumentNullException.ThrowIfNull(drifts);
        var pages = drifts.Select(drift => Draw(drift, choice, unit)).ToList();
        var (table, sides) = Tables(drifts);
        return OutputFolder.Open(folder).Then(open => open.WriteAll(
        [
            ("drift.pdf", stream => PdfWriter.Write(pages, stream, "Drift")),
            .. pages.Zip(drifts, (page, drift) => (
                $"drift.{FileNames.Safe(SpreadFiles.StationName(drift.Station))}.svg", (Action<Stream>)(stream => SvgWriter.Write(page, stream)))),
            ("drift.csv", stream => stream.Write(Encoding.UTF8.GetBytes(table))),
            ("drift-sides.csv", stream => stream.Write(Encoding.UTF8.GetBytes(sides))),
            ("drift.json", stream => stream.Write(Encoding.UTF8.GetBytes(JsonText.Of(answer)))),
        ]));
    }

    /// <summary>The drawing of one station.</summary>
    public static Page Draw(StageDrift drift, AlignmentChoice choice, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(drift);
        var (first, last) = (drift.First, drift.Stages[^1]);
        var farthest = last.FromFirst.Result.Highest;
        return LaidOutlinesDrawing.Build(
            [
                new(first.Stage, first.Section.Outline, [.. last.FromFirst.Result.Samples.Select(sample => (sample.Direction.Degrees, 0.0))]),
                .. drift.Stages.Select(stage => new LaidOutline(
                    stage.Stage, stage.FromFirst.Result.Measured.Outline, [.. stage.FromFirst.Result.Samples.Select(sample => (sample.Direction.Degrees, sample.DeviationMm))])),
            ],
            new(
                $"Drift, {SpreadFiles.StationName(drift.Station)}",
                first.Stage,
                farthest.Reference,
                $"{MeasureText.Deviation(farthest.DeviationMm, unit)} since {first.Stage}",
                [
                    .. drift.Stages.Select(stage =>
                        $"{stage.Stage}: wall moved by {MeasureText.Deviation(stage.FromFirst.Result.MeanDeviationMm, unit)} in the mean since {first.Stage}, "
                        + $"most at the {RegionWords.Of(stage.FromFirst.Result.Highest.Region)}, {MeasureText.Deviation(stage.FromFirst.Result.Highest.DeviationMm, unit)}."),
                    $"Laid on {first.Stage} by: {AlignmentWords.Of(choice)}.",
                ],
                unit));
    }

    private static (string Table, string Sides) Tables(IReadOnlyList<StageDrift> drifts)
    {
        var table = new CsvTable(
            "station", "stage", "area_mm2", "mean_moved_mm", "most_moved_mm", "most_moved_side", "least_moved_mm", "mean_since_last_stage_mm", "gone_mm3_per_mm", "expanded_u_mm");
        var sides = new CsvTable("station", "stage", "side", "mean_moved_mm", "least_moved_mm", "most_moved_mm", "mean_since_last_stage_mm", "gone_mm3_per_mm");
        foreach (var drift in drifts)
        {
            table.Add(drift.Station, drift.First.Stage, drift.Stages[0].FromFirst.AreasMm2.ReferenceMm2, null, null, null, null, null, null, null);
            foreach (var (stage, fromFirst, fromLast) in drift.Stages)
            {
                var result = fromFirst.Result;
                table.Add(
                    drift.Station, stage, fromFirst.AreasMm2.MeasuredMm2, result.MeanDeviationMm, result.Highest.DeviationMm, RegionWords.Of(result.Highest.Region),
                    result.Lowest.DeviationMm, fromLast.Result.MeanDeviationMm, result.Regions.Sum(region => region.GoneMm3PerMm), fromFirst.DeviationExpandedUncertaintyMm);
                var since = fromLast.Result.Regions.ToDictionary(region => region.Region, region => region.MeanMm);
                foreach (var side in result.Regions)
                {
                    sides.Add(
                        drift.Station, stage, RegionWords.Of(side.Region), side.MeanMm, side.LowestMm, side.HighestMm,
                        since.TryGetValue(side.Region, out var mean) ? mean : null, side.GoneMm3PerMm);
                }
            }
        }

        return (table.ToString(), sides.ToString());
    }
}
