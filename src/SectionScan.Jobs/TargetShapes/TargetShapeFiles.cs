using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.TargetShapes;
using SectionScan.Jobs.Digitising;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.TargetShapes;

/// <summary>Writes target shapes: a section document and a drawing for each, one PDF of all.</summary>
public static class TargetShapeFiles
{
    /// <summary>Writes all or nothing.</summary>
    /// <param name="targets">The targets.</param>
    /// <param name="unit">What lengths are labelled in.</param>
    /// <param name="path">The folder.</param>
    /// <returns>The files' full paths.</returns>
    public static Result<IReadOnlyList<string>> Write(IReadOnlyList<SettledTarget> targets, LengthUnit unit, string path)
    {
        ArgumentNullException.ThrowIfNull(targets);
        var pages = targets.Select(target => (Name: FileNames.Safe(target.Name), Target: target, Page: Draw(target, unit))).ToList();
        var files = new List<(string, Action<Stream>)>();
        foreach (var (name, target, page) in pages)
        {
            var text = SectionText.Of(target.Document);
            files.Add((name + ".section.json", OutputFolder.Text(text)));
            files.Add((name + ".svg", stream => SvgWriter.Write(page, stream)));
        }

        files.Add(("targets.pdf", stream => PdfWriter.Write([.. pages.Select(each => each.Page)], stream, "Target shapes")));
        return OutputFolder.Open(path).Then(folder => folder.WriteAll(files));
    }

    /// <summary>The drawing of one target.</summary>
    public static Drawings.Pages.Page Draw(SettledTarget target, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(target);
        var facts = target.Document.TargetShape!;
        return TargetShapeDrawing.Build(
            target.Own.Outline, target.LaidReference.Outline, target.Document.Section.Outline,
            new(target.Own.Station is { } station ? FormattableString.Invariant($"Target, station {station}") : $"Target for {target.Own.Name}", target.Own.Name, target.Reference.Name)
            {
                Unit = unit,
                Notes = [.. facts.Steps],
                Held = [.. facts.Limits.SelectMany(limit => limit.Stretches.Select(stretch => (LimitWords.Of(limit), stretch.FromDeg, stretch.ToDeg)))],
            });
    }
}
