using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Schedules;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Schedules;

namespace SectionScan.Jobs.Ports;

/// <summary>Writes schedules and gas speeds as drawings and tables.</summary>
public static class ScheduleFiles
{
    /// <summary>Writes the schedule's plots (SVG and one PDF) and its table (CSV).</summary>
    /// <param name="study">The port.</param>
    /// <param name="others">Ports it is compared with.</param>
    /// <param name="comparisons">The comparisons.</param>
    /// <param name="folder">Where to.</param>
    /// <param name="unit">What the plots show; the table is in mm.</param>
    /// <returns>The files' full paths.</returns>
    public static Result<IReadOnlyList<string>> Write(
        ScheduleStudy study, IReadOnlyList<AreaSchedule> others, IReadOnlyList<ScheduleComparison> comparisons, string folder,
        LengthUnit unit = LengthUnit.Millimetre)
    {
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(others);
        ArgumentNullException.ThrowIfNull(comparisons);
        var stem = FileNames.Safe(study.Port.Name);
        var pages = new List<Page> { ScheduleDrawing.Area([study.Schedule, .. others], unit), ScheduleDrawing.Sizes(study.Schedule, unit) };
        pages.AddRange(comparisons.Select(each => ScheduleDrawing.Difference(each, unit)));
        var csv = ScheduleCsv.Write(study.Schedule);
        return WriteAll(folder, $"{stem}.schedule", pages, csv);
    }

    /// <summary>Writes pages as one SVG each and one PDF, and a table beside them; all or none.</summary>
    internal static Result<IReadOnlyList<string>> WriteAll(string folder, string stem, IReadOnlyList<Page> pages, string csv)
    {
        var files = new List<(string, Action<Stream>)>
        {
            (stem + ".csv", stream => stream.Write(System.Text.Encoding.UTF8.GetBytes(csv))),
            (stem + ".pdf", stream => PdfWriter.Write(pages, stream)),
        };
        files.AddRange(pages.Select((page, i) => (
            pages.Count == 1 ? stem + ".svg" : FormattableString.Invariant($"{stem}-{i + 1}.svg"), (Action<Stream>)(stream => SvgWriter.Write(page, stream)))));
        return OutputFolder.Open(folder).Then(open => open.WriteAll(files));
    }
}
