using SectionScan.Jobs.Digitising;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;

namespace SectionScan.Jobs.Comparing;

/// <summary>Marks places in a section document, to lay sections on each other by.</summary>
public static class SectionMarking
{
    /// <summary>A mark farther from the section's origin than this is a slip, mm.</summary>
    private const double FarthestMm = 500;

    /// <summary>Adds marks to a document and writes it whole; marks of the same name are replaced.</summary>
    /// <param name="path">The document.</param>
    /// <param name="marks">What to add.</param>
    /// <param name="isCleared">True when the marks that are there go first.</param>
    /// <param name="outPath">Where to write; null writes over the document itself.</param>
    /// <returns>All the marks of the document as written.</returns>
    public static Result<SectionMarks> Mark(string path, SectionMarks marks, bool isCleared, string? outPath)
    {
        ArgumentNullException.ThrowIfNull(marks);
        if (PlacesOf(marks).Any(place => !(Math.Abs(place.XMm) <= FarthestMm && Math.Abs(place.YMm) <= FarthestMm)))
        {
            return ComparingProblems.MarkOutOfRange(FarthestMm);
        }

        return TextFile.Read(path, SectionDocumentFormat.MaximumBytes).Then(text => SectionDocumentFormat.Read(text, path)).Then(document =>
        {
            var kept = isCleared ? SectionMarks.None : document.Marks;
            var points = new Dictionary<string, SectionPoint>(kept.Points);
            foreach (var (name, point) in marks.Points)
            {
                points[name] = point;
            }

            var all = new SectionMarks(marks.GuideAxis ?? kept.GuideAxis, marks.FloorLine ?? kept.FloorLine, points);
            return (document with { Marks = all }).Rounded(path).Then(marked =>
                OutputFolder.WriteFile(outPath ?? path, SectionText.Of(marked)).Then<SectionMarks>(_ => marked.Marks));
        });
    }

    private static IEnumerable<SectionPoint> PlacesOf(SectionMarks marks) =>
    [
        .. marks.GuideAxis is { } axis ? new[] { axis.From, axis.To } : [],
        .. marks.FloorLine is { } floor ? new[] { floor.From, floor.To } : [],
        .. marks.Points.Values,
    ];
}
